import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frictionTorque } from '../../../core/calculators/f/friction-torque.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

checkCases(frictionTorque, [
  {
    case: 'M10x1.25, 0.12/0.12, 31.63 kN',
    inputs:
      'pitch 1.25 mm; pitch_diameter 9.188 mm; mu_thread 0.12; mu_head 0.12; head_od 14.63 mm; hole 11 mm; preload 31.63 kN',
    expected: 'torque 50.7473931 N*m; share_pitch 12.3998262 %; share_thread 39.6759249 %; share_head 47.9242489 %',
    tolerance: 5e-4,
    source: 'ISO 16047 / VDI 2230 equation; torque agrees with the VDI 2230 table value 51 N*m',
  },
  {
    case: 'Shigley 3/4-16 in the simplified form',
    inputs:
      'pitch 0.0625 in; pitch_diameter 0.709 in; mu_thread 0.15; mu_head 0.15; head_od 1.125 in; hole 0.75 in; preload 25000 lbf',
    expected: 'torque 3551 lbf*in',
    tolerance: 0.01,
    source:
      'Shigley, Mechanical Engineering Design, example 8-3 full form gives 3551 lbf*in (from memory, recomputed); the simplified form must agree within 1 %',
  },
  {
    case: 'preload from torque',
    inputs:
      'pitch 1.5 mm; pitch_diameter 9.026 mm; mu_thread 0.14; mu_head 0.14; head_od 14.63 mm; hole 11 mm; torque 50 N*m',
    expected: 'preload 26.8046885 kN',
    tolerance: 5e-4,
    source: 'derived by hand from the equation of this calculator',
  },
  {
    case: 'zero friction and negative preload',
    inputs:
      'pitch 1.25 mm; pitch_diameter 9.188 mm; mu_thread 0.12; mu_head 0.12; head_od 14.63 mm; hole 11 mm; preload -5 kN',
    rejected: 'preload',
    source: 'rule of the calculator: preload must be above zero',
  },
]);

describe('torque with thread and head friction', () => {
  const m10 = 'pitch 1.5 mm; pitch_diameter 9.026 mm; head_od 14.63 mm; hole 11 mm';

  it('goes to preload and back, in shares that make up the whole, and grows with either friction', () => {
    const mu = fc.integer({ min: 4, max: 40 });
    fc.assert(
      fc.property(mu, mu, fc.integer({ min: 1, max: 100 }), (thread, head, kN) => {
        const joint = (a: number, b: number) => `${m10}; mu_thread ${a / 100}; mu_head ${b / 100}`;
        const torque = (a: number, b: number) => numberOf(frictionTorque, `${joint(a, b)}; preload ${kN} kN`, 'torque');
        const back = `${joint(thread, head)}; torque ${torque(thread, head).toFixed(12)} N*m`;
        expect(numberOf(frictionTorque, back, 'preload') / kN).toBeCloseTo(1, 9);
        const share = (name: string) => numberOf(frictionTorque, back, name, '-');
        expect(share('share_pitch') + share('share_thread') + share('share_head')).toBeCloseTo(1, 12);
        expect(torque(thread + 1, head)).toBeGreaterThan(torque(thread, head));
        expect(torque(thread, head + 1)).toBeGreaterThan(torque(thread, head));
      }),
    );
  });

  it('warns of friction outside 0.04 to 0.40', () => {
    expect(run(frictionTorque, `${m10}; mu_thread 0.03; mu_head 0.41; preload 20 kN`).warnings).toHaveLength(2);
  });

  it.each([
    [`${m10}; mu_thread 0; mu_head 0.1; preload 20 kN`, 'mu_thread'],
    [`${m10}; mu_thread 0.1; mu_head -0.1; preload 20 kN`, 'mu_head'],
    [
      'pitch 1.5 mm; pitch_diameter 9 mm; head_od 11 mm; hole 11 mm; mu_thread 0.1; mu_head 0.1; preload 2 kN',
      'head_od',
    ],
    [`${m10}; mu_thread 0.1; mu_head 0.1; torque 0 N*m`, 'torque'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(frictionTorque, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('carries the caution that the maker governs, and the spread of hand tools', () => {
    expect(frictionTorque.caution).toMatch(/engine maker/);
    expect(frictionTorque.notes.join()).toMatch(/25 to 35 %/);
  });
});
