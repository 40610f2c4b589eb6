/** Everything that follows from the definition of a line: lengths, checks, what to order, how to make it. */
import { type BendCheck, checkBend } from './bend.ts';
import { type BillItem, billOf, isBare } from './bill.ts';
import { type Check, type CheckVerdict, checkOf, worstOf } from './check.ts';
import { type Clocking, clockingOf } from './clocking.ts';
import { describeHose, type Hose } from './hose.ts';
import { type Joint, judgeJoint, type LineJoint } from './joint.ts';
import { type Lengths, lengthsOf } from './lengths.ts';
import type { Line } from './line.ts';
import { type MakingStep, makingSteps } from './making.ts';
import { checkSuitability } from './suitability.ts';

export interface TakeOff {
  readonly line: Line;
  readonly hose: Hose;
  readonly lengths: Lengths;
  readonly bend: BendCheck | undefined;
  readonly clocking: Clocking;
  readonly joints: readonly LineJoint[];
  readonly checks: readonly Check[];
  /** The worst of the checks. */
  readonly verdict: CheckVerdict;
  /** For all copies of the line; not rounded to what is sold. */
  readonly bill: readonly BillItem[];
  readonly making: readonly MakingStep[];
  readonly notes: readonly string[];
}

/** Stands beside every take-off. */
export const takeOffCaution =
  'A planning figure. Hose and fittings carry hot fluid under pressure: where the makers of hose, ends or engine say otherwise, they govern; brake lines are for licensed practice and local rules.';

const geometrySource = 'derived by hand; inside radius as in SAE J517 and EN 853 (public hose guides)';
const leadSource = 'free-length formula of SAE J343 (seen in its published abstract)';

function bendChecks(bend: BendCheck | undefined): readonly Check[] {
  const ofBend = checkOf('bend', 'Bend radius', geometrySource);
  const ofLead = checkOf('leads', 'Straight hose behind the ends', leadSource);
  if (bend === undefined) return [ofBend.none('the line is straight.'), ofLead.none('the line is straight.')];
  const { verdict, close, message, leads } = bend;
  const bent = verdict === 'pass' && close ? ofBend.caution(message) : ofBend[verdict](message);
  if (leads.length === 0) return [bent, ofLead.none('the route says nothing of them, or has them in its length.')];
  const lead = leads.includes('fail')
    ? ofLead.fail('There is too little straight hose behind an end: the bend begins in the fitting.')
    : leads.includes('unknown')
      ? ofLead.unknown('Enter the outside diameter of the hose (od).')
      : ofLead.pass('There is enough straight hose behind both ends.');
  return [bent, lead];
}

function clockingCheck({ applies, clockDeg, text }: Clocking): Check {
  const { pass, unknown, none } = checkOf('clocking', 'Clocking', 'common practice, no published source');
  if (!applies) return none(text);
  return clockDeg === undefined ? unknown(text) : pass(text);
}

const jointVerdicts: Readonly<Record<Joint['verdict'], CheckVerdict>> = {
  mates: 'pass',
  adapter: 'caution',
  lookalike: 'fail',
  no: 'fail',
  unknown: 'unknown',
};

function jointCheck({ end, verdict, reason, from, to, source }: LineJoint): Check {
  const check = checkOf(`joint-${end}`, `Joint ${end}`, source);
  return check[jointVerdicts[verdict]](`${from} and ${to}: ${reason}`);
}

/** The joints of which the line names both ports; a hose that goes straight onto a barb is one of them. */
function jointsOf(line: Line, hose: Hose): readonly LineJoint[] {
  const medium = [line.fluid, line.service].filter((text) => text !== undefined).join(', ');
  return line.ends.flatMap((end, at): LineJoint[] => {
    const to = at === 0 ? line.from : line.to;
    const bare = isBare(end, to) && hose.bore !== undefined ? `hose ${hose.bore.value} mm` : undefined;
    const from = end.port ?? bare;
    if (from === undefined || to === undefined) return [];
    return [{ ...judgeJoint(from, to, medium, hose), end: at === 0 ? 1 : 2, from, to }];
  });
}

function notesOf(line: Line, hose: Hose, lengths: Lengths, bend: BendCheck | undefined): readonly string[] {
  const { choice, type, size } = hose;
  const sized = type !== undefined && type.sizes.length > 0;
  const typical = [hose.outside, hose.minBendRadius, hose.maxBar].some((one) => one?.basis === 'typical');
  return [
    ...(line.pathBasis === 'estimated' ? ['The path is estimated: measure it before anything is cut.'] : []),
    ...(choice.type !== undefined && type === undefined
      ? [`The hose type “${choice.type}” is in no table here: only what is entered for it is known.`]
      : []),
    ...(sized && choice.dash !== undefined && size === undefined
      ? [
          `${type.id} is not listed in dash ${choice.dash}: listed are ${type.sizes.map(({ dash }) => `-${dash}`).join(', ')}.`,
        ]
      : []),
    ...(typical ? [`Typical figures of ${hose.label} are used; those of the actual hose go before them.`] : []),
    ...(type?.note === undefined ? [] : [type.note]),
    `Contraction ${Number((lengths.contraction * 100).toFixed(2))} %: ${lengths.contractionBasis}.`,
    ...(bend?.minFreeHoseMm !== undefined && lengths.freeHoseMm < bend.minFreeHoseMm
      ? [
          `One bend with its straight leads needs ${bend.minFreeHoseMm.toFixed(1)} mm of free hose at the smallest radius.`,
        ]
      : []),
  ];
}

/**
 * The take-off of one line.
 * @throws Refusal `bad-input` where the line leaves no hose; see `lengthsOf`.
 */
export function takeOff(line: Line): TakeOff {
  const hose = describeHose(line.hose);
  const lengths = lengthsOf(line, hose);
  const bend = checkBend(line, hose, lengths);
  const clocking = clockingOf(line, lengths.freeHoseMm);
  const joints = jointsOf(line, hose);
  const checks = [
    ...bendChecks(bend),
    clockingCheck(clocking),
    ...joints.map(jointCheck),
    ...checkSuitability(line, hose, joints),
  ];
  return {
    line,
    hose,
    lengths,
    bend,
    clocking,
    joints,
    checks,
    verdict: worstOf(checks),
    bill: billOf(line, hose, lengths, joints),
    making: makingSteps(line, hose, lengths),
    notes: notesOf(line, hose, lengths, bend),
  };
}
