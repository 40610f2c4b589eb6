import type { BenchView } from '../contract/bench.ts';
import { sheetActs } from './bench-acts.ts';
import { sheetsOf, sheetView, sheetWorked } from './bench-sheets.ts';
import { groupsOf, torqueProcedures } from './bench-torque.ts';
import { counted, needBuild, procedures } from './context.ts';

const { bench } = procedures;

/** The page's first sentence. */
function benchAnswer({ sheets, groups }: Omit<BenchView, 'answer'>): string {
  if (sheets.length + groups.length === 0) return 'No measuring sheet and no bolt group is written down yet.';
  const out = sheets.filter(({ standing }) => standing === 'out').length;
  const missing = sheets.filter(({ standing }) => standing === 'missing').length;
  const open = groups.filter(({ standing }) => standing !== 'final' && standing !== 'rechecked').length;
  const says = [
    out === 0 ? '' : `${counted(out, 'measuring sheet')} out of limits`,
    missing === 0 ? '' : `${counted(missing, 'measuring sheet')} not complete`,
    open === 0 ? '' : `${counted(open, 'bolt group')} not at final torque`,
  ].filter((text) => text !== '');
  return says.length === 0
    ? 'All is measured and inside its limits, and all bolts are at final torque.'
    : `${says.join(', ')}.`;
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
    return { answer: benchAnswer(lists), ...lists };
  }),
  sheet: bench.sheet.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    return sheetView(connection, sheetWorked(connection, input.sheet, input.asOf));
  }),
};
