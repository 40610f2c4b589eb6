import type { z } from 'zod';
import { evaluateCheck } from '../checks/evaluate.ts';
import { plainKey } from '../checks/fact-terms.ts';
import { sourcesOfFigure } from '../checks/figures.ts';
import type { CheckPlan, CheckSource } from '../checks/source.ts';
import type { checksContract } from '../contract/checks.ts';
import { Refusal } from '../refusal.ts';
import { buildChecks, partsNamed, runOf } from '../workbook/store/checks.ts';
import { daysOfChange } from '../workbook/store/checks-past.ts';
import { listRecords, needRecord } from '../workbook/store/record-tables.ts';
import type { Context } from './context.ts';

type History = z.infer<NonNullable<(typeof checksContract.history)['~orpc']['outputSchema']>>;

/** Kinds of part that a source may look at, those of the figures behind it among them. */
function kindsBehind(source: CheckSource, kinds: Set<string>, seen: Set<string>): void {
  if (source.from === 'fact' && source.part === null) kinds.add(source.partKind);
  if (source.from !== 'target') return;
  const name = plainKey(source.target);
  if (seen.has(name)) return;
  seen.add(name);
  for (const one of sourcesOfFigure(name)) kindsBehind(one, kinds, seen);
}

function kindsOf({ inputs, limit }: CheckPlan): Set<string> {
  const kinds = new Set<string>();
  const sources = [...Object.values(inputs), limit.leastFrom, limit.mostFrom].filter((one) => one !== undefined);
  for (const source of sources) kindsBehind(source, kinds, new Set());
  return kinds;
}

/**
 * Verdicts of a check from the day that it was made: one point for each day on which the verdict or the figure came out
 * another. Facts, targets, readings and where the parts were are those of that day.
 */
export function checkHistory(context: Context, build: number, id: number, asOf: string | undefined): History {
  const { connection } = context.book();
  const record = needRecord(connection, 'checks', id, 'check');
  if (record.build !== build) {
    throw new Refusal('not-found', `Check ${id} belongs to another build.`, {
      field: 'check',
      accepted: 'a check of this build',
    });
  }
  const plan = record as unknown as CheckPlan;
  const kinds = kindsOf(plan);
  const parts = listRecords(connection, 'parts', 'build = ?', build)
    .filter((part) => kinds.has(String(part['kind'] ?? '')))
    .map((part) => part.id);
  const days = daysOfChange(
    connection,
    build,
    ['checks', 'targets', 'measuringSheets'],
    [...parts, ...partsNamed(plan)],
  );
  const until = asOf ?? context.today();
  const points: History = [];
  const run = runOf(connection);
  for (const on of days.filter((day) => day <= until)) {
    const then = buildChecks(connection, build, on);
    const check = then.checks.find((one) => one.id === id);
    if (check === undefined) continue;
    const { verdict, value, says } = evaluateCheck(check, then.context, run);
    const last = points.at(-1);
    if (last === undefined || last.verdict !== verdict || last.value !== value)
      points.push({ on, verdict, value, says });
  }
  return points;
}
