import { calculator, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { flow, insideDiameter, pipeVelocity } from './pipe.ts';
import { velocityLimits } from './velocity-limits.ts';

export const velocityCheck = calculator({
  id: 'E3',
  slug: 'velocity-check',
  title: 'Velocity check',
  about: 'Whether a line is wide enough for its flow, and which inside diameter would be.',
  inputs: {
    flow,
    inside_diameter: insideDiameter,
    line_type: {
      kind: 'choice',
      label: 'Kind of line',
      choices: {
        suction: velocityLimits.suction.name,
        return: velocityLimits.return.name,
        pressure: velocityLimits.pressure.name,
      },
    },
  },
  outputs: {
    velocity: { label: 'Velocity', dimension: 'speed', unit: 'm/s' },
    velocity_limit: { label: 'Velocity limit', dimension: 'speed', unit: 'm/s' },
    min_inside_diameter: { label: 'Smallest inside diameter', dimension: 'length', unit: 'mm' },
    ok: { kind: 'yes-no', label: 'Wide enough' },
  },
  formula:
    'velocity = flow/area; min_inside_diameter = √(4 · flow/(π · velocity_limit)); ok = velocity ≤ velocity_limit',
  source:
    'Limits: several concurring hydraulic engineering guides (seen); a review article (Machine Design, 20 May 2004, seen) ' +
    'notes that they rest on practice rather than cited tests.',
  notes: ['These are limits of oil hydraulics, used as a guide for coolant and fuel.'],
  example: {
    flow: { value: 12, unit: 'L/min' },
    inside_diameter: { value: 16, unit: 'mm' },
    line_type: { value: 'suction' },
  },
  compute: ({ flow: volumeFlow, inside_diameter: diameter, line_type: kind }) => {
    const { name, limit, guidance } = velocityLimits[kind];
    const velocity = pipeVelocity(volumeFlow, diameter);
    const ok = !exceeds(velocity, limit);
    return {
      outputs: {
        velocity,
        velocity_limit: limit,
        min_inside_diameter: Math.sqrt((4 * volumeFlow) / (Math.PI * limit)),
        ok,
      },
      warnings: ok ? [] : [warning(`${name} line: the velocity is above ${limit} m/s (guidance: ${guidance}).`)],
    };
  },
});
