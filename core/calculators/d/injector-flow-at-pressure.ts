import { calculator, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { fuelDensity, fuelPressureCaution, injectorFlow, pressureAcross } from './fuel-inputs.ts';
import { flowFactor } from './orifice.ts';

/** Pressure [Pa] above which some injectors stop opening; their data sheets tell. */
const openingLimit = 5e5;

export const injectorFlowAtPressure = calculator({
  id: 'D5',
  slug: 'injector-flow-at-pressure',
  title: 'Injector flow at another pressure',
  about: 'What an injector flows at a pressure, or with a fluid, that it was not rated at.',
  inputs: {
    flow: injectorFlow,
    dp: { ...pressureAcross, label: 'Pressure across the injector, as rated' },
    new_dp: { ...pressureAcross, label: 'New pressure across the injector', hint: 'boost takes from a fixed rail' },
    density_rated: {
      ...fuelDensity,
      label: 'Density of the fluid it was rated with',
      hint: 'data sheet',
      optional: true,
    },
    density_actual: { ...fuelDensity, label: 'Density of the fuel', optional: true },
  },
  outputs: { new_flow: { label: 'Injector flow at the new pressure', dimension: 'volumeFlow', unit: 'cc/min' } },
  formula:
    'new_flow = flow · √(new_dp/dp) · √(density_rated/density_actual), the second root only when both densities are given',
  source:
    'Orifice relation (Bernoulli); derived by hand. Opening limit of about 5 bar: common practice, no published source.',
  notes: ['A flow by volume; far from the rated pressure the law of the root holds less well.'],
  caution: fuelPressureCaution,
  example: {
    flow: { value: 440, unit: 'cc/min' },
    dp: { value: 3, unit: 'bar' },
    new_dp: { value: 4, unit: 'bar' },
  },
  compute: ({ flow, dp, new_dp, density_rated: rated, density_actual: actual }) => {
    const both = rated !== undefined && actual !== undefined;
    const warnings: Warning[] = [];
    if (!both && (rated !== undefined || actual !== undefined)) {
      warnings.push(warning('One density alone changes nothing: give both, or neither.'));
    }
    if (exceeds(new_dp / dp, 2) || fallsShort(new_dp / dp, 0.5)) {
      warnings.push(warning('The pressure changes by more than a factor of 2: measure the flow instead.'));
    }
    if (exceeds(new_dp, openingLimit)) {
      warnings.push(warning('Above about 5 bar some injectors stop opening: see the data sheet (common practice).'));
    }
    const densityFactor = both ? Math.sqrt(rated / actual) : 1;
    return { outputs: { new_flow: flow * flowFactor(dp, new_dp) * densityFactor }, warnings };
  },
});
