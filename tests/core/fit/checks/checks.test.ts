import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ComparingCheck,
  comparisons,
  type Facts,
  type FitCheck,
  type Operand,
} from '../../../../core/fit/checks/check.ts';
import { evaluateCheck } from '../../../../core/fit/checks/evaluate.ts';
import { factName, factNames } from '../../../../core/fit/checks/fact-names.ts';
import { readFitCheck } from '../../../../core/fit/checks/read-check.ts';
import { shippedChecks } from '../../../../core/fit/checks/shipped.ts';
import { Refusal } from '../../../../core/refusal.ts';

const check = (
  left: Operand,
  op: ComparingCheck['op'],
  right: Operand,
  more: Partial<ComparingCheck> = {},
): FitCheck => ({
  id: 'one',
  title: 'One',
  left,
  op,
  right,
  severity: 'danger',
  pass: 'fits ({left}, {right}), {margin} left',
  fail: 'does not fit ({left}, {right})',
  unknown: 'enter {missing}',
  ...more,
});

const outcome = (one: FitCheck, facts: Facts = {}) => evaluateCheck(one, facts).outcome;
const shipped = (id: string): FitCheck => {
  const found = shippedChecks.find((one) => one.id === id);
  if (found === undefined) throw new Error(`No check ${id}.`);
  return found;
};

