import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coolant } from '../../../core/calculators/j/coolant.ts';
import { exhaustFlow } from '../../../core/calculators/j/exhaust-flow.ts';
import { pipeVelocity } from '../../../core/calculators/j/pipe-velocity.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(pipeVelocity, [
  {
    case: 'charge pipe 63.5 mm',
    inputs:
      'mass_flow 40 lb/min; temperature 45 degC; pressure_abs 250 kPa; inside_diameter 60.3 mm; gas_constant 287.05 J/kg/K; gamma 1.4',
    expected: 'gas_density 2.73747732 kg/m3; velocity 38.6811561 m/s; mach 0.108178434',
    tolerance: 5e-4,
    source: `${byHand} (continuity, ideal gas, speed of sound)`,
  },
  {
    case: 'inlet pipe 76 mm',
    inputs:
      'mass_flow 40 lb/min; temperature 25 degC; pressure_abs 99 kPa; inside_diameter 73 mm; gas_constant 287.05 J/kg/K; gamma 1.4',
    expected: 'velocity 62.4591472 m/s; mach 0.18044126',
    tolerance: 5e-4,
    source: byHand,
  },
  {
    case: 'exhaust 76 mm',
    inputs:
      'mass_flow 0.33 kg/s; temperature 700 degC; pressure_abs 110 kPa; inside_diameter 73 mm; gas_constant 289 J/kg/K; gamma 1.34',
    expected: 'velocity 201.587353 m/s; mach 0.328376499',
    tolerance: 5e-4,
    source: `${byHand}; gas constant and ratio typical of burned gas (Heywood), from memory`,
    warns: /no longer holds/,
  },
  {
    case: 'gauge pressure of zero',
    inputs:
      'mass_flow 0.3 kg/s; temperature 30 degC; pressure_abs 0 kPa; inside_diameter 60 mm; gas_constant 287.05 J/kg/K; gamma 1.4',
    rejected: 'pressure_abs',
    source: 'rule of the calculator: absolute pressure must be above zero',
  },
]);

