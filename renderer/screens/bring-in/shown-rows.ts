import type { ImportPlan, ImportState, PlannedRow, RowFate } from '../../../core/exchange/import-types.ts';
import type { Table, TableRow } from '../../../core/exchange/table-types.ts';

/** One row of the file with what becomes of it, as the tables of this screen show it. */
export interface ShownRow {
  readonly row: number;
  readonly fate: RowFate;
  /** What the line is called, or the row as it stands in the file. */
  readonly text: string;
  readonly quantityMilli: number | null;
  readonly unit: string;
  readonly priceE4: number | null;
  readonly currency: string;
  readonly vendor: string;
  readonly system: string;
  readonly state: ImportState | null;
  /** Every remark on the row, with its column. */
  readonly findings: string;
  /** `skip` or `import` where the user overruled the fate. */
  readonly overruled: 'skip' | 'import' | null;
}

const rawText = ({ cells }: TableRow): string =>
  cells
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '')
    .join(' · ');

/** What is wrong with a row: column, reason and what would be accepted. */
export function findingText({ findings }: Pick<PlannedRow, 'findings'>): string {
  return findings
    .map(({ column, message, accepted }) => {
      const where = column === '' ? '' : `${column}: `;
      return `${where}${message}${accepted === undefined ? '' : ` Accepted: ${accepted}.`}`;
    })
    .join(' ');
}

/** Every row of the file in its order. */
export function shownRows(
  plan: ImportPlan,
  table: Table,
  answers: Readonly<Record<string, string>>,
): readonly ShownRow[] {
  const raw = new Map(table.rows.map((row) => [row.row, row]));
  return plan.rows.map((planned): ShownRow => {
    const line = planned.part ?? planned.orderLine;
    const row = raw.get(planned.row);
    const answer = answers[`row:${planned.row}`];
    return {
      row: planned.row,
      fate: planned.fate,
      text: line === undefined || line.description === '' ? (row === undefined ? '' : rawText(row)) : line.description,
      quantityMilli: line?.quantityMilli ?? null,
      unit: line?.unit ?? 'each',
      priceE4: line?.unitPriceE4 ?? null,
      currency: line?.currency ?? '',
      vendor: line?.vendor ?? '',
      system: planned.part?.system ?? '',
      state: line?.state ?? null,
      findings: findingText(planned),
      overruled: answer === 'skip' || answer === 'import' ? answer : null,
    };
  });
}

/** The currency that most lines are in: the one that the file's totals are compared in. */
export function mostCurrency(rows: readonly ShownRow[], otherwise: string): string {
  const counts = new Map<string, number>();
  for (const { currency } of rows) if (currency !== '') counts.set(currency, (counts.get(currency) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? otherwise;
}
