import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pump } from '../../../core/calculators/d/pump.ts';
import { tankBlend } from '../../../core/calculators/d/tank-blend.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(tankBlend, [
  {
    case: '20 L of E10 plus 20 L of E85',
    inputs: 'tank_volume 20 L; tank_ethanol 10 %; add_volume 20 L; add_ethanol 85 %',
    expected: 'ethanol 47.5 %; total_volume 40 L',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '6 gal of E10 plus 4 gal of E70',
    inputs: 'tank_volume 6 gal; tank_ethanol 10 %; add_volume 4 gal; add_ethanol 70 %',
    expected: 'ethanol 34 %',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'target E50 from 25 L of E10',
    inputs: 'tank_volume 25 L; tank_ethanol 10 %; target_ethanol 50 %; add_ethanol 85 %',
    expected: 'add_volume 28.5714286 L; total_volume 53.5714286 L',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'target outside the two fuels',
    inputs: 'tank_volume 20 L; tank_ethanol 10 %; target_ethanol 90 %; add_ethanol 85 %',
    rejected: 'target_ethanol',
    source: 'rule of the calculator: target must lie between the tank fuel and the added fuel',
  },
]);

checkCases(pump, [
  {
    case: '500 hp E85, 22 psi',
    inputs:
      'power 500 hp; bsfc 0.9 lb/hp/h; density 785 kg/m3; headroom 20 %; base_pressure 43.5 psi; boost_gauge 22 psi; line_loss 3 psi',
    expected: 'engine_flow 260.021104 L/h; pump_flow_required 312.025325 L/h; pump_pressure_gauge 68.5 psi',
    tolerance: 1e-4,
    source: `${byHand}; head-room 20 % is common practice`,
  },
  {
    case: '400 hp petrol with pump data',
    inputs:
      'power 400 hp; bsfc 0.6 lb/hp/h; density 745 kg/m3; headroom 15 %; base_pressure 3 bar; boost_gauge 1.5 bar; line_loss 0.2 bar; pump_flow_at_pressure 210 L/h',
    expected:
      'engine_flow 146.123717 L/h; pump_flow_required 168.042274 L/h; pump_pressure_gauge 4.7 bar; return_flow 63.8762835 L/h; pump_ok true',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'pump too small',
    inputs:
      'power 400 kW; bsfc 500 g/kWh; density 785 kg/m3; headroom 20 %; base_pressure 300 kPa; boost_gauge 200 kPa; line_loss 20 kPa; pump_flow_at_pressure 280 L/h',
    expected: 'pump_flow_required 305.732484 L/h; pump_ok false',
    tolerance: 1e-4,
    source: byHand,
    warns: /head-room/,
  },
]);

describe('tank blend', () => {
  it('reaches its target when what it says is added', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 31, max: 69 }),
        fc.integer({ min: 70, max: 100 }),
        fc.boolean(),
        (litres, low, target, high, richInTank) => {
          const [inTank, added] = richInTank ? [high, low] : [low, high];
          const rest = `tank_volume ${litres} L; tank_ethanol ${inTank} %; add_ethanol ${added} %`;
          const volume = numberOf(tankBlend, `${rest}; target_ethanol ${target} %`, 'add_volume', 'L');
          const ethanol = numberOf(tankBlend, `${rest}; add_volume ${volume.toFixed(12)} L`, 'ethanol', '%');
          expect(ethanol).toBeCloseTo(target, 8);
        },
      ),
    );
  });

  it('adds nothing to a tank that is there already', () => {
    const inputs = 'tank_volume 20 L; tank_ethanol 10 %; target_ethanol 10 %; add_ethanol 85 %';
    expect(numberOf(tankBlend, inputs, 'add_volume', 'L')).toBe(0);
  });

  it('shows the most that fits, and what it gives, when the tank is too small', () => {
    const answer = run(
      tankBlend,
      'tank_volume 25 L; tank_ethanol 10 %; target_ethanol 50 %; add_ethanol 85 %; tank_capacity 50 L',
    );
    expect(answer.warnings).toHaveLength(1);
    // By hand: 25 L fit beside 25 L, half and half of 10 % and 85 %.
    expect(answer.outputs['most_that_fits']?.value).toBeCloseTo(25, 9);
    expect(answer.outputs['ethanol_when_full']?.value).toBeCloseTo(47.5, 9);
  });

  it.each([
    ['tank_volume 20 L; tank_ethanol 10 %; target_ethanol 85 %; add_ethanol 85 %', 'add_ethanol'],
    ['tank_volume 20 L; tank_ethanol 10 %; target_ethanol 5 %; add_ethanol 85 %', 'target_ethanol'],
    ['tank_volume 0 L; tank_ethanol 10 %; target_ethanol 50 %; add_ethanol 85 %', 'tank_volume'],
    ['tank_volume 0 L; tank_ethanol 10 %; add_volume 0 L; add_ethanol 85 %', 'add_volume'],
    ['tank_volume 60 L; tank_ethanol 10 %; add_volume 1 L; add_ethanol 85 %; tank_capacity 50 L', 'tank_volume'],
    ['tank_volume 20 L; tank_ethanol 110 %; add_volume 1 L; add_ethanol 85 %', 'tank_ethanol'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(tankBlend, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});

describe('pump', () => {
  const engine =
    'power 400 hp; bsfc 0.6 lb/hp/h; density 745 kg/m3; base_pressure 3 bar; boost_gauge 1.5 bar; line_loss 0.2 bar';

  it('assumes 20 % of head-room, and says nothing of a pump that is not given', () => {
    const { assumed, outputs } = run(pump, engine);
    expect(assumed).toMatchObject([{ name: 'headroom', value: 20, unit: '%' }]);
    expect(Object.keys(outputs)).toEqual(['engine_flow', 'pump_flow_required', 'pump_pressure_gauge']);
  });

  it('says in other words when the engine burns more than the pump delivers', () => {
    expect(run(pump, `${engine}; pump_flow_at_pressure 100 L/h`).warnings).toMatchObject([
      { level: 'grave', message: expect.stringContaining('less than the engine burns') },
    ]);
  });

  it('warns of a return line that runs above 4.5 m/s (hydraulic guidance)', () => {
    const said = (diameter: number) =>
      run(pump, `${engine}; pump_flow_at_pressure 400 L/h; return_inside_diameter ${diameter} mm`).warnings;
    // By hand: 253.9 L/h through 4 mm run at 5.6 m/s, through 6 mm at 2.5 m/s.
    expect(said(4)).toMatchObject([{ message: expect.stringContaining('4.5 m/s') }]);
    expect(said(6)).toEqual([]);
  });

  it('refuses a negative loss and an engine without fuel', () => {
    expect(refusalOf(pump, engine.replace('line_loss 0.2', 'line_loss -0.2')).field).toBe('line_loss');
    expect(refusalOf(pump, engine.replace('density 745', 'density 0')).field).toBe('density');
  });
});
