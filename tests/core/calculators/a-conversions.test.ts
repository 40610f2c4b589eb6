import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  lengthConversion,
  massFlowConversion,
  powerConversion,
  temperatureConversion,
  torqueConversion,
  volumeFlowConversion,
} from '../../../core/calculators/a/conversions.ts';
import { pressureConversion } from '../../../core/calculators/a/pressure.ts';
import { runCalculator } from '../../../core/calculators/run.ts';
import { unitsOf } from '../../../core/units/measure.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const factor = 'NIST SP 811 Appendix B (factor)';
const exact = 'exact definition (NIST SP 811 Appendix B bold factor, or product of exact factors)';
const byHand = 'derived by hand from the equation of this calculator';
const plain = (text: string, expected: string, source: string, tolerance = 1e-6) => ({
  case: `${text} is ${expected}`,
  inputs: `value ${text}`,
  expected: `result ${expected}`,
  tolerance,
  source,
});

checkCases(torqueConversion, [
  plain('1 lbf*ft', '1.355818 N*m', factor),
  plain('9 lbf*ft', '12.2023615 N*m', exact),
  plain('30 lbf*ft', '360 lbf*in', exact),
  plain('65 lbf*ft', '88.1281666 N*m', exact),
  plain('1 kgf*m', '9.80665 N*m', `${factor}, exact`, 1e-9),
]);

checkCases(pressureConversion, [
  plain('1 psi', '6.894757 kPa', `${factor}; confirmed in several public code bases quoting it`),
  plain('1 inHg', '3386.389 Pa', `${factor}, conventional inch of mercury`),
  plain('43.5 psi', '2.99921942 bar', exact),
  plain('29.92 inHg', '101.320759 kPa', exact),
  plain('3 bar', '43.5113213 psi', exact),
  {
    case: '22 psi gauge at 29.5 inHg barometer',
    inputs: 'gauge 22 psi; baro 29.5 inHg',
    expected: 'absolute 251.583136 kPa',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '245 kPa absolute at 98.2 kPa barometer',
    inputs: 'absolute 245 kPa; baro 98.2 kPa',
    expected: 'gauge 21.2915399 psi',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'absolute pressure below zero',
    inputs: 'gauge -20 psi; baro 14.7 psi',
    rejected: 'gauge',
    source: 'rule of the calculator: absolute pressure must be above zero',
  },
]);

checkCases(massFlowConversion, [
  plain('1 lb/min', '0.007559873 kg/s', factor),
  plain('45 lb/min', '340.194277 g/s', exact),
  plain('0.5 kg/s', '66.1386787 lb/min', exact),
]);

checkCases(volumeFlowConversion, [
  plain('1 gal/h', '63.0901964 cc/min', exact),
  plain('255 L/h', '67.3638734 gal/h', exact),
  plain('1300 cc/min', '78 L/h', exact),
]);

checkCases(powerConversion, [
  plain('1 hp', '745.6999 W', factor),
  plain('1 PS', '735.49875 W', `75 kgf*m/s, exact; ${factor} 7.354988 E+02`, 1e-9),
  plain('500 hp', '372.849936 kW', exact),
]);

checkCases(lengthConversion, [
  plain('2 thou', '0.0508 mm', exact),
  plain('0.04 in', '1.016 mm', exact),
  plain('86 mm', '3.38582677 in', exact),
  plain('12 thou', '304.8 um', exact),
]);

checkCases(temperatureConversion, [
  plain('68 degF', '20 degC', exact),
  plain('-40 degF', '-40 degC', exact),
  plain('35 degC', '308.15 K', exact),
  plain('85 degF', '302.594444 K', exact),
  {
    case: 'below absolute zero',
    inputs: 'value -300 degC',
    rejected: 'value',
    source: 'rule of the calculator: temperature must be above 0 K',
  },
]);

const converters = [
  torqueConversion,
  pressureConversion,
  massFlowConversion,
  volumeFlowConversion,
  powerConversion,
  lengthConversion,
  temperatureConversion,
];

