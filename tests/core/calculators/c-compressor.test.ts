import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compressorOutlet } from '../../../core/calculators/c/compressor-outlet.ts';
import { correctedFlow } from '../../../core/calculators/c/corrected-flow.ts';
import { sensorRange } from '../../../core/calculators/c/sensor-range.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(compressorOutlet, [
  {
    case: 'PR 2.6, 72 %, air-to-air 0.75',
    inputs:
      'inlet_temp 25 degC; pressure_ratio 2.6; efficiency 0.72; effectiveness 0.75; coolant_temp 25 degC; map_abs 250 kPa; baro 101.325 kPa; ambient_temp 25 degC',
    expected:
      'compressor_outlet_temp 154.986999 degC; charge_temp 57.4967496 degC; charge_density 2.6339884 kg/m3; density_ratio 2.22481525',
    tolerance: 1e-4,
    source: `${byHand} (isentropic compression: Heywood ch. 6; effectiveness: Stone, heat-exchanger texts)`,
  },
  {
    case: 'PR 2.0, 75 %',
    inputs: 'inlet_temp 85 degF; pressure_ratio 2; efficiency 0.75',
    expected: 'compressor_outlet_temp 244.053556 degF',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'PR 3.0, 70 %',
    inputs: 'inlet_temp 30 degC; pressure_ratio 3; efficiency 0.7; effectiveness 0.85; coolant_temp 35 degC',
    expected: 'compressor_outlet_temp 189.689939 degC; charge_temp 58.2034908 degC',
    tolerance: 1e-4,
    source: byHand,
    warns: /180 °C/,
  },
  {
    case: 'efficiency above 1',
    inputs: 'inlet_temp 25 degC; pressure_ratio 2; efficiency 1.2',
    rejected: 'efficiency',
    source: 'rule of the calculator: efficiency must be above 0 and at most 1',
  },
]);

