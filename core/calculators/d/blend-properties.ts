import { calculator, type NumberInput } from '../calculator.ts';
import { blended, type Fuel, petrol, ethanol as pureEthanol } from './blend.ts';

const table = 'property table of the Alternative Fuels Data Center, US Department of Energy; typical';

const densityOf = (fuel: Fuel) =>
  ({
    dimension: 'density',
    unit: 'kg/m3',
    must: { above: 0 },
    default: fuel.density,
    defaultSource: table,
  }) as const satisfies Omit<NumberInput, 'label'>;

const heatingValueOf = (fuel: Fuel) =>
  ({
    dimension: 'energyPerMass',
    unit: 'MJ/kg',
    must: { above: 0 },
    usual: { from: 15, to: 50 },
    default: fuel.heatingValue / 1e6,
    defaultSource: table,
  }) as const satisfies Omit<NumberInput, 'label'>;

const stoichiometricOf = (fuel: Fuel) =>
  ({
    dimension: 'number',
    unit: '-',
    must: { above: 0 },
    usual: { from: 5, to: 18 },
    default: fuel.stoichiometric,
    defaultSource: table,
  }) as const satisfies Omit<NumberInput, 'label'>;

export const blendProperties = calculator({
  id: 'D1',
  slug: 'blend-properties',
  title: 'Blend properties',
  about: 'What a blend of petrol and ethanol weighs, how much air it takes and how much more of it is needed.',
  inputs: {
    ethanol: {
      label: 'Ethanol, by volume',
      hint: 'as measured: what is sold as E85 changes with the season',
      dimension: 'fraction',
      unit: '%',
      must: { atLeast: 0, atMost: 100 },
    },
    petrol_density: {
      ...densityOf(petrol),
      label: 'Petrol: density',
      hint: 'without ethanol, at about 15.6 °C',
      usual: { from: 720, to: 780, because: 'range published for petrol' },
    },
    petrol_lhv: { ...heatingValueOf(petrol), label: 'Petrol: lower heating value' },
    petrol_afr_stoich: {
      ...stoichiometricOf(petrol),
      label: 'Petrol: stoichiometric air to fuel, by mass',
      hint: 'textbooks also give 14.6',
    },
    ethanol_density: {
      ...densityOf(pureEthanol),
      label: 'Ethanol: density',
      hint: 'at about 15.6 °C',
      usual: { from: 780, to: 810 },
    },
    ethanol_lhv: { ...heatingValueOf(pureEthanol), label: 'Ethanol: lower heating value' },
    ethanol_afr_stoich: { ...stoichiometricOf(pureEthanol), label: 'Ethanol: stoichiometric air to fuel, by mass' },
  },
  outputs: {
    density: { label: 'Density', dimension: 'density', unit: 'kg/m3' },
    ethanol_mass_fraction: { label: 'Ethanol, by mass', dimension: 'fraction', unit: '-' },
    afr_stoich: { label: 'Stoichiometric air to fuel, by mass', dimension: 'number', unit: '-' },
    lhv_mass: { label: 'Lower heating value by mass', dimension: 'energyPerMass', unit: 'MJ/kg' },
    lhv_volume: { label: 'Lower heating value by volume', dimension: 'energyPerVolume', unit: 'MJ/L' },
    volume_factor_vs_petrol: {
      label: 'Volume against petrol',
      hint: 'for the same air at the same lambda',
      dimension: 'number',
      unit: '-',
    },
  },
  formula:
    'x = ethanol by volume; density = 792 · x + 745 · (1 − x); w = 792 · x/density; afr_stoich = 9.0 · w + 14.7 · (1 − w); ' +
    'lhv_mass = 26.95 · w + 43.44 · (1 − w); lhv_volume = lhv_mass · density; ' +
    'volume_factor_vs_petrol = 745 · 14.7/(density · afr_stoich)',
  source:
    'Derived by hand; component values from the property table of the Alternative Fuels Data Center, US Department of ' +
    'Energy (seen): petrol 6.22 lb/gal and 18676 Btu/lb, ethanol 6.61 lb/gal and 11585 Btu/lb, typical. Ethanol takes ' +
    '9.00 by hand: C₂H₅OH + 3 O₂, air with 23.14 % of oxygen by mass.',
  notes: [
    'Fuel sold as E85 holds 51 to 83 % of ethanol (ASTM D5798) and changes with the season: measure it.',
    'Density falls by about 0.1 % for each kelvin above 15.6 °C.',
    'The excess volume of mixing, below 0.5 %, is left out.',
    'Ratios are weighed by mass; blending them by volume is a common error.',
  ],
  example: { ethanol: { value: 85, unit: '%' } },
  compute: (given) => {
    const first: Fuel = {
      density: given.petrol_density,
      heatingValue: given.petrol_lhv,
      stoichiometric: given.petrol_afr_stoich,
    };
    const second: Fuel = {
      density: given.ethanol_density,
      heatingValue: given.ethanol_lhv,
      stoichiometric: given.ethanol_afr_stoich,
    };
    const { density, massFraction, heatingValue, stoichiometric } = blended(first, second, given.ethanol);
    return {
      outputs: {
        density,
        ethanol_mass_fraction: massFraction,
        afr_stoich: stoichiometric,
        lhv_mass: heatingValue,
        lhv_volume: heatingValue * density,
        volume_factor_vs_petrol: (first.density * first.stoichiometric) / (density * stoichiometric),
      },
    };
  },
});
