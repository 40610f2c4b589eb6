import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingClearance } from '../../../core/calculators/g/bearing-clearance.ts';
import { endFloat } from '../../../core/calculators/g/end-float.ts';
import { pistonToWall } from '../../../core/calculators/g/piston-to-wall.ts';
import { ringEndGap } from '../../../core/calculators/g/ring-end-gap.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';
const boreTimesFactor = 'bore x factor: common practice, no published source; number derived by hand';

checkCases(bearingClearance, [
  {
    case: 'main journal',
    inputs: 'bearing_bore 60.045 mm; journal 59.992 mm; limit_min 0.03 mm; limit_max 0.065 mm',
    expected: 'clearance 0.053 mm; clearance_ratio 0.000883451127; in_limits true',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'inch, rod journal',
    inputs: 'bearing_bore 2.1025 in; journal 2.0998 in; limit_min 0.0015 in; limit_max 0.0025 in',
    expected: 'clearance 2.7 thou; in_limits false',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'interference',
    inputs: 'bearing_bore 51.98 mm; journal 51.99 mm; limit_min 0.02 mm; limit_max 0.05 mm',
    expected: 'clearance -10 um; in_limits false',
    tolerance: 1e-3,
    source: `${byHand}; negative clearance must raise an error-level warning`,
    warns: /no clearance/,
  },
]);

checkCases(pistonToWall, [
  {
    case: 'forged piston',
    inputs: 'bore 86.512 mm; piston 86.43 mm; limit_min 0.07 mm; limit_max 0.1 mm',
    expected: 'clearance 0.082 mm; in_limits true',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'inch',
    inputs: 'bore 4.0305 in; piston 4.0265 in; limit_min 0.0035 in; limit_max 0.005 in',
    expected: 'clearance 4 thou; clearance_ratio 0.000992432701; in_limits true',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'tight',
    inputs: 'bore 99.752 mm; piston 99.71 mm; limit_min 0.07 mm; limit_max 0.11 mm',
    expected: 'clearance 42 um; in_limits false',
    tolerance: 1e-3,
    source: byHand,
  },
]);

checkCases(ringEndGap, [
  {
    case: 'top ring, turbo factor 0.0055',
    inputs: 'bore 86.5 mm; factor 0.0055; measured_gap 0.42 mm',
    expected: 'target_gap 0.47575 mm; file_off 0.05575 mm',
    tolerance: 1e-3,
    source: boreTimesFactor,
  },
  {
    case: 'second ring 0.0060',
    inputs: 'bore 4.03 in; factor 0.006',
    expected: 'target_gap 24.18 thou',
    tolerance: 1e-4,
    source: boreTimesFactor,
  },
  {
    case: 'gap already large enough',
    inputs: 'bore 99.5 mm; factor 0.005; measured_gap 0.55 mm',
    expected: 'target_gap 0.4975 mm; file_off 0 mm',
    tolerance: 1e-4,
    source: boreTimesFactor,
  },
  {
    case: 'factor outside 0.001 to 0.02',
    inputs: 'bore 86 mm; factor 0.055',
    rejected: 'factor',
    source: 'rule of the calculator: ring gap factor must be 0.001 to 0.02',
  },
]);

checkCases(endFloat, [
  {
    case: 'dial gauge',
    inputs: 'reading_forward 0.18 mm; reading_back 0.02 mm; limit_min 0.05 mm; limit_max 0.25 mm',
    expected: 'end_float 0.16 mm; in_limits true',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'inch',
    inputs: 'reading_forward 9 thou; reading_back 1.5 thou; limit_min 3 thou; limit_max 9 thou',
    expected: 'end_float 7.5 thou; in_limits true',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'worn',
    inputs: 'reading_forward 0.34 mm; reading_back -0.01 mm; limit_min 0.04 mm; limit_max 0.3 mm',
    expected: 'end_float 0.35 mm; in_limits false',
    tolerance: 1e-3,
    source: byHand,
  },
]);

describe('clearances', () => {
  it('calls no clearance grave, at zero too', () => {
    const levels = (journal: string) =>
      run(bearingClearance, `bearing_bore 52 mm; journal ${journal}`).warnings.map(({ level }) => level);
    expect(levels('52.01 mm')).toEqual(['grave']);
    expect(levels('52 mm')).toEqual(['grave']);
    expect(levels('51.96 mm')).toEqual([]);
    expect(run(pistonToWall, 'bore 86 mm; piston 86.01 mm').warnings.map(({ level }) => level)).toEqual(['grave']);
  });

  it('counts a clearance equal to a limit as inside', () => {
    const inside = (limits: string) =>
      run(bearingClearance, `bearing_bore 60.045 mm; journal 59.992 mm; ${limits}`).outputs['in_limits']?.value;
    expect(inside('limit_min 0.053 mm; limit_max 0.06 mm')).toBe(true);
    expect(inside('limit_min 0.03 mm; limit_max 0.053 mm')).toBe(true);
    expect(inside('limit_max 0.0529 mm')).toBe(false);
  });

  it('says nothing about limits that were not given', () => {
    expect(run(pistonToWall, 'bore 86.5 mm; piston 86.4 mm').outputs['in_limits']).toBeUndefined();
  });

  it.each([
    [bearingClearance, 'bearing_bore 52 mm; journal 51.9 mm; limit_min 0.05 mm; limit_max 0.02 mm', 'limit_min'],
    [pistonToWall, 'bore 86 mm; piston 85.9 mm; limit_min 0.2 mm; limit_max 0.1 mm', 'limit_min'],
    [endFloat, 'reading_forward 1 mm; reading_back 0 mm; limit_min 0.2 mm; limit_max 0.1 mm', 'limit_min'],
    [bearingClearance, 'bearing_bore 52 mm; journal -51.9 mm', 'journal'],
    [pistonToWall, 'bore 0 mm; piston 86 mm', 'bore'],
    [ringEndGap, 'bore 86 mm; factor 0.0009', 'factor'],
    [ringEndGap, 'bore 86 mm; factor 0.005; measured_gap -0.1 mm', 'measured_gap'],
    [endFloat, 'reading_forward 1 mm', 'reading_back'],
  ] as const)('refuses %$', (calculator, inputs, field) => {
    expect(refusalOf(calculator, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('takes ring factors at the ends of the range', () => {
    expect(numberOf(ringEndGap, 'bore 100 mm; factor 0.001', 'target_gap')).toBeCloseTo(0.1, 12);
    expect(numberOf(ringEndGap, 'bore 100 mm; factor 0.02', 'target_gap')).toBeCloseTo(2, 12);
  });

  it('warns of a ring gap more than half as large again as the target', () => {
    const warned = (gap: string) => run(ringEndGap, `bore 100 mm; factor 0.005; measured_gap ${gap}`).warnings.length;
    expect(warned('0.75 mm')).toBe(0);
    expect(warned('0.76 mm')).toBe(1);
  });

  it('gives the same end float whichever way the dial counts', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }), (forward, back) => {
        const float = (a: number, b: number) =>
          numberOf(endFloat, `reading_forward ${a} um; reading_back ${b} um`, 'end_float');
        expect(float(forward, back)).toBe(float(back, forward));
        expect(float(-forward, -back)).toBe(float(forward, back));
      }),
    );
  });
});
