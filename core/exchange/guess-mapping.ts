/** Which column is what: first by its heading, checked against its content, then by content alone. */
import { type ColumnProfile, profileColumn } from './column-profile.ts';
import { fieldsOfHeading } from './field-words.ts';
import type { ImportField, ImportKind, MappedColumn, Mapping } from './import-types.ts';
import type { Table } from './table-types.ts';

const dateFields: readonly ImportField[] = ['orderedOn', 'promisedOn', 'arrivedOn'];
const quantityFields: readonly ImportField[] = ['quantity', 'shippedQuantity', 'backorderedQuantity'];
const moneyFields: readonly ImportField[] = [
  'unitPrice',
  'lineTotal',
  'shipping',
  'tax',
  'discount',
  'duty',
  'orderTotal',
  'coreDeposit',
];

/**
 * Guesses the mapping of a table; the user confirms or changes it, and it is kept under the table's fingerprint.
 * No field is given to two columns; a column that fits nothing is kept as text on its row.
 */
export function guessMapping(table: Table): Mapping {
  const profiles = table.columns.map((column) => profileColumn(table, column.index));
  const offers = table.columns.flatMap((column) =>
    fieldsOfHeading(column.title).map(({ field, distance }) => ({
      index: column.index,
      field,
      score: (10 - distance * 0.1) * fitOf(field, profiles[column.index]),
    })),
  );
  offers.sort((a, b) => b.score - a.score || a.index - b.index);
  const given = new Map<number, { field: ImportField; because: 'heading' | 'content' }>();
  const taken = new Set<ImportField>();
  const give = (index: number, field: ImportField, because: 'heading' | 'content') => {
    if (given.has(index) || taken.has(field)) return;
    given.set(index, { field, because });
    taken.add(field);
  };
  for (const { index, field, score } of offers) if (score > 1) give(index, field, 'heading');
  guessByContent(table, profiles, taken, given, (index, field) => give(index, field, 'content'));

  const columns = table.columns.map(({ index, title }): MappedColumn => {
    const found = given.get(index);
    return found === undefined
      ? { index, title, field: null, because: 'nothing fits' }
      : { index, title, field: found.field, because: found.because };
  });
  return { kind: kindOf(taken), fingerprint: table.fingerprint, columns };
}

/** How well a column's content agrees with a field: above 1 speaks for it, near 0 against it. */
function fitOf(field: ImportField, profile: ColumnProfile | undefined): number {
  if (profile === undefined || profile.filled === 0) return 0.5;
  if (dateFields.includes(field)) {
    if (profile.dates >= 0.4) return 1.2;
    return profile.quantities > 0.5 || profile.amounts > 0.5 ? 0.3 : 0.5;
  }
  if (quantityFields.includes(field)) return profile.quantities >= 0.4 ? 1.1 : 0.3;
  if (moneyFields.includes(field)) return profile.amounts >= 0.4 ? 1.1 : 0.3;
  if (field === 'orderLine') return profile.counting ? 1.2 : 0.6;
  if (field === 'link') return profile.links >= 0.3 ? 1.2 : 0.4;
  if (field === 'partNumber') return profile.counting || profile.dates > 0.5 ? 0.3 : 1;
  if (field === 'description') return profile.dates > 0.5 || profile.amounts > 0.6 ? 0.2 : 1;
  if (field === 'system' || field === 'vendor') return profile.dates > 0.5 || profile.amounts > 0.6 ? 0.05 : 1;
  return 1;
}

function guessByContent(
  table: Table,
  profiles: readonly ColumnProfile[],
  taken: ReadonlySet<ImportField>,
  given: ReadonlyMap<number, unknown>,
  give: (index: number, field: ImportField) => void,
): void {
  const free = () =>
    table.columns.filter((column) => !given.has(column.index) && fieldsOfHeading(column.title).length === 0);
  const best = (value: (profile: ColumnProfile) => number): number | null => {
    let found: { index: number; value: number } | null = null;
    for (const column of free()) {
      const profile = profiles[column.index];
      const worth = profile === undefined || profile.filled === 0 ? 0 : value(profile);
      if (worth > 0 && (found === null || worth > found.value)) found = { index: column.index, value: worth };
    }
    return found?.index ?? null;
  };
  const offer = (field: ImportField, value: (profile: ColumnProfile) => number) => {
    if (taken.has(field)) return;
    const index = best(value);
    if (index !== null) give(index, field);
  };
  offer('link', (profile) => (profile.links >= 0.5 ? profile.links : 0));
  if (!taken.has('lineTotal'))
    offer('unitPrice', (profile) => (profile.currencySigns >= 0.4 ? profile.currencySigns : 0));
  offer('description', (profile) =>
    profile.dates < 0.5 && profile.amounts < 0.5 && profile.links < 0.5 ? profile.averageLength * profile.distinct : 0,
  );
  offer('state', (profile) => (profile.states >= 0.6 && profile.distinct < 0.5 ? profile.states : 0));
  if (table.headerRow > 0) return;
  offer('orderedOn', (profile) => (profile.dates >= 0.6 ? profile.dates : 0));
  offer('quantity', (profile) => (profile.quantities >= 0.8 && !profile.counting ? 2 - profile.distinct : 0));
  offer('unitPrice', (profile) => (profile.amounts >= 0.8 && profile.dates < 0.5 ? profile.amounts : 0));
}

function kindOf(taken: ReadonlySet<ImportField>): ImportKind {
  const charges: readonly ImportField[] = ['shippedQuantity', 'backorderedQuantity', 'orderTotal', 'shipping', 'tax'];
  return taken.has('orderNumber') && charges.some((field) => taken.has(field)) ? 'orders' : 'parts';
}

/** A mapping with the user's changes: a field given to a column is taken from whichever column had it. */
export function changeMapping(mapping: Mapping, index: number, field: ImportField | null): Mapping {
  const columns = mapping.columns.map((column): MappedColumn => {
    if (column.index === index) return { ...column, field, because: 'user' };
    return field !== null && column.field === field ? { ...column, field: null, because: 'user' } : column;
  });
  return { ...mapping, columns };
}
