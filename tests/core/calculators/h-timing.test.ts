import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beltMarks } from '../../../core/calculators/h/belt-marks.ts';
import { camDegreeing } from '../../../core/calculators/h/cam-degreeing.ts';
import { pistonToValve } from '../../../core/calculators/h/piston-to-valve.ts';
import { toothError } from '../../../core/calculators/h/tooth-error.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';
const projected =
  'derived by hand (axial shift projected on the valve axis); minimum values are common practice, no published source';

checkCases(beltMarks, [
  {
    case: '24/48, three counts',
    inputs: 'crank_teeth 24; cam_teeth 48; belt_teeth 129; counts [40, 25, 64] -',
    expected: 'ratio 2; ratio_ok true; count_sum 129; sum_ok true',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'one tooth missing in the counts',
    inputs: 'crank_teeth 20; cam_teeth 40; belt_teeth 120; counts [38, 41, 40] -',
    expected: 'count_sum 119; sum_ok false',
    tolerance: 1e-4,
    source: byHand,
    warns: /do not add up/,
  },
  {
    case: 'wrong sprocket',
    inputs: 'crank_teeth 22; cam_teeth 42; belt_teeth 110; counts [55, 55] -',
    expected: 'ratio 1.90909091; ratio_ok false; sum_ok true',
    tolerance: 1e-4,
    source: byHand,
    warns: /twice the teeth/,
  },
  {
    case: 'fractional tooth number on a sprocket',
    inputs: 'crank_teeth 24.5; cam_teeth 48; belt_teeth 129; counts [40, 25, 64] -',
    rejected: 'crank_teeth',
    source: 'rule of the calculator: sprocket and belt teeth must be whole numbers',
  },
]);

