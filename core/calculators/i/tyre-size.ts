import { formatMeasure, fromSI } from '../../units/measure.ts';
import { calculator } from '../calculator.ts';
import { roadLegal } from './road-legal.ts';

/** Rolling circumference against that of the free tyre; common practice, no published source. */
const rollingShare = [0.96, 0.97] as const;

export const tyreSize = calculator({
  id: 'I1',
  slug: 'tyre-size',
  title: 'Tyre size',
  about: 'The free diameter and circumference of a tyre from the size on its wall.',
  inputs: {
    section_width: {
      label: 'Section width',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
      usual: { from: 100, to: 450 },
    },
    aspect: {
      label: 'Aspect',
      hint: 'height to width',
      dimension: 'fraction',
      unit: '%',
      must: { above: 0 },
      usual: { from: 20, to: 100 },
    },
    rim: { label: 'Rim diameter', dimension: 'length', unit: 'in', must: { above: 0 }, usual: { from: 8, to: 26 } },
  },
  outputs: {
    free_diameter: { label: 'Free diameter', dimension: 'length', unit: 'mm' },
    free_circumference: { label: 'Free circumference', dimension: 'length', unit: 'mm' },
  },
  formula: 'free_diameter = rim + 2 · section_width · aspect; free_circumference = π · free_diameter',
  source:
    'Tyre size designation: ISO 4000-1 (from memory); derived by hand. Rolling share: common practice, no published source.',
  notes: ['Prefer a measured roll-out to any figure from the size.'],
  caution: roadLegal,
  example: {
    section_width: { value: 225, unit: 'mm' },
    aspect: { value: 45, unit: '%' },
    rim: { value: 17, unit: 'in' },
  },
  compute: ({ section_width: width, aspect, rim }) => {
    const diameter = rim + 2 * width * aspect;
    const circumference = Math.PI * diameter;
    const [least, most] = rollingShare.map((share) =>
      formatMeasure({ value: fromSI(circumference * share, 'mm', 'length'), unit: 'mm' }, 'length', 4),
    );
    return {
      outputs: { free_diameter: diameter, free_circumference: circumference },
      notes: [
        `The rolling circumference is about 0.96 to 0.97 of the free one (common practice): ${least} to ${most} here.`,
      ],
    };
  },
});
