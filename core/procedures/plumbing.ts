import type { RecordValues } from '../contract/records.ts';
import { takeOffCaution } from '../plumbing/take-off.ts';
import { storedPlumbing } from '../workbook/store/plumbing.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { type Context, needBuild, procedures } from './context.ts';
import { plumbingActs } from './plumbing-acts.ts';
import { detailOf, linesAnswer, rowOf, workedLines, workLine } from './plumbing-lines.ts';
import { needRow, needsOfLines } from './plumbing-needs.ts';
import { checkLinks, checkMeaning, readValues } from './record-checks.ts';

const { plumbing } = procedures;

/** The day that a question is about; undefined for now. */
const pastOf = (context: Context, asOf: string | undefined): string | undefined =>
  asOf !== undefined && asOf < context.today() ? asOf : undefined;

export const plumbingProcedures = {
  ...plumbingActs,

  view: plumbing.view.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const asOf = pastOf(context, input.asOf);
    const lines = workedLines(connection, input.build, asOf);
    const { needs, cutList } = needsOfLines(connection, input.build, lines, asOf);
    return {
      answer: linesAnswer(lines, needs.filter(({ toAddMilli }) => toAddMilli > 0).length),
      lines: lines.map(rowOf),
      needs: needs.map(needRow),
      cutList,
      caution: takeOffCaution,
    };
  }),

  line: plumbing.line.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const record = needRecord(connection, 'hoseLines', input.line, 'line');
    const asOf = pastOf(context, input.asOf);
    const stored = storedPlumbing(connection, input.build, asOf);
    // A line that was retired can still be looked at.
    const line =
      stored.lines.find(({ id }) => id === input.line) ??
      (record.build === input.build ? (record as unknown as (typeof stored.lines)[number]) : undefined);
    if (line === undefined) {
      // The record belongs to another build.
      needRecord(connection, 'hoseLines', 0, 'line');
      throw new Error('A record without a number.');
    }
    const { name, from, to, system, job, definition, beforeGate, note } = line;
    return {
      ...detailOf(workLine(stored, line.id, line.revision, line)),
      values: { name, from, to, system, job, definition, beforeGate, note },
    };
  }),

  tryOut: plumbing.tryOut.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const values = readValues('hoseLine', input.values, false);
    checkLinks(connection, input.build, values);
    checkMeaning(connection, 'hoseLine', values);
    const stored = storedPlumbing(connection, input.build, undefined);
    return detailOf(workLine(stored, 0, 0, values as RecordValues['hoseLine']));
  }),
};