checkCases(toothError, [
  {
    case: '24/48, one tooth',
    inputs: 'crank_teeth 24; cam_teeth 48; teeth_error 1',
    expected: 'crank_deg_per_tooth 15 deg; cam_deg_per_tooth 7.5 deg; crank_error 15 deg; cam_error 7.5 deg',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '20/40, one tooth',
    inputs: 'crank_teeth 20; cam_teeth 40; teeth_error 1',
    expected: 'crank_error 18 deg; cam_error 9 deg',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '19/38, two teeth',
    inputs: 'crank_teeth 19; cam_teeth 38; teeth_error 2',
    expected: 'crank_error 37.8947368 deg',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(camDegreeing, [
  {
    case: 'textbook-style timing',
    inputs: 'ivo_btdc 20 deg; ivc_abdc 60 deg; evo_bbdc 60 deg; evc_atdc 20 deg',
    expected:
      'intake_duration 260 deg; exhaust_duration 260 deg; intake_centreline_atdc 110 deg; exhaust_centreline_btdc 110 deg; lobe_separation_cam 110 degCam; overlap 40 deg; cam_advance 0 degCam',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'advanced cam',
    inputs: 'ivo_btdc 14 deg; ivc_abdc 50 deg; evo_bbdc 58 deg; evc_atdc 10 deg',
    expected:
      'intake_centreline_atdc 108 deg; exhaust_centreline_btdc 114 deg; lobe_separation_cam 111 degCam; overlap 24 deg; cam_advance 3 degCam',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'negative overlap (opens after TDC)',
    inputs: 'ivo_btdc -5 deg; ivc_abdc 37 deg; evo_bbdc 40 deg; evc_atdc -6 deg',
    expected: 'intake_duration 212 deg; intake_centreline_atdc 111 deg; overlap -11 deg',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'equal-lift method',
    inputs: 'open_deg_atdc 62 deg; close_deg_atdc 154 deg',
    expected: 'centreline_atdc 108 deg',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(pistonToValve, [
  {
    case: 'intake',
    inputs:
      'measured_clearance 2.3 mm; gasket_change 0.2 mm; material_removed 0.1 mm; valve_angle 20 deg; minimum 2 mm',
    expected: 'clearance 2.39396926 mm; ok true',
    tolerance: 1e-4,
    source: projected,
  },
  {
    case: 'exhaust after milling',
    inputs:
      'measured_clearance 2.6 mm; gasket_change -0.2 mm; material_removed 0.3 mm; valve_angle 18 deg; minimum 2.5 mm',
    expected: 'clearance 2.12447174 mm; ok false',
    tolerance: 1e-4,
    source: projected,
    warns: /can meet/,
  },
  {
    case: 'inch',
    inputs:
      'measured_clearance 0.095 in; gasket_change 0 in; material_removed 0.01 in; valve_angle 23 deg; minimum 0.08 in',
    expected: 'clearance 85.7949515 thou; ok true',
    tolerance: 1e-4,
    source: projected,
  },
]);

describe('belt and marks', () => {
  const levels = (inputs: string) => run(beltMarks, inputs).warnings.map(({ level }) => level);

  it('works without belt or counts, and takes half teeth', () => {
    expect(Object.keys(run(beltMarks, 'crank_teeth 24; cam_teeth 48').outputs)).toEqual(['ratio', 'ratio_ok']);
    const halves = 'crank_teeth 24; cam_teeth 48; belt_teeth 129; counts [40.5, 24.5, 64] -';
    expect(run(beltMarks, halves).outputs['sum_ok']?.value).toBe(true);
    expect(levels(halves)).toEqual([]);
  });

  it('warns of a count that is neither whole nor half, and gravely of what can bend valves', () => {
    expect(levels('crank_teeth 24; cam_teeth 48; belt_teeth 129; counts [40.25, 24.75, 64] -')).toEqual(['warning']);
    expect(levels('crank_teeth 22; cam_teeth 42; belt_teeth 110; counts [55, 54] -')).toEqual(['grave', 'grave']);
  });

  it.each([
    ['crank_teeth 24; cam_teeth 48; belt_teeth 128.5; counts [40, 25, 64] -', 'belt_teeth'],
    ['crank_teeth 24; cam_teeth 48.5', 'cam_teeth'],
    ['crank_teeth 24; cam_teeth 48; belt_teeth 129; counts [40, 0, 89] -', 'counts'],
    ['crank_teeth 24; cam_teeth 48; counts [40, 89] -', 'belt_teeth'],
    ['crank_teeth 0; cam_teeth 48', 'crank_teeth'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(beltMarks, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});

describe('tooth error', () => {
  it('is half as many cam degrees as crank degrees, either way', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 60 }), fc.integer({ min: -5, max: 5 }), (crank, teeth) => {
        const inputs = `crank_teeth ${crank}; cam_teeth ${2 * crank}; teeth_error ${teeth}`;
        const cam = numberOf(toothError, inputs, 'cam_error');
        expect(numberOf(toothError, inputs, 'crank_error')).toBeCloseTo(2 * cam, 9);
        expect(cam).toBeCloseTo(teeth * numberOf(toothError, inputs, 'cam_deg_per_tooth'), 9);
      }),
    );
  });
});

describe('cam degreeing', () => {
  const events = (ivo: number, ivc: number, evo: number, evc: number) =>
    `ivo_btdc ${ivo} deg; ivc_abdc ${ivc} deg; evo_bbdc ${evo} deg; evc_atdc ${evc} deg`;

  it('warns of centrelines outside 95° to 125°, and counts the ends as inside', () => {
    const count = (inputs: string) => run(camDegreeing, inputs).warnings.length;
    expect(count(events(20, 30, 60, 20))).toBe(0);
    expect(count(events(20, 28, 60, 20))).toBe(1);
    expect(count('open_deg_atdc 80 deg; close_deg_atdc 170 deg')).toBe(0);
    expect(count('open_deg_atdc 80 deg; close_deg_atdc 172 deg')).toBe(1);
    expect(count('open_deg_atdc -154 deg; close_deg_atdc -62 deg')).toBe(0);
  });

  it('warns of an event outside -60° to 150°', () => {
    expect(run(camDegreeing, events(-61, -31, 60, 20)).warnings.map(({ message }) => message)).toEqual([
      expect.stringContaining('ivo_btdc'),
    ]);
  });

  it('says at which lift the angles were read, or asks', () => {
    expect(run(camDegreeing, events(20, 60, 60, 20)).notes[0]).toContain('write down which');
    expect(run(camDegreeing, `${events(20, 60, 60, 20)}; checking_lift 0.05 in`).notes[0]).toContain(
      '1.27 mm (0.05 in)',
    );
  });

  it.each([
    ['open_deg_atdc 154 deg; close_deg_atdc 62 deg', 'close_deg_atdc'],
    [events(-100, -100, 60, 20), 'ivc_abdc'],
    ['ivo_btdc 20 deg; ivc_abdc 60 deg; evo_bbdc 60 deg', 'evc_atdc'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(camDegreeing, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('moves both centrelines alike when the cam is turned, and leaves separation and durations alone', () => {
    const angle = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(angle, angle, angle, angle, fc.integer({ min: -20, max: 20 }), (ivo, ivc, evo, evc, turn) => {
        const before = events(ivo, ivc, evo, evc);
        const after = events(ivo + turn, ivc - turn, evo + turn, evc - turn);
        const change = (output: string) =>
          numberOf(camDegreeing, after, output) - numberOf(camDegreeing, before, output);
        expect(change('intake_centreline_atdc')).toBeCloseTo(-turn, 9);
        expect(change('exhaust_centreline_btdc')).toBeCloseTo(turn, 9);
        expect(change('cam_advance')).toBeCloseTo(turn, 9);
        for (const same of ['lobe_separation_cam', 'overlap', 'intake_duration', 'exhaust_duration']) {
          expect(change(same)).toBeCloseTo(0, 9);
        }
      }),
    );
  });
});

describe('piston to valve', () => {
  const at = (clearance: number, angle: number) =>
    `measured_clearance ${clearance} mm; gasket_change 0 mm; material_removed 0.5 mm; valve_angle ${angle} deg; minimum 2 mm`;

  it('is grave below the least clearance, and inside when equal to it', () => {
    expect(run(pistonToValve, at(2.5, 0)).outputs['ok']?.value).toBe(true);
    expect(run(pistonToValve, at(2.49, 0)).warnings.map(({ level }) => level)).toEqual(['grave']);
  });

  it('loses less by milling the more the valve leans', () => {
    const left = (angle: number) => numberOf(pistonToValve, at(3, angle), 'clearance');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 44 }), (angle) => {
        expect(left(angle + 1)).toBeGreaterThan(left(angle));
      }),
    );
  });

  it.each([
    [at(-0.1, 20), 'measured_clearance'],
    [at(2, 90), 'valve_angle'],
    [at(2, 20).replace('removed 0.5', 'removed -0.5'), 'material_removed'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(pistonToValve, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
