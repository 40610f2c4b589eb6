import type { PayloadValue } from '../../ledger/entry.ts';

/**
 * A change of a reference record, carried in the payload of the entry that made it. Creating is the change of `gone`
 * from true to false; so taking back is always the same thing: write `before` where `after` stands.
 */
export interface Edit {
  readonly table: RecordTable;
  readonly id: number;
  readonly before: Readonly<Record<string, PayloadValue>>;
  readonly after: Readonly<Record<string, PayloadValue>>;
}

export const recordTables = [
  'builds',
  'systems',
  'phases',
  'vendors',
  'bins',
  'jobs',
  'tools',
  'decisions',
  'boltGroups',
  'budgetLines',
  'savedCases',
  'targets',
  'checks',
  'measuringSheets',
  'ports',
  'connections',
  'declaredFits',
  'hoseLines',
  'hoseLengths',
  'billParts',
  'people',
  'calendarDays',
  'incomes',
  'cashCounts',
  'offers',
  'variants',
  'baselines',
  'savedViews',
  'rates',
  'parts',
  'lots',
  'orders',
  'orderLines',
] as const;
export type RecordTable = (typeof recordTables)[number];

export const inverse = ({ table, id, before, after }: Edit): Edit => ({ table, id, before: after, after: before });

/** The edits in an entry's payload. */
export function editsOf(payload: { readonly edits?: unknown } | null | undefined): readonly Edit[] {
  return Array.isArray(payload?.edits) ? (payload.edits as readonly Edit[]) : [];
}
