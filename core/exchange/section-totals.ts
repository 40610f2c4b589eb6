/** The list's own totals against ours: where they differ, line by line why. */
import type { PlannedRow, SectionTotal } from './import-types.ts';

export type RowInSections =
  | { readonly kind: 'section' }
  | { readonly kind: 'total'; readonly row: number; readonly of: string; readonly fileTotalMinor: number | null }
  | { readonly kind: 'line'; readonly planned: PlannedRow; readonly system: string };

/**
 * Compares each total row with the lines since the last heading or total. A total that doesn't say what it is of may
 * also sum up everything above it: the set that it comes closer to is meant.
 * @param currency the currency of the totals; lines in another one are left out and named.
 */
export function sectionTotals(rows: readonly RowInSections[], currency: string): readonly SectionTotal[] {
  const totals: SectionTotal[] = [];
  const all: PlannedRow[] = [];
  let since: PlannedRow[] = [];
  let system = '';
  for (const row of rows) {
    if (row.kind === 'section') {
      since = [];
    } else if (row.kind === 'line') {
      since.push(row.planned);
      all.push(row.planned);
      system = row.system;
    } else {
      if (row.fileTotalMinor !== null) {
        const ofAll = compare(row.of, row.row, row.fileTotalMinor, all, currency);
        const ofSection = compare(row.of === '' ? system : row.of, row.row, row.fileTotalMinor, since, currency);
        const wide = since.length === 0 || (row.of === '' && distance(ofAll) < distance(ofSection));
        totals.push(wide ? ofAll : ofSection);
      }
      since = [];
    }
  }
  return totals;
}

function distance(total: SectionTotal): number {
  return Math.abs(total.ourTotalMinor - total.fileTotalMinor);
}

function compare(
  system: string,
  row: number,
  fileTotalMinor: number,
  lines: readonly PlannedRow[],
  currency: string,
): SectionTotal {
  let ourTotalMinor = 0;
  const without: { row: number; reason: string }[] = [];
  for (const { row: place, part, orderLine, fate } of lines) {
    const amount = part?.estimateLineMinor ?? orderLine?.lineTotalMinor;
    const code = part?.currency ?? orderLine?.currency;
    if (fate === 'skipped' || fate === 'duplicate') without.push({ row: place, reason: 'this row is left out' });
    else if (amount === undefined) without.push({ row: place, reason: 'the list gives no price for this line' });
    else if (code !== currency) without.push({ row: place, reason: `this line is in ${code}` });
    else ourTotalMinor += amount;
  }
  const difference = ourTotalMinor - fileTotalMinor;
  if (difference === 0) return { system, row, fileTotalMinor, ourTotalMinor, differences: [] };
  const [only] = without;
  if (without.length === 1 && only !== undefined) {
    const reason = `${only.reason}; the list’s own total leaves this much for it`;
    return {
      system,
      row,
      fileTotalMinor,
      ourTotalMinor,
      differences: [{ row: only.row, reason, amountMinor: difference }],
    };
  }
  const rest =
    without.length === 0
      ? 'the lines don’t add up to the list’s own total'
      : `the list’s own total leaves this much for rows ${without.map((line) => line.row).join(', ')} together`;
  const differences = [
    ...without.map((line) => ({ ...line, amountMinor: 0 })),
    { row, reason: rest, amountMinor: difference },
  ];
  return { system, row, fileTotalMinor, ourTotalMinor, differences };
}
