import { type Calculator, calculator, type Warning, warning } from '../calculator.ts';
import { frictionColebrook, frictionHaaland, pipeFriction } from '../e/friction.ts';
import { flow, heightRise, insideDiameter, minorLoss, roughness, runLength, viscosity } from '../e/pipe.ts';
import { pressureDrop } from '../e/pressure-drop.ts';
import { exceeds } from '../limits.ts';
import { fuelDensity, fuelPressureCaution } from './fuel-inputs.ts';

/** Fuel lines [m/s, Pa]; common practice, no published source. Beyond the suction ones fuel forms vapour. */
const suctionVelocity = 1;
const suctionDrop = 5000;
const pressureVelocity = 3;

/** The drop that E2 finds, so that a line has one answer wherever it is asked. SI in and out. */
function dropIn(line: Parameters<Calculator['modes'][number]['compute']>[0]) {
  const [mode] = pressureDrop.modes;
  if (mode === undefined) throw new Error('E2 has no way of being asked.');
  const { outputs, warnings = [] } = mode.compute(line);
  return { outputs, warnings };
}

function numberIn(outputs: ReturnType<typeof dropIn>['outputs'], name: string): number {
  const value = outputs[name];
  if (typeof value !== 'number') throw new Error(`E2 gave no ${name}.`);
  return value;
}

function sideWarnings(side: 'suction' | 'pressure', velocity: number, drop: number): readonly Warning[] {
  const most = side === 'suction' ? suctionVelocity : pressureVelocity;
  const warnings: Warning[] = [];
  if (exceeds(velocity, most)) {
    const why = side === 'suction' ? 'fuel can form vapour before the pump' : 'take a larger line';
    warnings.push(warning(`The fuel runs above ${most} m/s on the ${side} side: ${why} (common practice).`));
  }
  if (side === 'suction' && exceeds(drop, suctionDrop)) {
    warnings.push(warning('The suction side loses more than 5 kPa: fuel can form vapour (common practice).'));
  }
  return warnings;
}

export const fuelLine = calculator({
  id: 'D8',
  slug: 'fuel-line-pressure-drop',
  title: 'Fuel line pressure drop',
  about: 'What pressure a fuel line takes, or the friction factor alone.',
  inputs: {
    flow: { ...flow, unit: 'L/h' },
    inside_diameter: insideDiameter,
    length: runLength,
    density: { ...fuelDensity, hint: 'at 20 °C: petrol 745 kg/m³, E85 785 kg/m³' },
    viscosity: { ...viscosity, hint: 'at 20 °C: petrol 0.5 to 0.6 mPa·s, E85 about 1.0 mPa·s' },
    roughness,
    minor_k: minorLoss,
    height_rise: heightRise,
    side: {
      kind: 'choice',
      label: 'Side of the pump',
      choices: { pressure: 'Pressure side, behind the pump', suction: 'Suction side, before the pump' },
      default: 'pressure',
      defaultSource: 'a suction line is asked for by name',
    },
    reynolds: { label: 'Reynolds number', dimension: 'number', unit: '-', must: { above: 0 }, usual: { from: 4000 } },
    relative_roughness: {
      label: 'Roughness to diameter',
      dimension: 'number',
      unit: '-',
      must: { atLeast: 0, below: 1 },
      usual: { to: 0.05 },
    },
  },
  outputs: {
    velocity: { label: 'Velocity', dimension: 'speed', unit: 'm/s' },
    reynolds: { label: 'Reynolds number', dimension: 'number', unit: '-' },
    friction_factor: { label: 'Darcy friction factor', dimension: 'number', unit: '-' },
    friction_colebrook: { label: 'By Colebrook', dimension: 'number', unit: '-' },
    friction_haaland: { label: 'By Haaland', dimension: 'number', unit: '-' },
    regime: { kind: 'text', label: 'Regime' },
    dp_friction: { label: 'Drop by friction', dimension: 'pressureDifference', unit: 'kPa' },
    dp_minor: { label: 'Drop in bends and fittings', dimension: 'pressureDifference', unit: 'kPa' },
    dp_static: { label: 'Drop by height', dimension: 'pressureDifference', unit: 'kPa' },
    dp_total: { label: 'Total drop', dimension: 'pressureDifference', unit: 'kPa' },
  },
  formula: `${pressureDrop.formula}. Haaland: 1/√f = -1.8 log10((e/(3.7 d))^1.11 + 6.9/Re)`,
  source:
    `${pressureDrop.source} Viscosity: property table of the Alternative Fuels Data Center, US Department of Energy ` +
    '(seen): ethanol 1.19 cP, petrol 0.37 to 0.44 cP at 60 °F. Velocities: common practice, no published source.',
  notes: ['Count what filters and valves lose by their data sheets; they are not in the figure.'],
  caution: fuelPressureCaution,
  example: {
    flow: { value: 200, unit: 'L/h' },
    inside_diameter: { value: 8, unit: 'mm' },
    length: { value: 5, unit: 'm' },
    density: { value: 745, unit: 'kg/m3' },
    viscosity: { value: 0.55, unit: 'mPa*s' },
    roughness: { value: 0.0015, unit: 'mm' },
    minor_k: { value: 3 },
  },
  modes: [
    {
      name: 'line',
      title: 'pressure drop of a line',
      needs: ['flow', 'inside_diameter', 'length', 'density', 'viscosity'],
      may: ['roughness', 'minor_k', 'height_rise', 'side'],
      compute: (given) => {
        const { outputs, warnings } = dropIn(given);
        const told = {
          velocity: numberIn(outputs, 'velocity'),
          reynolds: numberIn(outputs, 'reynolds'),
          // Nothing rubs where nothing flows.
          friction_factor: outputs['friction_factor'] === undefined ? undefined : numberIn(outputs, 'friction_factor'),
          regime: String(outputs['regime']),
          dp_friction: numberIn(outputs, 'dp_friction'),
          dp_minor: numberIn(outputs, 'dp_minor'),
          dp_static: numberIn(outputs, 'dp_static'),
          dp_total: numberIn(outputs, 'dp_total'),
        };
        return { outputs: told, warnings: [...warnings, ...sideWarnings(given.side, told.velocity, told.dp_total)] };
      },
    },
    {
      name: 'friction',
      title: 'friction factor alone',
      needs: ['reynolds', 'relative_roughness'],
      may: [],
      compute: ({ reynolds, relative_roughness: roughness }) => {
        const { factor, regime } = pipeFriction(reynolds, roughness);
        return {
          outputs: {
            friction_factor: factor,
            friction_colebrook: frictionColebrook(reynolds, roughness),
            friction_haaland: frictionHaaland(reynolds, roughness),
            regime,
          },
        };
      },
    },
  ],
});
