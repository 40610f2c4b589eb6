/** Reads named fields out of data that came from outside, and refuses by the name that the writer used. */
import { exceeds, fallsShort } from '../calculators/limits.ts';
import { Refusal } from '../refusal.ts';
import type { Dimension } from '../units/dimensions.ts';
import { fromSI, toSI, unitNamed, unitsOf } from '../units/measure.ts';
import { parseMeasure } from '../units/parse-measure.ts';

export type Data = Readonly<Record<string, unknown>>;

export const isData = (value: unknown): value is Data =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A number in `unit`; text may carry another unit of the dimension. */
interface NumberRule {
  readonly dimension: Dimension;
  readonly unit: string;
  readonly above?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly atMost?: number;
  readonly whole?: true;
}

/** Several spellings of one field; the first is the one that help and refusals teach. */
type Names = string | readonly string[];

/** Refuses a field. `reason` is a sentence; `accepted` says what would do. */
export function refuseField(field: string, reason: string, accepted: string): never {
  throw new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}

/** Refuses a line that lacks a field. A plan may lack it still: `missingField` tells this from a value that can't be read. */
export function refuseMissing(field: string, reason: string, accepted: string): never {
  throw new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted, detail: { missing: field } });
}

/** The field that a take-off lacks, where that is what it was refused for. */
export const missingField = (refusal: Refusal): string | undefined =>
  typeof refusal.detail['missing'] === 'string' ? refusal.detail['missing'] : undefined;

function acceptedNumber({ dimension, unit, above, atLeast, below, atMost, whole }: NumberRule): string {
  const bounds = [
    above === undefined ? '' : ` above ${above}`,
    atLeast === undefined ? '' : ` from ${atLeast}`,
    below === undefined ? '' : ` below ${below}`,
    atMost === undefined ? '' : ` up to ${atMost}`,
  ].join('');
  const others = unitsOf(dimension).filter((one) => one !== '-' && one !== unit);
  const units =
    unit === '-' ? '' : ` in ${unit}${others.length === 0 ? '' : `, or text with a unit of ${others.join(', ')}`}`;
  return `${whole ? 'a whole number' : 'a number'}${bounds}${units}`;
}

/** A number, text with a unit, or `{"value": 24, "unit": "in"}` as calculators take it. */
function readNumber(field: string, said: unknown, rule: NumberRule): number {
  const accepted = acceptedNumber(rule);
  const { value: bare, unit = rule.unit } = isData(said) ? said : { value: said };
  if (typeof unit !== 'string') refuseField(field, `The unit of ${field} must be text.`, accepted);
  const measure =
    typeof bare === 'string'
      ? parseMeasure(bare, rule.dimension, { field, unit })
      : typeof bare === 'number'
        ? { value: bare, unit: unitNamed(unit, rule.dimension, field) }
        : undefined;
  if (measure === undefined || !Number.isFinite(measure.value)) {
    return refuseField(field, `The ${field} must be a number.`, accepted);
  }
  const value =
    measure.unit === rule.unit
      ? measure.value
      : fromSI(toSI(measure.value, measure.unit, rule.dimension), rule.unit, rule.dimension);
  const { above, atLeast, below, atMost, whole } = rule;
  const broken =
    (whole === true && !Number.isInteger(value)) ||
    (above !== undefined && !exceeds(value, above)) ||
    (atLeast !== undefined && fallsShort(value, atLeast)) ||
    (below !== undefined && !fallsShort(value, below)) ||
    (atMost !== undefined && exceeds(value, atMost));
  if (broken) refuseField(field, `The ${field} can't be ${value}.`, accepted);
  return value;
}

/** Readers of one record. `undefined` and `null` are both "not given". */
export interface Fields {
  number(names: Names, rule: NumberRule): number | undefined;
  numbers(names: Names, rule: NumberRule): readonly number[] | undefined;
  text(names: Names): string | undefined;
  flag(names: Names): boolean | undefined;
  choice<const C extends string>(names: Names, choices: readonly C[]): C | undefined;
  record(names: Names): Fields | undefined;
  records(names: Names): readonly Fields[] | undefined;
  /** The first of the names that was given, for messages; else the first. */
  said(names: Names): string;
  /** Refuses what nobody has read. Call it last. */
  done(): void;
}

