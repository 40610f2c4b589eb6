import { describe, expect, it } from 'vitest';
import { groupC } from '../../../core/calculators/c/index.ts';
import { groupD } from '../../../core/calculators/d/index.ts';
import { runCalculator } from '../../../core/calculators/run.ts';

const both = [...groupC, ...groupD];

describe('airflow, boost and fuel', () => {
  it('has C1 to C8 and D1 to D8, each with a slug of its own', () => {
    const ids = ['C', 'D'].flatMap((group) => [1, 2, 3, 4, 5, 6, 7, 8].map((number) => `${group}${number}`));
    expect(both.map(({ id }) => id)).toEqual(ids);
    expect(new Set(both.map(({ slug }) => slug)).size).toBe(both.length);
  });

  it.each(both)('$id runs its own example, and every unit it declares is one of the dimension', (one) => {
    const { outputs } = runCalculator(one, { inputs: one.example });
    expect(Object.keys(outputs)).not.toHaveLength(0);
    const units = Object.fromEntries(
      Object.entries(one.outputs).map(([name, output]) => [name, 'unit' in output ? output.unit : '-']),
    );
    expect(() => runCalculator(one, { inputs: one.example, units })).not.toThrow();
  });

  it.each(groupD.filter(({ id }) => id !== 'D1'))('$id has a caution beside its figure', ({ caution }) => {
    expect(caution).toBeTruthy();
  });
});
