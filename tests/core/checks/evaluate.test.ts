import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../core/calculators/run.ts';
import { evaluateCheck } from '../../../core/checks/evaluate.ts';
import { checkPlan } from '../../../core/checks/plan-checks.ts';
import { runKept } from '../../../core/checks/resolve.ts';
import { shippedChecks } from '../../../core/checks/shipped.ts';
import type { CheckContext, CheckPart } from '../../../core/checks/source.ts';
import type { Refusal } from '../../../core/refusal.ts';

const part = (id: number, kind: string, facts: CheckPart['facts'], standing: CheckPart['standing'] = 'fitted') => ({
  id,
  description: `${kind} ${id}`,
  kind,
  facts,
  standing,
});
const fact = (key: string, value: string, unit = '') => ({ key, value, unit });
const build = (parts: readonly CheckPart[], targets: CheckContext['targets']): CheckContext => ({
  parts,
  targets,
  measurements: new Map(),
});
const target = (name: string, value: string, unit = '') => ({ name, value, unit });
const shipped = (slug: string) => {
  const found = shippedChecks.find((one) => one.shipped === slug);
  if (found === undefined) throw new Error(slug);
  return found;
};

describe('shipped checks', () => {
  test.each(shippedChecks.map((check) => [check.shipped, check] as const))('%s could be kept', (_, check) => {
    checkPlan(check);
  });

  test.each(shippedChecks.map((check) => [check.shipped, check] as const))(
    '%s says what an empty build lacks',
    (_, check) => {
      const { verdict, value, says } = evaluateCheck(check, build([], []), runKept(new Map()));
      expect(verdict).toBe('lacks data');
      expect(value).toBeNull();
      expect(says).toMatch(/^Lacks .+\.$/);
    },
  );
});

const sensor = (value: string, unit: string) => part(1, 'pressure sensor', [fact('full scale', value, unit)]);

describe('a check', () => {
  test('is worked out again only where an input changed', () => {
    const kept = new Map<string, Answer | Refusal>();
    const run = runKept(kept);
    const check = shipped('sensor-range');
    const now = build([sensor('300', 'kPa')], [target('boost', '1.4', 'bar')]);
    evaluateCheck(check, now, run);
    const runs = kept.size;
    evaluateCheck(check, { ...now, targets: [...now.targets, target('rev limit', '7000', 'rpm')] }, run);
    expect(kept.size).toBe(runs);
    evaluateCheck(check, build([sensor('400', 'kPa')], now.targets), run);
    expect(kept.size).toBe(runs + 1);
  });

  test('never takes a gauge pressure for an absolute one', () => {
    // 1 − (101.325 + 140)/300 = 19.558 % with 3 bar absolute; a fact of 2 bar gauge can't be read as absolute.
    const targets = [target('boost', '1.4', 'bar')];
    const run = runKept(new Map());
    expect(evaluateCheck(shipped('sensor-range'), build([sensor('3', 'bar')], targets), run).value).toBeCloseTo(
      19.558,
      3,
    );
    const gauge = evaluateCheck(shipped('sensor-range'), build([sensor('2', 'bar gauge')], targets), run);
    expect(gauge.verdict).toBe('lacks data');
    expect(gauge.says).toContain('gauge');
  });

  test('names a target that several of its inputs are worked out from once', () => {
    const { says } = evaluateCheck(shipped('pump-flow'), build([], []), runKept(new Map()));
    const lacks = says.replace(/^Lacks |\.$/g, '').split('; ');
    expect(lacks).toContain('power on the target sheet');
    expect(new Set(lacks).size).toBe(lacks.length);
  });

  test('says of a figure of another dimension that it does not fit', () => {
    const from = (name: string) => ({ from: 'target', target: name }) as const;
    const bore = { from: 'typed', given: { value: 86, unit: 'mm' }, source: '' } as const;
    const cylinders = { from: 'typed', given: { value: 6 }, source: '' } as const;
    const limit = { least: null, most: 3000, unit: 'cc', closeMilli: 0, source: '' };
    const plan = { title: 'Size', calculator: 'B1', output: 'displacement', limit };
    const now = build([], [target('boost', '1.4', 'bar')]);
    const inputs = { bore: from('boost'), stroke: bore, cylinders };
    expect(evaluateCheck({ ...plan, inputs }, now, runKept(new Map())).says).toBe(
      'Lacks a figure that fits: Bore is a gauge pressure, not a length.',
    );
    const elsewhere = { ...plan, inputs: { ...inputs, bore }, limit: { ...limit, mostFrom: from('boost') } };
    expect(evaluateCheck(elsewhere, now, runKept(new Map())).says).toContain(
      'lacks a limit that fits: Displacement is a gauge pressure, not a volume',
    );
  });

  test('holds at its limit, is close within its margin and fails beyond it', () => {
    // Mean piston speed 2 · 0.09 · rpm/60 with a limit of 25 m/s, close from 23.75 on: definition.
    const speed = (rpm: string) =>
      evaluateCheck(
        shipped('piston-speed'),
        build(
          [],
          [
            target('bore', '86', 'mm'),
            target('stroke', '90', 'mm'),
            target('cylinders', '4'),
            target('rev limit', rpm, 'rpm'),
          ],
        ),
        runKept(new Map()),
      ).verdict;
    expect(speed('7900')).toBe('holds');
    expect(speed('7920')).toBe('close');
    expect(speed('8333.333333333333')).toBe('close');
    expect(speed('8340')).toBe('fails');
  });

  test('looks at what is fitted, else in hand, else on order, else needed', () => {
    const standings = ['needed', 'on order', 'in hand', 'fitted'] as const;
    const targets = [target('boost', '1.4', 'bar')];
    for (let count = 1; count <= standings.length; count += 1) {
      const parts = standings
        .slice(0, count)
        .map((standing, index) => part(index + 1, 'pressure sensor', [fact('full scale', '300', 'kPa')], standing));
      const { inputs } = evaluateCheck(shipped('sensor-range'), build(parts, targets), runKept(new Map()));
      expect(inputs.find(({ name }) => name === 'sensor_full_scale_abs')?.part).toBe(count);
    }
  });

  test('never lets anything leave that isn’t a number, whatever was typed', () => {
    const text = fc.oneof(
      fc.double().map(String),
      fc.constantFrom('0', '-1', '1e308', 'NaN', 'Infinity', '', 'x'),
      fc.nat(9000).map(String),
    );
    fc.assert(
      fc.property(text, text, text, text, fc.constantFrom(...shippedChecks), (a, b, c, d, check) => {
        const targets = [
          target('bore', a, 'mm'),
          target('stroke', b, 'mm'),
          target('cylinders', '4'),
          target('rev limit', c, 'rpm'),
          target('boost', d, 'bar'),
          target('power', a, 'kW'),
          target('power rpm', b, 'rpm'),
        ];
        const { value, margin, says } = evaluateCheck(check, build([sensor(a, 'kPa')], targets), runKept(new Map()));
        for (const figure of [value, margin]) if (figure !== null) expect(Number.isFinite(figure)).toBe(true);
        // What was typed is quoted, and may be anything.
        expect(says.replace(/“[^”]*”/g, '')).not.toMatch(/NaN|Infinity|∞/);
      }),
    );
  });
});
