/** Which rows stand under which heading, and what the list's totals are compared with. */
import type { PlannedRow } from './import-types.ts';
import type { RowShape } from './row-shape.ts';
import type { PlanContext } from './row-values.ts';
import type { RowInSections } from './section-totals.ts';
import type { TableRow } from './table-types.ts';

/** For each row, the name in the nearest section heading above it. */
export function sectionsAbove(
  rows: readonly TableRow[],
  shape: (row: TableRow) => RowShape,
): ReadonlyMap<number, string> {
  const above = new Map<number, string>();
  let name = '';
  for (const row of rows) {
    const found = shape(row);
    if (found.shape === 'section') name = found.name;
    else if (name !== '') above.set(row.row, name);
  }
  return above;
}

/** The rows of the list as sections, lines and totals, in their order. */
export function inSections(
  source: readonly TableRow[],
  rows: readonly PlannedRow[],
  shape: (row: TableRow) => RowShape,
  context: PlanContext,
): readonly RowInSections[] {
  return source.flatMap((row, index): RowInSections[] => {
    const found = shape(row);
    const planned = rows[index];
    if (found.shape === 'section') return [{ kind: 'section' }];
    if ((found.shape === 'line' || found.shape === 'skipped') && planned !== undefined) {
      return [{ kind: 'line', planned, system: planned.part?.system ?? context.systemName(context.sectionOf(row)) }];
    }
    if (found.shape !== 'total') return [];
    const amounts = (['lineTotal', 'unitPrice', 'orderTotal'] as const).flatMap((field) => {
      const { reading } = context.money.value(row, field);
      return reading.kind === 'amount' ? [reading.minor] : [];
    });
    const of = context.systemName(found.of);
    return [{ kind: 'total', row: row.row, of, fileTotalMinor: amounts[0] ?? null }];
  });
}