checkCases(correctedFlow, [
  {
    case: 'at the reference: no change',
    inputs: 'mass_flow 40 lb/min; inlet_temp 298.15 K; inlet_abs 100 kPa; ref_temp 298.15 K; ref_pressure 100 kPa',
    expected: 'corrected_mass_flow 40 lb/min',
    tolerance: 1e-9,
    source: `${byHand} (identity)`,
  },
  {
    case: 'hot inlet with loss',
    inputs: 'mass_flow 40 lb/min; inlet_temp 35 degC; inlet_abs 97 kPa; ref_temp 298.15 K; ref_pressure 100 kPa',
    expected: 'corrected_mass_flow 41.9229598 lb/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '545 degR / 13.95 psi map',
    inputs: 'mass_flow 45 lb/min; inlet_temp 85 degF; inlet_abs 14.2 psi; ref_temp 545 degR; ref_pressure 13.95 psi',
    expected: 'corrected_mass_flow 44.1943605 lb/min',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(sensorRange, [
  {
    case: '3 bar sensor, 22 psi',
    inputs: 'sensor_full_scale_abs 304 kPa; boost_gauge 22 psi; baro 101.325 kPa; headroom 10 %',
    expected: 'required_abs 253.00966 kPa; max_boost_gauge 24.9863763 psi; headroom 16.773138 %; in_range true',
    tolerance: 1e-4,
    source: `${byHand}; head-room 10 % is common practice`,
  },
  {
    case: '3 bar sensor, 26 psi fails',
    inputs: 'sensor_full_scale_abs 304 kPa; boost_gauge 26 psi; baro 101.325 kPa; headroom 10 %',
    expected: 'required_abs 280.58869 kPa; in_range false',
    tolerance: 1e-4,
    source: byHand,
    warns: /less head-room/,
  },
  {
    case: '4 bar sensor',
    inputs: 'sensor_full_scale_abs 400 kPa; boost_gauge 2.2 bar; baro 98 kPa; headroom 10 %',
    expected: 'max_boost_gauge 2.62 bar; in_range true',
    tolerance: 1e-4,
    source: byHand,
  },
]);

const levelsOf = (...asked: Parameters<typeof run>) => run(...asked).warnings.map(({ level }) => level);
const saidBy = (...asked: Parameters<typeof run>) => run(...asked).warnings.map(({ message }) => message);

describe('compressor outlet', () => {
  it('leaves the air as it was at a pressure ratio of 1, and the outlet as it was without an intercooler', () => {
    expect(
      numberOf(compressorOutlet, 'inlet_temp 25 degC; pressure_ratio 1; efficiency 0.7', 'compressor_outlet_temp'),
    ).toBeCloseTo(25, 9);
    const { outputs } = run(
      compressorOutlet,
      'inlet_temp 25 degC; pressure_ratio 2; efficiency 0.7; effectiveness 0; coolant_temp 20 degC',
    );
    expect(outputs['charge_temp']).toEqual(outputs['compressor_outlet_temp']);
  });

  it('is cooler with a better compressor, and never colder than the coolant', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 11, max: 50 }),
        fc.integer({ min: 40, max: 84 }),
        fc.integer({ min: 0, max: 100 }),
        (ratio, efficiency, effectiveness) => {
          const at = (percent: number, output: string) =>
            numberOf(
              compressorOutlet,
              `inlet_temp 25 degC; pressure_ratio ${ratio / 10}; efficiency ${percent} %; effectiveness ${effectiveness} %; coolant_temp 20 degC`,
              output,
            );
          expect(at(efficiency + 1, 'compressor_outlet_temp')).toBeLessThan(at(efficiency, 'compressor_outlet_temp'));
          expect(at(efficiency, 'charge_temp')).toBeGreaterThanOrEqual(20 - 1e-9);
        },
      ),
    );
  });

  it('warns of a charge above 60 °C (common practice, no published source)', () => {
    expect(
      saidBy(
        compressorOutlet,
        'inlet_temp 25 degC; pressure_ratio 2; efficiency 0.7; effectiveness 0.5; coolant_temp 40 degC',
      ),
    ).toEqual([expect.stringContaining('60 °C')]);
  });

  it.each([
    ['inlet_temp 25 degC; pressure_ratio 0.9; efficiency 0.7', 'pressure_ratio'],
    ['inlet_temp 25 degC; pressure_ratio 2; efficiency 0', 'efficiency'],
    ['inlet_temp 25 degC; pressure_ratio 2; efficiency 0.7; effectiveness 1.1; coolant_temp 25 degC', 'effectiveness'],
    ['inlet_temp 25 degC; pressure_ratio 2; efficiency 0.7; effectiveness 0.7', 'coolant_temp'],
    ['inlet_temp -300 degC; pressure_ratio 2; efficiency 0.7', 'inlet_temp'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(compressorOutlet, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});

describe('corrected mass flow', () => {
  const measured = 'mass_flow 40 lb/min; inlet_temp 35 degC; inlet_abs 97 kPa';

  it('warns, and names what it took, when the reference of the map is not confirmed', () => {
    const answer = run(correctedFlow, measured);
    expect(answer.outputs['corrected_mass_flow']?.value).toBeCloseTo(41.9229598, 5);
    expect(answer.warnings).toMatchObject([{ message: expect.stringContaining('298.15 K and 100 kPa') }]);
  });

  it('refuses half a reference, and an inlet without pressure', () => {
    expect(refusalOf(correctedFlow, `${measured}; ref_temp 545 degR`).field).toBe('ref_pressure');
    expect(refusalOf(correctedFlow, 'mass_flow 40 lb/min; inlet_temp 35 degC; inlet_abs 0 kPa').field).toBe(
      'inlet_abs',
    );
  });
});

describe('pressure-sensor range', () => {
  it('counts a pressure equal to the limit as inside', () => {
    expect(
      run(sensorRange, 'sensor_full_scale_abs 300 kPa; boost_gauge 170 kPa; baro 100 kPa').outputs['in_range'],
    ).toEqual({
      value: true,
      unit: '-',
    });
  });

  it('calls a boost beyond full scale grave', () => {
    expect(levelsOf(sensorRange, 'sensor_full_scale_abs 250 kPa; boost_gauge 22 psi; baro 101 kPa')).toEqual(['grave']);
  });

  it('says that it assumed 10 % of head-room and the standard barometer', () => {
    const { assumed } = run(sensorRange, 'sensor_full_scale_abs 304 kPa; boost_gauge 22 psi');
    expect(assumed).toMatchObject([{ name: 'baro' }, { name: 'headroom', value: 10, unit: '%' }]);
  });

  it('refuses a boost below vacuum, an absolute boost and a head-room of everything', () => {
    expect(refusalOf(sensorRange, 'sensor_full_scale_abs 304 kPa; boost_gauge -110 kPa').field).toBe('boost_gauge');
    expect(refusalOf(sensorRange, 'sensor_full_scale_abs 304 kPa; boost_gauge 22 psia').field).toBe('boost_gauge');
    expect(refusalOf(sensorRange, 'sensor_full_scale_abs 304 kPa; boost_gauge 22 psi; headroom 100 %').field).toBe(
      'headroom',
    );
  });
});
