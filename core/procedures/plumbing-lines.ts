import type { LineDetail, LineRow } from '../contract/plumbing.ts';
import type { RecordValues } from '../contract/records.ts';
import { readPort } from '../fit/kept/joined.ts';
import { trimMm } from '../plumbing/bill.ts';
import { type Check, type CheckVerdict, isOpen, worstOf } from '../plumbing/check.ts';
import { type KeptLine, type PlannedLine, planLine, typedPort } from '../plumbing/kept-line.ts';
import { isToMake, type Made, madeOf } from '../plumbing/made.ts';
import { toTenth } from '../plumbing/round.ts';
import { type TakeOff, takeOffCaution } from '../plumbing/take-off.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { type StoredPlumbing, storedPlumbing } from '../workbook/store/plumbing.ts';
import { remembered } from '../workbook/store/remembered.ts';
import { counted } from './context.ts';
import { acceptJoints } from './plumbing-joints.ts';

type LineValues = Omit<RecordValues['hoseLine'], 'note'>;

/** A line of the build with everything that follows from it. */
export interface WorkedLine {
  readonly id: number;
  readonly revision: number;
  readonly values: LineValues;
  readonly from: LineRow['from'];
  readonly to: LineRow['to'];
  readonly planned: PlannedLine;
  /** With joints that somebody accepted as they are. */
  readonly checks: readonly Check[];
  readonly verdict: CheckVerdict;
  /** Undefined while the take-off can't be made. */
  readonly made: Made | undefined;
  readonly standing: LineRow['standing'];
  readonly says: string;
}

/** Where a line ends: at a port kept with the build, or as its definition types it. */
function endOf({ ports, parts }: StoredPlumbing, port: number | null, typed: string): LineRow['from'] {
  const kept = port === null ? undefined : ports.get(port);
  if (kept === undefined) return { port: null, part: null, whose: '', text: typed };
  const read = readPort(kept.designation, kept.role);
  const owner = kept.part === null ? kept.place : (parts.get(kept.part) ?? '');
  return {
    port: kept.id,
    part: kept.part,
    whose: [owner, `${kept.name}${kept.retiredOn === null ? '' : ' (retired)'}`]
      .filter((text) => text !== '')
      .join(', '),
    text: read.ok ? read.canonical : kept.designation,
  };
}

/** The line as a take-off is asked for it: designations of kept ports go before what is typed. */
export function keptLine({ ports }: Pick<StoredPlumbing, 'ports'>, values: LineValues): KeptLine {
  const { name, definition, from, to } = values;
  return {
    name,
    definition,
    from: from === null ? undefined : ports.get(from)?.designation,
    to: to === null ? undefined : ports.get(to)?.designation,
  };
}

const madeOfLine = ({ line, hose, lengths, making }: TakeOff, steps: StoredPlumbing['steps'], id: number): Made =>
  madeOf(
    {
      steps: making,
      copies: line.quantity,
      cutMm: lengths.cutMm,
      toleranceMm: lengths.toleranceMm,
      hose: hose.label,
    },
    steps.get(id) ?? [],
  );

/** What is wrong first, then work that doesn't count any more, then what isn't known, then the cut. */
function saysOf(checks: readonly Check[], { hose, lengths }: TakeOff, made: Made): string {
  const [failed, ...more] = checks.filter(({ verdict }) => verdict === 'fail');
  if (failed !== undefined) {
    const others =
      more.length === 0 ? '' : ` Also failing: ${more.map(({ title }) => title.toLowerCase()).join(', ')}.`;
    return `${failed.title}: ${failed.text}${others}`;
  }
  const [outdated] = made.outdated;
  if (outdated !== undefined) return outdated;
  const cut = `${hose.label}, cut ${lengths.cutMm} mm ± ${toTenth(lengths.toleranceMm)} mm`;
  const open = checks.find(isOpen);
  return open === undefined ? `${cut}.` : `${cut}. ${open.title} isn't known: ${open.text}`;
}

/** Works out one line; `id` is 0 for one that isn't kept yet. */
export function workLine(stored: StoredPlumbing, id: number, revision: number, values: LineValues): WorkedLine {
  const planned = planLine(keptLine(stored, values));
  const shared = {
    id,
    revision,
    values,
    from: endOf(stored, values.from, typedPort(values.definition, 'from')),
    to: endOf(stored, values.to, typedPort(values.definition, 'to')),
    planned,
  };
  if (!planned.ready) {
    const { message } = planned.problem;
    return { ...shared, checks: [], verdict: 'unknown', made: undefined, standing: 'not made', says: message };
  }
  const { takeOff } = planned;
  const checks = acceptJoints(stored, values, takeOff);
  const verdict = worstOf(checks);
  const made = madeOfLine(takeOff, stored.steps, id);
  const standing = verdict === 'fail' ? 'unfit' : isToMake(made) ? 'not made' : 'made';
  return { ...shared, checks, verdict, made, standing, says: saysOf(checks, takeOff, made) };
}

/** Every line of a build that is in use, worked out, now or at the end of a past day. Callers leave them as they are. */
export function workedLines(connection: Connection, build: number, asOf: string | undefined): readonly WorkedLine[] {
  return remembered(connection, `lines ${build} ${asOf ?? ''}`, () => {
    const stored = storedPlumbing(connection, build, asOf);
    return stored.lines.map((line) => workLine(stored, line.id, line.revision, line));
  });
}

/** Lines that stand to be made at the bench. */
export const linesToMake = (lines: readonly WorkedLine[]): number =>
  lines.filter(({ made }) => made !== undefined && isToMake(made)).length;

