import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerCorrection } from '../../../core/calculators/c/power-correction.ts';
import { standardAtmosphere } from '../../../core/calculators/c/standard-atmosphere.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const atmosphere =
  'ISO 2533 / US Standard Atmosphere 1976; confirmed by the open-source fluids library (ATMOSPHERE_1976)';
const correction =
  'SAE J1349 formula as quoted in public technical discussion (1990 edition, 99 kPa dry, 25 degC); vapour pressure by Buck (1981/1996); numbers derived by hand';

checkCases(standardAtmosphere, [
  {
    case: 'sea level',
    inputs: 'altitude 0 m',
    expected: 'temperature 288.15 K; pressure 101.325 kPa; density 1.22500002 kg/m3',
    tolerance: 1e-5,
    source: atmosphere,
  },
  {
    case: '5000 m (fluids docstring example)',
    inputs: 'altitude 5000 m',
    expected: 'pressure 54048.286 Pa; density 0.73642842 kg/m3',
    tolerance: 1e-5,
    source: `${atmosphere}, docstring: 54048.286 Pa, 0.736428 kg/m3`,
  },
  {
    case: '1000 m',
    inputs: 'altitude 1000 m',
    expected:
      'temperature 8.50102237 degC; pressure 89.8762776 kPa; density 1.11165967 kg/m3; density_ratio 0.907477285',
    tolerance: 1e-5,
    source: atmosphere,
  },
]);

checkCases(powerCorrection, [
  {
    case: 'reference day: factor is 1',
    inputs: 'baro 99 kPa; air_temp 25 degC; humidity 0 %',
    expected: 'dry_pressure 99 kPa; cf_j1349 1; cf_iso1585 1',
    tolerance: 1e-6,
    source: `${correction} (identity)`,
  },
  {
    case: 'hot humid day',
    inputs: 'baro 100.2 kPa; air_temp 32 degC; humidity 60 %',
    expected: 'vapour_pressure 2.85453242 kPa; dry_pressure 97.3454676 kPa; cf_j1349 1.03406868; cf_iso1585 1.03474538',
    tolerance: 5e-4,
    source: correction,
  },
  {
    case: 'altitude',
    inputs: 'baro 84.5 kPa; air_temp 20 degC; humidity 30 %',
    expected: 'cf_j1349 1.20231381; cf_iso1585 1.20912045',
    tolerance: 5e-4,
    source: `${correction}; must also warn: outside 0.93 to 1.07`,
    warns: /0\.93 to 1\.07/,
  },
]);

describe('standard atmosphere', () => {
  it('thins with altitude', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 10_900 }), (altitude) => {
        for (const output of ['temperature', 'pressure', 'density']) {
          const at = (metres: number) => numberOf(standardAtmosphere, `altitude ${metres} m`, output);
          expect(at(altitude + 100)).toBeLessThan(at(altitude));
        }
      }),
    );
  });

  it('takes 11 000 m, refuses more, and warns below -500 m', () => {
    expect(run(standardAtmosphere, 'altitude 11000 m').warnings).toEqual([]);
    expect(refusalOf(standardAtmosphere, 'altitude 11001 m')).toMatchObject({ code: 'bad-input', field: 'altitude' });
    expect(run(standardAtmosphere, 'altitude -501 m').warnings).toHaveLength(1);
  });
});

describe('power correction', () => {
  it('shows the measured power first, then both corrections of it', () => {
    const { outputs } = run(powerCorrection, 'baro 100.2 kPa; air_temp 32 degC; humidity 60 %; measured_power 400 hp');
    expect(Object.keys(outputs)[0]).toBe('measured_power');
    expect(outputs['measured_power']?.value).toBeCloseTo(400, 9);
    // By hand: 400 hp times the factors of the check case above.
    expect(outputs['power_j1349']?.value).toBeCloseTo(413.627, 2);
    expect(outputs['power_iso1585']?.value).toBeCloseTo(413.898, 2);
  });

  it('gives no power when none was measured', () => {
    const { outputs } = run(powerCorrection, 'baro 99 kPa; air_temp 25 degC; humidity 0 %');
    expect(Object.keys(outputs)).toEqual(['vapour_pressure', 'dry_pressure', 'cf_j1349', 'cf_iso1585']);
  });

  it('corrects more in hotter, moister and thinner air', () => {
    const factor = (baro: number, heat: number, humidity: number) =>
      numberOf(powerCorrection, `baro ${baro} kPa; air_temp ${heat} degC; humidity ${humidity} %`, 'cf_j1349');
    fc.assert(
      fc.property(
        fc.integer({ min: 61, max: 110 }),
        fc.integer({ min: -10, max: 49 }),
        fc.integer({ min: 0, max: 99 }),
        (baro, heat, humidity) => {
          const one = factor(baro, heat, humidity);
          expect(factor(baro - 1, heat, humidity)).toBeGreaterThan(one);
          expect(factor(baro, heat + 1, humidity)).toBeGreaterThan(one);
          expect(factor(baro, heat, humidity + 1)).toBeGreaterThan(one);
        },
      ),
    );
  });

  it.each([
    ['baro 99 kPa; air_temp 25 degC; humidity 101 %', 'humidity'],
    ['baro 99 kPa; air_temp 25 degC; humidity -1 %', 'humidity'],
    ['baro 3 kPa; air_temp 40 degC; humidity 100 %', 'baro'],
    ['baro 0 kPa; air_temp 40 degC; humidity 0 %', 'baro'],
    ['air_temp 40 degC; humidity 0 %', 'baro'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(powerCorrection, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
