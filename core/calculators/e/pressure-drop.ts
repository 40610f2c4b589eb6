import { calculator, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { pipeFriction } from './friction.ts';
import {
  density,
  flow,
  heightRise,
  insideDiameter,
  minorLoss,
  pipeVelocity,
  reynoldsNumber,
  roughness,
  runLength,
  viscosity,
} from './pipe.ts';

/** Standard gravity, ISO 2533 [m/s²]. */
const gravity = 9.806_65;

export const pressureDrop = calculator({
  id: 'E2',
  slug: 'pressure-drop',
  title: 'Velocity, Reynolds number, pressure drop',
  about: 'How fast a fluid runs in a hose or pipe, and what pressure is lost on the way.',
  inputs: {
    flow,
    inside_diameter: insideDiameter,
    length: runLength,
    density,
    viscosity,
    roughness,
    minor_k: minorLoss,
    height_rise: heightRise,
  },
  outputs: {
    velocity: { label: 'Velocity', dimension: 'speed', unit: 'm/s' },
    reynolds: { label: 'Reynolds number', dimension: 'number', unit: '-' },
    friction_factor: { label: 'Darcy friction factor', dimension: 'number', unit: '-' },
    regime: { kind: 'text', label: 'Regime' },
    dp_friction: { label: 'Drop by friction', dimension: 'pressureDifference', unit: 'kPa' },
    dp_minor: { label: 'Drop in bends and fittings', dimension: 'pressureDifference', unit: 'kPa' },
    dp_static: { label: 'Drop by height', dimension: 'pressureDifference', unit: 'kPa' },
    dp_total: { label: 'Total drop', dimension: 'pressureDifference', unit: 'kPa' },
  },
  formula:
    'velocity = flow/area; reynolds = density · velocity · d/viscosity; f = 64/Re up to Re 2000; from Re 4000 ' +
    '1/√f = -2 log10(e/(3.7 d) + 2.51/(Re √f)); the larger of both between; dp_friction = f · L/d · density · v²/2; ' +
    'dp_minor = K · density · v²/2; dp_static = density · g · height_rise; dp_total = their sum',
  source:
    'Darcy-Weisbach with the Colebrook equation, as in the open-source `fluids` library (seen); K values: Crane TP-410.',
  notes: ['Repeat it with cold oil, at the temperature of a start: the drop can be 20 times higher.'],
  example: {
    flow: { value: 8, unit: 'L/min' },
    inside_diameter: { value: 9.525, unit: 'mm' },
    length: { value: 1.5, unit: 'm' },
    density: { value: 1030, unit: 'kg/m3' },
    viscosity: { value: 0.8, unit: 'mPa*s' },
    roughness: { value: 0.0015, unit: 'mm' },
    minor_k: { value: 4 },
  },
  compute: (given) => {
    const { flow: volumeFlow, inside_diameter: d, length, density: rho, viscosity: mu, roughness } = given;
    const relativeRoughness = roughness / d;
    if (exceeds(relativeRoughness, 0.5)) {
      refuseInput(
        'roughness',
        'The roughness is more than the radius of the bore.',
        'at most half the inside diameter',
      );
    }
    const velocity = pipeVelocity(volumeFlow, d);
    const reynolds = reynoldsNumber(rho, velocity, d, mu);
    const { regime, factor } = pipeFriction(reynolds, relativeRoughness);
    const dynamic = (rho * velocity ** 2) / 2;
    const friction = (factor ?? 0) * (length / d) * dynamic;
    const minor = given.minor_k * dynamic;
    const still = rho * gravity * given.height_rise;
    const warnings: Warning[] = [];
    if (exceeds(relativeRoughness, 0.05)) {
      warnings.push(warning('The roughness is above 5 % of the bore, beyond what the friction law was measured on.'));
    }
    if (regime === 'transitional') {
      warnings.push(warning('Between Reynolds 2000 and 4000 the flow is transitional: the drop is uncertain.'));
    }
    return {
      outputs: {
        velocity,
        reynolds,
        friction_factor: factor,
        regime,
        dp_friction: friction,
        dp_minor: minor,
        dp_static: still,
        dp_total: friction + minor + still,
      },
      warnings,
    };
  },
});
