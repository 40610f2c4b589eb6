import { calculator, graveWarning, type Warning, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';

/** Mach numbers above which a pipe costs pressure; common practice, no published source. */
const pipeLimits = { charge: 0.15, inlet: 0.2, exhaust: 0.35 } as const;
const pipeNames = { charge: 'a charge pipe', inlet: 'an inlet pipe', exhaust: 'an exhaust' } as const;

/** Above this Mach number the density changes along the pipe. */
const simpleDropLimit = 0.3;

function machWarnings(mach: number, pipe: keyof typeof pipeLimits | undefined): Warning[] {
  const warnings: Warning[] = [];
  if (exceeds(mach, 1)) {
    warnings.push(graveWarning('Above Mach 1: a pipe of this size can’t pass that flow at this pressure.'));
  }
  if (pipe !== undefined && exceeds(mach, pipeLimits[pipe])) {
    warnings.push(
      warning(
        `Above Mach ${pipeLimits[pipe]} in ${pipeNames[pipe]}, pressure is lost (common practice): a larger pipe.`,
      ),
    );
  }
  if (exceeds(mach, simpleDropLimit)) {
    warnings.push(warning(`Above Mach ${simpleDropLimit} the simple formula for pressure drop no longer holds.`));
  }
  return warnings;
}

export const pipeVelocity = calculator({
  id: 'J1',
  slug: 'pipe-velocity',
  title: 'Pipe velocity and Mach number',
  about: 'How fast a gas flows in a pipe, and how near that is to the speed of sound.',
  inputs: {
    mass_flow: { label: 'Mass flow', dimension: 'massFlow', unit: 'kg/s', must: { above: 0 } },
    temperature: {
      label: 'Gas temperature',
      dimension: 'temperature',
      unit: 'degC',
      must: { above: -273.15 },
      usual: { from: -60, to: 1100 },
    },
    pressure_abs: {
      label: 'Absolute pressure',
      dimension: 'pressureAbsolute',
      unit: 'kPa',
      must: { above: 0 },
    },
    inside_diameter: { label: 'Inside diameter', dimension: 'length', unit: 'mm', must: { above: 0 } },
    gas_constant: {
      label: 'Gas constant',
      hint: 'air 287.05; burned gas about 287 to 290',
      dimension: 'heatCapacity',
      unit: 'J/kg/K',
      must: { above: 0 },
      usual: { from: 250, to: 320 },
      default: 287.05,
      defaultSource: 'air',
    },
    gamma: {
      label: 'Ratio of specific heats',
      hint: 'air 1.4; burned gas about 1.33 to 1.35',
      dimension: 'number',
      unit: '-',
      must: { above: 1 },
      usual: { from: 1.2, to: 1.67 },
      default: 1.4,
      defaultSource: 'air',
    },
    pipe: {
      kind: 'choice',
      label: 'Which pipe',
      choices: { charge: 'Charge pipe', inlet: 'Inlet pipe', exhaust: 'Exhaust' },
      optional: true,
    },
  },
  outputs: {
    gas_density: { label: 'Gas density', dimension: 'density', unit: 'kg/m3' },
    velocity: { label: 'Velocity', dimension: 'speed', unit: 'm/s' },
    mach: { label: 'Mach number', dimension: 'number', unit: '-' },
  },
  formula:
    'gas_density = pressure_abs/(gas_constant · T); velocity = mass_flow/(gas_density · π/4 · inside_diameter²); ' +
    'mach = velocity/√(gamma · gas_constant · T)',
  source:
    'Continuity, ideal gas, speed of sound; derived by hand. Burned gas: Heywood, Internal Combustion Engine Fundamentals ' +
    '(from memory). Mach limits: common practice, no published source.',
  notes: [
    'Common practice, no published source: at most Mach 0.15 in a charge pipe, 0.2 in an inlet pipe, 0.35 in an exhaust.',
  ],
  example: {
    mass_flow: { value: 40, unit: 'lb/min' },
    temperature: { value: 45, unit: 'degC' },
    pressure_abs: { value: 250, unit: 'kPa' },
    inside_diameter: { value: 60.3, unit: 'mm' },
  },
  compute: ({ mass_flow, temperature, pressure_abs, inside_diameter, gas_constant, gamma, pipe }) => {
    const density = pressure_abs / (gas_constant * temperature);
    const velocity = mass_flow / (density * (Math.PI / 4) * inside_diameter ** 2);
    const mach = velocity / Math.sqrt(gamma * gas_constant * temperature);
    return { outputs: { gas_density: density, velocity, mach }, warnings: machWarnings(mach, pipe) };
  },
});
