import type { PlanJob } from '../contract/plan.ts';
import type { TonightJob } from '../contract/tonight.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { sheetsOf } from './bench-sheets.ts';
import { groupsOf } from './bench-torque.ts';
import type { Context } from './context.ts';
import { workedLines } from './plumbing-lines.ts';

/** The bolt groups and measuring sheets that belong to a job, or to a part of it, and its hose lines with steps open. */
export function benchOf(
  context: Context,
  build: number,
  asOf: string | undefined,
): (job: PlanJob) => Pick<TonightJob, 'torque' | 'sheets' | 'lines'> {
  const { connection } = context.book();
  const records = new Map(
    listRecords(connection, 'boltGroups', 'build = ? AND retired_on IS NULL', build).map((group) => [group.id, group]),
  );
  const groups = groupsOf(context, build, asOf).map((group) => ({ group, record: records.get(group.id) }));
  const sheets = sheetsOf(connection, build, asOf);
  const lines = workedLines(connection, build, asOf).filter(({ standing }) => standing !== 'made');
  return (job) => {
    const parts = new Set<unknown>(job.needs.map(({ part }) => part));
    const belongs = (record: { readonly [field: string]: unknown } | undefined): boolean =>
      record !== undefined &&
      (record['job'] === job.id || (record['job'] === null && record['part'] !== null && parts.has(record['part'])));
    return {
      torque: groups
        .filter(({ record }) => belongs(record))
        .map(({ group: { id, name, standing, says }, record }) => ({
          id,
          name,
          standing,
          says,
          lubricant: String(record?.['lubricant'] ?? ''),
        })),
      sheets: sheets
        .filter(({ sheet }) => belongs(sheet))
        .map(({ sheet, setup, result }) => ({
          id: sheet.id,
          title: setup.title,
          standing: result.standing,
          says: result.says,
        })),
      lines: lines
        .filter(({ values }) => values.job === job.id)
        .map(({ id, values: { name }, says }) => ({ id, name, says })),
    };
  };
}
