import type { z } from 'zod';
import type { partKindRow } from '../../../../core/contract/checks.ts';
import type { PartDetail } from '../../../../core/contract/parts.ts';

export type KindOfPart = z.infer<typeof partKindRow>;
export type Fact = PartDetail['facts'][number];

const plain = (key: string): string => key.trim().toLowerCase();

export const kindNamed = (kinds: readonly KindOfPart[], name: string): KindOfPart | undefined =>
  kinds.find(({ kind }) => plain(kind) === plain(name));

/** The words of a fact: those of the vocabulary for the part's kind, else as it was typed. */
export const labelOf = (kind: KindOfPart | undefined, key: string): string =>
  kind?.facts.find((term) => plain(term.key) === plain(key))?.label ?? key;

/** The facts of a part as a form shows them: a field for each that its kind may say, then those in free words. */
export function fieldsOf(kind: KindOfPart | undefined, facts: readonly Fact[]) {
  const terms = kind?.facts ?? [];
  const known = new Set(terms.map(({ key }) => plain(key)));
  return {
    typed: terms.map((term) => {
      const own = facts.find(({ key }) => plain(key) === plain(term.key));
      return { ...term, value: own?.value ?? '', chosen: own?.unit ?? (term.unit === '-' ? '' : term.unit) };
    }),
    free: facts.filter(({ key }) => !known.has(plain(key))),
  };
}

/** The facts with one of them said anew; an empty value takes it off. Its place among the others stays. */
export function withFact(facts: readonly Fact[], fact: Fact): readonly Fact[] {
  const at = facts.findIndex(({ key }) => plain(key) === plain(fact.key));
  if (at < 0) return [...facts, fact];
  return facts.with(at, fact);
}
