import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shippedChecks } from '../../../core/fit/checks/shipped.ts';
import { fit as judge } from '../../../core/fit/fit.ts';
import { adapterItems } from '../../../core/fit/kept/adapter-items.ts';
import { judgeConnection, judgeSides } from '../../../core/fit/kept/connection.ts';
import { judgeDeclared } from '../../../core/fit/kept/declared.ts';
import { askedPaths, thingsOf } from '../../../core/fit/kept/paths.ts';
import { readFitValue } from '../../../core/fit/kept/read-value.ts';
import type { FitContext, FitPart, KeptConnection, KeptDeclaredFit, KeptPort } from '../../../core/fit/kept/records.ts';
import { parsePort } from '../../../core/fit/parse.ts';
import { Refusal } from '../../../core/refusal.ts';
import { accepted as parseExamples } from './parse-examples.ts';

const part = (id: number, more: Partial<FitPart> = {}): FitPart => ({
  id,
  description: `Part ${id}`,
  standing: 'needed',
  listed: true,
  facts: [],
  ...more,
});

const port = (id: number, designation: string, more: Partial<KeptPort> = {}): KeptPort => ({
  id,
  revision: 1,
  name: 'end',
  part: null,
  place: 'block',
  role: 'fluid',
  medium: '',
  designation,
  retired: false,
  note: '',
  ...more,
});

const known = (ports: readonly KeptPort[] = [], parts: readonly FitPart[] = []): FitContext => ({
  ports: new Map(ports.map((one) => [one.id, one])),
  parts: new Map(parts.map((one) => [one.id, one])),
  targets: [],
});

const typed = (text: string) => ({ port: null, typed: text });

const connection = (one: string, other: string, more: Partial<KeptConnection> = {}): KeptConnection => ({
  id: 1,
  revision: 1,
  title: 'A joint',
  one: typed(one),
  other: typed(other),
  role: 'fluid',
  medium: '',
  pressureBar: null,
  accepted: null,
  adapter: null,
  beforeGate: true,
  note: '',
  ...more,
});

const readable = parseExamples.flatMap(([text]) => (parsePort(text, { role: 'fluid' }).ok ? [text] : []));

describe('a connection', () => {
  it('gives the verdict of the two ports, whichever comes first', () => {
    fc.assert(
      fc.property(fc.constantFrom(...readable), fc.constantFrom(...readable), (one, other) => {
        const [there, back] = [connection(one, other), connection(other, one)].map((c) => judgeConnection(c, known()));
        const [first, second] = [one, other].map((text) => parsePort(text, { role: 'fluid' }));
        if (first?.ok !== true || second?.ok !== true) throw new Error('Not readable');
        expect(there?.fit.verdict).toBe(judge(first.port, second.port, { role: 'fluid', medium: '' }).verdict);
        expect(back?.fit.verdict).toBe(there?.fit.verdict);
        expect(back?.stands).toBe(there?.stands);
        // An acceptance is for the pair, so that turning a connection round doesn't end it.
        expect(back?.acceptFor).toBe(there?.acceptFor);
      }),
      { numRuns: 60 },
    );
  });

  it('says verdict, reason and consequence in one sentence that ends once', () => {
    for (const [one, other] of [
      ['M14x1.5 male', 'M14x1.25 female'],
      ['AN -6 male', 'M18x1.5 male'],
      ['hose 19 mm', 'M22x1.5 female'],
      ['hose 8 mm', 'barb 8 mm'],
      ['M14x1.5', 'M14x1.5 female'],
    ] as const) {
      const { says, fit: judged } = judgeConnection(connection(one, other), known());
      expect(says).toMatch(/^[A-Z].*[^.]\.$/);
      expect(says).toContain(judged.reason.replace(/\.$/, ''));
    }
  });

  it('is settled by an adapter only while its lines stand on the list and it joins both', () => {
    const free = connection('M14x1.5 male', 'M14x1.25 female');
    const { fit: judged } = judgeConnection(free, known());
    const [adapter] = judged.adapters;
    const chosen = { ...free, adapter: { pieces: adapter?.pieces ?? [], parts: [7, 8, 8] } };
    const stands = (c: KeptConnection, ...parts: FitPart[]) => judgeConnection(c, known([], parts)).stands;
    expect(stands(free)).toBe('wrong');
    expect(stands(chosen, part(7), part(8))).toBe('fits');
    expect(stands(chosen, part(7), part(8, { listed: false }))).toBe('wrong');
    expect(stands({ ...chosen, one: chosen.other, other: chosen.one }, part(7), part(8))).toBe('fits');
    expect(stands({ ...chosen, other: typed('M16x1.5 female') }, part(7), part(8))).toBe('wrong');
  });

  it('is not known without its port, its part or a reading of it', () => {
    const ports = [
      port(1, 'M14x1.5 female'),
      port(2, 'M14x1.5 male', { retired: true }),
      port(3, 'M14x1.5 male', { part: 5 }),
    ];
    const context = known(ports, [part(5, { listed: false })]);
    const missing = (one: number) =>
      judgeSides({ ...connection('', ''), one: { port: one, typed: '' }, other: { port: 1, typed: '' } }, context).fit;
    expect(missing(2).missing).toEqual(['another port in place of “end”, which was retired']);
    expect(missing(3).missing).toEqual(['another part in place of “Part 5”, which was dropped']);
    expect(missing(9).missing).toEqual(['which port stands in place of number 9']);
    expect(judgeConnection(connection('round', 'M14x1.5 male'), known()).fit.verdict).toBe('unknown');
  });
});