describe('a fit as data', () => {
  it('compares two facts, and asks for those that are missing by their name', () => {
    const ports = shipped('head_coolant_ports');
    const water = { block: { cooling: 'Water', coolant_ports: 3 } };
    // Two against three: an example of the trade, no published source.
    expect(evaluateCheck(ports, { ...water, head: { coolant_ports: 2 } })).toMatchObject({
      outcome: 'fail',
      severity: 'danger',
      text: 'Head has 2 coolant ports, block 3: one would stay open.',
    });
    expect(evaluateCheck(ports, { ...water, head: { coolant_ports: 3 } })).not.toHaveProperty('severity');
    expect(evaluateCheck(ports, water, { nameOf: factName })).toMatchObject({
      outcome: 'unknown',
      missing: ['head.coolant_ports'],
      text: 'Enter the count of coolant ports of the head.',
    });
    expect(outcome(ports, { block: { cooling: 'air' } })).toBe('not asked');
    expect(outcome(ports, {})).toBe('unknown');
  });

  it('covers a pressure within a sensor’s range, with what is left', () => {
    // Arithmetic: 3.5 - 2.9 = 0.6; 3.0 - 2.9 = 0.1, less than 0.2.
    const need = (margin: number): Operand => ({ value: 2.9, unit: 'bar', ref: 'abs', margin });
    expect(evaluateCheck(check({ min: 0, max: 3.5, unit: 'bar', ref: 'abs' }, 'covers', need(0.1)), {})).toMatchObject({
      outcome: 'pass',
      marginLeft: 0.6,
      unit: 'bar',
    });
    expect(outcome(check({ min: 0, max: 3, unit: 'bar', ref: 'abs' }, 'covers', need(0.2)))).toBe('fail');
    const facts = { sensor: { range: { min: 0, max: 3.5, unit: 'bar', ref: 'abs' as const } }, plan: { boost: 2.9 } };
    expect(evaluateCheck(shipped('map_sensor_range'), facts)).toMatchObject({ outcome: 'pass', marginLeft: 0.6 });
  });

  it('takes gauge for absolute only by adding the air outside, and says so', () => {
    const range: Operand = { min: 0, max: 3, unit: 'bar', ref: 'abs' };
    const boost: Operand = { value: 1.9, unit: 'bar', ref: 'gauge' };
    // 1.9 + 1.013 = 2.913; 3 - 2.913 = 0.087.
    const found = evaluateCheck(check(range, 'covers', boost), {});
    expect(found).toMatchObject({ outcome: 'pass', marginLeft: expect.closeTo(0.087, 9) });
    expect(found.notes.join()).toContain('1.013 bar, the standard');
    // On a mountain, 0.9 bar: 1.9 + 0.9 = 2.8.
    expect(evaluateCheck(check(range, 'covers', boost), {}, { ambientBar: 0.9 }).marginLeft).toBeCloseTo(0.2, 9);
    expect(outcome(check(range, 'covers', { value: 1.9, unit: 'bar' }))).toBe('unknown');
    // Look-alike LA39: the same numbers, absolute against gauge, are not equal.
    expect(
      outcome(check({ value: 3.5, unit: 'bar', ref: 'abs' }, 'eq', { value: 3.5, unit: 'bar', ref: 'gauge' })),
    ).toBe('fail');
  });

  it('converts units before it compares, and never compares what it can’t', () => {
    // 1 in = 25.4 mm, exactly (international inch).
    expect(outcome(check({ value: 1, unit: 'in' }, 'eq', { value: 25.4, unit: 'mm' }))).toBe('pass');
    expect(outcome(check({ value: 1, unit: 'in' }, 'eq', { value: 1, unit: 'bar' }))).toBe('unknown');
    expect(outcome(check({ value: 1, unit: 'in' }, 'eq', 1))).toBe('unknown');
    expect(outcome(check({ text: 'flat' }, 'eq', 1))).toBe('unknown');
  });

  it.each<[FitCheck, string]>([
    [check(100, 'near', 100.1, { tol: 0.1 }), 'pass'],
    [check(100, 'near', 100.11, { tol: 0.1 }), 'fail'],
    [check(0.3, 'le', 0.3), 'pass'],
    [check(0.3, 'lt', 0.3), 'fail'],
    [check(0.1, 'gt', 0.1), 'fail'],
    [check(2, 'ge', 1.5), 'pass'],
    [check(82, 'within', { min: 80, max: 90 }), 'pass'],
    [check(91, 'within', { min: 80, max: 90 }), 'fail'],
    [check(91, 'within', { min: 80 }), 'pass'],
    [check({ min: 0, max: 10 }, 'covers', { min: 1, max: 9 }), 'pass'],
    [check({ min: 0, max: 10 }, 'covers', { min: 1, max: 11 }), 'fail'],
    [check({ text: '10.9' }, 'in', [{ text: '10.9' }, { text: '12.9' }]), 'pass'],
    [check({ text: '8.8' }, 'in', [{ text: '10.9' }, { text: '12.9' }]), 'fail'],
    [check([1, 2], 'subset', [1, 2, 3]), 'pass'],
    [check([1, 4], 'subset', [1, 2, 3]), 'fail'],
    [check([{ text: 'E85' }], 'contains', { text: 'e 85' }), 'pass'],
    [check({ text: 'Flat' }, 'eq', { text: ' fl at' }), 'pass'],
    [check({ text: 'flat' }, 'ne', { text: 'taper' }), 'pass'],
    // 0.1 + 0.2 against 0.3: equal, whatever binary fractions make of it.
    [check([0.1, 0.2], 'sum_le', 0.3), 'pass'],
    [check([21, 21, 0.4], 'sum_le', 42), 'fail'],
    [check([21, 21], 'sum_ge', 42), 'pass'],
    [check({ text: 'M14x1.5 male' }, 'mates', { text: 'M14x1.25 female' }), 'fail'],
    [check({ text: 'M14x1.5 male' }, 'mates', { text: 'M14x1.5 female' }), 'pass'],
    [check({ text: 'M14x1.5' }, 'mates', { text: 'M14x1.5 female' }), 'unknown'],
    [check({ text: 'bananas' }, 'mates', { text: 'M14x1.5 female' }), 'unknown'],
  ])('%#: %j is %s', (one, expected) => {
    expect(outcome(one)).toBe(expected);
  });

  it('joins several: all by the worst, any by the best', () => {
    const yes = check(1, 'eq', 1);
    const no = check(1, 'eq', 2);
    const open = check('nowhere', 'eq', 1);
    const group = (op: 'all' | 'any', ...of: FitCheck[]): FitCheck => ({ ...check(1, 'eq', 1), op, of }) as FitCheck;
    expect(outcome(group('all', yes, yes))).toBe('pass');
    expect(outcome(group('all', yes, open))).toBe('unknown');
    expect(outcome(group('all', open, no))).toBe('fail');
    expect(outcome(group('any', no, yes, open))).toBe('pass');
    expect(outcome(group('any', no, open))).toBe('unknown');
    expect(outcome(group('any', no, no))).toBe('fail');
  });

  it('never passes with a fact missing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...comparisons),
        fc.boolean(),
        fc.oneof(fc.double(), fc.string(), fc.boolean()),
        (op, first, value) => {
          const facts = { known: { value } as Facts };
          const one = first ? check('known.gone', op, 'known.value') : check('known.value', op, 'known.gone');
          expect(outcome(one, facts)).toBe('unknown');
        },
      ),
    );
  });
});

