/** Whether the hose may bend as the route asks. Inside radius, as SAE J517 and EN 853 measure it (public hose guides). */
import { bendRadius } from '../calculators/e/bend-radius.ts';
import { fallsShort } from '../calculators/limits.ts';
import { runCalculator } from '../calculators/run.ts';
import type { Hose } from './hose.ts';
import { type Lead, type Lengths, straightLead } from './lengths.ts';
import type { Line } from './line.ts';
import { toTenth } from './round.ts';
import { hoseTypes } from './tables/hose-types.ts';

export type BendVerdict = 'pass' | 'fail' | 'unknown';

export interface BendCheck {
  readonly verdict: BendVerdict;
  /** Less than a tenth above the smallest radius. */
  readonly close: boolean;
  readonly insideRadiusMm?: number | undefined;
  readonly minBendRadiusMm?: number | undefined;
  /** Least free hose for the bend with its straight leads. */
  readonly minFreeHoseMm?: number | undefined;
  readonly leads: readonly BendVerdict[];
  readonly message: string;
  readonly advice: readonly string[];
}

/** A bend within this share above the smallest radius passes with a caution. */
const closeUpTo = 1.1;

const leadVerdict = ({ hasMm, needsMm }: Lead): BendVerdict => {
  if (needsMm === undefined) return hasMm < 0 ? 'fail' : 'unknown';
  return fallsShort(hasMm, needsMm) ? 'fail' : 'pass';
};

/**
 * Least free hose [mm] for one bend with its straight leads, by the bend radius calculator.
 * @param bendDeg above 0.
 */
export function minFreeHose(bendDeg: number, minBendRadiusMm: number, outsideMm: number): number {
  const lead = { value: straightLead(outsideMm), unit: 'mm' };
  const { outputs } = runCalculator(bendRadius, {
    inputs: {
      // The length doesn't depend on the radius at hand.
      bend_radius: { value: minBendRadiusMm, unit: 'mm' },
      min_bend_radius: { value: minBendRadiusMm, unit: 'mm' },
      hose_od: { value: outsideMm, unit: 'mm' },
      bend_angle: { value: bendDeg, unit: 'deg' },
      straight_1: lead,
      straight_2: lead,
    },
  });
  return Number(outputs['min_hose_length']?.value);
}

/** Hose types of the same size that bend tighter, as `100R14 (55 mm)`. */
function tighterTypes(hose: Hose, needed: number): readonly string[] {
  return hoseTypes.flatMap(({ id, sizes }) =>
    sizes
      .filter(({ dash, minBendRadiusMm }) => dash === hose.choice.dash && minBendRadiusMm <= needed)
      .map(({ minBendRadiusMm }) => `${id} (${minBendRadiusMm} mm)`),
  );
}

function adviceFor(line: Line, hose: Hose, insideRadius: number, least: number, outside: number): readonly string[] {
  const types = tighterTypes(hose, insideRadius);
  return [
    'Use bent ends that take the bend out of the hose.',
    types.length === 0
      ? `Use a hose that may bend to ${toTenth(insideRadius)} mm.`
      : `Use a hose that may bend tighter (typical): ${types.join(', ')}; check fluid and pressure again.`,
    line.path.route === 'u'
      ? `Space the ports at least ${toTenth(2 * least + outside)} mm apart.`
      : `Give the bend more room: a centre-line radius of at least ${toTenth(least + outside / 2)} mm.`,
  ];
}

/** Checks the tightest bend and the straight leads of a route. A straight route has neither. */
export function checkBend(line: Line, hose: Hose, lengths: Lengths): BendCheck | undefined {
  const { bendRadiusMm: radius, bendDeg, leads: givenLeads } = lengths;
  if (line.path.route === 'straight') return undefined;
  const leads = givenLeads.map(leadVerdict);
  const least = hose.minBendRadius?.value;
  const outside = hose.outside?.value;
  const missing = [
    ...(radius === undefined ? ['the smallest bend radius on the way (r)'] : []),
    ...(outside === undefined ? ['the outside diameter of the hose (od)'] : []),
    ...(least === undefined ? ['the smallest bend radius of the hose (rmin)'] : []),
  ];
  const leadAdvice = leads.includes('fail')
    ? [
        'There is too little straight hose behind an end: use a bent end there, or a smaller radius that the hose allows.',
      ]
    : [];
  const insideRadiusMm =
    radius === undefined || (outside === undefined && hose.choice.metal !== true)
      ? undefined
      : hose.choice.metal === true
        ? radius
        : radius - (outside ?? 0) / 2;
  const minFreeHoseMm =
    least === undefined || least === 0 || outside === undefined || bendDeg === undefined || bendDeg === 0
      ? undefined
      : minFreeHose(bendDeg, least, outside);
  const shared = { leads, insideRadiusMm, minBendRadiusMm: least, minFreeHoseMm };
  if (insideRadiusMm === undefined || least === undefined) {
    const message = `The bend can't be judged: enter ${missing.join(', ')}.`;
    return { ...shared, verdict: 'unknown', close: false, message, advice: leadAdvice };
  }
  const figures = `inside radius ${toTenth(insideRadiusMm)} mm, smallest allowed ${least} mm`;
  if (fallsShort(insideRadiusMm, least)) {
    return {
      ...shared,
      verdict: 'fail',
      close: false,
      message: `The hose bends too tightly: ${figures}. It kinks, starves the line and fails early.`,
      advice: [...adviceFor(line, hose, insideRadiusMm, least, outside ?? 0), ...leadAdvice],
    };
  }
  const close = insideRadiusMm < least * closeUpTo;
  return {
    ...shared,
    verdict: 'pass',
    close,
    message: close
      ? `The bend is within 10 % of the smallest allowed: ${figures}.`
      : `The bend is allowed: ${figures}.`,
    advice: leadAdvice,
  };
}
