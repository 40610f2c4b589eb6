/** Reading a typed fact: the number with its unit, or a refusal that names the key and says what would do. */
import { Refusal } from '../refusal.ts';
import { toSI } from '../units/measure.ts';
import { parseMeasure } from '../units/parse-measure.ts';
import { acceptedForTerm, type FactTerm, factTerms, plainKey } from './fact-terms.ts';
import { partKindNamed, partKinds } from './part-kinds.ts';

export interface Fact {
  readonly key: string;
  readonly value: string;
  readonly unit: string;
}

const whole = new Set(['cylinders', 'crank teeth', 'cam teeth', 'belt teeth', 'wire gauge', 'ribs']);
const signed = new Set(['deck clearance', 'piston dish', 'opening temperature']);

function refuse(fact: Fact, term: FactTerm, problem: string): never {
  throw new Refusal('bad-input', `${problem} Nothing was changed.`, {
    field: fact.key,
    accepted: acceptedForTerm(term),
  });
}

/**
 * Checks the facts of a part: a key of the vocabulary needs a value that can be read in an accepted unit, typed behind
 * the number or beside it; other keys are free.
 * @throws Refusal `bad-input` whose `field` is the key.
 */
export function checkFacts(facts: readonly Fact[]): void {
  const seen = new Set<string>();
  for (const fact of facts) {
    const plain = plainKey(fact.key);
    if (seen.has(plain)) {
      throw new Refusal('bad-input', `The fact “${fact.key}” stands twice. Nothing was changed.`, {
        field: fact.key,
        accepted: 'each fact once',
      });
    }
    seen.add(plain);
    const term = factTerms.get(plain);
    if (term !== undefined && term.dimension !== 'word') checkNumber(fact, term);
  }
}

function checkNumber(fact: Fact, term: FactTerm): void {
  const { dimension } = term;
  if (dimension === 'word') return;
  let value: number;
  let unit: string;
  try {
    ({ value, unit } = parseMeasure(fact.value, dimension, { field: fact.key, unit: fact.unit }));
  } catch (error) {
    if (error instanceof Refusal) refuse(fact, term, error.message.replace(/ Nothing was changed\.$/, ''));
    throw error;
  }
  if (whole.has(term.key) && !Number.isInteger(value)) refuse(fact, term, `The ${fact.key} must be a whole number.`);
  if (!signed.has(term.key) && value <= 0) refuse(fact, term, `The ${fact.key} must be above 0.`);
  const si = toSI(value, unit, dimension);
  if (dimension === 'fraction' && si > 1) refuse(fact, term, `The ${fact.key} can’t be above 100 %.`);
  if (dimension === 'temperature' && si < 0) refuse(fact, term, `The ${fact.key} can’t be below absolute zero.`);
}

/** @throws Refusal `bad-input` for a kind that the vocabulary doesn't have; empty is fine. */
export function checkKind(kind: string): string {
  if (kind.trim() === '') return '';
  const known = partKindNamed(kind);
  if (known !== undefined) return known.kind;
  throw new Refusal('bad-input', `“${kind}” is no kind of part that the workbook knows. Nothing was changed.`, {
    field: 'kind',
    accepted: `one of ${partKinds.map((one) => one.kind).join(', ')}, or nothing`,
  });
}