describe('conversions', () => {
  it.each(converters)('$id comes back from every unit to where it started', (calculator) => {
    const value = calculator.inputs['value'];
    if (value === undefined || !('unit' in value)) throw new Error('no value');
    const units = unitsOf(value.dimension);
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
        fc.constantFrom(...units),
        fc.constantFrom(...units),
        (size, from, to) => {
          const there = runCalculator(calculator, {
            inputs: { value: { value: size, unit: from } },
            units: { result: to },
          });
          const middle = there.outputs['result']?.value as number;
          const back = runCalculator(calculator, {
            inputs: { value: { value: middle, unit: to } },
            units: { result: from },
          }).outputs['result']?.value as number;
          // Temperatures lose digits to the offset of their zero: 460 of them against a thousandth.
          expect(Math.abs(back - size)).toBeLessThanOrEqual(1e-9 * Math.max(size, 1));
        },
      ),
    );
  });

  it.each([
    [massFlowConversion, 'value -1 lb/min'],
    [volumeFlowConversion, 'value -1 L/h'],
    [lengthConversion, 'value -1 mm'],
    [temperatureConversion, 'value -459.68 degF'],
    [torqueConversion, 'value 1 kPa'],
    [torqueConversion, 'value 1'],
    [torqueConversion, ''],
  ])('refuses what can’t be: %#', (calculator, inputs) => {
    expect(refusalOf(calculator, inputs)).toMatchObject({ code: 'bad-input', field: 'value' });
  });

  it('takes a negative torque, for loosening', () => {
    expect(numberOf(torqueConversion, 'value -9 lbf*ft', 'result')).toBeCloseTo(-12.2023615, 6);
  });

  it('takes absolute zero itself', () => {
    expect(numberOf(temperatureConversion, 'value -273.15 degC', 'result', 'K')).toBe(0);
    expect(numberOf(temperatureConversion, 'value -459.67 degF', 'result', 'K')).toBe(0);
  });

  it('warns above 1e5 N·m, not at it', () => {
    expect(run(torqueConversion, 'value 100000 N*m').warnings).toEqual([]);
    expect(run(torqueConversion, 'value 100001 N*m').warnings).toHaveLength(1);
  });

  it('puts the maker’s figure above a torque', () => {
    expect(run(torqueConversion, 'value 1 N*m').caution).toContain('maker');
  });
});

describe('gauge and absolute pressure', () => {
  it('says which barometer was assumed', () => {
    expect(run(pressureConversion, 'gauge 1 bar', { absolute: 'bar' })).toMatchObject({
      mode: 'to-absolute',
      outputs: { absolute: { value: expect.closeTo(2.01325, 9), unit: 'bar' } },
      assumed: [{ name: 'baro', value: 101.325, unit: 'kPa', source: 'standard atmosphere, ISO 2533' }],
    });
  });

  it('speaks of a vacuum below the barometer', () => {
    const { outputs, notes } = run(pressureConversion, 'absolute 40 kPa; baro 100 kPa');
    expect(outputs).toEqual({ gauge: { value: -60, unit: 'kPa' } });
    expect(notes[0]).toBe('Below the air outside: a vacuum of 60 kPa.');
  });

  it.each([
    ['gauge -101.325 kPa', 'gauge'],
    ['gauge -1.01325 bar', 'gauge'],
    ['absolute 0 kPa', 'absolute'],
    ['absolute -1 psi', 'absolute'],
    ['gauge 1 bar; baro 0 kPa', 'baro'],
    ['gauge 1 bar; absolute 2 bar', 'absolute'],
    ['value 1 bar; baro 1 bar', 'baro'],
    ['gauge 1 psia', 'gauge'],
    ['absolute 1 psig', 'absolute'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(pressureConversion, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it.each([
    ['gauge 1 bar; baro 49 kPa', 1],
    ['gauge 1 bar; baro 50 kPa', 0],
    ['gauge 1 bar; baro 110 kPa', 0],
    ['gauge 1 bar; baro 111 kPa', 1],
    ['gauge 20 MPa; baro 100 kPa', 1],
    ['absolute 20 MPa', 0],
    ['absolute 20.1 MPa', 1],
  ])('warns of the range: %s', (inputs, warnings) => {
    expect(run(pressureConversion, inputs).warnings).toHaveLength(warnings);
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 1000, noNaN: true }),
        fc.double({ min: 95, max: 110, noNaN: true }),
        (gauge, baro) => {
          const absolute = numberOf(
            pressureConversion,
            `gauge ${gauge.toFixed(6)} kPa; baro ${baro.toFixed(6)} kPa`,
            'absolute',
          );
          const back = numberOf(
            pressureConversion,
            `absolute ${absolute.toFixed(9)} kPa; baro ${baro.toFixed(6)} kPa`,
            'gauge',
          );
          expect(back).toBeCloseTo(gauge, 5);
        },
      ),
    );
  });
});
