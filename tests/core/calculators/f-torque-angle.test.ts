import { describe, expect, it } from 'vitest';
import { torqueAngle } from '../../../core/calculators/f/torque-angle.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand (elastic bolt and joint in series); estimate only';

checkCases(torqueAngle, [
  {
    case: 'M10x1.25, 90 deg',
    inputs:
      'angle 90 deg; pitch 1.25 mm; stress_area 61.2 mm2; grip_length 60 mm; modulus 205000 MPa; joint_compliance_ratio 0.25',
    expected: 'preload_rise_elastic 52.275 kN',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'M8, 45 deg',
    inputs:
      'angle 45 deg; pitch 1.25 mm; stress_area 36.6 mm2; grip_length 40 mm; modulus 205000 MPa; joint_compliance_ratio 0.3',
    expected: 'preload_rise_elastic 22.5450721 kN',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'long head bolt',
    inputs:
      'angle 90 deg; pitch 1.5 mm; stress_area 72.3 mm2; grip_length 120 mm; modulus 205000 MPa; joint_compliance_ratio 0.2',
    expected: 'preload_rise_elastic 38.5976563 kN',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('torque plus angle', () => {
  // Rises by 52.275 kN, as in the first case.
  const m10 = 'angle 90 deg; pitch 1.25 mm; stress_area 61.2 mm2; grip_length 60 mm; joint_compliance_ratio 0.25';

  it('caps the preload at the largest by yield, and says that it passes yield', () => {
    const { outputs, warnings } = run(torqueAngle, `${m10}; snug_preload 10 kN; max_preload 50 kN`);
    expect(outputs['preload_estimate']?.value).toBeCloseTo(50, 9);
    expect(outputs['passes_yield']?.value).toBe(true);
    expect(warnings).toEqual([expect.objectContaining({ message: expect.stringContaining('yield') })]);
  });

  it('adds the rise to the snug preload below yield', () => {
    const text = `${m10}; snug_preload 10 kN; max_preload 70 kN`;
    expect(numberOf(torqueAngle, text, 'preload_estimate')).toBeCloseTo(62.275, 9);
    expect(run(torqueAngle, text).outputs['passes_yield']?.value).toBe(false);
  });

  it('claims nothing it cannot know without the snug preload', () => {
    expect(Object.keys(run(torqueAngle, `${m10}; max_preload 70 kN`).outputs)).toEqual(['preload_rise_elastic']);
    expect(run(torqueAngle, `${m10}; max_preload 50 kN`).outputs['passes_yield']?.value).toBe(true);
    expect(Object.keys(run(torqueAngle, `${m10}; snug_preload 10 kN`).outputs)).toEqual([
      'preload_rise_elastic',
      'preload_estimate',
    ]);
  });

  it('rises in step with the angle, and a stiff joint is the steepest', () => {
    const rise = (angle: number, ratio: number) =>
      numberOf(
        torqueAngle,
        `angle ${angle} deg; pitch 1.5 mm; stress_area 72.3 mm2; grip_length 120 mm; joint_compliance_ratio ${ratio}`,
        'preload_rise_elastic',
      );
    expect(rise(180, 0.2) / rise(90, 0.2)).toBeCloseTo(2, 12);
    expect(rise(90, 0) / rise(90, 0.5)).toBeCloseTo(1.5, 12);
  });

  it('refuses no angle', () => {
    expect(refusalOf(torqueAngle, m10.replace('angle 90', 'angle 0'))).toMatchObject({ field: 'angle' });
  });

  it('carries the caution that the maker governs, and never makes up an angle', () => {
    expect(torqueAngle.caution).toMatch(/engine maker/);
    expect(torqueAngle.notes.join()).toMatch(/Never make up an angle/);
  });
});
