/** The lines of the target sheet: what a build aims at and what it assumes, each with its unit. */
import { Refusal } from '../refusal.ts';
import { type Dimension, dimensions } from '../units/dimensions.ts';
import { toSI, unitsOf } from '../units/measure.ts';
import { parseMeasure } from '../units/parse-measure.ts';
import { plainKey } from './fact-terms.ts';

export interface TargetTerm {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly dimension: Dimension;
  readonly unit: string;
  /** Taken while nobody has filled the line in, and where it comes from. */
  readonly assumed?: { readonly value: string; readonly source: string };
}

const common = 'common practice, no published source';

function term(
  name: string,
  dimension: Dimension,
  unit: string,
  hint = '',
  assumed?: readonly [value: string, source: string],
): TargetTerm {
  const label = name.charAt(0).toUpperCase() + name.slice(1);
  return {
    name,
    label,
    hint,
    dimension,
    unit,
    ...(assumed === undefined ? {} : { assumed: { value: assumed[0], source: assumed[1] } }),
  };
}

export const targetTerms: readonly TargetTerm[] = [
  term('power', 'power', 'kW', 'at the crankshaft'),
  term('power rpm', 'rotation', 'rpm', 'speed at which the power is wanted'),
  term('rev limit', 'rotation', 'rpm'),
  term('boost', 'pressureGauge', 'bar', 'in the manifold, over the air outside'),
  term('least ethanol', 'fraction', '%', 'by volume: the leanest in ethanol that it will be fuelled with'),
  term('most ethanol', 'fraction', '%', 'by volume: the richest in ethanol that it will be fuelled with'),
  term(
    'fuel consumption at least ethanol',
    'fuelConsumption',
    'g/kWh',
    'at full power; petrol turbo 335 to 395 g/kWh, common practice',
  ),
  term(
    'fuel consumption at most ethanol',
    'fuelConsumption',
    'g/kWh',
    'at full power; E85 turbo 485 to 580 g/kWh, common practice',
  ),
  term('lambda', 'number', '-', 'at full power'),
  term('volumetric efficiency', 'fraction', '%', 'at the speed of the power target'),
  term('charge temperature', 'temperature', 'degC', 'in the manifold, the highest that is planned for'),
  term('ambient temperature', 'temperature', 'degC', 'hottest day that it must do this on'),
  term('ambient pressure', 'pressureAbsolute', 'kPa', 'barometer where it is driven', [
    '101.325',
    'standard atmosphere, ISO 2533',
  ]),
  term('bore', 'length', 'mm', 'taken while no part says it'),
  term('stroke', 'length', 'mm', 'taken while no part says it'),
  term('cylinders', 'number', '-', 'taken while no part says it'),
  term('deck clearance', 'length', 'mm', 'taken while no part says it'),
  term('least displacement', 'volume', 'cc'),
  term('most displacement', 'volume', 'cc', 'of a class or a paper'),
  term('least compression ratio', 'number', '-'),
  term('most compression ratio', 'number', '-', 'for the fuel and the boost'),
  term('injectors', 'number', '-', 'that share the fuel; as many as cylinders when left empty'),
  term('duty limit', 'fraction', '%', 'most that an injector may be driven', ['85', common]),
  term(
    'base fuel pressure',
    'pressureGauge',
    'bar',
    'across the injectors, with a regulator that follows the manifold',
  ),
  term('fuel line loss', 'pressureDifference', 'bar', 'allowed in line and filter', ['0.3', common]),
  term('pump head-room', 'fraction', '%', 'of the pump’s flow over what the engine burns', ['20', common]),
  term('fuel viscosity', 'viscosity', 'mPa*s', 'petrol 0.5 to 0.6, ethanol 1.1 at 20 °C (from memory)', [
    '1.2',
    'on the safe side of petrol and ethanol at 20 °C; from memory',
  ]),
  term('inlet loss', 'pressureDifference', 'kPa', 'filter and pipe before the compressor', ['3', common]),
  term('charge loss', 'pressureDifference', 'kPa', 'pipes and cooler after the compressor', ['10', common]),
  term('compressor efficiency', 'fraction', '%', 'taken while no part says it', ['70', common]),
  term('cooler effectiveness', 'fraction', '%', 'taken while no part says it', ['70', common]),
  term('sensor head-room', 'fraction', '%', 'kept free of the sensor’s range', ['10', common]),
  term('exhaust temperature', 'temperature', 'degC', 'in the pipe after the turbine', ['750', common]),
  term('exhaust pressure', 'pressureAbsolute', 'kPa', 'absolute, in the pipe after the turbine', ['115', common]),
  term('turbo oil flow', 'volumeFlow', 'L/min', 'through the turbocharger’s bearings', ['2', common]),
  term('oil density', 'density', 'kg/m3', 'hot', ['830', common]),
  term('oil viscosity', 'viscosity', 'mPa*s', 'hot', ['10', common]),
  term('coolant heat to power', 'number', '-', '0.6 to 1.0 at full power', [
    '0.8',
    'Heywood’s energy balance at full power, from memory',
  ]),
  term('coolant rise', 'temperatureDifference', 'dK', 'through the engine', ['8', common]),
  term('coolant density', 'density', 'kg/m3', '50/50 glycol', ['1040', 'handbook value, from memory']),
  term('coolant heat capacity', 'heatCapacity', 'kJ/kg/K', '50/50 glycol', ['3.5', 'handbook value, from memory']),
  term('most piston speed', 'speed', 'm/s', 'mean; 20 for cast parts, 25 for any street engine', ['25', common]),
  term('battery volts', 'voltage', 'V', 'running', ['13.5', common]),
  term('wire temperature', 'temperature', 'degC', 'of the conductor at work', ['60', common]),
];

const byName = new Map(targetTerms.map((one) => [one.name, one]));
export const targetTerm = (name: string): TargetTerm | undefined => byName.get(plainKey(name));

const whole = new Set(['cylinders', 'injectors']);

/**
 * Checks a line of the target sheet; a name outside the vocabulary is the builder's own and is checked where it is used.
 * @throws Refusal `bad-input` naming the line.
 */
export function checkTarget(name: string, value: string, unit: string): void {
  const known = targetTerm(name);
  if (known === undefined) return;
  const { value: read, unit: readUnit } = parseMeasure(value, known.dimension, { field: known.name, unit });
  const { name: what } = dimensions[known.dimension];
  const units = unitsOf(known.dimension).filter((one) => one !== '-');
  const accepted = `${what}${units.length === 0 ? '' : ` in ${units.join(', ')}`}`;
  const refuse = (problem: string): never => {
    throw new Refusal('bad-input', `The ${known.name} ${problem}. Nothing was changed.`, {
      field: known.name,
      accepted,
    });
  };
  if (whole.has(known.name) && !(Number.isInteger(read) && read > 0)) refuse('must be a whole number above 0');
  const mayBeNegative = known.dimension === 'temperature' || known.name === 'deck clearance';
  if (read < 0 && !mayBeNegative) refuse('can’t be below 0');
  if (known.dimension === 'fraction') {
    // A cylinder may be filled more than full, but 95 typed without % is not 9,500 %.
    const most = known.name === 'volumetric efficiency' ? 2 : 1;
    if (toSI(read, readUnit, 'fraction') > most) refuse(`can’t be above ${most * 100} %`);
  }
  if (known.dimension === 'temperature' && toSI(read, readUnit, 'temperature') < 0) {
    refuse('can’t be below absolute zero');
  }
}
