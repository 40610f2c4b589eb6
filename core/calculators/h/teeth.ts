/** Teeth on a belt drive, counted by hand; never known from memory. */
import type { NumberInput } from '../calculator.ts';

export const sprocketInputs = {
  crank_teeth: {
    kind: 'integer',
    label: 'Crank sprocket teeth',
    hint: 'counted on the part',
    dimension: 'number',
    unit: '-',
    must: { above: 0 },
  },
  cam_teeth: {
    kind: 'integer',
    label: 'Cam sprocket teeth',
    hint: 'counted on the part',
    dimension: 'number',
    unit: '-',
    must: { above: 0 },
  },
} as const satisfies Record<string, NumberInput>;