checkCases(exhaustFlow, [
  {
    case: 'petrol 11.5',
    inputs: 'air_mass_flow 46 lb/min; afr 11.5',
    expected: 'exhaust_mass_flow 50 lb/min',
    tolerance: 1e-4,
    source: `${byHand} (mass balance)`,
  },
  {
    case: 'E85 7.6',
    inputs: 'air_mass_flow 0.35 kg/s; afr 7.6',
    expected: 'exhaust_mass_flow 0.396052632 kg/s',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'petrol 12.5',
    inputs: 'air_mass_flow 250 g/s; afr 12.5',
    expected: 'exhaust_mass_flow 270 g/s',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(coolant, [
  {
    case: '300 kW',
    inputs:
      'brake_power 300 kW; coolant_to_brake_ratio 0.7; coolant_density 1040 kg/m3; coolant_cp 3.5 kJ/kg/K; coolant_rise 8 dK',
    expected: 'coolant_heat 210 kW; coolant_mass_flow 7.5 kg/s; coolant_flow 432.692308 L/min',
    tolerance: 1e-4,
    source: `${byHand}; ratio from Heywood table of energy balance at maximum power (from memory: coolant 17 to 26 % against brake 25 to 28 % of fuel energy)`,
  },
  {
    case: '400 hp, water',
    inputs:
      'brake_power 400 hp; coolant_to_brake_ratio 0.8; coolant_density 968 kg/m3; coolant_cp 4.2 kJ/kg/K; coolant_rise 7 dK',
    expected: 'coolant_heat 238.623959 kW; coolant_flow 503.086437 L/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'road load 40 kW',
    inputs:
      'brake_power 40 kW; coolant_to_brake_ratio 1; coolant_density 1040 kg/m3; coolant_cp 3.5 kJ/kg/K; coolant_rise 5 dK',
    expected: 'coolant_flow 131.868132 L/min',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('pipe velocity', () => {
  const at = (flow: number, more = '') =>
    `mass_flow ${flow} kg/s; temperature 20 degC; pressure_abs 100 kPa; inside_diameter 70 mm${more}`;
  const messages = (inputs: string) => run(pipeVelocity, inputs).warnings.map(({ message }) => message);

  it('takes air where no gas is named, and says so', () => {
    expect(run(pipeVelocity, at(0.1)).assumed.map(({ name, value }) => [name, value])).toEqual([
      ['gas_constant', 287.05],
      ['gamma', 1.4],
    ]);
  });

  it('warns above the limit of the pipe it is (common practice, no published source)', () => {
    // Mach 0.18 and 0.255 here, by the formula.
    expect(messages(at(0.28))).toEqual([]);
    expect(messages(at(0.28, '; pipe charge'))).toEqual([expect.stringContaining('Mach 0.15 in a charge pipe')]);
    expect(messages(at(0.28, '; pipe inlet'))).toEqual([]);
    expect(messages(at(0.4, '; pipe inlet'))).toEqual([expect.stringContaining('Mach 0.2 in an inlet pipe')]);
    expect(messages(at(0.4, '; pipe exhaust'))).toEqual([]);
    expect(messages(at(0.6, '; pipe exhaust'))).toEqual([
      expect.stringContaining('Mach 0.35 in an exhaust'),
      expect.stringContaining('no longer holds'),
    ]);
  });

  it('is grave above the speed of sound', () => {
    expect(run(pipeVelocity, at(2)).warnings[0]).toMatchObject({ level: 'grave' });
  });

  it.each([
    [at(0), 'mass_flow'],
    [at(0.1).replace('20 degC', '-273.15 degC'), 'temperature'],
    [at(0.1).replace('100 kPa', '100 kPa gauge'), 'pressure_abs'],
    [at(0.1).replace('70 mm', '0 mm'), 'inside_diameter'],
    [at(0.1, '; gamma 1'), 'gamma'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(pipeVelocity, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('keeps the mass flow: density, area and velocity give it back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (hundredths) => {
        const inputs = at(hundredths / 100);
        const density = numberOf(pipeVelocity, inputs, 'gas_density');
        const velocity = numberOf(pipeVelocity, inputs, 'velocity');
        expect(density * velocity * (Math.PI / 4) * 0.07 ** 2).toBeCloseTo(hundredths / 100, 9);
      }),
    );
  });
});

describe('exhaust flow', () => {
  it('is always more than the air, and no more for leaner', () => {
    const of = (afr: number) => numberOf(exhaustFlow, `air_mass_flow 1 kg/s; afr ${afr}`, 'exhaust_mass_flow');
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 30 }), (afr) => {
        expect(of(afr)).toBeGreaterThan(1);
        expect(of(afr + 1)).toBeLessThan(of(afr));
      }),
    );
  });

  it.each([
    ['air_mass_flow 1 kg/s; afr 0', 'afr'],
    ['air_mass_flow -1 kg/s; afr 12', 'air_mass_flow'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(exhaustFlow, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});

describe('coolant', () => {
  const at = (rise: string, ratio = 0.7) =>
    `brake_power 300 kW; coolant_to_brake_ratio ${ratio}; coolant_density 1040 kg/m3; coolant_cp 3.5 kJ/kg/K; coolant_rise ${rise}`;

  it('gives a band of a quarter either way', () => {
    // By hand: 210 kW less and more a quarter.
    expect(numberOf(coolant, at('8 dK'), 'coolant_heat_low')).toBeCloseTo(157.5, 9);
    expect(numberOf(coolant, at('8 dK'), 'coolant_heat_high')).toBeCloseTo(262.5, 9);
    const flow = numberOf(coolant, at('8 dK'), 'coolant_flow');
    expect(numberOf(coolant, at('8 dK'), 'coolant_flow_low')).toBeCloseTo(0.75 * flow, 9);
    expect(numberOf(coolant, at('8 dK'), 'coolant_flow_high')).toBeCloseTo(1.25 * flow, 9);
  });

  it('takes a rise in °F as a difference, without an offset', () => {
    expect(numberOf(coolant, at('14.4 ddegF'), 'coolant_flow')).toBeCloseTo(
      numberOf(coolant, at('8 dK'), 'coolant_flow'),
      9,
    );
  });

  it('warns of a ratio outside 0.6 to 1.5 and refuses no rise', () => {
    expect(run(coolant, at('8 dK', 0.5)).warnings).toHaveLength(1);
    expect(run(coolant, at('8 dK', 1.5)).warnings).toEqual([]);
    expect(refusalOf(coolant, at('0 dK'))).toMatchObject({ code: 'bad-input', field: 'coolant_rise' });
    expect(refusalOf(coolant, at('-3 dK'))).toMatchObject({ code: 'bad-input', field: 'coolant_rise' });
  });
});
