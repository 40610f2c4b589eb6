import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oilDrain } from '../../../core/calculators/e/oil-drain.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand =
  'derived by hand from Hagen-Poiseuille with the slope as the pressure gradient (half-full laminar flow carries half the full-bore flow by symmetry); aeration factor 2 is an assumption, no published source';

checkCases(oilDrain, [
  {
    case: 'hot oil, 12.7 mm, 60 deg',
    inputs: 'flow 2 L/min; inside_diameter 12.7 mm; slope 60 deg; density 830 kg/m3; viscosity 10 mPa*s; aeration 2',
    expected:
      'full_bore_capacity 27.0044562 L/min; capacity_ratio 0.148123701; min_inside_diameter 9.36952034 mm; ok true',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'small hose fails',
    inputs: 'flow 2 L/min; inside_diameter 7.9 mm; slope 20 deg; density 830 kg/m3; viscosity 15 mPa*s; aeration 2',
    expected: 'full_bore_capacity 1.06453198 L/min; min_inside_diameter 13.0800652 mm; ok false',
    tolerance: 1e-4,
    source: byHand,
    warns: /half full/,
  },
  {
    case: 'dash 10 nominal, 45 deg, cool oil',
    inputs:
      'flow 1.5 L/min; inside_diameter 15.875 mm; slope 45 deg; density 850 kg/m3; viscosity 40 mPa*s; aeration 2',
    expected: 'capacity_ratio 0.217676003; min_inside_diameter 12.895075 mm; ok true',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'drain running uphill',
    inputs: 'flow 2 L/min; inside_diameter 12.7 mm; slope -5 deg; density 830 kg/m3; viscosity 10 mPa*s; aeration 2',
    rejected: 'slope',
    source: 'rule of the calculator: slope must be above zero',
  },
]);

describe('oil drain', () => {
  const hot = 'flow 2 L/min; slope 60 deg; density 830 kg/m3; viscosity 10 mPa*s';
  const said = (more: string) => run(oilDrain, `${hot}; ${more}`).warnings;

  it('passes at the smallest bore it names, and not below', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 5, max: 90 }), (decilitres, slope) => {
        const base = `flow ${decilitres / 10} L/min; slope ${slope} deg; density 850 kg/m3; viscosity 20 cP`;
        const least = numberOf(oilDrain, `${base}; inside_diameter 10 mm`, 'min_inside_diameter');
        const ok = (mm: number) => run(oilDrain, `${base}; inside_diameter ${mm} mm`).outputs['ok']?.value;
        expect(ok(least)).toBe(true);
        expect(ok(least * 0.999)).toBe(false);
      }),
    );
  });

  it('calls for 12.7 mm on a turbocharger drain (common practice, no published source), and there only', () => {
    expect(said('inside_diameter 12.7 mm')).toEqual([]);
    expect(said('inside_diameter 10 mm')).toHaveLength(1);
    expect(said('inside_diameter 10 mm; turbocharger_drain false')).toEqual([]);
  });

  it('warns of a port beyond 15° (installation guidance), gravely beyond 35° (from memory)', () => {
    const at = (angle: number) => said(`inside_diameter 16 mm; port_angle ${angle} deg`).map((one) => one.level);
    expect(at(15)).toEqual([]);
    expect(at(20)).toEqual(['warning']);
    expect(at(35)).toEqual(['warning']);
    expect(at(36)).toEqual(['grave']);
  });

  it('warns of a bore below the port, and of an entry below the oil', () => {
    expect(said('inside_diameter 16 mm; port_diameter 16 mm')).toEqual([]);
    expect(said('inside_diameter 16 mm; port_diameter 19 mm')).toHaveLength(1);
    expect(said('inside_diameter 16 mm; entry_below_oil true')).toHaveLength(1);
  });

  it('says that the formula is optimistic above Reynolds 2000', () => {
    const thin = 'inside_diameter 16 mm; slope 60 deg; density 1000 kg/m3; viscosity 1 cP; flow 2 L/min';
    expect(run(oilDrain, thin).warnings).toEqual([
      expect.objectContaining({ message: expect.stringContaining('optimistic') }),
    ]);
  });

  it('refuses a level drain, and one steeper than straight down', () => {
    const of = (slope: number) =>
      refusalOf(oilDrain, `flow 2 L/min; inside_diameter 16 mm; slope ${slope} deg; density 830 kg/m3; viscosity 9 cP`);
    expect(of(0)).toMatchObject({ code: 'bad-input', field: 'slope' });
    expect(of(91)).toMatchObject({ code: 'bad-input', field: 'slope' });
  });

  it('carries a caution that defers to the maker', () => {
    expect(oilDrain.caution).toMatch(/maker/);
  });
});