describe('things of an adapter', () => {
  it('stand once each, with how many', () => {
    expect(
      adapterItems({
        pieces: ['female M14x1.5 to male M14x1.25', 'swivel', 'Swivel'],
        needs: ['sealing washer or O-ring', 'sealing washer 14x18 mm or O-ring', 'thread sealant'],
      }),
    ).toEqual([
      { text: 'female M14x1.5 to male M14x1.25', count: 1 },
      { text: 'swivel', count: 2 },
      { text: 'sealing washer 14x18 mm or O-ring', count: 2 },
      { text: 'thread sealant', count: 1 },
    ]);
  });

  it('of different sizes are two things', () => {
    const needs = ['sealing washer 14x18 mm', 'sealing washer 22x27 mm'];
    expect(adapterItems({ pieces: [], needs }).map(({ count }) => count)).toEqual([1, 1]);
  });
});

describe('a typed value', () => {
  const read = (sort: Parameters<typeof readFitValue>[0]['sort'], value: string, unit = '') =>
    readFitValue({ path: 'a.b', label: 'the b of the a', sort, role: 'fluid' }, { value, unit }, 'values.0.value');

  it('is read by its sort', () => {
    expect(read('count', '8')).toBe(8);
    expect(read('number', '1,5')).toBe(1.5);
    expect(read('length', '3/8 in')).toEqual({ value: 0.375, unit: 'in' });
    expect(read('length', '86.5', 'mm')).toEqual({ value: 86.5, unit: 'mm' });
    expect(read('pressure', '1.4 bar gauge')).toEqual({ value: 1.4, unit: 'bar', ref: 'gauge' });
    expect(read('pressure', '2.4', 'bar abs')).toEqual({ value: 2.4, unit: 'bar', ref: 'abs' });
    expect(read('temperature', '82 °C')).toEqual({ value: 82, unit: 'degC' });
    expect(read('range', '0 to 3.5 bar abs')).toEqual({ min: 0, max: 3.5, unit: 'bar', ref: 'abs' });
    expect(read('range', '80-84', 'degC')).toEqual({ min: 80, max: 84, unit: 'degC' });
    expect(read('range', 'up to 5 mm')).toEqual({ max: 5, unit: 'mm' });
    expect(read('list', 'petrol, E85')).toEqual(['petrol', 'E85']);
    expect(read('port', 'M14x1.5 male')).toBe('M14x1.5 male');
    expect(read('yes or no', 'Yes')).toBe(true);
    expect(read('value', 'flat')).toBe('flat');
    expect(read('value', '4')).toBe(4);
    expect(read('measure', '25.4 mm')).toEqual({ value: 25.4, unit: 'mm' });
    expect(read('measure', '2')).toEqual({ value: 2 });
  });

  it('is refused by what it is for, naming the field and how to write it', () => {
    for (const [sort, value] of [
      ['count', '2.5'],
      ['count', '-1'],
      ['count', 'two'],
      ['length', '86.5'],
      ['length', '86.5 bar'],
      ['pressure', '1.4 bar'],
      ['pressure', '1.4'],
      ['temperature', '82'],
      ['range', '3.5 bar abs'],
      ['range', '4 to 2 mm'],
      ['range', '0 to 3.5 bar'],
      ['list', 'petrol,,E85'],
      ['port', 'round'],
      ['yes or no', 'maybe'],
      ['text', ' '],
    ] as const) {
      try {
        read(sort, value);
        expect.unreachable(`${sort} ${value}`);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        expect(error.field).toBe('values.0.value');
        expect(error.message).toMatch(/Nothing was changed\.$/);
        expect(error.accepted).not.toBe('');
      }
    }
  });
});

describe('the shipped fits', () => {
  const empty = (shipped: string): KeptDeclaredFit => ({
    id: 1,
    revision: 1,
    title: '',
    shipped,
    rule: null,
    things: {},
    values: [],
    accepted: null,
    beforeGate: true,
    note: '',
  });

  it('say what they ask for, and are unknown while nothing is there', () => {
    for (const rule of shippedChecks) {
      const asked = askedPaths(rule);
      expect(asked.length).toBeGreaterThan(0);
      expect(thingsOf(asked)).not.toContain('plan');
      const judged = judgeDeclared(empty(rule.id), known());
      expect(judged.outcome).toBe('unknown');
      expect(judged.missing.length).toBeGreaterThan(0);
      expect(judged.stands).toBe('unknown');
    }
  });

  it('take a typed value before a fact, and a fact before nothing', () => {
    // 87.0 over 86.0 mm and under 88.5 mm passes; 85 mm would stand into the cylinder. By hand.
    const parts = [
      part(1, { facts: [{ key: 'Gasket Bore', value: '87.0', unit: 'mm' }] }),
      part(2, { facts: [{ key: 'bore', value: '86', unit: 'mm' }] }),
    ];
    const bound = {
      ...empty('gasket_bore'),
      things: { gasket: 1, block: 2 },
      values: [{ path: 'gasket.fire_ring_limit', value: '88.5 mm', unit: '' }],
    };
    expect(judgeDeclared(bound, known([], parts)).outcome).toBe('pass');
    const small = { ...bound, values: [...bound.values, { path: 'gasket.bore', value: '85 mm', unit: '' }] };
    const failing = judgeDeclared(small, known([], parts));
    expect(failing.outcome).toBe('fail');
    expect(failing.severity).toBe('danger');
    expect(failing.says).toBe('Gasket bore 85 mm stands into the cylinder, 86 mm.');
  });
});
