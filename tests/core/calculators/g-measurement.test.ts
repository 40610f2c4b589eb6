import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { severalReadings } from '../../../core/calculators/g/several-readings.ts';
import { temperatureCorrection } from '../../../core/calculators/g/temperature-correction.ts';
import { valveLashShim } from '../../../core/calculators/g/valve-lash-shim.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';
const identity = `${byHand} (identity: clearance + shim is constant)`;
const iso1 = 'ISO 1 reference temperature 20 degC; linear expansion; derived by hand';

checkCases(valveLashShim, [
  {
    case: 'too tight',
    inputs: 'old_shim 2.7 mm; measured_lash 0.15 mm; target_lash 0.2 mm; shim_step 0.05 mm',
    expected: 'new_shim_exact 2.65 mm; new_shim 2.65 mm; resulting_lash 0.2 mm',
    tolerance: 1e-4,
    source: identity,
  },
  {
    case: 'too loose',
    inputs: 'old_shim 2.45 mm; measured_lash 0.32 mm; target_lash 0.2 mm; shim_step 0.05 mm',
    expected: 'new_shim_exact 2.57 mm; new_shim 2.55 mm; resulting_lash 0.22 mm',
    tolerance: 1e-4,
    source: identity,
  },
  {
    case: 'fine step',
    inputs: 'old_shim 2.62 mm; measured_lash 0.27 mm; target_lash 0.35 mm; shim_step 0.02 mm',
    expected: 'new_shim_exact 2.54 mm; new_shim 2.54 mm; resulting_lash 0.35 mm',
    tolerance: 1e-4,
    source: identity,
  },
]);

checkCases(severalReadings, [
  {
    case: 'four readings',
    inputs: 'readings [59.992, 59.994, 59.991, 59.995] mm',
    expected: 'mean 59.993 mm; range 4 um; stdev 1.82574186 um',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'bore map: three depths, two directions',
    inputs: 'top [86.012, 86.018] mm; middle [86.01, 86.014] mm; bottom [86.005, 86.009] mm',
    expected: 'out_of_round 6 um; taper 8 um; mean 86.0113333 mm',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'inch readings',
    inputs: 'readings [2.0998, 2.0997, 2.0999] in',
    expected: 'mean 2.0998 in; range 0.2 thou',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'one reading only',
    inputs: 'readings [59.99] mm',
    rejected: 'readings',
    source: 'rule of the calculator: at least two readings are needed for range and deviation',
  },
]);

checkCases(temperatureCorrection, [
  {
    case: 'aluminium piston, steel micrometer, 30 degC',
    inputs: 'reading 86.43 mm; part_temp 30 degC; gauge_temp 30 degC; part_alpha 2e-05 1/K; gauge_alpha 1.15e-05 1/K',
    expected: 'length_at_20C 86.4226549 mm; correction -7.34508098 um',
    tolerance: 1e-3,
    source: iso1,
  },
  {
    case: 'same material, same temperature: no change',
    inputs:
      'reading 59.992 mm; part_temp 28 degC; gauge_temp 28 degC; part_alpha 1.15e-05 1/K; gauge_alpha 1.15e-05 1/K',
    expected: 'length_at_20C 59.992 mm',
    tolerance: 1e-8,
    source: `${iso1} (identity)`,
  },
  {
    case: 'warm block, cool gauge',
    inputs:
      'reading 86.52 mm; part_temp 35 degC; gauge_temp 20 degC; part_alpha 1.05e-05 1/K; gauge_alpha 1.15e-05 1/K',
    expected: 'length_at_20C 86.5063752 mm; correction -13.6247541 um',
    tolerance: 1e-3,
    source: iso1,
  },
]);

