import { calculator } from '../calculator.ts';
import { awgArea, awgDiameter, awgInput, copperResistivity } from './copper-wire.ts';
import { electricalCaution } from './electrical-caution.ts';

export const wireGauge = calculator({
  id: 'K1',
  slug: 'wire-gauge',
  title: 'Wire gauge',
  about: 'Diameter, cross-section and resistance of a copper wire by its gauge number.',
  inputs: { awg: awgInput },
  outputs: {
    diameter: { label: 'Diameter', dimension: 'length', unit: 'mm' },
    area: { label: 'Cross-section', dimension: 'area', unit: 'mm2' },
    resistance: { label: 'Resistance at 20 °C', dimension: 'resistancePerLength', unit: 'ohm/km' },
  },
  formula:
    'diameter = 0.005 in · 92^((36 − awg)/39); area = π/4 · diameter²; resistance = 0.017241 Ω·mm²/m / area, at 20 °C',
  source:
    'ASTM B258 (diameter law, from memory); annealed copper standard; agrees with the NBS copper wire table as reproduced in public tables.',
  notes: [
    'Solid wire; stranded wire has 2 to 3 % more resistance.',
    'Metric cable to ISO 6722 has its own limits, which are higher (from memory: 2.5 mm² 7.60, 4 mm² 4.71, 6 mm² 3.14 Ω/km): use the data sheet.',
  ],
  caution: electricalCaution,
  example: { awg: { value: 12 } },
  compute: ({ awg }) => {
    const area = awgArea(awg);
    return { outputs: { diameter: awgDiameter(awg), area, resistance: copperResistivity / area } };
  },
});
