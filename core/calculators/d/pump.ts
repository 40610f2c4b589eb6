import { calculator, graveWarning, type NumberInput, type Warning, warning } from '../calculator.ts';
import { pipeVelocity } from '../e/pipe.ts';
import { velocityLimits } from '../e/velocity-limits.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { fuelDensity, fuelPressureCaution, power, specificConsumption } from './fuel-inputs.ts';

const gauge = { dimension: 'pressureGauge', unit: 'bar' } as const satisfies Omit<NumberInput, 'label'>;

export const pump = calculator({
  id: 'D7',
  slug: 'fuel-pump',
  title: 'Pump flow and pressure',
  about: 'What a fuel pump must deliver for a power, and at what pressure.',
  inputs: {
    power,
    bsfc: specificConsumption,
    density: fuelDensity,
    headroom: {
      label: 'Head-room',
      dimension: 'fraction',
      unit: '%',
      must: { atLeast: 0 },
      usual: { to: 100 },
      default: 20,
      defaultSource: 'common practice, no published source',
    },
    base_pressure: { ...gauge, label: 'Base pressure, gauge', must: { above: 0 }, usual: { from: 1, to: 10 } },
    boost_gauge: { ...gauge, label: 'Boost, gauge', hint: '0 without boost', usual: { from: 0, to: 5 } },
    line_loss: {
      label: 'Loss in line and filter',
      hint: 'D8 tells that of a line',
      dimension: 'pressureDifference',
      unit: 'bar',
      must: { atLeast: 0 },
      usual: { to: 2 },
    },
    pump_flow_at_pressure: {
      label: 'Pump flow at that pressure',
      hint: 'from its curve, at running voltage',
      dimension: 'volumeFlow',
      unit: 'L/h',
      must: { atLeast: 0 },
      optional: true,
    },
    return_inside_diameter: {
      label: 'Inside diameter of the return line',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
      usual: { from: 3, to: 25 },
      optional: true,
    },
  },
  outputs: {
    engine_flow: { label: 'The engine burns', dimension: 'volumeFlow', unit: 'L/h' },
    pump_flow_required: { label: 'The pump must deliver', dimension: 'volumeFlow', unit: 'L/h' },
    pump_pressure_gauge: { label: 'At a pressure, gauge', dimension: 'pressureGauge', unit: 'bar' },
    return_flow: { label: 'Back to the tank at full load', dimension: 'volumeFlow', unit: 'L/h' },
    return_velocity: { label: 'Velocity in the return line at full load', dimension: 'speed', unit: 'm/s' },
    pump_ok: { kind: 'yes-no', label: 'The pump delivers it' },
  },
  formula:
    'engine_flow = power · bsfc/density; pump_flow_required = engine_flow · (1 + headroom); ' +
    'pump_pressure_gauge = base_pressure + boost_gauge + line_loss (boost-referenced regulator); ' +
    'return_flow = pump_flow_at_pressure − engine_flow; pump_ok when pump_flow_at_pressure ≥ pump_flow_required',
  source:
    'Mass balance; derived by hand. Head-room of 20 %: common practice, no published source. Velocity in the return ' +
    'line: hydraulic engineering guides (seen), for oil.',
  notes: [
    'Read the pump’s flow from its curve at that pressure and at running voltage.',
    'Limits of a hanger, a filter or a pick-up are not covered.',
    'The current of the pump rises with pressure: see K2.',
    'At idle nearly all that the pump delivers goes back through the return line.',
  ],
  caution: fuelPressureCaution,
  example: {
    power: { value: 400, unit: 'hp' },
    bsfc: { value: 0.6, unit: 'lb/hp/h' },
    density: { value: 745, unit: 'kg/m3' },
    headroom: { value: 15, unit: '%' },
    base_pressure: { value: 3, unit: 'bar' },
    boost_gauge: { value: 1.5, unit: 'bar' },
    line_loss: { value: 0.2, unit: 'bar' },
    pump_flow_at_pressure: { value: 210, unit: 'L/h' },
  },
  compute: (given) => {
    const engineFlow = (given.power * given.bsfc) / given.density;
    const required = engineFlow * (1 + given.headroom);
    const delivered = given.pump_flow_at_pressure;
    const returned = delivered === undefined ? undefined : delivered - engineFlow;
    const line = given.return_inside_diameter;
    const velocity =
      returned === undefined || line === undefined || returned < 0 ? undefined : pipeVelocity(returned, line);
    const ok = delivered === undefined ? undefined : !fallsShort(delivered, required);
    const warnings: Warning[] = [];
    if (ok === false) {
      warnings.push(
        delivered !== undefined && fallsShort(delivered, engineFlow)
          ? graveWarning('The pump delivers less than the engine burns: it runs lean at full load.')
          : warning('The pump delivers the fuel, but not the head-room asked for.'),
      );
    }
    if (velocity !== undefined && exceeds(velocity, velocityLimits.return.limit)) {
      warnings.push(
        warning(
          `The return line runs above ${velocityLimits.return.limit} m/s: pressure may creep up; take a larger line (E3).`,
        ),
      );
    }
    return {
      outputs: {
        engine_flow: engineFlow,
        pump_flow_required: required,
        pump_pressure_gauge: given.base_pressure + given.boost_gauge + given.line_loss,
        return_flow: returned,
        return_velocity: velocity,
        pump_ok: ok,
      },
      warnings,
    };
  },
});
