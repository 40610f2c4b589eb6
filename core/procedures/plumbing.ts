import type { RecordValues } from '../contract/records.ts';
import { takeOffCaution } from '../plumbing/take-off.ts';
import { Refusal } from '../refusal.ts';
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
    const known = stored.lines.find(({ id }) => id === input.line);
    // A line that was retired can still be looked at.
    const retired = asOf === undefined && record.build === input.build;
    if (known === undefined && !retired) {
      throw new Refusal(
        'not-found',
        `The build has no line number ${input.line}${asOf === undefined ? '' : ` on ${asOf}`}. Nothing was changed.`,
        {
          field: 'line',
          accepted: 'a line of this build that was planned by then',
        },
      );
    }
    const line = known ?? (record as unknown as (typeof stored.lines)[number]);
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