const textIn = (values: LineValues, ...names: readonly string[]): string => {
  const said = names.map((name) => values.definition[name]).find((one) => typeof one === 'string');
  return typeof said === 'string' ? said : '';
};

/** A line as its list shows it. */
export function rowOf(worked: WorkedLine): LineRow {
  const { values, planned, made } = worked;
  const takeOff = planned.ready ? planned.takeOff : undefined;
  const quantity = Number(values.definition['quantity'] ?? 1);
  return {
    id: worked.id,
    revision: worked.revision,
    name: values.name,
    fluid: takeOff?.line.fluid ?? textIn(values, 'fluid', 'medium'),
    service: takeOff?.line.service ?? textIn(values, 'service'),
    from: worked.from,
    to: worked.to,
    hose: planned.ready ? planned.takeOff.hose.label : (planned.hose?.label ?? ''),
    cutMm: takeOff?.lengths.cutMm ?? null,
    toleranceMm: takeOff === undefined ? null : toTenth(takeOff.lengths.toleranceMm),
    problem: planned.ready ? null : { ...planned.problem },
    quantity: takeOff?.line.quantity ?? (Number.isInteger(quantity) && quantity > 0 ? quantity : 1),
    verdict: worked.verdict,
    says: worked.says,
    stepsDone: made?.stepsDone ?? 0,
    stepsTotal: made?.stepsTotal ?? 0,
    standing: worked.standing,
    system: values.system,
    job: values.job,
    beforeGate: values.beforeGate,
  };
}

const mm = (value: number): string => `${toTenth(value)} mm`;

const routeWords: Readonly<Record<TakeOff['line']['path']['route'], string>> = {
  measured: 'along the hose',
  straight: 'straight',
  u: 'a U between parallel ports',
  corner: 'one right-angled corner',
  offset: 'sideways by two bends',
};

const wayWords = ({ path, pathBasis }: TakeOff['line']): string => `${routeWords[path.route]}, ${pathBasis}`;

function lengthRows({ line, lengths, bend, clocking }: TakeOff): LineDetail['lengths'] {
  return [
    { label: 'Way from seat to seat', value: mm(lengths.pathMm), how: wayWords(line) },
    { label: 'Free hose', value: mm(lengths.freeHoseMm), how: 'the way less what the ends take' },
    { label: 'Hose, exactly', value: mm(lengths.cutExactMm), how: `contraction: ${lengths.contractionBasis}` },
    {
      label: 'Cut',
      value: `${lengths.cutMm} mm ± ${mm(lengths.toleranceMm)}`,
      how: 'next 5 mm up; tolerance of RMA IP-2 (2003)',
    },
    { label: 'To spare', value: mm(trimMm), how: 'taken with the cut, so that an end can be cut square once more' },
    ...(bend?.insideRadiusMm === undefined
      ? []
      : [
          {
            label: 'Inside of the tightest bend',
            value: mm(bend.insideRadiusMm),
            how: bend.minBendRadiusMm === undefined ? '' : `smallest allowed ${mm(bend.minBendRadiusMm)}`,
          },
        ]),
    ...(clocking.clockDeg === undefined
      ? []
      : [{ label: 'Clocking', value: `${clocking.clockDeg}° ± ${clocking.toleranceDeg ?? 0}°`, how: 'clockwise' }]),
  ];
}

/** A line as its page shows it, without the values that were typed. */
export function detailOf(worked: WorkedLine): Omit<LineDetail, 'values'> {
  const { planned, made, checks } = worked;
  const shared = { row: rowOf(worked), caution: takeOffCaution };
  if (!planned.ready) return { ...shared, lengths: [], checks: [], bill: [], making: [], notes: [] };
  const { takeOff } = planned;
  return {
    ...shared,
    lengths: lengthRows(takeOff),
    checks: checks.map(({ id, title, verdict, text, applies, source }) => ({
      id,
      title,
      verdict,
      text,
      applies,
      source,
    })),
    bill: takeOff.bill.map((item) => ({ ...item })),
    making: (made?.making ?? []).map(({ id, title, text, caution = '', done }) => ({
      id,
      title,
      text,
      caution,
      done: [...done],
    })),
    notes: [...(made?.outdated ?? []), ...(takeOff.bend?.advice ?? []), ...takeOff.notes],
  };
}

/** The first sentence of the page. */
export function linesAnswer(lines: readonly WorkedLine[], needs: number): string {
  if (lines.length === 0) return 'No line is planned yet.';
  const unfit = lines.filter(({ standing }) => standing === 'unfit').length;
  const open = lines.filter(({ made }) => made === undefined || isToMake(made)).length;
  const lacking = lines.filter(({ planned }) => !planned.ready).length;
  const says = [
    unfit === 0 ? '' : `${unfit} ${unfit === 1 ? 'fails' : 'fail'} a check`,
    lacking === 0 ? '' : `${lacking} ${lacking === 1 ? "isn't" : "aren't"} worked out yet`,
    open === 0 ? '' : `${open} ${open === 1 ? "isn't" : "aren't"} made yet`,
  ].filter((text) => text !== '');
  const made = says.length === 0 ? 'all made, and none fails a check' : says.join(', ');
  const list =
    needs === 0
      ? 'everything for them is on the list'
      : `${counted(needs, 'thing')} ${needs === 1 ? 'is' : 'are'} still to be put on the list`;
  return `${counted(lines.length, 'line')}: ${made}; ${list}.`;
}
