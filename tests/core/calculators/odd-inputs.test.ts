import { expect, it } from 'vitest';
import type { Given } from '../../../core/calculators/calculator.ts';
import { calculators } from '../../../core/calculators/index.ts';
import { runCalculator } from '../../../core/calculators/run.ts';
import { Refusal } from '../../../core/refusal.ts';

/** What a script or a slip of the finger can send; types are the sender's business, so that they are cast here. */
const odd: readonly unknown[] = [
  0,
  -0,
  -1,
  1e-320,
  1e-12,
  1e12,
  1e300,
  1.79e308,
  -1.79e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  '',
  'NaN',
  '1e999',
  '3/0',
  true,
  [],
  [1],
  [Number.NaN, 1, 2, 3],
  [1e308, 1e308, 1e308, 1e308],
  {},
];

it.each(calculators)('$id $title: odd inputs are refused at a name that exists, or give numbers', (one) => {
  const names = new Set([...Object.keys(one.inputs), ...Object.keys(one.outputs)]);
  for (const name of Object.keys(one.inputs)) {
    for (const value of odd) {
      const given = { ...one.example[name], value } as Given;
      const what = `${one.id} ${name} = ${String(value)}`;
      try {
        const { outputs } = runCalculator(one, { inputs: { ...one.example, [name]: given } });
        for (const [output, told] of Object.entries(outputs)) {
          if (typeof told.value === 'number') expect(Number.isFinite(told.value), `${what}: ${output}`).toBe(true);
          expect(told.value, `${what}: ${output}`).not.toBe(undefined);
        }
      } catch (error) {
        if (!(error instanceof Refusal)) throw new Error(what, { cause: error });
        expect(error.code, what).toBe('bad-input');
        expect(names, `${what}: ${error.message}`).toContain(error.field);
        expect(error.message, what).toContain('Nothing was changed.');
      }
    }
  }
});
