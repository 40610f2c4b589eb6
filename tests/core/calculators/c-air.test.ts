import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airMassFlow } from '../../../core/calculators/c/air-mass-flow.ts';
import { manifoldPressureForPower } from '../../../core/calculators/c/manifold-pressure.ts';
import { pressureRatio } from '../../../core/calculators/c/pressure-ratio.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(airMassFlow, [
  {
    case: '2.0 L at 7000 rpm, 250 kPa, 45 degC, VE 0.95',
    inputs: 'displacement 1998 cc; rpm 7000 rpm; ve 0.95; map_abs 250 kPa; charge_temp 45 degC',
    expected:
      'charge_density 2.73744995 kg/m3; theoretical_mass_flow 0.319049792 kg/s; mass_flow 40.0929101 lb/min; volume_flow 6643.35 L/min',
    tolerance: 1e-4,
    source: `${byHand} (ideal gas; definition of VE: Heywood, Stone)`,
  },
  {
    case: 'naturally aspirated 5.7 L',
    inputs: 'displacement 350 in3; rpm 5500 rpm; ve 0.85; map_abs 14.5 psi; charge_temp 90 degF',
    expected: 'mass_flow 33.70937 lb/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '2.5 L at 6500 rpm, 22 psi boost',
    inputs: 'displacement 2457 cc; rpm 6500 rpm; ve 0.92; map_abs 253 kPa; charge_temp 50 degC',
    expected: 'mass_flow 333.94855 g/s',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(manifoldPressureForPower, [
  {
    case: '400 hp from 2.0 L, petrol',
    inputs:
      'power 400 hp; bsfc 0.6 lb/hp/h; afr 11.5; displacement 1998 cc; rpm 7000 rpm; ve 0.95; charge_temp 45 degC; baro 101.325 kPa',
    expected: 'fuel_mass_flow 240 lb/h; air_mass_flow 46 lb/min; map_abs 286.833756 kPa; boost_gauge 26.9057703 psi',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '500 hp from 2.5 L, E85',
    inputs:
      'power 500 hp; bsfc 0.88 lb/hp/h; afr 7.6; displacement 2457 cc; rpm 6800 rpm; ve 0.95; charge_temp 40 degC; baro 99 kPa',
    expected: 'air_mass_flow 55.7333333 lb/min; map_abs 286.34354 kPa; boost_gauge 27.1718832 psi',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '300 kW, g/kWh',
    inputs:
      'power 300 kW; bsfc 330 g/kWh; afr 11.8; displacement 2000 cc; rpm 7200 rpm; ve 1; charge_temp 50 degC; baro 101.325 kPa',
    expected: 'air_mass_flow 0.3245 kg/s; map_abs 2.50841569 bar',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(pressureRatio, [
  {
    case: 'sea level',
    inputs: 'map_abs 250 kPa; baro 101.325 kPa; inlet_loss 2 kPa; charge_loss 10 kPa',
    expected: 'compressor_inlet_abs 99.325 kPa; compressor_outlet_abs 260 kPa; pressure_ratio 2.61766927',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'psi units',
    inputs: 'map_abs 36.7 psi; baro 14.7 psi; inlet_loss 0.3 psi; charge_loss 1.5 psi',
    expected: 'pressure_ratio 2.65277778',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'altitude',
    inputs: 'map_abs 250 kPa; baro 83.43 kPa; inlet_loss 2 kPa; charge_loss 10 kPa',
    expected: 'pressure_ratio 3.19292644',
    tolerance: 1e-4,
    source: byHand,
    warns: /above 3/,
  },
  {
    case: 'loss larger than the barometer',
    inputs: 'map_abs 200 kPa; baro 101 kPa; inlet_loss 120 kPa; charge_loss 5 kPa',
    rejected: 'inlet_loss',
    source: 'rule of the calculator: compressor inlet pressure must be above zero',
  },
]);

const engine = 'displacement 1998 cc; rpm 7000 rpm; ve 0.95; charge_temp 45 degC';
const saidBy = (...asked: Parameters<typeof run>) => run(...asked).warnings.map(({ message }) => message);

describe('air mass flow', () => {
  it.each([
    ['displacement 1998 cc; rpm 7000 rpm; ve 0; map_abs 250 kPa; charge_temp 45 degC', 've'],
    ['displacement 1998 cc; rpm 7000 rpm; ve 1.6; map_abs 250 kPa; charge_temp 45 degC', 've'],
    ['displacement 1998 cc; rpm 7000 rpm; ve 0.9; map_abs 0 kPa; charge_temp 45 degC', 'map_abs'],
    ['displacement 1998 cc; rpm 7000 rpm; ve 0.9; map_abs 250 kPa; charge_temp -274 degC', 'charge_temp'],
    ['displacement 0 cc; rpm 7000 rpm; ve 0.9; map_abs 250 kPa; charge_temp 45 degC', 'displacement'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(airMassFlow, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('warns outside the ranges it is meant for, and not at their ends', () => {
    expect(saidBy(airMassFlow, `${engine}; map_abs 600 kPa`)).toEqual([]);
    expect(saidBy(airMassFlow, `${engine}; map_abs 601 kPa`)).toHaveLength(1);
    expect(
      saidBy(airMassFlow, 'displacement 2 L; rpm 900; ve 1.4; map_abs 100 kPa; charge_temp 160 degC'),
    ).toHaveLength(2);
  });

  it('undoes the manifold pressure for a power', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 900 }), fc.integer({ min: 105, max: 130 }), (hp, tenths) => {
        const wanted = `power ${hp} hp; bsfc 0.6 lb/hp/h; afr ${tenths / 10}; ${engine}`;
        const pressure = numberOf(manifoldPressureForPower, wanted, 'map_abs', 'kPa');
        const air = numberOf(manifoldPressureForPower, wanted, 'air_mass_flow', 'kg/s');
        const back = numberOf(airMassFlow, `${engine}; map_abs ${pressure.toFixed(12)} kPa`, 'mass_flow', 'kg/s');
        expect(back / air).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('manifold pressure for a target power', () => {
  it('says that a mixture leaner than the stoichiometric value of petrol is grave under boost, and only there', () => {
    const grave = (hp: number) =>
      run(manifoldPressureForPower, `power ${hp} hp; bsfc 250 g/kWh; afr 15; ${engine}`).warnings.map(
        ({ level }) => level,
      );
    expect(grave(400)).toEqual(['grave']);
    expect(grave(50)).toEqual([]);
  });

  it('warns when consumption and air to fuel are of two fuels', () => {
    // By hand: 0.9 lb/(hp·h) is 0.5474 kg/kWh; times 12 it is 6.57 kg/kWh of air.
    expect(saidBy(manifoldPressureForPower, `power 400 hp; bsfc 0.9 lb/hp/h; afr 12; ${engine}`)).toEqual([
      expect.stringContaining('6.57 kg'),
    ]);
  });

  it('takes the standard barometer when none is given, and says so', () => {
    const answer = run(manifoldPressureForPower, `power 400 hp; bsfc 0.6 lb/hp/h; afr 11.5; ${engine}`);
    expect(answer.assumed).toMatchObject([{ name: 'baro', value: 101.325, unit: 'kPa' }]);
  });
});

describe('pressure ratio', () => {
  it('counts a loss as a loss: the ratio grows with either', () => {
    const ratio = (inlet: number, charge: number) =>
      numberOf(pressureRatio, `map_abs 250 kPa; inlet_loss ${inlet} kPa; charge_loss ${charge} kPa`, 'pressure_ratio');
    expect(ratio(0, 0)).toBeCloseTo(250 / 101.325, 12);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }), (inlet, charge) => {
        expect(ratio(inlet + 1, charge)).toBeGreaterThan(ratio(inlet, charge));
        expect(ratio(inlet, charge + 1)).toBeGreaterThan(ratio(inlet, charge));
      }),
    );
  });

  it('warns below 1, and not at exactly 3', () => {
    expect(saidBy(pressureRatio, 'map_abs 60 kPa; inlet_loss 1 kPa; charge_loss 1 kPa')).toEqual([
      expect.stringContaining('below 1'),
    ]);
    expect(saidBy(pressureRatio, 'map_abs 290 kPa; baro 101 kPa; inlet_loss 1 kPa; charge_loss 7 kPa')).toEqual([]);
    expect(saidBy(pressureRatio, 'map_abs 290 kPa; baro 101 kPa; inlet_loss 1 kPa; charge_loss 10 kPa')).toEqual([]);
  });

  it('refuses a negative loss and a gauge pressure', () => {
    expect(refusalOf(pressureRatio, 'map_abs 250 kPa; inlet_loss -1 kPa; charge_loss 1 kPa').field).toBe('inlet_loss');
    expect(refusalOf(pressureRatio, 'map_abs 22 psig; inlet_loss 1 kPa; charge_loss 1 kPa').field).toBe('map_abs');
  });
});
