import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displacement } from '../../../core/calculators/b/displacement.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(displacement, [
  {
    case: 'square 2.0 L four',
    inputs: 'bore 86 mm; stroke 86 mm; cylinders 4; rpm 7000 rpm; rod_length 145 mm',
    expected:
      'swept_volume 499.557214 cc; displacement 1998.22886 cc; mean_piston_speed 20.0666667 m/s; rod_ratio 1.68604651; bore_stroke_ratio 1',
    tolerance: 1e-4,
    source: `${byHand}; definition Heywood, Stone`,
    warns: /20 m\/s/,
  },
  {
    case: 'inch-size V8',
    inputs: 'bore 4 in; stroke 3.48 in; cylinders 8; rpm 6500 rpm; rod_length 5.7 in',
    expected: 'displacement 349.847758 in3; mean_piston_speed 3770 ft/min; rod_ratio 1.63793103',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '2.5 L four, long stroke',
    inputs: 'bore 99.5 mm; stroke 79 mm; cylinders 4; rpm 6800 rpm; rod_length 130.5 mm',
    expected: 'displacement 2457.10166 cc; mean_piston_speed 17.9066667 m/s; rod_ratio 1.65189873',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'zero bore',
    inputs: 'bore 0 mm; stroke 86 mm; cylinders 4',
    rejected: 'bore',
    source: 'rule of the calculator: bore must be above zero',
  },
]);

describe('displacement', () => {
  const plain = 'bore 86 mm; stroke 86 mm; cylinders 4';

  it('gives no piston speed without engine speed, and no rod ratio without rod', () => {
    expect(Object.keys(run(displacement, plain).outputs)).toEqual([
      'swept_volume',
      'displacement',
      'bore_stroke_ratio',
    ]);
  });

  it('adds the second term to peak acceleration', () => {
    // By hand: stroke/2 · ω² · (1 + stroke/(2 · rod)), from the figures as entered.
    const peak = numberOf(displacement, `${plain}; rpm 7000; rod_length 145 mm`, 'peak_acceleration');
    expect(peak).toBeCloseTo(0.043 * ((2 * Math.PI * 7000) / 60) ** 2 * (1 + 86 / 290), 6);
  });

  it('warns of a piston speed above 20 m/s, and in other words above 25 m/s (common practice, no published source)', () => {
    const said = (rpm: number) => run(displacement, `${plain}; rpm ${rpm} rpm`).warnings.map(({ message }) => message);
    expect(said(6000)).toEqual([]);
    expect(said(7000)).toEqual([expect.stringContaining('20 m/s')]);
    expect(said(9000)).toEqual([expect.stringContaining('25 m/s')]);
  });

  it('counts a piston speed of exactly 20 m/s as inside', () => {
    expect(run(displacement, 'bore 100 mm; stroke 100 mm; cylinders 1; rpm 6000 rpm').warnings).toEqual([]);
  });

  it('warns of a rod ratio outside 1.4 to 2.2', () => {
    expect(run(displacement, `${plain}; rod_length 110 mm`).warnings).toHaveLength(1);
    expect(run(displacement, `${plain}; rod_length 120.4 mm`).warnings).toEqual([]);
    expect(run(displacement, `${plain}; rod_length 200 mm`).warnings).toHaveLength(1);
  });

  it.each([
    ['bore 86 mm; stroke -1 mm; cylinders 4', 'stroke'],
    ['bore 86 mm; stroke 86 mm; cylinders 4.5', 'cylinders'],
    ['bore 86 mm; stroke 86 mm; cylinders 0', 'cylinders'],
    ['bore 86 mm; stroke 86 mm; cylinders 4; rod_length 43 mm', 'rod_length'],
    ['bore 86 mm; stroke 86 mm; cylinders 4; rpm -1 rpm', 'rpm'],
    ['bore 86 mm; cylinders 4', 'stroke'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(displacement, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('grows with the square of the bore and in step with stroke and cylinders', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 100 }), fc.integer({ min: 20, max: 100 }), (bore, stroke) => {
        const of = (b: number, s: number, n: number) =>
          numberOf(displacement, `bore ${b} mm; stroke ${s} mm; cylinders ${n}`, 'displacement');
        const one = of(bore, stroke, 1);
        expect(of(2 * bore, stroke, 1) / one).toBeCloseTo(4, 9);
        expect(of(bore, 2 * stroke, 1) / one).toBeCloseTo(2, 9);
        expect(of(bore, stroke, 8) / one).toBeCloseTo(8, 9);
      }),
    );
  });
});