/**
 * @param data what was given.
 * @param inside where it stands, for the names in refusals: `end1.`.
 * @throws Refusal `bad-input` whose `field` is the name as given.
 */
export function fieldsOf(data: Data, inside = ''): Fields {
  const known: string[] = [];
  const seen = new Set<string>();
  const find = (names: Names): { readonly field: string; readonly value: unknown } | undefined => {
    const list = typeof names === 'string' ? [names] : names;
    known.push(list[0] ?? '');
    for (const name of list) seen.add(name);
    const given = list.filter((name) => Object.hasOwn(data, name) && (data[name] ?? null) !== null);
    const [first, second] = given;
    if (first === undefined) return undefined;
    if (second !== undefined && JSON.stringify(data[first]) !== JSON.stringify(data[second])) {
      refuseField(
        `${inside}${second}`,
        `${inside}${first} and ${inside}${second} are one thing and differ.`,
        `${first} alone`,
      );
    }
    return { field: `${inside}${first}`, value: data[first] };
  };
  return {
    number(names, rule) {
      const found = find(names);
      return found === undefined ? undefined : readNumber(found.field, found.value, rule);
    },
    numbers(names, rule) {
      const found = find(names);
      if (found === undefined) return undefined;
      if (!Array.isArray(found.value) || found.value.length > 1000) {
        refuseField(found.field, `The ${found.field} must be a list of numbers.`, 'a list of at most 1000 numbers');
      }
      return found.value.map((one: unknown) => readNumber(found.field, one, rule));
    },
    text(names) {
      const found = find(names);
      if (found === undefined) return undefined;
      if (typeof found.value !== 'string' || found.value.length > 500) {
        refuseField(found.field, `The ${found.field} must be text.`, 'text of at most 500 characters');
      }
      const text = found.value.trim();
      return text === '' ? undefined : text;
    },
    flag(names) {
      const found = find(names);
      if (found === undefined) return undefined;
      if (typeof found.value !== 'boolean') {
        refuseField(found.field, `The ${found.field} must be true or false.`, 'true or false');
      }
      return found.value;
    },
    choice(names, choices) {
      const found = find(names);
      if (found === undefined) return undefined;
      const said = typeof found.value === 'string' ? found.value.trim().toLowerCase() : found.value;
      const one = choices.find((choice) => choice === said);
      if (one === undefined) {
        refuseField(
          found.field,
          `The ${found.field} can't be ${JSON.stringify(found.value)}.`,
          `one of ${choices.join(', ')}`,
        );
      }
      return one;
    },
    record(names) {
      const found = find(names);
      if (found === undefined) return undefined;
      if (!isData(found.value))
        refuseField(found.field, `The ${found.field} must be an object.`, 'an object in braces');
      return fieldsOf(found.value, `${found.field}.`);
    },
    records(names) {
      const found = find(names);
      if (found === undefined) return undefined;
      const { field, value } = found;
      if (!Array.isArray(value) || value.length > 1000) {
        refuseField(field, `The ${field} must be a list of objects.`, 'a list of at most 1000 objects');
      }
      return value.map((one: unknown, at) => {
        if (!isData(one)) refuseField(`${field}[${at}]`, `${field}[${at}] must be an object.`, 'an object in braces');
        return fieldsOf(one, `${field}[${at}].`);
      });
    },
    said(names) {
      const list = typeof names === 'string' ? [names] : names;
      return `${inside}${list.find((name) => (data[name] ?? null) !== null) ?? list[0] ?? ''}`;
    },
    done() {
      const other = Object.keys(data).find((name) => !seen.has(name));
      if (other !== undefined) {
        refuseField(`${inside}${other}`, `There is no field “${inside}${other}”.`, `the fields ${known.join(', ')}`);
      }
    },
  };
}