describe('valve lash shim', () => {
  const messages = (inputs: string) => run(valveLashShim, inputs).warnings.map(({ message }) => message);

  it('gives a tie to the thinner shim', () => {
    // By hand: 2.45 + 0.325 − 0.2 = 2.575, midway between 2.55 and 2.60.
    const tie = 'old_shim 2.45 mm; measured_lash 0.325 mm; target_lash 0.2 mm; shim_step 0.05 mm';
    expect(numberOf(valveLashShim, tie, 'new_shim')).toBeCloseTo(2.55, 9);
    const above = 'old_shim 2.45 mm; measured_lash 0.326 mm; target_lash 0.2 mm; shim_step 0.05 mm';
    expect(numberOf(valveLashShim, above, 'new_shim')).toBeCloseTo(2.6, 9);
  });

  it('warns of no lash, of a large change and of a lash outside the limits', () => {
    expect(messages('old_shim 2.5 mm; measured_lash 0 mm; target_lash 0.2 mm; shim_step 0.05 mm')).toEqual([
      expect.stringContaining('held open'),
    ]);
    expect(messages('old_shim 2.5 mm; measured_lash 0.8 mm; target_lash 0.2 mm; shim_step 0.05 mm')).toEqual([
      expect.stringContaining('0.5 mm'),
    ]);
    const loose = 'old_shim 2.45 mm; measured_lash 0.32 mm; target_lash 0.2 mm; shim_step 0.05 mm';
    expect(messages(`${loose}; limit_max 0.21 mm`)).toEqual([expect.stringContaining('outside the limits')]);
    expect(messages(`${loose}; limit_max 0.22 mm`)).toEqual([]);
  });

  it.each([
    ['old_shim 2.5 mm; measured_lash -0.1 mm; target_lash 0.2 mm; shim_step 0.05 mm', 'measured_lash'],
    ['old_shim 0.1 mm; measured_lash 0.1 mm; target_lash 0.2 mm; shim_step 0.05 mm', 'target_lash'],
    ['old_shim 2.5 mm; measured_lash 0.1 mm; target_lash 0.2 mm; shim_step 0 mm', 'shim_step'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(valveLashShim, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('keeps shim and lash together, and lands within half a step', () => {
    fc.assert(
      fc.property(fc.integer({ min: 150, max: 350 }), fc.integer({ min: 0, max: 60 }), (shim, lash) => {
        const inputs = `old_shim ${shim / 100} mm; measured_lash ${lash / 100} mm; target_lash 0.2 mm; shim_step 0.05 mm`;
        const fitted = numberOf(valveLashShim, inputs, 'new_shim');
        const resulting = numberOf(valveLashShim, inputs, 'resulting_lash');
        expect(fitted + resulting).toBeCloseTo((shim + lash) / 100, 9);
        expect(Math.abs(resulting - 0.2)).toBeLessThanOrEqual(0.025 + 1e-9);
      }),
    );
  });
});

describe('several readings', () => {
  const messages = (inputs: string) => run(severalReadings, inputs).warnings.map(({ message }) => message);

  it('warns of a range above half of the tolerance', () => {
    const readings = 'readings [59.992, 59.994, 59.991, 59.995] mm';
    expect(messages(`${readings}; limit_min 59.988 mm; limit_max 59.996 mm`)).toEqual([]);
    expect(messages(`${readings}; limit_min 59.989 mm; limit_max 59.996 mm`)).toHaveLength(1);
  });

  it('finds one stray reading among five, but not among four', () => {
    expect(messages('readings [60.000, 60.001, 60.002, 60.001, 60.020] mm')).toEqual([
      expect.stringContaining('60.02 mm'),
    ]);
    expect(messages('readings [60.000, 60.001, 60.002, 60.020] mm')).toEqual([]);
    expect(messages('readings [60.000, 60.001, 60.002, 60.001, 60.003] mm')).toEqual([]);
    expect(messages('readings [59.993, 59.993, 59.993, 59.993, 59.993] mm')).toEqual([]);
  });

  it('takes two planes as well as three, and refuses one alone or planes beside readings', () => {
    expect(numberOf(severalReadings, 'top [86.01, 86.02] mm; bottom [86, 86.01] mm', 'taper')).toBeCloseTo(10, 6);
    expect(refusalOf(severalReadings, 'top [86.01, 86.02] mm')).toMatchObject({ field: 'bottom' });
    expect(refusalOf(severalReadings, 'readings [1, 2] mm; top [86, 86] mm')).toMatchObject({ code: 'bad-input' });
    expect(refusalOf(severalReadings, 'top [86.01] mm; bottom [86, 86] mm')).toMatchObject({ field: 'top' });
  });

  it('spreads no wider when every reading moves by the same', () => {
    const micrometres = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(micrometres, fc.integer({ min: 1000, max: 90_000 }), (list, shift) => {
        const spread = (add: number, output: string) =>
          numberOf(severalReadings, `readings [${list.map((one) => one + add).join(', ')}] um`, output);
        expect(spread(shift, 'range')).toBeCloseTo(spread(0, 'range'), 6);
        expect(spread(shift, 'stdev')).toBeCloseTo(spread(0, 'stdev'), 6);
      }),
    );
  });
});

describe('temperature correction', () => {
  const at = (part: number, gauge: number, more = '') =>
    `reading 86 mm; part_temp ${part} degC; gauge_temp ${gauge} degC; part_alpha 2e-05 1/K; gauge_alpha 1.15e-05 1/K${more}`;

  it('changes nothing at 20 °C, and makes a warm part smaller', () => {
    expect(numberOf(temperatureCorrection, at(20, 20), 'correction')).toBe(0);
    fc.assert(
      fc.property(fc.integer({ min: 21, max: 40 }), (part) => {
        expect(numberOf(temperatureCorrection, at(part, 20), 'correction')).toBeLessThan(0);
      }),
    );
  });

  it('warns beyond 20 K from 20 °C, and of a correction above a tenth of the tolerance', () => {
    const count = (inputs: string) => run(temperatureCorrection, inputs).warnings.length;
    expect(count(at(40, 40))).toBe(0);
    expect(count(at(41, 40))).toBe(1);
    expect(count(at(-1, 41))).toBe(2);
    expect(count(at(30, 30, '; limit_min 85.9 mm; limit_max 86.1 mm'))).toBe(0);
    expect(count(at(30, 30, '; limit_min 85.97 mm; limit_max 86.03 mm'))).toBe(1);
  });

  it('refuses a temperature below absolute zero and a part shrunk to nothing', () => {
    expect(refusalOf(temperatureCorrection, at(-274, 20))).toMatchObject({ field: 'part_temp' });
    const absurd =
      'reading 86 mm; part_temp 10 degC; gauge_temp 20 degC; part_alpha 11.5 1/K; gauge_alpha 1.15e-05 1/K';
    expect(refusalOf(temperatureCorrection, absurd)).toMatchObject({ field: 'part_alpha' });
  });
});
