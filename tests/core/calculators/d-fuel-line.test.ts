import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fuelLine } from '../../../core/calculators/d/fuel-line.ts';
import { pressureDrop } from '../../../core/calculators/e/pressure-drop.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator (Darcy-Weisbach with Colebrook)';

checkCases(fuelLine, [
  {
    case: 'friction factor Re 1e5, e/D 1e-4',
    inputs: 'reynolds 100000; relative_roughness 0.0001',
    expected: 'friction_colebrook 0.018513866; friction_haaland 0.018265053',
    tolerance: 1e-6,
    source:
      'open-source fluids library (CalebBell/fluids) docstring example: Colebrook 0.018513866, Haaland 0.018265053',
  },
  {
    case: 'petrol line, 8 mm, 5 m',
    inputs:
      'flow 200 L/h; inside_diameter 8 mm; length 5 m; density 745 kg/m3; viscosity 0.55 mPa*s; roughness 0.0015 mm; minor_k 3',
    expected: 'velocity 1.10524266 m/s; reynolds 11976.8114; friction_factor 0.0297713624; dp_total 9.83191394 kPa',
    tolerance: 0.02,
    source: byHand,
  },
  {
    case: 'E85 line, 3/8 in nominal hose',
    inputs:
      'flow 265 L/h; inside_diameter 9.525 mm; length 4.5 m; density 785 kg/m3; viscosity 1 mPa*s; roughness 0.0015 mm; minor_k 5',
    expected: 'velocity 1.03305519 m/s; reynolds 7724.28277; friction_factor 0.0333175795; dp_total 8.68775945 kPa',
    tolerance: 0.02,
    source: byHand,
  },
]);

const line = 'inside_diameter 8 mm; length 5 m; density 745 kg/m3; viscosity 0.55 mPa*s; minor_k 3';
const saidBy = (inputs: string) => run(fuelLine, inputs).warnings.map(({ message }) => message);

describe('fuel line', () => {
  it('tells what E2 tells of the same line', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: -10, max: 10 }), (flow, tenths) => {
        const inputs = `flow ${flow} L/h; ${line}; height_rise ${tenths / 10} m`;
        const { outputs } = run(fuelLine, inputs);
        expect(outputs).toEqual(run(pressureDrop, inputs).outputs);
      }),
    );
  });

  it('loses more with every litre', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (flow) => {
        const at = (litres: number) => numberOf(fuelLine, `flow ${litres} L/h; ${line}`, 'dp_friction');
        // Laminar and turbulent laws alike; the larger of both lies between them.
        expect(at(flow + 1)).toBeGreaterThan(at(flow));
      }),
    );
  });

  it('warns of velocity and drop on the suction side (common practice, no published source)', () => {
    expect(saidBy(`flow 200 L/h; ${line}`)).toEqual([]);
    expect(saidBy(`flow 200 L/h; ${line}; side suction`)).toEqual([
      expect.stringContaining('1 m/s on the suction side'),
      expect.stringContaining('5 kPa'),
    ]);
  });

  it('warns of more than 3 m/s on the pressure side (common practice, no published source)', () => {
    expect(saidBy(`flow 600 L/h; ${line}`)).toEqual([expect.stringContaining('3 m/s on the pressure side')]);
  });

  it('says that friction below Reynolds 4000 is not what Colebrook and Haaland are meant for', () => {
    expect(saidBy('reynolds 3000; relative_roughness 0')).toHaveLength(1);
    expect(saidBy('reynolds 4000; relative_roughness 0.05')).toEqual([]);
  });

  it.each([
    [`flow -1 L/h; ${line}`, 'flow'],
    [`flow 200 L/h; ${line.replace('8 mm', '0 mm')}`, 'inside_diameter'],
    [`flow 200 L/h; ${line.replace('745', '0')}`, 'density'],
    [`flow 200 L/h; ${line.replace('0.55', '0')}`, 'viscosity'],
    [`flow 200 L/h; ${line}; roughness 5 mm`, 'roughness'],
    [`flow 200 L/h; ${line}; side top`, 'side'],
    ['reynolds 0; relative_roughness 0', 'reynolds'],
    ['reynolds 5000', 'relative_roughness'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(fuelLine, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
