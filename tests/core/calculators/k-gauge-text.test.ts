import { expect, it } from 'vitest';
import { findCalculator } from '../../../core/calculators/index.ts';
import { runCalculator } from '../../../core/calculators/run.ts';
import { Refusal } from '../../../core/refusal.ts';

it('does not take a gauge of 00 or 0000, each a size of its own, for gauge 0', () => {
  const wire = findCalculator('K1');
  if (wire === undefined) throw new Error('K1 is listed');
  const [name] = Object.keys(wire.example);
  for (const value of ['00', '0000', ' 007']) {
    expect(() => runCalculator(wire, { inputs: { ...wire.example, [name ?? 'gauge']: { value } } })).toThrow(Refusal);
  }
});
