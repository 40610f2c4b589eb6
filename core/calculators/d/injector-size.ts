import { calculator, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import {
  actualPressure,
  duty,
  dutyLimit,
  dutyWarning,
  fuelCaution,
  fuelDensity,
  injectorFlow,
  injectors,
  power,
  ratedPressure,
  specificConsumption,
} from './fuel-inputs.ts';
import { flowFactor } from './orifice.ts';

const common = {
  injectors,
  bsfc: specificConsumption,
  duty,
  density: fuelDensity,
  rated_dp: ratedPressure,
  actual_dp: actualPressure,
} as const;

const fuelMassFlow = { label: 'Fuel', dimension: 'massFlow', unit: 'lb/h' } as const;

const source =
  'Derived by hand: mass balance, and the square-root law of an orifice (Bernoulli). Duty of 80 to 85 % and typical ' +
  'consumption: common practice, no published source.';

const deadTimeNote =
  'Dead time is not considered here: D6 tells how much of the duty it takes at the engine speed in question.';

const pressureNote =
  'Pressure across the injector: base rail pressure with a boost-referenced regulator; rail less boost with a fixed rail.';

const dutyWarnings = (share: number) => (exceeds(share, dutyLimit) ? [warning(dutyWarning)] : []);

export const injectorSize = calculator({
  id: 'D3',
  slug: 'injector-size',
  title: 'Injector size',
  about: 'How much each injector must flow for a power.',
  inputs: { power, ...common },
  outputs: {
    fuel_mass_flow: fuelMassFlow,
    injector_flow_at_actual: { label: 'Injector, at actual pressure', dimension: 'volumeFlow', unit: 'cc/min' },
    injector_flow_at_rated: { label: 'Injector, at rated pressure', dimension: 'volumeFlow', unit: 'cc/min' },
  },
  formula:
    'fuel_mass_flow = power · bsfc; injector_flow_at_actual = fuel_mass_flow/(injectors · duty · density); ' +
    'injector_flow_at_rated = injector_flow_at_actual · √(rated_dp/actual_dp)',
  source,
  notes: [deadTimeNote, pressureNote],
  caution: fuelCaution,
  example: {
    power: { value: 500, unit: 'hp' },
    injectors: { value: 4 },
    bsfc: { value: 0.9, unit: 'lb/hp/h' },
    duty: { value: 85, unit: '%' },
    density: { value: 785, unit: 'kg/m3' },
    rated_dp: { value: 3, unit: 'bar' },
    actual_dp: { value: 3, unit: 'bar' },
  },
  compute: (given) => {
    const fuel = given.power * given.bsfc;
    const atActual = fuel / (given.injectors * given.duty * given.density);
    return {
      outputs: {
        fuel_mass_flow: fuel,
        injector_flow_at_actual: atActual,
        injector_flow_at_rated: atActual * flowFactor(given.actual_dp, given.rated_dp),
      },
      warnings: dutyWarnings(given.duty),
    };
  },
});

export const injectorPower = calculator({
  id: 'D4',
  slug: 'injector-power',
  title: 'Power supported by given injectors',
  about: 'For how much power given injectors bring fuel.',
  inputs: { injector_flow_at_rated: { ...injectorFlow, label: 'Injector flow at rated pressure' }, ...common },
  outputs: {
    fuel_mass_flow: fuelMassFlow,
    power: { label: 'Fuel for', dimension: 'power', unit: 'hp' },
  },
  formula:
    'fuel_mass_flow = injector_flow_at_rated · √(actual_dp/rated_dp) · injectors · duty · density; power = fuel_mass_flow/bsfc',
  source,
  notes: [
    'Fuel is one limit among several: there is fuel for this power, which is not what the engine makes.',
    deadTimeNote,
    pressureNote,
  ],
  caution: fuelCaution,
  example: {
    injector_flow_at_rated: { value: 1300, unit: 'cc/min' },
    injectors: { value: 4 },
    bsfc: { value: 0.9, unit: 'lb/hp/h' },
    duty: { value: 85, unit: '%' },
    density: { value: 785, unit: 'kg/m3' },
    rated_dp: { value: 3, unit: 'bar' },
    actual_dp: { value: 3, unit: 'bar' },
  },
  compute: (given) => {
    const flow = given.injector_flow_at_rated * flowFactor(given.rated_dp, given.actual_dp);
    const fuel = flow * given.injectors * given.duty * given.density;
    return { outputs: { fuel_mass_flow: fuel, power: fuel / given.bsfc }, warnings: dutyWarnings(given.duty) };
  },
});
