import { dashNames, dashRow, dashSizes } from '../dash.ts';
import type { DashKind, ThreadedPort } from '../port.ts';
import { threadOfTable, unifiedThread } from '../thread.ts';
import {
  commonSides,
  inches,
  mixed,
  type Outcome,
  type ParseContext,
  type Reader,
  rejected,
  type Sides,
  understood,
} from './outcome.ts';
import { readUnified } from './unified.ts';

const families: readonly (readonly [RegExp, DashKind, ('AN' | 'JIC')?])[] = [
  [/an/, 'flare37', 'AN'],
  [/jic|(?:sae ?)?37°(?: ?flare)?|37 flare|flare ?37°?/, 'flare37', 'JIC'],
  [/sae ?-?45°?(?: ?flare)?|45°(?: ?flare)?|45 flare|flare ?45°?/, 'flare45'],
  [/inv(?:erted)?(?: ?flare)?/, 'flareinv'],
  [/orfs|o-?ring face seal/, 'orfs'],
  [/(?:sae )?orb|o-?ring boss/, 'orb'],
];

const dashText = /^(?:dash|size|no\.?|#)? ?-? ?(\d{1,2})(?: ?\((.+)\))?$/;
const bareInch = new RegExp(`^(${mixed})(?: in)?$`);

/** Bolts of the AN series by number. Source: AN6 verified in a public text, the others from memory. */
const boltThreads: Readonly<Record<number, string>> = {
  3: '#10-32',
  4: '1/4-28',
  5: '5/16-24',
  6: '3/8-24',
  7: '7/16-20',
  8: '1/2-20',
};

/** A port of this family and dash; undefined when the family has no such size. */
export function dashPort(
  kind: DashKind,
  dash: number,
  sides: Sides = {},
  grade?: 'AN' | 'JIC',
): ThreadedPort | undefined {
  const row = dashRow(kind, dash);
  if (row === undefined) return undefined;
  return {
    kind,
    thread: threadOfTable(row.thread),
    dash,
    ...(kind === 'flare37' ? { grade: grade ?? 'JIC' } : {}),
    ...commonSides(sides),
  };
}

function bySize(
  kind: DashKind,
  dash: number,
  inBrackets: string | undefined,
  sides: Sides,
  grade?: 'AN' | 'JIC',
): Outcome {
  const name = grade ?? dashNames[kind];
  const port = dashPort(kind, dash, sides, grade);
  const row = dashRow(kind, dash);
  if (port === undefined || row === undefined) {
    const listed = dashSizes[kind].map((one) => `-${one.dash}`).join(', ');
    return rejected(`-${dash} is not a listed size; listed: ${listed}`, `${name} -6`);
  }
  if (inBrackets !== undefined) {
    const said = readUnified(inBrackets);
    if (said === undefined)
      return rejected(`(${inBrackets}) is not a unified thread`, `${name} -${dash} (${row.thread})`);
    if (!said.ok) return said;
    if (said.thread.name !== port.thread.name) {
      const wrong = said.thread.name.replace(/ \w+$/, '');
      return rejected(`-${dash} has thread ${row.thread}, not ${wrong}`, `${name} -${dash} (${row.thread})`);
    }
  }
  return understood(port);
}

function bolt(text: string, sides: Sides): Outcome {
  const number = Number(dashText.exec(text)?.[1]);
  const thread = boltThreads[number];
  if (thread === undefined) {
    return rejected(
      `AN bolt number ${text.trim()} is not listed; listed: ${Object.keys(boltThreads).join(', ')}`,
      'AN6',
      '3/8-24 UNF',
    );
  }
  const at = thread.lastIndexOf('-');
  const found = unifiedThread(thread.slice(0, at), Number(thread.slice(at + 1)));
  return found === undefined
    ? undefined
    : understood({ kind: 'thread', thread: found, ...commonSides(sides) }, [], [`AN bolt number ${number}`]);
}

function rest(kind: DashKind, text: string, sides: Sides, grade?: 'AN' | 'JIC'): Outcome {
  const name = grade ?? dashNames[kind];
  const byDash = dashText.exec(text);
  if (byDash !== null) return bySize(kind, Number(byDash[1]), byDash[2], sides, grade);
  const inch = bareInch.exec(text);
  if (inch !== null) {
    const tube = inch[1] ?? '';
    if (kind === 'flare45' || kind === 'flareinv') {
      // By trade habit an inch size of these two is the tube.
      const row = dashSizes[kind].find((one) => inches(one.tubeInch ?? '') === inches(tube));
      if (row !== undefined) return bySize(kind, row.dash, undefined, sides, grade);
      const listed = dashSizes[kind].map((one) => one.tubeInch).join(', ');
      return rejected(`${tube} is not a listed tube size; listed: ${listed}`, `${name} -6`);
    }
    const dash = (inches(tube) ?? 0) * 16;
    const row = dashRow(kind, dash);
    return rejected(
      `"${tube}" could be the tube size or the thread size: give the dash size (tube in sixteenths) or the full thread`,
      row === undefined ? `${name} -6` : `${name} -${dash}`,
      row === undefined ? `${name} 9/16-18` : `${name} ${row.thread}`,
    );
  }
  const said = readUnified(text);
  if (said === undefined) return undefined;
  if (!said.ok) return said;
  const row = dashSizes[kind].find((one) => threadOfTable(one.thread).name === said.thread.name);
  if (row !== undefined) return bySize(kind, row.dash, undefined, sides, grade);
  const listed = dashSizes[kind].map((one) => `-${one.dash} ${one.thread}`).join(', ');
  return rejected(`${said.thread.name} is not a thread of ${name} fittings; listed: ${listed}`, `${name} -6`);
}

export const dashReader: Reader = (core, sides, { role }: ParseContext) => {
  const named = /^an ?-?0?(\d+) bolt$/.exec(core);
  if (named !== null) return bolt(named[1] ?? '', sides);
  for (const [words, kind, grade] of families) {
    const before = new RegExp(`^(?:${words.source})(?![a-z])(.*)$`).exec(core);
    const after = new RegExp(
      String.raw`^((?:(?:dash|size) ?)?-? ?\d{1,2}|.*[/-]\d+(?: un\w*)?) ?-?(?:${words.source})$`,
    ).exec(core);
    const text = (before?.[1] ?? after?.[1])?.trim();
    if (text === undefined || text === '') continue;
    if (grade === 'AN' && role === 'fastener') return bolt(text, sides);
    const found = rest(kind, text, sides, grade);
    if (found !== undefined) return found;
  }
  return undefined;
};

/** A dash size whose family is supplied by its field. */
export const dashInFamily: Reader = (core, sides, { family }) => {
  const found = dashText.exec(core);
  return found === null || family === undefined || family === 'hose'
    ? undefined
    : bySize(family, Number(found[1]), found[2], sides);
};
