import type { PartRow, PartValues } from '../../../../core/contract/parts.ts';

type Typed = Omit<PartValues, 'facts'>;

const typedKeys = [
  'description',
  'partNumber',
  'maker',
  'link',
  'unit',
  'system',
  'phase',
  'job',
  'vendor',
  'priority',
  'neededBy',
  'optional',
  'needsVerification',
  'stretchOnce',
  'attention',
  'note',
  'needMilli',
  'estimateEachE4',
] as const satisfies readonly (keyof Typed)[];

/** The values of a row that a person typed. */
export const typedValues = (row: PartRow): Typed =>
  Object.fromEntries(typedKeys.map((key) => [key, row[key]])) as unknown as Typed;

/** Only the values that differ from the row's. */
export const changedValues = (row: PartRow, values: Typed): Partial<PartValues> =>
  Object.fromEntries(typedKeys.filter((key) => row[key] !== values[key]).map((key) => [key, values[key]]));
