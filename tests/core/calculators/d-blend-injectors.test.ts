import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blendProperties } from '../../../core/calculators/d/blend-properties.ts';
import { injectorPower, injectorSize } from '../../../core/calculators/d/injector-size.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';
const table = `${byHand}; component values from the US DOE Alternative Fuels Data Center property table`;

checkCases(blendProperties, [
  {
    case: 'E0',
    inputs: 'ethanol 0 %',
    expected: 'density 745 kg/m3; afr_stoich 14.7; lhv_mass 43.44 MJ/kg; volume_factor_vs_petrol 1',
    tolerance: 1e-5,
    source: table,
  },
  {
    case: 'E10',
    inputs: 'ethanol 10 %',
    expected:
      'density 749.7 kg/m3; ethanol_mass_fraction 0.105642257; afr_stoich 14.0978391; lhv_mass 41.6979592 MJ/kg; lhv_volume 31.26096 MJ/L',
    tolerance: 1e-4,
    source: `${table}; published round figure 14.1 agrees`,
  },
  {
    case: 'E85',
    inputs: 'ethanol 85 %',
    expected:
      'density 784.95 kg/m3; ethanol_mass_fraction 0.857634244; afr_stoich 9.81148481; lhv_mass 29.2976113 MJ/kg; volume_factor_vs_petrol 1.4219911',
    tolerance: 1e-4,
    source: `${table}; published round figures 9.8 to 9.9 agree`,
  },
  {
    case: 'E100',
    inputs: 'ethanol 100 %',
    expected: 'density 792 kg/m3; afr_stoich 9; lhv_mass 26.95 MJ/kg',
    tolerance: 1e-5,
    source: table,
  },
  {
    case: 'ethanol above 100 %',
    inputs: 'ethanol 120 %',
    rejected: 'ethanol',
    source: 'rule of the calculator: ethanol must be 0 to 100 % by volume',
  },
]);

checkCases(injectorSize, [
  {
    case: '500 hp four on E85',
    inputs:
      'power 500 hp; injectors 4; bsfc 0.9 lb/hp/h; duty 85 %; density 785 kg/m3; rated_dp 3 bar; actual_dp 3 bar',
    expected:
      'fuel_mass_flow 450 lb/h; injector_flow_at_actual 1274.61325 cc/min; injector_flow_at_rated 1274.61325 cc/min',
    tolerance: 1e-4,
    source: `${byHand}; plausibility: about 1300 cc/min, common practice`,
  },
  {
    case: '400 hp four on petrol, 4 bar',
    inputs:
      'power 400 hp; injectors 4; bsfc 0.6 lb/hp/h; duty 80 %; density 745 kg/m3; rated_dp 3 bar; actual_dp 4 bar',
    expected: 'injector_flow_at_actual 761.061023 cc/min; injector_flow_at_rated 659.09818 cc/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '300 kW six',
    inputs:
      'power 300 kW; injectors 6; bsfc 340 g/kWh; duty 85 %; density 745 kg/m3; rated_dp 43.5 psi; actual_dp 43.5 psi',
    expected: 'fuel_mass_flow 102 kg/h; injector_flow_at_rated 447.427293 cc/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'duty of zero',
    inputs: 'power 400 hp; injectors 4; bsfc 0.6 lb/hp/h; duty 0 %; density 745 kg/m3; rated_dp 3 bar; actual_dp 3 bar',
    rejected: 'duty',
    source: 'rule of the calculator: duty must be above 0 and at most 100 %',
  },
]);

checkCases(injectorPower, [
  {
    case: 'four 1300 cc/min on E85',
    inputs:
      'injector_flow_at_rated 1300 cc/min; injectors 4; bsfc 0.9 lb/hp/h; duty 85 %; density 785 kg/m3; rated_dp 3 bar; actual_dp 3 bar',
    expected: 'fuel_mass_flow 458.962747 lb/h; power 509.958607 hp',
    tolerance: 1e-4,
    source: `${byHand}; agrees with the trade figure of about 500 hp (common practice)`,
  },
  {
    case: 'four 550 cc/min on petrol',
    inputs:
      'injector_flow_at_rated 550 cc/min; injectors 4; bsfc 0.55 lb/hp/h; duty 80 %; density 745 kg/m3; rated_dp 3 bar; actual_dp 3 bar',
    expected: 'power 315.34922 hp',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'six 1000 cc/min at 4 bar',
    inputs:
      'injector_flow_at_rated 1000 cc/min; injectors 6; bsfc 0.6 lb/hp/h; duty 85 %; density 745 kg/m3; rated_dp 3 bar; actual_dp 4 bar',
    expected: 'power 967.230709 hp',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('blend properties', () => {
  it('lies between the two fuels, and takes less air and more volume with every percent', () => {
    const at = (percent: number, output: string) => numberOf(blendProperties, `ethanol ${percent} %`, output);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99 }), (percent) => {
        expect(at(percent + 1, 'density')).toBeGreaterThan(at(percent, 'density'));
        expect(at(percent + 1, 'afr_stoich')).toBeLessThan(at(percent, 'afr_stoich'));
        expect(at(percent + 1, 'lhv_volume')).toBeLessThan(at(percent, 'lhv_volume'));
        expect(at(percent + 1, 'volume_factor_vs_petrol')).toBeGreaterThan(at(percent, 'volume_factor_vs_petrol'));
      }),
    );
  });

  it('takes values of one’s own fuel, and warns of a petrol outside 720 to 780 kg/m³', () => {
    expect(numberOf(blendProperties, 'ethanol 0 %; petrol_density 730 kg/m3', 'density')).toBeCloseTo(730, 9);
    expect(run(blendProperties, 'ethanol 0 %; petrol_density 720 kg/m3').warnings).toEqual([]);
    expect(run(blendProperties, 'ethanol 0 %; petrol_density 700 kg/m3').warnings).toHaveLength(1);
    expect(refusalOf(blendProperties, 'ethanol 0 %; petrol_density 0 kg/m3').field).toBe('petrol_density');
  });
});

describe('injector size and the power of injectors', () => {
  const engine = 'injectors 4; bsfc 0.6 lb/hp/h; density 745 kg/m3; rated_dp 3 bar';

  it('undo one another', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 1500 }),
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 10, max: 100 }),
        (hp, percent, tenths) => {
          const rest = `${engine}; duty ${percent} %; actual_dp ${tenths / 10} bar`;
          const flow = numberOf(injectorSize, `power ${hp} hp; ${rest}`, 'injector_flow_at_rated', 'cc/min');
          const back = numberOf(
            injectorPower,
            `injector_flow_at_rated ${flow.toFixed(9)} cc/min; ${rest}`,
            'power',
            'hp',
          );
          expect(back / hp).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('warns above 85 % of duty, not at it (common practice, no published source)', () => {
    const said = (percent: number) =>
      run(injectorSize, `power 400 hp; ${engine}; actual_dp 3 bar; duty ${percent} %`).warnings;
    expect(said(85)).toEqual([]);
    expect(said(86)).toMatchObject([{ message: expect.stringContaining('85 %') }]);
  });

  it.each([
    [`power 400 hp; ${engine}; actual_dp 3 bar; duty 101 %`, 'duty'],
    [`power 400 hp; ${engine}; actual_dp 0 bar; duty 80 %`, 'actual_dp'],
    [`power 0 hp; ${engine}; actual_dp 3 bar; duty 80 %`, 'power'],
    [`${engine}; actual_dp 3 bar; duty 80 %`, 'power'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(injectorSize, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
