/**
 * How long the hose of a line is: free between its ends, and cut. Derived by hand from the geometry of each route; the
 * straight lead is the allowance of the free-length formula of SAE J343 (seen in its published abstract).
 */
import { refuseField } from './fields.ts';
import type { Hose } from './hose.ts';
import type { Line } from './line.ts';
import { toTenth, upToStep } from './round.ts';
import { cutToleranceRows } from './tables/cut-tolerance.ts';

const degree = Math.PI / 180;

/** Share by which braided rubber may shorten at working pressure: +2 to -4 % (EN 854 and a public hose guide agree). */
const braidedRubberContraction = 0.04;
/** From this turn on, slack lies inside the bend [deg]. */
const turnTakesSlackFrom = 45;
/** Cut lengths are ordered in steps of this [mm]. */
const cutStep = 5;
/** Least straight lead, 1 in [mm]. */
const leastLead = 25.4;

/** Straight hose wanted behind an end: the outside diameter, and at least one inch. In mm. */
export const straightLead = (outsideMm: number): number => Math.max(outsideMm, leastLead);

export interface Lead {
  /** Straight hose that the route leaves behind the end. */
  readonly hasMm: number;
  readonly needsMm: number | undefined;
}

interface Geometry {
  readonly pathMm: number;
  readonly freeHoseMm: number;
  /** All bends added up; undefined where nobody said. */
  readonly turnDeg: number | undefined;
  /** Of the centre line, of the tightest bend. */
  readonly bendRadiusMm: number | undefined;
  /** Of that one bend. */
  readonly bendDeg: number | undefined;
  readonly leads: readonly Lead[];
}

export interface Lengths extends Geometry {
  readonly cutExactMm: number;
  readonly cutMm: number;
  readonly toleranceMm: number;
  /** `4.8` or `1 %`, as the table says it. */
  readonly toleranceText: string;
  readonly contraction: number;
  readonly contractionBasis: string;
}

/** How far a cut hose may be off, either way. @param cutMm above 0. */
export function cutTolerance(cutMm: number): { readonly mm: number; readonly text: string } {
  const row = cutToleranceRows.find(({ upToMm }) => upToMm === undefined || cutMm <= upToMm);
  if (row?.plusMinusMm !== undefined) return { mm: row.plusMinusMm, text: String(row.plusMinusMm) };
  const share = row?.plusMinusShare ?? 0;
  return { mm: share * cutMm, text: `${share * 100} %` };
}

function geometryOf({ path, ends, leadsMm }: Line, hose: Hose): Geometry {
  const [{ cutoffMm: first }, { cutoffMm: second }] = ends;
  const outside = hose.outside?.value;
  const usual = outside === undefined ? undefined : straightLead(outside);
  const [firstLead = usual, secondLead = usual] = leadsMm;
  switch (path.route) {
    case 'straight':
    case 'measured': {
      const measured = path.route === 'measured' ? path : undefined;
      return {
        pathMm: path.lengthMm,
        freeHoseMm: path.lengthMm - first - second,
        turnDeg: measured === undefined ? 0 : measured.turnDeg,
        bendRadiusMm: measured?.radiusMm,
        bendDeg: measured?.turnDeg,
        leads: [],
      };
    }
    case 'u': {
      if (firstLead === undefined || secondLead === undefined) {
        return refuseField(
          'od',
          'The outside diameter of the hose is missing: the straight pieces beside the U follow from it.',
          'the outside diameter in mm, measured on the hose, or the leads t1 and t2',
        );
      }
      const radius = path.spacingMm / 2;
      const free = firstLead + secondLead + Math.PI * radius;
      return {
        pathMm: free + first + second,
        freeHoseMm: free,
        turnDeg: 180,
        bendRadiusMm: radius,
        bendDeg: 180,
        leads: [],
      };
    }
    case 'corner': {
      const { aMm, bMm, radiusMm: radius } = path;
      const straight = [aMm - radius - first, bMm - radius - second] as const;
      const free = straight[0] + (Math.PI / 2) * radius + straight[1];
      return {
        pathMm: free + first + second,
        freeHoseMm: free,
        turnDeg: 90,
        bendRadiusMm: radius,
        bendDeg: 90,
        leads: [
          { hasMm: straight[0], needsMm: firstLead },
          { hasMm: straight[1], needsMm: secondLead },
        ],
      };
    }
    case 'offset': {
      const { xMm, yMm, radiusMm: radius } = path;
      if (yMm > 2 * radius) {
        return refuseField(
          'y',
          `An offset of ${yMm} mm is more than two bends of radius ${radius} mm make without a straight between them.`,
          `at most ${2 * radius} mm, or a larger radius, or the route measured along the hose`,
        );
      }
      const turn = Math.acos(1 - yMm / (2 * radius));
      const straight = xMm - 2 * radius * Math.sin(turn) - first - second;
      const free = straight + 2 * radius * turn;
      const needs = firstLead === undefined || secondLead === undefined ? undefined : (firstLead + secondLead) / 2;
      return {
        pathMm: free + first + second,
        freeHoseMm: free,
        turnDeg: (2 * turn) / degree,
        bendRadiusMm: radius,
        bendDeg: turn / degree,
        leads: [{ hasMm: straight / 2, needsMm: needs }],
      };
    }
  }
}

function contractionOf(line: Line, hose: Hose, turnDeg: number | undefined): readonly [number, string] {
  if (line.contraction !== undefined) return [line.contraction, 'as given'];
  if (turnDeg !== undefined && turnDeg >= turnTakesSlackFrom) {
    return [0, `none: the route turns by ${turnTakesSlackFrom}° or more, and the bend has the slack`];
  }
  if (line.path.route === 'straight' && hose.type?.braidedRubber === true) {
    return [braidedRubberContraction, 'braided rubber on a straight route shortens by up to 4 % under pressure'];
  }
  return [0, 'taken as none, for nothing was given: enter k where the hose shortens under pressure'];
}

/**
 * The lengths of a line, unrounded but for the cut.
 * @throws Refusal `bad-input` where the ends leave no hose, or the outside diameter of a U is missing.
 */
export function lengthsOf(line: Line, hose: Hose): Lengths {
  const geometry = geometryOf(line, hose);
  if (geometry.freeHoseMm <= 0) {
    const field = { straight: 'length', measured: 'length', u: 'spacing', corner: 'a', offset: 'x' }[line.path.route];
    refuseField(
      field,
      `No hose is left: the ends and bends take ${toTenth(-geometry.freeHoseMm)} mm more than the route has.`,
      'a longer route, shorter ends or a smaller radius',
    );
  }
  const [contraction, contractionBasis] = contractionOf(line, hose, geometry.turnDeg);
  const cutExactMm = geometry.freeHoseMm / (1 - contraction) + line.movementMm;
  const cutMm = upToStep(cutExactMm, cutStep);
  const tolerance = cutTolerance(cutMm);
  return {
    ...geometry,
    cutExactMm,
    cutMm,
    toleranceMm: tolerance.mm,
    toleranceText: tolerance.text,
    contraction,
    contractionBasis,
  };
}
