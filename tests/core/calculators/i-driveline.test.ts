import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roadSpeed } from '../../../core/calculators/i/road-speed.ts';
import { tyreSize } from '../../../core/calculators/i/tyre-size.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(tyreSize, [
  {
    case: '225/45 R17',
    inputs: 'section_width 225 mm; aspect 45 %; rim 17 in',
    expected: 'free_diameter 634.3 mm; free_circumference 1992.71222 mm',
    tolerance: 1e-4,
    source: `${byHand} (tyre size designation: ISO 4000-1)`,
  },
  {
    case: '205/55 R16',
    inputs: 'section_width 205 mm; aspect 55 %; rim 16 in',
    expected: 'free_diameter 631.9 mm',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '315/35 R17',
    inputs: 'section_width 315 mm; aspect 35 %; rim 17 in',
    expected: 'free_diameter 25.6811024 in',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(roadSpeed, [
  {
    case: '4th gear 1.00',
    inputs: 'rpm 6500 rpm; gear_ratio 1; final_drive 4.1; rolling_circumference 1940 mm',
    expected: 'road_speed 184.536585 km/h',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'top gear',
    inputs: 'rpm 3000 rpm; gear_ratio 0.78; final_drive 3.9; rolling_circumference 1.95 m',
    expected: 'road_speed 71.696676 mph',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'first gear',
    inputs: 'rpm 7000 rpm; gear_ratio 3.45; final_drive 4.44; rolling_circumference 1.93 m',
    expected: 'road_speed 52.9181355 km/h',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('tyre size', () => {
  it('notes the rolling circumference (common practice, no published source: 0.96 to 0.97 of the free one)', () => {
    // By hand: 1992.712 · 0.96 = 1913.0 and · 0.97 = 1932.9.
    expect(run(tyreSize, 'section_width 225 mm; aspect 45 %; rim 17 in').notes[0]).toContain('1,913 mm to 1,933 mm');
  });

  it('warns of an aspect given without its percent', () => {
    expect(run(tyreSize, 'section_width 225 mm; aspect 45; rim 17 in').warnings).toHaveLength(1);
  });

  it.each([
    ['section_width 0 mm; aspect 45 %; rim 17 in', 'section_width'],
    ['section_width 225 mm; aspect -45 %; rim 17 in', 'aspect'],
    ['section_width 225 mm; aspect 45 %', 'rim'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(tyreSize, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});

describe('road speed', () => {
  const at = (rpm: number, more = '') =>
    `rpm ${rpm} rpm; gear_ratio 1; final_drive 4; rolling_circumference 2000 mm${more}`;

  it('warns above the speed symbol of the tyre, not at it (symbols: ISO 4000-1, from memory)', () => {
    // By hand: 7000/4 · 2 m · 60 = 210 km/h, the speed of symbol H.
    expect(numberOf(roadSpeed, at(7000), 'road_speed')).toBeCloseTo(210, 9);
    expect(run(roadSpeed, at(7000, '; speed_symbol H')).warnings).toEqual([]);
    expect(run(roadSpeed, at(7001, '; speed_symbol H')).warnings.map(({ level }) => level)).toEqual(['grave']);
    expect(run(roadSpeed, at(9000)).warnings).toEqual([]);
  });

  it.each([
    [at(-1), 'rpm'],
    [at(7000, '; speed_symbol X'), 'speed_symbol'],
    [at(7000).replace('gear_ratio 1', 'gear_ratio 0'), 'gear_ratio'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(roadSpeed, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('keeps step with engine speed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 5000 }), (rpm) => {
        expect(numberOf(roadSpeed, at(2 * rpm), 'road_speed')).toBeCloseTo(
          2 * numberOf(roadSpeed, at(rpm), 'road_speed'),
          9,
        );
      }),
    );
  });
});
