import type { ConnectionRow, DeclaredRow, FitsView, PortRow } from '../contract/fits.ts';
import { shippedChecks } from '../fit/checks/shipped.ts';
import { type JudgedConnection, judgeSides } from '../fit/kept/connection.ts';
import { type JudgedDeclared, judgeDeclared } from '../fit/kept/declared.ts';
import { readPort } from '../fit/kept/joined.ts';
import { askedPaths, thingsOf } from '../fit/kept/paths.ts';
import { isStanding, ownerOf } from '../fit/kept/sides.ts';
import { measuresOf } from '../fit/measuring.ts';
import type { Port } from '../fit/port.ts';
import { buildFits, type JudgedFits, judgedFits } from '../workbook/store/fits.ts';
import { type Context, counted, needBuild, procedures } from './context.ts';
import { acceptFit, dropAdapter, endAcceptance, listNeeds, unlistNeeds, useAdapter } from './fit-acts.ts';
import { checkDeclaredFit, checkSides } from './fit-records.ts';
import { addShipped } from './fit-shipped.ts';
import { fitsAgainstOrder } from './fit-stops.ts';

const { fits } = procedures;

const pastDay = (context: Context, asOf: string | undefined): string | undefined =>
  asOf !== undefined && asOf < context.today() ? asOf : undefined;

const caution =
  'Fits are judged by what was entered, not by the parts in hand: measure, follow the makers’ manuals and local rules, and have brake, fuel and steering work checked by someone licensed where the law asks for it.';

function measuresText(port: Port): string {
  const { diameterMm, pitchMm, howToMeasure } = measuresOf(port);
  const sizes = [
    ...(diameterMm === undefined ? [] : [`diameter ${diameterMm} mm`]),
    ...(pitchMm === undefined ? [] : [`pitch ${pitchMm} mm`]),
  ];
  return [...(sizes.length === 0 ? [] : [`${sizes.join(', ')}.`]), howToMeasure].join(' ');
}

function portRows({ context, connections }: JudgedFits): PortRow[] {
  return [...context.ports.values()]
    .filter((port) => isStanding(port, context))
    .map((port) => {
      const read = readPort(port.designation, port.role);
      const problem = read.ok ? '' : `${read.message}; write ${read.write.join(', ')}`;
      return {
        id: port.id,
        revision: port.revision,
        name: port.name,
        part: port.part,
        owner: ownerOf(port, context),
        place: port.place,
        role: port.role,
        medium: port.medium,
        designation: port.designation,
        canonical: read.ok ? read.canonical : '',
        problem,
        measures: read.ok ? measuresText(read.port) : '',
        connections: connections
          .filter(({ one, other }) => one.port === port.id || other.port === port.id)
          .map(({ id }) => id),
        note: port.note,
      };
    });
}

const connectionRowOf = ({
  connection,
  one,
  other,
  fit,
  says,
  stands,
  adapter,
  needsListed,
  accepted,
}: JudgedConnection): ConnectionRow => ({
  id: connection.id,
  revision: connection.revision,
  title: connection.title,
  one,
  other,
  role: connection.role,
  medium: connection.medium,
  fit,
  says,
  stands,
  adapter,
  needsListed,
  accepted,
  beforeGate: connection.beforeGate,
  note: connection.note,
});

const declaredRowOf = ({
  fit,
  outcome,
  severity,
  says,
  left,
  right,
  margin,
  ...judged
}: JudgedDeclared): DeclaredRow => ({
  id: fit.id,
  revision: fit.revision,
  title: fit.title,
  shipped: fit.shipped,
  outcome,
  severity,
  says,
  left,
  right,
  margin,
  missing: judged.missing,
  notes: judged.notes,
  source: judged.source,
  caution: judged.caution,
  asks: judged.asks,
  things: judged.things,
  stands: judged.stands,
  accepted: judged.accepted,
  beforeGate: fit.beforeGate,
  note: fit.note,
});

/** "2 of 14 fits are wrong and 1 lacks something." */
function answerOf({ fits: all, wrong, unknown }: FitsView['counts']): string {
  if (all === 0) return 'No fits yet.';
  const of = counted(all, 'fit');
  const lacking = `${unknown} ${unknown === 1 ? 'lacks' : 'lack'} something`;
  if (wrong === 0 && unknown === 0) return all === 1 ? 'The fit is right.' : `All ${of} are right.`;
  if (wrong === 0) return `None of ${of} is wrong, and ${lacking}.`;
  return `${wrong} of ${of} ${wrong === 1 ? 'is' : 'are'} wrong${unknown === 0 ? '' : ` and ${lacking}`}.`;
}

const offeredOf = (has: ReadonlySet<unknown>): FitsView['offered'] =>
  shippedChecks
    .filter(({ id }) => !has.has(id))
    .map((rule) => {
      const asked = askedPaths(rule);
      return {
        shipped: rule.id,
        title: rule.title,
        things: [...thingsOf(asked)],
        asks: asked.map(({ label }) => label),
      };
    });

export const fitsProcedures = {
  view: fits.view.handler(({ context, input }) => {
    needBuild(context, input.build);
    const all = judgedFits(context.book().connection, input.build, pastDay(context, input.asOf), true);
    const every = [...all.judged, ...all.judgedDeclared];
    const counts = {
      fits: every.length,
      wrong: every.filter(({ stands }) => stands === 'wrong').length,
      unknown: every.filter(({ stands }) => stands === 'unknown').length,
    };
    return {
      answer: answerOf(counts),
      counts,
      ports: portRows(all),
      connections: all.judged.map(connectionRowOf),
      declared: all.judgedDeclared.map(declaredRowOf),
      offered: offeredOf(new Set(all.declared.map(({ shipped }) => shipped))),
      caution,
    };
  }),

  tryOut: fits.tryOut.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    checkSides(connection, input.build, input);
    const { one, other, fit } = judgeSides(
      input,
      buildFits(connection, input.build, undefined, { standings: true }).context,
    );
    return { one, other, fit };
  }),

  tryDeclared: fits.tryDeclared.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    checkDeclaredFit(connection, input.build, input);
    const { context: known } = buildFits(connection, input.build, undefined, {
      also: Object.values(input.things),
    });
    const { outcome, severity, says, missing, asks, margin } = judgeDeclared(
      { ...input, id: 0, revision: 0, title: '', accepted: null, beforeGate: false, note: '' },
      known,
    );
    return { outcome, severity, says, missing, asks, margin };
  }),

  useAdapter: fits.useAdapter.handler(({ context, input }) => useAdapter(context, input)),
  dropAdapter: fits.dropAdapter.handler(({ context, input }) => dropAdapter(context, input)),
  listNeeds: fits.listNeeds.handler(({ context, input }) => listNeeds(context, input)),
  unlistNeeds: fits.unlistNeeds.handler(({ context, input }) => unlistNeeds(context, input)),
  accept: fits.accept.handler(({ context, input }) => acceptFit(context, input)),
  endAcceptance: fits.endAcceptance.handler(({ context, input }) => endAcceptance(context, input)),

  addShipped: fits.addShipped.handler(({ context, input }) => addShipped(context, input)),

  stops: fits.stops.handler(({ context, input }) => {
    needBuild(context, input.build);
    return [...fitsAgainstOrder(context.book().connection, input.build, input.parts).stops];
  }),
};
