import { calculator, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { exceeds } from '../limits.ts';

export const ringEndGap = calculator({
  id: 'G3',
  slug: 'ring-end-gap',
  title: 'Ring end gap',
  about: 'The end gap a piston ring is to have, and how much is left to file off.',
  inputs: {
    bore: { label: 'Bore', dimension: 'length', unit: 'mm', must: { above: 0 }, usual: { from: 30, to: 200 } },
    factor: {
      label: 'Gap to bore',
      hint: 'from the ring maker’s sheet',
      dimension: 'number',
      unit: '-',
      must: { atLeast: 0.001, atMost: 0.02 },
    },
    measured_gap: {
      label: 'Measured gap',
      hint: 'ring square in its own bore',
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
      optional: true,
    },
  },
  outputs: {
    target_gap: { label: 'Target gap', dimension: 'length', unit: 'mm' },
    file_off: { label: 'To file off', dimension: 'length', unit: 'mm' },
  },
  formula: 'target_gap = bore · factor; file_off = target_gap − measured_gap, or nothing',
  source: 'Common practice, no published source.',
  notes: [
    'Factors in common practice, no published source: top ring 0.0040 street, 0.0050 to 0.0060 turbo, 0.0060 to 0.0070 high boost; second ring equal or 0.0005 more. The ring maker’s sheet governs.',
  ],
  caution: makersValueGoverns,
  example: {
    bore: { value: 86.5, unit: 'mm' },
    factor: { value: 0.0055 },
    measured_gap: { value: 0.42, unit: 'mm' },
  },
  compute: ({ bore, factor, measured_gap: measured }) => {
    const target = bore * factor;
    return {
      outputs: {
        target_gap: target,
        file_off: measured === undefined ? undefined : Math.max(0, target - measured),
      },
      warnings:
        measured !== undefined && exceeds(measured, 1.5 * target)
          ? [warning('The measured gap is more than half as large again as the target: check the ring and the bore.')]
          : [],
    };
  },
});
