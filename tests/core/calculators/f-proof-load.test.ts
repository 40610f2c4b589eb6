import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stressAreaAndProofLoad } from '../../../core/calculators/f/stress-area.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const table = 'ISO 898-1 table of nominal stress areas and proof loads (as reproduced by fastener suppliers)';
const tolerance = { stress_area: 0.003, proof_load: 0.005, ultimate_load: 0.005 };

checkCases(stressAreaAndProofLoad, [
  {
    case: 'M10x1.5 class 8.8',
    inputs: 'diameter 10 mm; pitch 1.5 mm; proof_stress 580 MPa; tensile_strength 800 MPa',
    expected: 'stress_area 58 mm2; proof_load 33700 N; ultimate_load 46400 N',
    tolerance,
    source: `${table}: 58.0 mm2, 33 700 N, 46 400 N`,
  },
  {
    case: 'M8x1.25 class 10.9',
    inputs: 'diameter 8 mm; pitch 1.25 mm; proof_stress 830 MPa; tensile_strength 1040 MPa',
    expected: 'stress_area 36.6 mm2; proof_load 30400 N; ultimate_load 38100 N',
    tolerance,
    source: `${table}: 36.6 mm2, 30 400 N, 38 100 N`,
  },
  {
    case: 'M12x1.75 class 12.9',
    inputs: 'diameter 12 mm; pitch 1.75 mm; proof_stress 970 MPa',
    expected: 'stress_area 84.3 mm2; proof_load 81800 N',
    tolerance,
    source: `${table}: 84.3 mm2, 81 800 N`,
  },
  {
    case: '3/8-16 SAE J429 grade 5',
    inputs: 'diameter 0.375 in; tpi 16; proof_stress 85000 psi',
    expected: 'stress_area 0.0775 in2; proof_load 6587.5 lbf',
    tolerance: { stress_area: 0.002, proof_load: 0.003 },
    source: 'ASME B1.1 area 0.0775 in2; SAE J429 grade 5 proof stress 85 000 psi',
  },
]);

describe('stress area and proof load', () => {
  const load = (text: string) => numberOf(stressAreaAndProofLoad, text, 'proof_load');

  it('takes the strengths from the class, by diameter (ISO 898-1 and SAE J429, seen)', () => {
    expect(load('diameter 16 mm; pitch 2 mm; strength_class class 8.8')).toBe(
      load('diameter 16 mm; pitch 2 mm; proof_stress 580 MPa'),
    );
    expect(load('diameter 18 mm; pitch 2.5 mm; strength_class class 8.8')).toBe(
      load('diameter 18 mm; pitch 2.5 mm; proof_stress 600 MPa'),
    );
    expect(
      load('diameter 1 in; tpi 8; strength_class grade 5') / load('diameter 1 in; tpi 8; proof_stress 85 ksi'),
    ).toBeCloseTo(1, 9);
    expect(
      load('diameter 1.25 in; tpi 7; strength_class grade 5') / load('diameter 1.25 in; tpi 7; proof_stress 74 ksi'),
    ).toBeCloseTo(1, 9);
  });

  it('gives the area alone where no strength is known, and the two preloads where one is', () => {
    expect(Object.keys(run(stressAreaAndProofLoad, 'diameter 10 mm; pitch 1.5 mm').outputs)).toEqual(['stress_area']);
    const text = 'diameter 10 mm; pitch 1.5 mm; proof_stress 580 MPa';
    expect(numberOf(stressAreaAndProofLoad, text, 'preload_reopened') / load(text)).toBeCloseTo(0.75, 12);
    expect(numberOf(stressAreaAndProofLoad, text, 'preload_permanent') / load(text)).toBeCloseTo(0.9, 12);
  });

  it('lies between the root area and the nominal area, and the metric and inch forms agree', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 39 }), fc.double({ min: 0.06, max: 0.2, noNaN: true }), (d, share) => {
        const area = (thread: string) => numberOf(stressAreaAndProofLoad, `diameter ${d} mm; ${thread}`, 'stress_area');
        const p = d * share;
        const metric = area(`pitch ${p.toFixed(9)} mm`);
        expect(metric).toBeLessThan((Math.PI / 4) * d ** 2);
        expect(metric).toBeGreaterThan((Math.PI / 4) * (d - 1.226869 * p) ** 2);
        // Both subtract nearly the same: 0.9743 P there, (0.649519 + 1.226869)/2 · P here.
        expect(Math.abs(area(`tpi ${(25.4 / p).toFixed(9)} TPI`) / metric - 1)).toBeLessThan(0.03);
      }),
    );
  });

  it.each([
    ['diameter 10 mm; pitch 5 mm', 'pitch'],
    ['diameter 0.25 in; tpi 8', 'tpi'],
    ['diameter 10 mm; pitch 1.5 mm; proof_stress 580 MPa; strength_class class 8.8', 'strength_class'],
    ['diameter 2 in; tpi 4.5; strength_class grade 8', 'strength_class'],
    ['diameter 10 mm; pitch 1.5 mm; tpi 16', 'tpi'],
    ['diameter 10 mm', 'pitch'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(stressAreaAndProofLoad, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
