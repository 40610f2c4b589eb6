import { describe, expect, it } from 'vitest';
import { calculator } from '../../../core/calculators/calculator.ts';
import { describeCalculator } from '../../../core/calculators/describe.ts';
import { calculators, findCalculator } from '../../../core/calculators/index.ts';
import { runCalculator } from '../../../core/calculators/run.ts';
import { unitsOf } from '../../../core/units/measure.ts';
import { numberOf, refusalOf, run } from './check-cases.ts';

describe('every calculator', () => {
  it('has an id and a slug of its own, and stands in its group', () => {
    expect(new Set(calculators.map(({ id }) => id)).size).toBe(calculators.length);
    expect(new Set(calculators.map(({ slug }) => slug)).size).toBe(calculators.length);
    for (const { id, slug, group } of calculators) {
      expect(id).toMatch(/^[A-K]\d{1,2}$/);
      expect(id.startsWith(group)).toBe(true);
      expect(slug).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    }
    expect(findCalculator('b2')).toBe(findCalculator('compression-ratio'));
  });

  it.each(calculators)('$id $title: cites, explains and works its example', (one) => {
    for (const text of [one.title, one.about, one.formula, one.source]) expect(text.length).toBeGreaterThan(3);
    const { outputs } = runCalculator(one, { inputs: one.example });
    expect(Object.keys(outputs).length).toBeGreaterThan(0);
    for (const { value } of Object.values(outputs))
      if (typeof value === 'number') expect(value).toSatisfy(Number.isFinite);
  });

  it.each(calculators)('$id: declared units, needs and defaults exist', (one) => {
    for (const side of [...Object.values(one.inputs), ...Object.values(one.outputs)]) {
      if ('unit' in side) expect(unitsOf(side.dimension)).toContain(side.unit);
    }
    for (const { needs, may = [] } of one.modes) {
      for (const name of [...needs, ...may]) expect(Object.keys(one.inputs)).toContain(name);
    }
    // Plain data: what the list hands out survives the way through JSON.
    expect(JSON.parse(JSON.stringify(describeCalculator(one)))).toEqual(describeCalculator(one));
  });

  it.each(calculators)('$id: refuses nonsense, an unknown input and an unknown output by name', (one) => {
    const [name = ''] = Object.keys(one.example);
    const [output = ''] = Object.keys(one.outputs);
    const refusal = (inputs: Record<string, never>, units = {}) => {
      try {
        runCalculator(one, { inputs: { ...one.example, ...inputs }, units });
      } catch (error) {
        return error;
      }
      return undefined;
    };
    const nonsense = { [name]: { value: 'about so much', unit: undefined } } as unknown as Record<string, never>;
    expect(refusal(nonsense)).toMatchObject({ code: 'bad-input', field: name });
    const notFinite = { [name]: { value: Number.NaN } } as unknown as Record<string, never>;
    expect(refusal(notFinite)).toMatchObject({ code: 'bad-input', field: name });
    const unknown = { no_such_input: { value: 1 } } as unknown as Record<string, never>;
    expect(refusal(unknown)).toMatchObject({ code: 'bad-input', field: 'no_such_input' });
    expect(refusal({}, { no_such_output: 'mm' })).toMatchObject({ code: 'bad-input', field: 'no_such_output' });
    if ('unit' in (one.outputs[output] ?? {})) {
      expect(refusal({}, { [output]: 'furlong' })).toMatchObject({ code: 'bad-input', field: output });
    }
  });
});

describe('the runner', () => {
  const sample = calculator({
    id: 'K9',
    slug: 'sample',
    title: 'Sample',
    about: 'Every kind of input and output.',
    inputs: {
      readings: { kind: 'list', label: 'Readings', dimension: 'length', unit: 'mm', fewest: 2, most: 3 },
      share: { label: 'Share', dimension: 'fraction', unit: '%', must: { above: 0, atMost: 100 }, default: 50 },
      side: { kind: 'choice', label: 'Side', choices: { left: 'Left', right: 'Right' }, default: 'left' },
      wet: { kind: 'yes-no', label: 'Wet', optional: true },
      divisor: { label: 'Divisor', dimension: 'number', unit: '-', default: 1 },
    },
    outputs: {
      sum: { label: 'Sum', dimension: 'length', unit: 'mm' },
      side: { kind: 'text', label: 'Side' },
      wet: { kind: 'yes-no', label: 'Wet' },
    },
    formula: 'sum = Σ readings · share/divisor',
    source: 'made up for this test',
    notes: [],
    example: { readings: { value: [1, 2], unit: 'mm' } },
    compute: ({ readings, share, side, wet, divisor }) => ({
      outputs: { sum: (readings.reduce((a, b) => a + b, 0) * share) / divisor, side, wet },
    }),
  });

  it('reads lists, choices, yes or no and per cent, and says what it assumed', () => {
    expect(run(sample, 'readings [1, 2] in; share 100 %; side right; wet true', { sum: 'in' })).toMatchObject({
      outputs: {
        sum: { value: expect.closeTo(3, 9), unit: 'in' },
        side: { value: 'right', unit: '-' },
        wet: { value: true },
      },
      assumed: [{ name: 'divisor', value: 1, unit: '-' }],
    });
    expect(numberOf(sample, 'readings [1, 2] mm', 'sum')).toBeCloseTo(1.5, 12);
    expect(run(sample, 'readings [1, 2] mm').outputs).not.toHaveProperty('wet');
  });

  it.each([
    ['readings [1] mm', 'readings'],
    ['readings [1, 2, 3, 4] mm', 'readings'],
    ['readings 1 mm', 'readings'],
    ['readings [1, 2]', 'readings'],
    ['readings [1, 2] mm; share 0 %', 'share'],
    ['readings [1, 2] mm; share 100.1 %', 'share'],
    ['readings [1, 2] mm; side top', 'side'],
    ['readings [1, 2] mm; wet maybe', 'wet'],
    ['share 50 %', 'readings'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(sample, inputs)).toMatchObject({ code: 'bad-input', field, accepted: expect.stringMatching(/./) });
  });

  it('counts a limit as inside, whatever binary rounding does to it', () => {
    // 0.1 + 0.2 is 0.30000000000000004.
    expect(numberOf(sample, 'readings [1, 2] mm; share 100.00000000000001 %', 'sum')).toBeCloseTo(3, 9);
  });

  it.each(['divisor 0', 'divisor 1e-320'])('never lets out a number that isn’t finite: %s', (divisor) => {
    expect(refusalOf(sample, `readings [1, 2] m; ${divisor}`)).toMatchObject({ code: 'bad-input', field: 'sum' });
  });

  it('fails loudly when a mode reads what it isn’t given', () => {
    const careless = calculator({
      id: 'K9',
      slug: 'careless',
      title: 'Careless',
      about: 'Reads another mode’s input.',
      inputs: { a: { label: 'A', dimension: 'number', unit: '-' }, b: { label: 'B', dimension: 'number', unit: '-' } },
      outputs: { c: { label: 'C', dimension: 'number', unit: '-' } },
      formula: 'c = a + b',
      source: 'made up for this test',
      notes: [],
      example: { a: { value: 1 } },
      modes: [
        { name: 'only-a', title: 'a', needs: ['a'], may: [], compute: ({ a, b }) => ({ outputs: { c: a + b } }) },
      ],
    });
    expect(() => run(careless, 'a 1')).toThrow('K9 reads b, which this mode isn’t given.'.replace('’', "'"));
  });
});
