import type { BenchView } from '../contract/bench.ts';
import { sheetActs } from './bench-acts.ts';
import { sheetsOf, sheetView, sheetWorked } from './bench-sheets.ts';
import { groupsOf, torqueProcedures } from './bench-torque.ts';
import { pastDay } from './checks.ts';
import { counted, needBuild, procedures } from './context.ts';
import { linesToMake, workedLines } from './plumbing-lines.ts';

const { bench } = procedures;

/** "All is measured, and no line has a step open." */
function sentence(says: readonly string[]): string {
  const text = says.length < 2 ? says.join('') : `${says.slice(0, -1).join(', ')}, and ${says.at(-1)}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** The page's first sentence. */
function benchAnswer({ sheets, groups }: Omit<BenchView, 'answer'>, lines: number, toMake: number): string {
  if (sheets.length + groups.length + lines === 0) {
    return 'No measuring sheet, no bolt group and no line is written down yet.';
  }
  const out = sheets.filter(({ standing }) => standing === 'out').length;
  const missing = sheets.filter(({ standing }) => standing === 'missing').length;
  const open = groups.filter(({ standing }) => standing !== 'final' && standing !== 'rechecked').length;
  const says = [
    out === 0 ? '' : `${counted(out, 'measuring sheet')} out of limits`,
    missing === 0 ? '' : `${counted(missing, 'measuring sheet')} not complete`,
    open === 0 ? '' : `${counted(open, 'bolt group')} not at final torque`,
    toMake === 0 ? '' : `${counted(toMake, 'line')} to make`,
  ].filter((text) => text !== '');
  if (says.length > 0) return `${says.join(', ')}.`;
  const done = [
    sheets.length === 0 ? '' : 'all is measured and inside its limits',
    groups.length === 0 ? '' : 'all bolts are at final torque',
    lines === 0 ? '' : 'no line has a step open',
  ].filter((text) => text !== '');
  return sentence(done);
}

export const benchProcedures = {
  ...sheetActs,
  ...torqueProcedures,
  view: bench.view.handler(({ context, input }): BenchView => {
    needBuild(context, input.build);
    const lists = {
      sheets: sheetsOf(context.book().connection, input.build, input.asOf).map(({ sheet, setup, result }) => ({
        id: sheet.id,
        title: setup.title,
        quantity: setup.quantity,
        standing: result.standing,
        says: result.says,
      })),
      groups: groupsOf(context, input.build, input.asOf),
    };
    const lines = workedLines(context.book().connection, input.build, pastDay(context, input.asOf));
    return { answer: benchAnswer(lists, lines.length, linesToMake(lines)), ...lists };
  }),
  sheet: bench.sheet.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    return sheetView(connection, sheetWorked(connection, input.sheet, input.asOf));
  }),
};
