import type { SchematicView } from '../contract/plumbing.ts';
import { readPort } from '../fit/kept/joined.ts';
import {
  type DirectJoint,
  type Lack,
  type SchematicFacts,
  type SchematicLine,
  type SchematicPort,
  schematicOf,
} from '../plumbing/schematic.ts';
import { Refusal } from '../refusal.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { type JudgedFits, judgedFits } from '../workbook/store/fits.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { listRecords, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { act, type Context, needBuild, procedures } from './context.ts';
import { rowOf, type WorkedLine, workedLines } from './plumbing-lines.ts';
import { changeRecord, createRecord } from './records.ts';

const { plumbing } = procedures;

type Places = SchematicView['places'];

/** Farthest that a component may be put from where the drawing begins, px. */
const farthest = 100_000;
/** As many characters as a saved view takes. */
const longestView = 20_000;

/** The failing checks of a line by their titles, then what can't be judged yet. */
function lacksOfLine({ planned, checks }: WorkedLine): Lack[] {
  if (!planned.ready) return [{ kind: 'missing', short: 'Not worked out yet', text: planned.problem.message }];
  const open = checks.filter(({ verdict, optional }) => verdict === 'unknown' && optional !== true);
  return [
    ...checks
      .filter(({ verdict }) => verdict === 'fail')
      .map(({ title, text }): Lack => ({ kind: 'wrong', short: title, text: `${title}: ${text}` })),
    ...(open.length === 0
      ? []
      : [
          {
            kind: 'missing' as const,
            short: `Not known: ${open.map(({ title }) => title.toLowerCase()).join(', ')}`,
            text: open.map(({ title, text }) => `${title}: ${text}`).join(' '),
          },
        ]),
  ];
}

function lineOf(worked: WorkedLine): SchematicLine {
  const { id, name, fluid, hose, standing } = rowOf(worked);
  const { values, from, to } = worked;
  const typed = { from: from.text, to: to.text };
  return { id, name, fluid, hose, from: values.from, to: values.to, typed, standing, wrong: lacksOfLine(worked) };
}

function portsOf({ context }: JudgedFits): SchematicPort[] {
  return [...context.ports.values()]
    .filter(({ retired }) => !retired)
    .map(({ id, name, part, place, role, designation }) => {
      const read = readPort(designation, role);
      const flows = role === 'fluid' || role === 'gas';
      const [text, problem] = read.ok ? [read.canonical, ''] : [designation, read.message.replace(/\.$/, '')];
      return { id, name, part, place, flows, text, problem };
    });
}

const jointsOf = ({ judged }: JudgedFits): DirectJoint[] =>
  judged.map(({ connection, stands, says }) => ({
    ports: [connection.one.port, connection.other.port].filter((port) => port !== null),
    stands,
    says,
  }));

function factsOf(context: Context, build: number, asOf: string | undefined): SchematicFacts {
  const { connection } = context.book();
  const fits = judgedFits(connection, build, asOf);
  const ports = portsOf(fits);
  const owners = [...new Set(ports.flatMap(({ part }) => (part === null ? [] : [part])))];
  const parts = partRows(connection, { build, asOf, today: context.today(), ids: owners });
  return {
    parts: parts.map(({ id, description, standing, standingText }) => ({
      id,
      title: description,
      standing,
      standingText,
    })),
    ports,
    lines: workedLines(connection, build, asOf).map(lineOf),
    joints: jointsOf(fits),
  };
}

const screenOf = (build: number): string => `plumbing/${build}`;

const keptRecord = (connection: Connection, build: number): RecordValuesRow | undefined =>
  listRecords(connection, 'savedViews', 'screen = ? AND retired_on IS NULL', screenOf(build))[0];

const isPlace = (place: unknown): place is Places[string] =>
  typeof place === 'object' &&
  place !== null &&
  'x' in place &&
  'y' in place &&
  Number.isFinite(place.x) &&
  Number.isFinite(place.y);

/** Where components were put. What isn't understood, or isn't a component any more, is left out. */
function placesOf(record: RecordValuesRow | undefined, nodes: ReadonlySet<string>): Places {
  let kept: unknown;
  try {
    kept = JSON.parse(String(record?.['view'] ?? '{}'));
  } catch {
    return {};
  }
  if (typeof kept !== 'object' || kept === null) return {};
  return Object.fromEntries(
    Object.entries(kept)
      .filter(([node, place]) => nodes.has(node) && isPlace(place))
      .map(([node, { x, y }]) => [node, { x, y }]),
  );
}

function checkPlaces(places: Places, nodes: ReadonlySet<string>): void {
  for (const [node, { x, y }] of Object.entries(places)) {
    if (!nodes.has(node)) {
      throw new Refusal('not-found', `There is no component “${node}” in the drawing. Nothing was changed.`, {
        field: `places.${node}`,
        accepted: 'a component of the drawing, such as "part 12"',
      });
    }
    if (Math.abs(x) > farthest || Math.abs(y) > farthest) {
      throw new Refusal('bad-input', `The place of “${node}” is too far away. Nothing was changed.`, {
        field: `places.${node}`,
        accepted: `from −${farthest} to ${farthest}`,
      });
    }
  }
}

export const schematicProcedures = {
  schematic: plumbing.schematic.handler(({ context, input }): SchematicView => {
    needBuild(context, input.build);
    const asOf = input.asOf !== undefined && input.asOf < context.today() ? input.asOf : undefined;
    const { answer, nodes, edges } = schematicOf(factsOf(context, input.build, asOf));
    return {
      answer,
      nodes: nodes.map((node) => ({ ...node, ports: [...node.ports], wrong: [...node.wrong] })),
      edges: edges.map((edge) => ({ ...edge, wrong: [...edge.wrong] })),
      places: placesOf(keptRecord(context.book().connection, input.build), new Set(nodes.map(({ id }) => id))),
    };
  }),

  keepPlaces: plumbing.keepPlaces.handler(({ context, input }) => {
    const build = needBuild(context, input.build);
    const { nodes } = schematicOf(factsOf(context, build.id, undefined));
    checkPlaces(input.places, new Set(nodes.map(({ id }) => id)));
    const rounded = Object.entries(input.places).map(([node, { x, y }]) => [
      node,
      { x: Math.round(x), y: Math.round(y) },
    ]);
    const view = JSON.stringify(Object.fromEntries(rounded));
    if (view.length > longestView) {
      throw new Refusal('bad-input', `${rounded.length} places are more than a drawing keeps. Nothing was changed.`, {
        field: 'places',
        accepted: 'the places of fewer components; the others are laid out by themselves',
      });
    }
    const label = rounded.length === 0 ? 'Laying out of the drawing' : 'Places in the drawing';
    return act(context, input, `${label} of ${build.name}`, (writer) => {
      const record = keptRecord(writer.connection, build.id);
      if (record !== undefined) changeRecord(writer, 'savedView', record, input.on, { view });
      else if (rounded.length > 0) {
        const values = { name: `Drawing of ${build.name}`.slice(0, 80), screen: screenOf(build.id), view };
        createRecord(writer, 'savedView', null, input.on, values);
      }
      return undefined;
    });
  }),
};
