import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frictionColebrook, frictionHaaland } from '../../../core/calculators/e/friction.ts';
import { pressureDrop } from '../../../core/calculators/e/pressure-drop.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

checkCases(pressureDrop, [
  {
    case: 'smooth pipe, 50 mm, 200 L/min water at 30 degC',
    inputs:
      'flow 200 L/min; inside_diameter 52.5 mm; length 20 m; density 995.65 kg/m3; viscosity 0.797 mPa*s; roughness 0 mm',
    expected: 'reynolds 100600; friction_factor 0.0179',
    tolerance: { reynolds: 0.01, friction_factor: 0.012 },
    source:
      'Crane TP-410 (2009 or later) example 7.1: Re 100600, f 0.0179, as quoted in the fluids documentation; taken as 2 in schedule 40 pipe, 52.5 mm',
  },
  {
    case: 'laminar oil, 5 in schedule 40, 400 gal/min',
    inputs:
      'flow 400 gal/min; inside_diameter 5.047 in; length 300 ft; density 869.1 kg/m3; viscosity 130 cP; roughness 0.0018 in; minor_k 2.749; height_rise 50 ft',
    expected: 'velocity 6.414 ft/s; reynolds 1675.6; friction_factor 0.038195; dp_total 26.064 psi; regime laminar',
    tolerance: { velocity: 0.001, reynolds: 0.002, friction_factor: 0.002, dp_total: 0.003 },
    source:
      'Crane TP-410 (2009 or later) example 7.9 as worked in the fluids documentation: 6.414 ft/s, Re 1675.6, f 0.03819, 26.06 psi',
  },
  {
    case: 'coolant in 3/8 in hose',
    inputs:
      'flow 8 L/min; inside_diameter 9.525 mm; length 1.5 m; density 1030 kg/m3; viscosity 0.8 mPa*s; roughness 0.0015 mm; minor_k 4',
    expected:
      'velocity 1.8711943 m/s; reynolds 22947.2744; friction_factor 0.0253990768; dp_total 14.4253745 kPa; regime turbulent',
    tolerance: 0.02,
    source: 'derived by hand from the equation of this calculator',
  },
]);

describe('friction factor', () => {
  it('meets the figures of the open-source fluids library: its docstring example, Re 1e5, roughness 1e-4', () => {
    expect(frictionColebrook(1e5, 1e-4) / 0.018513866).toBeCloseTo(1, 6);
    expect(frictionHaaland(1e5, 1e-4) / 0.018265053).toBeCloseTo(1, 6);
  });

  it('solves the equation of Colebrook, and Haaland lies near it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2001, max: 1e8, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (re, rough) => {
          const f = frictionColebrook(re, rough);
          expect(-2 * Math.log10(rough / 3.7 + 2.51 / (re * Math.sqrt(f)))).toBeCloseTo(1 / Math.sqrt(f), 9);
        },
      ),
    );
    // "Within 2 %" is the published claim, from Re 4000 up.
    fc.assert(
      fc.property(
        fc.double({ min: 4000, max: 1e8, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (re, rough) => {
          expect(Math.abs(frictionHaaland(re, rough) / frictionColebrook(re, rough) - 1)).toBeLessThan(0.025);
        },
      ),
    );
  });
});

describe('pressure drop', () => {
  const water = 'density 1000 kg/m3; viscosity 1 mPa*s; roughness 0 mm';
  const oil = 'density 900 kg/m3; viscosity 100 mPa*s; roughness 0 mm';

  it('is Hagen-Poiseuille in laminar flow: in step with flow and length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 5, max: 30 }), (litres, bore) => {
        const kPa = numberOf(
          pressureDrop,
          `flow ${litres} L/min; inside_diameter ${bore} mm; length 2 m; ${oil}`,
          'dp_total',
        );
        // By hand: 128 · viscosity · length · flow / (π · d⁴).
        const byHand = (128 * 0.1 * 2 * (litres / 60_000)) / (Math.PI * (bore / 1000) ** 4) / 1000;
        expect(kPa / byHand).toBeCloseTo(1, 9);
      }),
    );
  });

  it('adds up friction, bends and height', () => {
    const text = `flow 20 L/min; inside_diameter 12 mm; length 2 m; ${water}; minor_k 3; height_rise -0.5 m`;
    const of = (name: string) => numberOf(pressureDrop, text, name);
    expect(of('dp_friction') + of('dp_minor') + of('dp_static')).toBeCloseTo(of('dp_total'), 9);
    expect(of('dp_static')).toBeCloseTo(-0.5 * 9.80665, 9);
  });

  it('says that a transitional flow is uncertain, and takes the larger drop', () => {
    const text = `flow 1.4 L/min; inside_diameter 10 mm; length 1 m; ${water}`;
    const { outputs, warnings } = run(pressureDrop, text);
    expect(outputs['regime']?.value).toBe('transitional');
    const reynolds = numberOf(pressureDrop, text, 'reynolds');
    expect(numberOf(pressureDrop, text, 'friction_factor')).toBe(
      Math.max(64 / reynolds, frictionColebrook(reynolds, 0)),
    );
    expect(warnings).toEqual([expect.objectContaining({ message: expect.stringContaining('uncertain') })]);
  });

  it('has no friction factor where nothing flows, and only the height left', () => {
    const { outputs } = run(pressureDrop, `flow 0 L/min; inside_diameter 10 mm; length 1 m; ${water}; height_rise 1 m`);
    expect(outputs).not.toHaveProperty('friction_factor');
    expect(outputs['regime']?.value).toBe('at rest');
    expect(outputs['dp_total']?.value).toBeCloseTo(9.80665, 9);
  });

  it('warns of a relative roughness above 0.05, and counts 0.05 as inside', () => {
    const rough = (mm: number) =>
      run(
        pressureDrop,
        `flow 20 L/min; inside_diameter 10 mm; length 1 m; density 1000 kg/m3; viscosity 1 cP; roughness ${mm} mm`,
      ).warnings.length;
    expect(rough(0.5)).toBe(0);
    expect(rough(0.51)).toBe(1);
  });

  it.each([
    [`flow -1 L/min; inside_diameter 10 mm; length 1 m; ${water}`, 'flow'],
    [`flow 1 L/min; inside_diameter 0 mm; length 1 m; ${water}`, 'inside_diameter'],
    ['flow 1 L/min; inside_diameter 10 mm; length 1 m; density 0 kg/m3; viscosity 1 cP', 'density'],
    ['flow 1 L/min; inside_diameter 10 mm; length 1 m; density 900 kg/m3; viscosity 0 cP', 'viscosity'],
    ['flow 9 L/min; inside_diameter 1 mm; length 1 m; density 900 kg/m3; viscosity 1 cP; roughness 1 mm', 'roughness'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(pressureDrop, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
