import { expect, it } from 'vitest';
import { evaluateCheck } from '../../core/fit/checks/evaluate.ts';
import { readFitCheck } from '../../core/fit/checks/read-check.ts';
import { draftOfRule, emptyRule, ruleFrom, ruleOrProblem } from '../../renderer/screens/fit/rule-draft.ts';

const told = { pass: 'Fits.', fail: 'Fails.', unknown: 'Enter {missing}.' };

it('writes a rule of paths as the fit check reads it', () => {
  const rule = ruleFrom({ ...emptyRule, left: 'head.coolant ports', right: 'Block: coolant ports' }, 'Coolant ports');
  expect(rule).toMatchObject({
    id: 'coolant_ports',
    left: 'head.coolant_ports',
    op: 'eq',
    right: 'block.coolant_ports',
  });
  const facts = { head: { coolant_ports: 2 }, block: { coolant_ports: 3 } };
  // Two against three, by counting.
  expect(evaluateCheck(readFitCheck(rule), facts).outcome).toBe('fail');
});

it('reads a fixed value with its unit and reference by the comparison', () => {
  const covers = { ...emptyRule, left: 'sensor.range', op: 'covers', rightIs: 'fixed', right: '2.9 bar abs' } as const;
  expect(ruleFrom(covers, 'Sensor')['right']).toEqual({ value: 2.9, unit: 'bar', ref: 'abs' });
  const within = {
    ...emptyRule,
    left: 'thermostat.opens at',
    op: 'within',
    rightIs: 'fixed',
    right: '80 to 84 degC',
  } as const;
  expect(ruleFrom(within, 'Thermostat')['right']).toMatchObject({ min: 80, max: 84 });
  const word = { ...emptyRule, left: 'plug.seat', rightIs: 'fixed', right: 'flat' } as const;
  expect(ruleFrom(word, 'Seat')['right']).toEqual({ text: 'flat' });
});

it('names the side that can’t be read', () => {
  expect(ruleOrProblem({ ...emptyRule, left: 'head', right: 'block.bore' }, 'x')).toMatchObject({
    problem: { field: 'rule.left' },
  });
  const gauge = { ...emptyRule, left: 'plan.boost', op: 'le', rightIs: 'fixed', right: '1.4 bar' } as const;
  expect(ruleOrProblem(gauge, 'x')).toMatchObject({ problem: { field: 'rule.right' } });
});

it('brings a kept rule back into the form, and leaves alone what has no field there', () => {
  const draft = {
    ...emptyRule,
    ...told,
    left: 'rod.width, rod.width',
    op: 'sum_le',
    right: 'crank.journal_width',
    severity: 'danger',
  } as const;
  expect(draftOfRule(ruleFrom(draft, 'Rods'))).toEqual(draft);
  const near = {
    ...draft,
    left: 'head.bore_centres',
    op: 'near',
    rightIs: 'fixed',
    right: '96 mm',
    tolerance: 0.1,
  } as const;
  expect(draftOfRule(ruleFrom(near, 'Centres'))).toEqual(near);
  expect(draftOfRule({ op: 'all', of: [] })).toBeNull();
  expect(draftOfRule({ ...ruleFrom(draft, 'Rods'), when: { 'block.cooling': 'water' } })).toBeNull();
});

it('keeps a unit beside a path and a margin, which have no field of their own', () => {
  const rule = {
    ...ruleFrom({ ...emptyRule, ...told, left: 'turbo.boost', op: 'le', right: 'gauge.span' }, 'Gauge'),
    left: { value: 'turbo.boost', unit: 'bar', ref: 'gauge' },
    right: { value: 'gauge.span', margin: 0.2 },
  };
  const draft = draftOfRule(rule);
  expect(draft && ruleFrom(draft, 'Gauge')).toEqual(rule);
  const fixed = { ...rule, right: { value: 1.8, unit: 'bar', ref: 'gauge', margin: 0.2 } };
  const again = draftOfRule(fixed);
  expect(again?.right).toBe('1.8 bar gauge');
  expect(again && ruleFrom({ ...again, right: '2.0 bar gauge' }, 'Gauge')['right']).toEqual({
    value: 2,
    unit: 'bar',
    ref: 'gauge',
    margin: 0.2,
  });
  // A list has no place for what stands beside its items: the form leaves such a rule as it was kept.
  expect(draftOfRule({ ...rule, op: 'sum_le', left: ['rod.width', { value: 'rod.gap', unit: 'mm' }] })).toBeNull();
});