describe('the checks that come with the program', () => {
  const all = shippedChecks.flatMap((one) => ('of' in one ? [one, ...one.of] : [one]));

  it('have one id each and can be read back as data', () => {
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const one of shippedChecks) expect(readFitCheck(JSON.parse(JSON.stringify(one)))).toEqual(one);
  });

  it('are unknown when nothing is known, and name every fact that they ask for', () => {
    const named = new Set(factNames.map(({ path }) => path));
    for (const one of shippedChecks) {
      const found = evaluateCheck(one, {});
      expect(found.outcome).toBe('unknown');
      expect(found.missing.length).toBeGreaterThan(0);
      for (const path of found.missing) expect([one.id, path, named.has(path)]).toEqual([one.id, path, true]);
    }
  });

  it('judge a head and block that belong together, and one that does not', () => {
    const facts: Facts = {
      head: {
        bore_centres: { value: 100, unit: 'mm' },
        bolt_holes: 10,
        spark_plug_port: 'M14x1.25 female',
        spark_plug_reach: { value: 19, unit: 'mm' },
        spark_plug_seat: 'flat',
      },
      block: {
        bore_centres: { value: 100.05, unit: 'mm' },
        bolt_holes: 10,
        bore: { value: 86, unit: 'mm' },
        head_bolt_port: 'M11x1.5 female',
      },
      head_bolt: { port: 'M11x1.5 male' },
      gasket: { bore: { value: 87, unit: 'mm' }, fire_ring_limit: { value: 87.5, unit: 'mm' } },
      spark_plug: { port: 'M14x1.25 male', reach: { value: 19.05, unit: 'mm' }, seat: 'taper' },
      rod: { width: { value: 21, unit: 'mm' } },
      plan: { rod_side_clearance: { value: 0.4, unit: 'mm' } },
      crank: { journal_width: { value: 42.5, unit: 'mm' }, rods_per_journal: 2 },
      bolt: { into: 'aluminium', engagement_in_diameters: 1.8 },
    };
    const outcomes = Object.fromEntries(shippedChecks.map((one) => [one.id, evaluateCheck(one, facts).outcome]));
    expect(outcomes).toMatchObject({
      bore_centres: 'pass',
      head_bolt_holes: 'pass',
      head_bolt_thread: 'pass',
      gasket_bore: 'pass',
      spark_plug: 'fail',
      rod_journal_width: 'pass',
      bolt_engagement_aluminium: 'fail',
      bolt_engagement_steel: 'not asked',
      turbine_inlet: 'unknown',
    });
    // 42.5 - (21 + 21 + 0.4) = 0.1, arithmetic.
    expect(evaluateCheck(shipped('rod_journal_width'), facts).marginLeft).toBeCloseTo(0.1, 9);
    expect(evaluateCheck(shipped('spark_plug'), facts).text).toBe(
      'The plug has a taper seat, the head a flat one: it can’t seal.',
    );
  });
});

describe('a check brought as data', () => {
  const good = {
    id: 'ribs',
    title: 'Ribs',
    left: 'pulley.ribs',
    op: 'eq',
    right: 6,
    severity: 'caution',
    pass: 'Equal.',
    fail: 'Not.',
  };

  it.each([
    [{ ...good, id: 'No Good' }, 'id'],
    [{ ...good, op: 'like' }, 'op'],
    [{ ...good, severity: 'bad' }, 'severity'],
    [{ ...good, left: 'not a path' }, 'left'],
    [{ ...good, right: { min: 3, max: 1 } }, 'right'],
    [{ ...good, right: { value: 'x y' } }, 'right.value'],
    [{ ...good, op: 'near' }, 'tol'],
    [{ ...good, op: 'all', of: [] }, 'of'],
    [{ ...good, when: { 'a b': 1 } }, 'when'],
    [{ ...good, pass: '' }, 'pass'],
    [null, 'data'],
  ])('is refused by the field: %j', (data, field) => {
    expect(() => readFitCheck(data)).toThrow(Refusal);
    try {
      readFitCheck(data);
    } catch (error) {
      expect(error).toMatchObject({
        field,
        accepted: expect.any(String),
        message: expect.stringContaining('Nothing was changed.'),
      });
    }
  });

  it('is taken when it is whole', () => {
    expect(evaluateCheck(readFitCheck(good), { pulley: { ribs: 6 } }).outcome).toBe('pass');
  });
});
