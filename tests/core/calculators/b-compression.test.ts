import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chamberVolume } from '../../../core/calculators/b/chamber-volume.ts';
import { compressionRatio } from '../../../core/calculators/b/compression-ratio.ts';
import { overbore } from '../../../core/calculators/b/overbore.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';
const four =
  'bore 86 mm; stroke 86 mm; gasket_bore 87 mm; gasket_thickness 1.2 mm; deck_clearance 0.2 mm; piston_dish 5 cc';
const dome =
  'bore 87.5 mm; stroke 80 mm; gasket_bore 88.5 mm; gasket_thickness 0.8 mm; deck_clearance 0 mm; piston_dish -4.5 cc';

checkCases(compressionRatio, [
  {
    case: '2.0 L, dish piston',
    inputs: `${four}; chamber 47 cc`,
    expected:
      'clearance_volume 60.2953754 cc; gasket_volume 7.13361444 cc; deck_volume 1.16176096 cc; compression_ratio 9.28516633',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'dome piston (negative dish)',
    inputs: `${dome}; chamber 52 cc`,
    expected: 'clearance_volume 52.4211478 cc; compression_ratio 10.1767616',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'piston above the deck (negative deck clearance)',
    inputs:
      'bore 4.03 in; stroke 3.48 in; chamber 64 cc; gasket_bore 4.1 in; gasket_thickness 0.041 in; deck_clearance -0.005 in; piston_dish 6 cc',
    expected: 'clearance_volume 77.8252557 cc; compression_ratio 10.3467324',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(chamberVolume, [
  {
    case: 'target 9.0',
    inputs: `${four}; target_ratio 9`,
    expected: 'clearance_volume 62.4446518 cc; chamber 49.1492764 cc',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'round trip of the first B2 case',
    inputs: `${four}; target_ratio 9.28516633`,
    expected: 'chamber 47 cc',
    tolerance: 1e-3,
    source: `${byHand}; inverse must return 47 cc`,
  },
  {
    case: 'target 10.5 with dome',
    inputs: `${dome}; target_ratio 10.5`,
    expected: 'chamber 50.2163654 cc',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'ratio of 1',
    inputs:
      'bore 86 mm; stroke 86 mm; target_ratio 1; gasket_bore 87 mm; gasket_thickness 1.2 mm; deck_clearance 0 mm; piston_dish 0 cc',
    rejected: 'target_ratio',
    source: 'rule of the calculator: target ratio must be above 1',
  },
]);

checkCases(overbore, [
  {
    case: '0.5 mm over',
    inputs: 'bore 86 mm; stroke 86 mm; cylinders 4; overbore 0.5 mm',
    expected: 'displacement 2021.53162 cc; displacement_change 23.3027635 cc; displacement_change_pct 1.1661709 %',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '1.0 mm over',
    inputs: 'bore 99.5 mm; stroke 79 mm; cylinders 4; overbore 1 mm',
    expected: 'displacement 2506.73882 cc; displacement_change 49.6371639 cc; displacement_change_pct 2.02015101 %',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '0.030 in over',
    inputs: 'bore 4 in; stroke 3.48 in; cylinders 8; overbore 0.03 in',
    expected: 'displacement 355.115153 in3; displacement_change_pct 1.505625 %',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('compression ratio and chamber', () => {
  const space = (parts: Partial<Record<string, string>>): string =>
    Object.entries({
      bore: '86 mm',
      stroke: '86 mm',
      gasket_bore: '87 mm',
      gasket_thickness: '1 mm',
      deck_clearance: '0 mm',
      piston_dish: '0 cc',
      ...parts,
    })
      .map(([name, value]) => `${name} ${value}`)
      .join('; ');

  it('are exact inverses of one another', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 900 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: -20, max: 50 }),
        fc.integer({ min: -300, max: 300 }),
        (chamber, thickness, deck, dish) => {
          const parts = space({
            gasket_thickness: `${thickness / 10} mm`,
            deck_clearance: `${deck / 100} mm`,
            piston_dish: `${dish / 20} cc`,
          });
          const ratio = numberOf(compressionRatio, `${parts}; chamber ${chamber / 10} cc`, 'compression_ratio');
          expect(numberOf(chamberVolume, `${parts}; target_ratio ${ratio}`, 'chamber')).toBeCloseTo(chamber / 10, 9);
        },
      ),
    );
  });

  it('falls as the chamber, the gasket, the deck clearance or the dish grows', () => {
    const ratio = (parts: Partial<Record<string, string>>): number =>
      numberOf(compressionRatio, space({ chamber: '47 cc', ...parts }), 'compression_ratio');
    const base = ratio({});
    for (const more of [
      { chamber: '48 cc' },
      { gasket_thickness: '1.1 mm' },
      { deck_clearance: '0.1 mm' },
      { piston_dish: '1 cc' },
    ]) {
      expect(ratio(more)).toBeLessThan(base);
    }
  });

  it.each([
    [{ gasket_bore: '85 mm' }, ['grave'], /gasket bore/],
    [{ deck_clearance: '-1 mm' }, ['grave'], /meets the head/],
    [{ gasket_thickness: '0.79 mm' }, ['warning'], /below 0.8 mm/],
    [{ gasket_thickness: '1.51 mm' }, ['warning'], /above 1.5 mm/],
    [{ chamber: '100 cc' }, ['warning'], /outside 7 to 14/],
    [{ chamber: '20 cc' }, ['warning'], /outside 7 to 14/],
    [{ gasket_thickness: '0.8 mm' }, [], undefined],
    [{ gasket_thickness: '1.3 mm', deck_clearance: '0.2 mm' }, [], undefined],
  ])('warns of %o (common practice, no published source)', (parts, levels, said) => {
    const { warnings } = run(compressionRatio, space({ chamber: '47 cc', ...parts }));
    expect(warnings.map(({ level }) => level)).toEqual(levels);
    if (said !== undefined) expect(warnings[0]?.message).toMatch(said);
  });

  it('tells how far the present chamber is off', () => {
    const needed = numberOf(chamberVolume, `${four}; target_ratio 9`, 'chamber');
    expect(numberOf(chamberVolume, `${four}; target_ratio 9; present_chamber 47 cc`, 'chamber_change')).toBeCloseTo(
      needed - 47,
      9,
    );
    expect(run(chamberVolume, `${four}; target_ratio 9`).outputs).not.toHaveProperty('chamber_change');
  });

  it('refuses a ratio that leaves no chamber, and parts that leave no volume', () => {
    expect(refusalOf(chamberVolume, `${four}; target_ratio 60`)).toMatchObject({ field: 'target_ratio' });
    expect(refusalOf(compressionRatio, space({ chamber: '5 cc', piston_dish: '-30 cc' }))).toMatchObject({
      code: 'bad-input',
      field: 'chamber',
    });
    expect(refusalOf(compressionRatio, space({ chamber: '-1 cc' }))).toMatchObject({ field: 'chamber' });
    expect(refusalOf(compressionRatio, space({ chamber: '47 cc', gasket_thickness: '-1 mm' }))).toMatchObject({
      field: 'gasket_thickness',
    });
  });
});

describe('overbore', () => {
  const block = 'bore 86 mm; stroke 86 mm; cylinders 4';

  it('changes nothing at 0, and adds up', () => {
    expect(numberOf(overbore, `${block}; overbore 0 mm`, 'displacement_change')).toBe(0);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), (hundredths) => {
        const { outputs } = run(overbore, `${block}; overbore ${hundredths / 100} mm`);
        const before = (outputs['displacement']?.value as number) - (outputs['displacement_change']?.value as number);
        expect(before).toBeCloseTo(numberOf(overbore, `${block}; overbore 0 mm`, 'displacement'), 6);
      }),
    );
  });

  it('asks for the walls to be measured above 1 mm, not at it (common practice, no published source)', () => {
    expect(run(overbore, `${block}; overbore 1 mm`).warnings).toEqual([]);
    expect(run(overbore, `${block}; overbore 1.01 mm`).warnings.map(({ message }) => message)).toEqual([
      expect.stringContaining('ultrasound'),
    ]);
    expect(run(overbore, `${block}; overbore 5.1 mm`).warnings).toHaveLength(2);
  });

  it('refuses a negative overbore', () => {
    expect(refusalOf(overbore, `${block}; overbore -0.5 mm`)).toMatchObject({ code: 'bad-input', field: 'overbore' });
  });
});
