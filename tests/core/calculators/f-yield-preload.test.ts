import { describe, expect, it } from 'vitest';
import { frictionTorque } from '../../../core/calculators/f/friction-torque.ts';
import { yieldPreload } from '../../../core/calculators/f/yield-preload.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const table =
  'VDI 2230 table of assembly preload and tightening torque for fine threads, 90 % utilisation (as reproduced in a fastener catalogue)';
const tolerance = { max_preload: 0.004, torque: 0.01 };

checkCases(yieldPreload, [
  {
    case: 'M10x1.25 class 8.8, friction 0.12',
    inputs:
      'diameter 10 mm; pitch 1.25 mm; yield_strength 640 MPa; mu_thread 0.12; mu_head 0.12; utilisation 0.9; head_od 14.63 mm; hole 11 mm',
    expected: 'max_preload 31.6 kN; torque 51 N*m',
    tolerance,
    source: `${table}: 31.6 kN, 51 N*m`,
  },
  {
    case: 'M12x1.25 class 10.9, friction 0.12',
    inputs:
      'diameter 12 mm; pitch 1.25 mm; yield_strength 940 MPa; mu_thread 0.12; mu_head 0.12; utilisation 0.9; head_od 16.63 mm; hole 13.5 mm',
    expected: 'max_preload 70.5 kN; torque 133 N*m',
    tolerance,
    source: `${table}: 70.5 kN, 133 N*m`,
  },
  {
    case: 'M8x1 class 12.9, friction 0.14',
    inputs:
      'diameter 8 mm; pitch 1 mm; yield_strength 1100 MPa; mu_thread 0.14; mu_head 0.14; utilisation 0.9; head_od 11.63 mm; hole 9 mm',
    expected: 'max_preload 33.9 kN; torque 50.1 N*m',
    tolerance,
    source: `${table}: 33.9 kN, 50.1 N*m`,
  },
  {
    case: 'M14x1.5 class 8.8, friction 0.1',
    inputs:
      'diameter 14 mm; pitch 1.5 mm; yield_strength 640 MPa; mu_thread 0.1; mu_head 0.1; utilisation 0.9; head_od 19.64 mm; hole 15.5 mm',
    expected: 'max_preload 66.4 kN; torque 124 N*m',
    tolerance,
    source: `${table}: 66.4 kN, 124 N*m`,
  },
]);

describe('largest preload by yield', () => {
  const m10 = 'diameter 10 mm; pitch 1.25 mm; mu_thread 0.12; mu_head 0.12; head_od 14.63 mm; hole 11 mm';
  const class88 = `${m10}; yield_strength 640 MPa`;

  it('takes the yield strength from the class (ISO 898-1, seen)', () => {
    expect(numberOf(yieldPreload, `${m10}; strength_class class 8.8`, 'max_preload')).toBe(
      numberOf(yieldPreload, class88, 'max_preload'),
    );
  });

  it('gives the torque that friction gives at that preload', () => {
    const kN = numberOf(yieldPreload, class88, 'max_preload');
    // Pitch diameter by hand: 10 - 0.649519 · 1.25 = 9.18810125 mm.
    const joint = `pitch 1.25 mm; pitch_diameter 9.18810125 mm; mu_thread 0.12; mu_head 0.12; head_od 14.63 mm; hole 11 mm`;
    expect(
      numberOf(frictionTorque, `${joint}; preload ${kN} kN`, 'torque') / numberOf(yieldPreload, class88, 'torque'),
    ).toBeCloseTo(1, 9);
  });

  it('falls with friction in the thread, which twists the bolt, and not with friction under the head', () => {
    const at = (thread: number, head: number) =>
      numberOf(
        yieldPreload,
        `diameter 10 mm; pitch 1.25 mm; yield_strength 640 MPa; mu_thread ${thread}; mu_head ${head}; head_od 14.63 mm; hole 11 mm`,
        'max_preload',
      );
    expect(at(0.2, 0.12)).toBeLessThan(at(0.12, 0.12));
    expect(at(0.12, 0.2)).toBe(at(0.12, 0.12));
  });

  it('warns gravely of a preload planned above it', () => {
    const said = (kN: number) => run(yieldPreload, `${class88}; planned_preload ${kN} kN`).warnings;
    expect(said(31)).toEqual([]);
    expect(said(32)).toEqual([expect.objectContaining({ level: 'grave' })]);
  });

  it.each([
    [`${class88}; utilisation 1.1`, 'utilisation'],
    [`${m10}; yield_strength 0 MPa`, 'yield_strength'],
    [
      'diameter 2 mm; pitch 1.25 mm; yield_strength 640 MPa; mu_thread 0.1; mu_head 0.1; head_od 4 mm; hole 2.4 mm',
      'pitch',
    ],
    [
      'diameter 8 mm; pitch 1.25 mm; yield_strength 640 MPa; mu_thread 0.1; mu_head 0.1; head_od 8 mm; hole 9 mm',
      'head_od',
    ],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(yieldPreload, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
