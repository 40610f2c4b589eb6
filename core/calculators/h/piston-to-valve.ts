import { calculator, graveWarning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { fallsShort } from '../limits.ts';

export const pistonToValve = calculator({
  id: 'H4',
  slug: 'piston-to-valve',
  title: 'Piston to valve',
  about: 'The clearance left between piston and valve after the gasket or the surfaces change.',
  inputs: {
    measured_clearance: {
      label: 'Measured clearance',
      hint: 'along the valve',
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
    },
    gasket_change: {
      label: 'Gasket change',
      hint: 'positive: thicker than when measured',
      dimension: 'length',
      unit: 'mm',
      usual: { from: -5, to: 5 },
    },
    material_removed: {
      label: 'Material removed',
      hint: 'from block and head face since measuring',
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
      usual: { to: 5 },
    },
    valve_angle: {
      label: 'Valve angle',
      hint: 'from the cylinder axis',
      dimension: 'angle',
      unit: 'deg',
      must: { atLeast: 0, below: 90 },
      usual: { to: 45 },
    },
    minimum: {
      label: 'Least clearance wanted',
      hint: 'from the maker; common practice: intake 2.0 mm, exhaust 2.5 mm',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
  },
  outputs: {
    clearance: { label: 'Clearance', hint: 'along the valve', dimension: 'length', unit: 'mm' },
    ok: { kind: 'yes-no', label: 'At least the least wanted' },
  },
  formula: 'clearance = measured_clearance + (gasket_change − material_removed) · cos(valve_angle)',
  source:
    'Axial shift projected on the valve axis; derived by hand. Least clearances: common practice, no published source.',
  notes: [
    'Least clearances in common practice, no published source: intake 2.0 mm (0.080 in), exhaust 2.5 mm (0.100 in), radial 1.3 mm (0.050 in).',
    'Measure through about 10° either side of overlap TDC with the final timing and, for variable timing, at both end positions; a hydraulic tappet needs a solid checking piece.',
  ],
  caution: makersValueGoverns,
  example: {
    measured_clearance: { value: 2.3, unit: 'mm' },
    gasket_change: { value: 0.2, unit: 'mm' },
    material_removed: { value: 0.1, unit: 'mm' },
    valve_angle: { value: 20, unit: 'deg' },
    minimum: { value: 2, unit: 'mm' },
  },
  compute: ({ measured_clearance, gasket_change, material_removed, valve_angle, minimum }) => {
    const clearance = measured_clearance + (gasket_change - material_removed) * Math.cos(valve_angle);
    const ok = !fallsShort(clearance, minimum);
    return {
      outputs: { clearance, ok },
      warnings: ok
        ? []
        : [graveWarning('Less than the least clearance: piston and valve can meet. Do not turn the engine.')],
    };
  },
});
