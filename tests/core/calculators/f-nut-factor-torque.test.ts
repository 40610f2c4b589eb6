import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nutFactorTorque } from '../../../core/calculators/f/nut-factor-torque.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(nutFactorTorque, [
  {
    case: '3/4-16, 25 000 lbf, K 0.20',
    inputs: 'nut_factor 0.2; diameter 0.75 in; preload 25000 lbf',
    expected: 'torque 3750 lbf*in',
    tolerance: 1e-6,
    source: 'Shigley, Mechanical Engineering Design, example 8-3 (given data seen; result computed)',
  },
  {
    case: '10-32 screw, K 0.2',
    inputs: 'nut_factor 0.2; diameter 0.19 in; preload 1275 lbf',
    expected: 'torque 48.5 lbf*in',
    tolerance: 0.002,
    source: 'published worked example, Mechanical Fastening, Joining, and Assembly, ch. 3: 48.5 lbf*in',
  },
  {
    case: 'M10, 25 kN, K 0.18',
    inputs: 'nut_factor 0.18; diameter 10 mm; preload 25 kN',
    expected: 'torque 45 N*m',
    tolerance: 1e-4,
    source: `${byHand}; K 0.18 lubricated: Shigley table 8-15`,
  },
  {
    case: 'preload from torque',
    inputs: 'nut_factor 0.2; diameter 8 mm; torque 25 N*m',
    expected: 'preload 15.625 kN',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('torque with nut factor', () => {
  it('takes K from the surface (Shigley table 8-15), and says with what it reckoned', () => {
    const { outputs } = run(nutFactorTorque, 'surface lubricated; diameter 10 mm; preload 25 kN');
    expect(outputs['torque']?.value).toBeCloseTo(45, 9);
    expect(outputs['basis']?.value).toBe('K 0.18, lubricated');
    expect(run(nutFactorTorque, 'nut_factor 0.15; diameter 10 mm; preload 25 kN').outputs['basis']?.value).toBe(
      'K 0.15, surface not stated',
    );
  });

  it('suggests a torque from the proof load, naming factor, surface and share', () => {
    // By hand: 0.2 · 10 mm · 75 % of 33.7 kN = 50.55 N·m.
    const { outputs, assumed } = run(nutFactorTorque, 'surface zinc plated; diameter 10 mm; proof_load 33.7 kN');
    expect(outputs['torque']?.value).toBeCloseTo(50.55, 9);
    expect(outputs['basis']?.value).toBe('K 0.2, zinc plated, 75 % of the proof load');
    expect(assumed).toEqual([expect.objectContaining({ name: 'preload_fraction', value: 75 })]);
  });

  it('goes to preload and back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 40 }),
        fc.integer({ min: 4, max: 30 }),
        fc.integer({ min: 1, max: 500 }),
        (k, d, t) => {
          const both = `nut_factor ${k / 100}; diameter ${d} mm`;
          const kN = numberOf(nutFactorTorque, `${both}; torque ${t} N*m`, 'preload');
          expect(numberOf(nutFactorTorque, `${both}; preload ${kN.toFixed(12)} kN`, 'torque') / t).toBeCloseTo(1, 8);
        },
      ),
    );
  });

  it('warns gravely of a dry torque on a slippery thread', () => {
    const said = (text: string) =>
      run(nutFactorTorque, `diameter 10 mm; torque 45 N*m; ${text}`).warnings.map(({ level }) => level);
    expect(said('nut_factor 0.1; torque_is_dry true')).toEqual(['grave']);
    expect(said('nut_factor 0.12; torque_is_dry true')).toEqual([]);
    expect(said('nut_factor 0.1')).toEqual([]);
  });

  it('warns outside 0.08 to 0.40', () => {
    expect(run(nutFactorTorque, 'nut_factor 0.07; diameter 10 mm; preload 9 kN').warnings).toHaveLength(1);
    expect(run(nutFactorTorque, 'nut_factor 0.41; diameter 10 mm; preload 9 kN').warnings).toHaveLength(1);
  });

  it.each([
    ['diameter 10 mm; preload 25 kN', 'nut_factor'],
    ['nut_factor 0; diameter 10 mm; preload 25 kN', 'nut_factor'],
    ['nut_factor 0.2; diameter 10 mm; preload 0 kN', 'preload'],
    ['nut_factor 0.2; diameter 10 mm; torque 25', 'torque'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(nutFactorTorque, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('carries the caution that the maker governs', () => {
    expect(nutFactorTorque.caution).toMatch(/engine maker/);
  });
});
