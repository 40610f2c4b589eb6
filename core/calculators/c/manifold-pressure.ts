import { calculator, graveWarning, type Warning, warning } from '../calculator.ts';
import { petrol } from '../d/blend.ts';
import { fuelCaution, power, specificConsumption } from '../d/fuel-inputs.ts';
import { exceeds, fallsShort } from '../limits.ts';
import {
  airGasConstant,
  barometer,
  chargeTemperature,
  displacement,
  rpm,
  sweptFlow,
  volumetricEfficiency,
} from './air.ts';

/** Air per energy that petrol and ethanol engines take [kg/kWh]; outside it, bsfc and afr are of different fuels. */
const leastAir = 3.3;
const mostAir = 4.9;
const joulesPerKilowattHour = 3.6e6;

export const manifoldPressureForPower = calculator({
  id: 'C2',
  slug: 'manifold-pressure-for-power',
  title: 'Manifold pressure for a target power',
  about: 'How much air and boost a power asks for.',
  inputs: {
    power,
    bsfc: specificConsumption,
    afr: {
      label: 'Air to fuel, by mass',
      hint: 'common practice at full load: petrol turbo 11.2 to 12.0, E85 7.0 to 8.0',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      usual: { from: 5, to: 18 },
    },
    displacement,
    rpm,
    ve: volumetricEfficiency,
    charge_temp: chargeTemperature,
    baro: barometer,
  },
  outputs: {
    fuel_mass_flow: { label: 'Fuel', dimension: 'massFlow', unit: 'lb/h' },
    air_mass_flow: { label: 'Air', dimension: 'massFlow', unit: 'lb/min' },
    map_abs: { label: 'Manifold pressure, absolute', dimension: 'pressureAbsolute', unit: 'kPa' },
    boost_gauge: { label: 'Boost, gauge', dimension: 'pressureGauge', unit: 'psi' },
  },
  formula:
    'fuel_mass_flow = power · bsfc; air_mass_flow = fuel_mass_flow · afr; ' +
    'map_abs = air_mass_flow · R · charge_temp · 120/(ve · displacement · rpm); boost_gauge = map_abs − baro',
  source:
    'Derived by hand from the ideal gas and the definition of volumetric efficiency (Heywood, Stone, from memory). ' +
    'Typical consumption and air to fuel: common practice, no published source.',
  notes: [
    'Typical (common practice): petrol turbo 0.55 to 0.65 lb/(hp·h) at 11.2 to 12.0; E85 0.80 to 0.95 lb/(hp·h) at 7.0 to 8.0.',
    'Plausible (common practice): about 9.5 to 10.5 hp for each lb/min of air; rich, conservative entries give less.',
  ],
  caution: fuelCaution,
  example: {
    power: { value: 400, unit: 'hp' },
    bsfc: { value: 0.6, unit: 'lb/hp/h' },
    afr: { value: 11.5 },
    displacement: { value: 1998, unit: 'cc' },
    rpm: { value: 7000, unit: 'rpm' },
    ve: { value: 0.95 },
    charge_temp: { value: 45, unit: 'degC' },
    baro: { value: 101.325, unit: 'kPa' },
  },
  compute: ({ power: wanted, bsfc, afr, displacement: volume, rpm: omega, ve, charge_temp: temperature, baro }) => {
    const fuel = wanted * bsfc;
    const air = fuel * afr;
    const pressure = (air * airGasConstant * temperature) / (ve * sweptFlow(volume, omega));
    const warnings: Warning[] = [];
    if (exceeds(pressure, baro) && exceeds(afr, petrol.stoichiometric)) {
      warnings.push(
        graveWarning(
          `Air to fuel is above ${petrol.stoichiometric}, the stoichiometric value of petrol: lean under boost.`,
        ),
      );
    }
    const airPerEnergy = bsfc * afr * joulesPerKilowattHour;
    if (fallsShort(airPerEnergy, leastAir) || exceeds(airPerEnergy, mostAir)) {
      warnings.push(
        warning(
          `Consumption and air to fuel don't seem to be of one fuel: ${airPerEnergy.toFixed(2)} kg of air for each kWh, ` +
            `outside ${leastAir} to ${mostAir}.`,
        ),
      );
    }
    return {
      outputs: { fuel_mass_flow: fuel, air_mass_flow: air, map_abs: pressure, boost_gauge: pressure - baro },
      warnings,
    };
  },
});
