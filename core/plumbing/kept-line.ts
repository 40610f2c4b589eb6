/** A line as a workbook keeps it: perhaps a plan that lacks a length still. */
import { Refusal } from '../refusal.ts';
import { type Data, fieldsOf, isData, missingField, refuseField } from './fields.ts';
import { describeHose, type Hose, splitHoseText } from './hose.ts';
import { readLine } from './read-line.ts';
import { type TakeOff, takeOff } from './take-off.ts';

export interface KeptLine {
  readonly name: string;
  readonly definition: Data;
  /** Designations of the ports kept with the build that the line joins; they go before what is typed. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** What stands in the way of a take-off. */
export interface LineProblem {
  readonly message: string;
  readonly field: string;
  readonly accepted: string;
}

/** A line worked out, or why it can't be yet. */
export type PlannedLine =
  | { readonly ready: true; readonly takeOff: TakeOff }
  | { readonly ready: false; readonly problem: LineProblem; readonly hose: Hose | undefined };

/** Names of refused fields are those of the record: `definition.length`. */
const inDefinition = (field: string): string => (field === 'name' ? field : `definition.${field}`);

/** A form leaves empty texts where nothing was typed. */
const given = (data: Data): Data =>
  Object.fromEntries(
    Object.entries(data)
      .filter(([, value]) => value !== null && value !== undefined && value !== '')
      .map(([name, value]) => [name, isData(value) ? given(value) : value]),
  );

const portNames = { from: ['from_port', 'from'], to: ['to_port', 'to'] } as const;

/** The port that a definition types itself at one side; empty when it doesn't. */
export function typedPort(definition: Data, side: 'from' | 'to'): string {
  const said = portNames[side].map((name) => definition[name]).find((one) => typeof one === 'string' && one !== '');
  return typeof said === 'string' ? said.trim() : '';
}

/** The line in the names that a take-off reads. */
function dataOf({ name, definition, from, to }: KeptLine): Data {
  const data: Record<string, unknown> = { ...given(definition), name };
  for (const [side, designation] of [
    ['from', from],
    ['to', to],
  ] as const) {
    if (designation === undefined) continue;
    for (const other of portNames[side]) delete data[other];
    data[portNames[side][0]] = designation;
  }
  return data;
}

/** Stands in for a field that a plan lacks, so that the fields given are read all the same. */
const standIn = (field: string): unknown => (field === 'route' ? 'measured' : 1);

const longestHose = 80;
const longestPort = 120;

/**
 * Refuses a definition with a field that isn't known, or a value that can't be read. What a plan lacks still is no
 * reason: only the fluid, or a port, must be said.
 * @throws Refusal `bad-input` naming `definition.<field>`.
 */
export function checkKept(kept: KeptLine): void {
  const { name = kept.name } = kept.definition;
  if (name !== kept.name) {
    refuseField('definition.name', 'The line has its name already.', `${kept.name}, or no name in the definition`);
  }
  let data = dataOf(kept);
  for (;;) {
    try {
      const line = readLine(fieldsOf(data));
      const texts: readonly (readonly [string, string | undefined, number])[] = [
        ['hose_type', line.hose.type, longestHose],
        ['end1.port', line.ends[0].port, longestPort],
        ['end2.port', line.ends[1].port, longestPort],
        ['from_port', line.from, longestPort],
        ['to_port', line.to, longestPort],
      ];
      for (const [field, text, longest] of texts) {
        if (text === undefined || text.length <= longest) continue;
        refuseField(field, `The ${field} is too long.`, `at most ${longest} characters`);
      }
      if (line.fluid === undefined && line.from === undefined && line.to === undefined) {
        refuseField(
          'fluid',
          'The line says neither its fluid nor what it joins.',
          'the fluid, such as engine oil, or a port that the line joins',
        );
      }
      return;
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const missing = missingField(error);
      if (missing === undefined || Object.hasOwn(data, missing)) throw asKept(error);
      data = { ...data, [missing]: standIn(missing) };
    }
  }
}

function asKept(refusal: Refusal): Refusal {
  const { code, message, field = '', accepted, detail } = refusal;
  return new Refusal(code, message, {
    field: inDefinition(field),
    ...(accepted === undefined ? {} : { accepted }),
    detail,
  });
}

/** The hose of a line that isn't ready, as far as it is named. */
function namedHose({ definition }: KeptLine): Hose | undefined {
  const said = [definition['hose_type'], definition['hose']].find((one) => typeof one === 'string' && one !== '');
  if (typeof said !== 'string') return undefined;
  const { type, dash } = splitHoseText(said);
  return describeHose({ type, dash });
}

/** At most so many lines are kept: the hoist check's past weeks ask for the same ones again and again. */
const mostKept = 1000;
const planned = new Map<string, PlannedLine>();

/**
 * Works a kept line out. Never throws for what somebody wrote: a line that can't be worked out says what it lacks. The
 * answer is shared: callers leave it as it is.
 */
export function planLine(kept: KeptLine): PlannedLine {
  const key = JSON.stringify([kept.name, kept.definition, kept.from, kept.to]);
  const before = planned.get(key);
  if (before !== undefined) return before;
  const plan = workedOut(kept);
  if (planned.size >= mostKept) planned.delete(planned.keys().next().value as string);
  planned.set(key, plan);
  return plan;
}

function workedOut(kept: KeptLine): PlannedLine {
  try {
    return { ready: true, takeOff: takeOff(readLine(fieldsOf(dataOf(kept)))) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return {
      ready: false,
      hose: namedHose(kept),
      problem: {
        message: error.message.replace(/ Nothing was changed\.$/, ''),
        field: inDefinition(error.field ?? ''),
        accepted: error.accepted ?? '',
      },
    };
  }
}
