import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fuse } from '../../../core/calculators/k/fuse.ts';
import { voltageDrop } from '../../../core/calculators/k/voltage-drop.ts';
import { wireGauge } from '../../../core/calculators/k/wire-gauge.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';
const wireTable =
  'NBS Copper Wire Tables (Circular 31 / Handbook 100) as reproduced in public tables; diameter law ASTM B258';
const loading =
  '80 % continuous loading is common practice (ISO 8820 family and fuse-maker guidance, from memory); number derived by hand';
const tolerance = { diameter: 5e-4, area: 5e-4, resistance: 2e-3 };

checkCases(wireGauge, [
  {
    case: '10 AWG',
    inputs: 'awg 10',
    expected: 'diameter 0.10189 in; area 5.26115495 mm2; resistance 0.9989 ohm/kft',
    tolerance,
    source: `${wireTable}: 0.9989 ohm per 1000 ft at 20 degC`,
  },
  {
    case: '12 AWG',
    inputs: 'awg 12',
    expected: 'diameter 0.0808 in; area 3.30877288 mm2; resistance 1.588 ohm/kft',
    tolerance,
    source: `${wireTable}: 1.588 ohm per 1000 ft at 20 degC`,
  },
  {
    case: '16 AWG',
    inputs: 'awg 16',
    expected: 'diameter 0.05082 in; area 1.30869573 mm2; resistance 4.016 ohm/kft',
    tolerance,
    source: `${wireTable}: 4.016 ohm per 1000 ft at 20 degC`,
  },
]);

checkCases(voltageDrop, [
  {
    case: 'fuel pump 16 A, 5 m, 12 AWG, chassis return',
    inputs: 'current 16 A; one_way_length 5 m; supply 13.5 V; conductor_temp 50 degC; awg 12; ground_return false',
    expected:
      'loop_resistance 0.0291251691 ohm; voltage_drop 0.466002705 V; drop_fraction 3.45187189 %; load_voltage 13.0339973 V',
    tolerance: 1e-3,
    source: byHand,
    warns: /3 %/,
  },
  {
    case: 'two-wire run 10 AWG',
    inputs: 'current 20 A; one_way_length 15 ft; supply 13.8 V; conductor_temp 20 degC; awg 10; ground_return true',
    expected: 'voltage_drop 0.599304546 V; drop_fraction 4.34278656 %',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: '4 mm2 cable, fan 30 A',
    inputs: 'current 30 A; one_way_length 2.5 m; supply 13.5 V; conductor_temp 60 degC; area 4 mm2; ground_return true',
    expected: 'voltage_drop 0.748173195 V; load_voltage 12.7518268 V',
    tolerance: 1e-3,
    source: byHand,
  },
  {
    case: 'no current',
    inputs: 'current -4 A; one_way_length 3 m; supply 13.5 V; conductor_temp 20 degC; awg 12; ground_return true',
    rejected: 'current',
    source: 'rule of the calculator: current must be above zero',
  },
]);

checkCases(fuse, [
  {
    case: '16 A pump',
    inputs: 'continuous_current 16 A; wire_rating 30 A',
    expected: 'min_fuse 20 A; fuse 20 A; ok true',
    tolerance: 1e-4,
    source: loading,
  },
  {
    case: 'wire too small',
    inputs: 'continuous_current 22 A; wire_rating 25 A',
    expected: 'min_fuse 27.5 A; fuse 30 A; ok false',
    tolerance: 1e-4,
    source: loading,
    warns: /enlarge the wire, never the fuse/,
  },
  {
    case: 'fan 30 A',
    inputs: 'continuous_current 30 A; wire_rating 45 A',
    expected: 'min_fuse 37.5 A; fuse 40 A; ok true',
    tolerance: 1e-4,
    source: loading,
  },
]);

describe('wire gauge', () => {
  it('takes -3 to 40, whole', () => {
    // The law itself: 0000 is 0.460 in and 36 is 0.005 in (ASTM B258, from memory).
    expect(numberOf(wireGauge, 'awg -3', 'diameter', 'in')).toBeCloseTo(0.46, 9);
    expect(numberOf(wireGauge, 'awg 36', 'diameter', 'in')).toBeCloseTo(0.005, 12);
    for (const awg of ['-4', '41', '12.5']) {
      expect(refusalOf(wireGauge, `awg ${awg}`)).toMatchObject({ code: 'bad-input', field: 'awg' });
    }
  });

  it('has more resistance the higher the number', () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 39 }), (awg) => {
        const of = (number: number) => numberOf(wireGauge, `awg ${number}`, 'resistance');
        expect(of(awg + 1)).toBeGreaterThan(of(awg));
      }),
    );
  });
});

describe('voltage drop', () => {
  const at = (current: number, more = 'ground_return false') =>
    `current ${current} A; one_way_length 4 m; supply 13.5 V; conductor_temp 20 degC; area 4 mm2; ${more}`;
  const levels = (inputs: string) => run(voltageDrop, inputs).warnings.map(({ level }) => level);

  it('warns above 3 %, gravely above 5 % unless it feeds no fuel pump (common practice, no published source)', () => {
    expect(levels(at(23))).toEqual([]);
    expect(levels(at(24))).toEqual(['warning']);
    expect(levels(at(40))).toEqual(['grave']);
    expect(levels(at(40, 'ground_return false; feeds_fuel_pump true'))).toEqual(['grave']);
    expect(levels(at(40, 'ground_return false; feeds_fuel_pump false'))).toEqual(['warning']);
  });

  it('says that the body adds to a drop with chassis return', () => {
    expect(run(voltageDrop, at(10)).notes[0]).toContain('body and joints');
    expect(run(voltageDrop, at(10, 'ground_return true')).notes[0]).not.toContain('body');
  });

  it.each([
    [at(0), 'current'],
    [at(1000), 'current'],
    [at(10).replace('4 m;', '0 m;'), 'one_way_length'],
    [at(10).replace('4 mm2', '-4 mm2'), 'area'],
    [at(10).replace('20 degC', '-260 degC'), 'conductor_temp'],
    [at(10).replace('area 4 mm2; ', ''), 'awg'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(voltageDrop, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('loses twice as much with a ground wire, and load and loss make up the supply', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (current) => {
        const chassis = numberOf(voltageDrop, at(current), 'voltage_drop');
        expect(numberOf(voltageDrop, at(current, 'ground_return true'), 'voltage_drop')).toBeCloseTo(2 * chassis, 9);
        expect(chassis + numberOf(voltageDrop, at(current), 'load_voltage')).toBeCloseTo(13.5, 9);
      }),
    );
  });
});

describe('fuse', () => {
  it('counts a fuse equal to the wire rating as protecting it, and refuses beyond the largest size', () => {
    expect(run(fuse, 'continuous_current 24 A; wire_rating 30 A').outputs).toMatchObject({
      fuse: { value: 30 },
      ok: { value: true },
    });
    expect(numberOf(fuse, 'continuous_current 80 A; wire_rating 120 A', 'fuse')).toBe(100);
    expect(refusalOf(fuse, 'continuous_current 80.1 A; wire_rating 120 A')).toMatchObject({
      field: 'continuous_current',
    });
    expect(refusalOf(fuse, 'continuous_current 0 A; wire_rating 120 A')).toMatchObject({ field: 'continuous_current' });
  });

  it('is never loaded above 80 % for long', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 800 }), (tenths) => {
        const size = numberOf(fuse, `continuous_current ${tenths / 10} A; wire_rating 200 A`, 'fuse');
        expect(tenths / 10 / size).toBeLessThanOrEqual(0.8 + 1e-8);
      }),
    );
  });
});
