import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adapterTorque } from '../../../core/calculators/f/adapter-torque.ts';
import { checkCases, numberOf, refusalOf } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(adapterTorque, [
  {
    case: 'straight extension',
    inputs: 'target_torque 80 N*m; wrench_length 400 mm; adapter_length 50 mm; angle 0 deg',
    expected: 'wrench_setting 71.1 N*m',
    tolerance: 0.001,
    source: 'published worked example: 71.1 N*m for 80 N*m, 40 cm, 5 cm; lever equation',
  },
  {
    case: '90 degrees: no correction',
    inputs: 'target_torque 60 lbf*ft; wrench_length 15 in; adapter_length 2 in; angle 90 deg',
    expected: 'wrench_setting 60 lbf*ft',
    tolerance: 1e-6,
    source: byHand,
  },
  {
    case: 'adapter pointing back',
    inputs: 'target_torque 45 N*m; wrench_length 300 mm; adapter_length 40 mm; angle 180 deg',
    expected: 'wrench_setting 51.9230769 N*m',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'adapter longer than the wrench, pointing back',
    inputs: 'target_torque 45 N*m; wrench_length 100 mm; adapter_length 120 mm; angle 180 deg',
    rejected: 'adapter_length',
    source: 'rule of the calculator: effective length must be above zero',
  },
]);

describe('wrench setting with an adapter', () => {
  it('falls where the adapter lengthens the wrench, and rises where it shortens it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 180 }), fc.integer({ min: 1, max: 200 }), (angle, adapter) => {
        const set = numberOf(
          adapterTorque,
          `target_torque 100 N*m; wrench_length 400 mm; adapter_length ${adapter} mm; angle ${angle} deg`,
          'wrench_setting',
        );
        if (angle < 90) expect(set).toBeLessThan(100);
        if (angle === 90) expect(set).toBeCloseTo(100, 9);
        if (angle > 90) expect(set).toBeGreaterThan(100);
      }),
    );
  });

  it('refuses an adapter that points back exactly to the grip', () => {
    expect(
      refusalOf(adapterTorque, 'target_torque 45 N*m; wrench_length 100 mm; adapter_length 100 mm; angle 180 deg'),
    ).toMatchObject({ code: 'bad-input', field: 'adapter_length' });
  });

  it('carries the caution that the maker governs', () => {
    expect(adapterTorque.caution).toMatch(/engine maker/);
  });
});
