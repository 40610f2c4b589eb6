import { calculator, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { diameter, fastenerCaution, pitch, refuseCoarseThread, stressArea } from './fasteners.ts';

const strength = (label: string) =>
  ({ label, hint: 'tensile', dimension: 'stress', unit: 'MPa', must: { above: 0 } }) as const;

export const threadEngagement = calculator({
  id: 'F7',
  slug: 'thread-engagement',
  title: 'Thread engagement',
  about: 'How deep a bolt must be screwed in so that it breaks before the thread in the hole strips.',
  inputs: {
    diameter,
    pitch,
    bolt_strength: strength('Tensile strength of the bolt'),
    hole_strength: strength('Tensile strength of the material with the hole'),
  },
  outputs: {
    engagement_equal_strength: { label: 'Engagement at equal strength', dimension: 'length', unit: 'mm' },
    strength_ratio_j: { label: 'Strength ratio J', dimension: 'number', unit: '-' },
    engagement_required: { label: 'Engagement required', dimension: 'length', unit: 'mm' },
  },
  formula:
    'engagement_equal_strength = 2 · A/(0.75 · π · D1), D1 = d - 1.0825 P; strength_ratio_j = 0.75 · D1 · bolt_strength/' +
    '(0.875 · d · hole_strength); engagement_required = engagement_equal_strength · max(1, J)',
  source:
    "FED-STD-H28/2 (from memory) and Machinery's Handbook, 24th edition, in paraphrase (seen): stress-area method on nominal sizes.",
  notes: [
    'Use the real smallest thread sizes for critical joints: that adds up to 15 %.',
    'Common practice, no published source: 1 diameter in steel, 1.5 in iron, 2 in aluminium.',
  ],
  caution: fastenerCaution,
  example: {
    diameter: { value: 10, unit: 'mm' },
    pitch: { value: 1.5, unit: 'mm' },
    bolt_strength: { value: 800, unit: 'MPa' },
    hole_strength: { value: 250, unit: 'MPa' },
  },
  compute: ({ diameter: d, pitch: p, bolt_strength: bolt, hole_strength: hole }) => {
    refuseCoarseThread('pitch', d, p);
    const minor = d - 1.0825 * p;
    const equal = (2 * stressArea(d, p)) / (0.75 * Math.PI * minor);
    const ratio = (0.75 * minor * bolt) / (0.875 * d * hole);
    const required = equal * Math.max(1, ratio);
    return {
      outputs: { engagement_equal_strength: equal, strength_ratio_j: ratio, engagement_required: required },
      warnings: exceeds(required, 2 * d)
        ? [warning('More than two diameters of thread are needed: use a thread insert or a stud.')]
        : [],
    };
  },
});
