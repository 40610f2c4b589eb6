import { calculator } from '../calculator.ts';

/** How far the ratio of coolant heat to brake power may be off. */
const ratioUncertainty = 0.25;

export const coolant = calculator({
  id: 'J3',
  slug: 'coolant',
  title: 'Coolant heat and flow',
  about: 'The heat that the coolant takes up at a power, and the flow that carries it away.',
  inputs: {
    brake_power: { label: 'Brake power', dimension: 'power', unit: 'kW', must: { above: 0 } },
    coolant_to_brake_ratio: {
      label: 'Coolant heat to brake power',
      hint: '0.6 to 1.0 at full power, up to 1.5 at light load',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      usual: { from: 0.6, to: 1.5 },
    },
    coolant_density: {
      label: 'Coolant density',
      hint: '50/50 glycol about 1040; water at 90 °C 965',
      dimension: 'density',
      unit: 'kg/m3',
      must: { above: 0 },
      usual: { from: 900, to: 1150 },
    },
    coolant_cp: {
      label: 'Coolant heat capacity',
      hint: '50/50 glycol about 3.5; water 4.2',
      dimension: 'heatCapacity',
      unit: 'kJ/kg/K',
      must: { above: 0 },
      usual: { from: 2.5, to: 4.3 },
    },
    coolant_rise: {
      label: 'Rise through the engine',
      dimension: 'temperatureDifference',
      unit: 'dK',
      must: { above: 0 },
      usual: { to: 20 },
    },
  },
  outputs: {
    coolant_heat: { label: 'Coolant heat', dimension: 'power', unit: 'kW' },
    coolant_heat_low: { label: 'Coolant heat, low end', dimension: 'power', unit: 'kW' },
    coolant_heat_high: { label: 'Coolant heat, high end', dimension: 'power', unit: 'kW' },
    coolant_mass_flow: { label: 'Coolant mass flow', dimension: 'massFlow', unit: 'kg/s' },
    coolant_flow: { label: 'Coolant flow', dimension: 'volumeFlow', unit: 'L/min' },
    coolant_flow_low: { label: 'Coolant flow, low end', dimension: 'volumeFlow', unit: 'L/min' },
    coolant_flow_high: { label: 'Coolant flow, high end', dimension: 'volumeFlow', unit: 'L/min' },
  },
  formula:
    'coolant_heat = brake_power · coolant_to_brake_ratio; coolant_mass_flow = coolant_heat/(coolant_cp · coolant_rise); ' +
    'coolant_flow = coolant_mass_flow/coolant_density; low and high ends at 25 % less and more',
  source:
    'Heat balance; derived by hand. Ratio: Heywood, Internal Combustion Engine Fundamentals, energy balance at maximum ' +
    'power (from memory): coolant 17 to 26 % and brake 25 to 28 % of the fuel energy.',
  notes: ['The ratio is known to ±25 % only: plan for the band, not for one figure.'],
  example: {
    brake_power: { value: 300, unit: 'kW' },
    coolant_to_brake_ratio: { value: 0.7 },
    coolant_density: { value: 1040, unit: 'kg/m3' },
    coolant_cp: { value: 3.5, unit: 'kJ/kg/K' },
    coolant_rise: { value: 8, unit: 'dK' },
  },
  compute: ({ brake_power, coolant_to_brake_ratio, coolant_density, coolant_cp, coolant_rise }) => {
    const heat = brake_power * coolant_to_brake_ratio;
    const massFlow = heat / (coolant_cp * coolant_rise);
    const flow = massFlow / coolant_density;
    return {
      outputs: {
        coolant_heat: heat,
        coolant_heat_low: heat * (1 - ratioUncertainty),
        coolant_heat_high: heat * (1 + ratioUncertainty),
        coolant_mass_flow: massFlow,
        coolant_flow: flow,
        coolant_flow_low: flow * (1 - ratioUncertainty),
        coolant_flow_high: flow * (1 + ratioUncertainty),
      },
    };
  },
});
