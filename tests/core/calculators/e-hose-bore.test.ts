import { describe, expect, it } from 'vitest';
import { hoseBore } from '../../../core/calculators/e/hose-bore.ts';
import { checkCases, refusalOf, run } from './check-cases.ts';

const table =
  'SAE J517 hose tables as quoted in hose selection guidance (nominal sixteenths; 100R5 and 100R14 named for the tube outside diameter)';

checkCases(hoseBore, [
  {
    case: 'dash 6',
    inputs: 'dash 6',
    expected: 'nominal_id 9.525 mm; tube_equivalent_hose_id 7.9375 mm',
    tolerance: 1e-6,
    source: table,
  },
  {
    case: 'dash 8',
    inputs: 'dash 8',
    expected: 'nominal_id 0.5 in; tube_equivalent_hose_id 0.40625 in',
    tolerance: 1e-6,
    source: table,
  },
  {
    case: 'dash 10',
    inputs: 'dash 10',
    expected: 'nominal_id 15.875 mm; tube_equivalent_hose_id 12.7 mm',
    tolerance: 1e-6,
    source: table,
  },
]);

describe('hose bore', () => {
  it('names the thread of the 37° flare fitting (AS4395 / SAE J514, from memory)', () => {
    expect(run(hoseBore, 'dash 8').outputs['fitting_thread']?.value).toBe('3/4-16');
    expect(run(hoseBore, 'dash 24').outputs).not.toHaveProperty('fitting_thread');
  });

  it('gives no tube-equivalent bore that is not on record, and says so', () => {
    const { outputs, warnings } = run(hoseBore, 'dash 3');
    expect(Object.keys(outputs)).toEqual(['nominal_id']);
    expect(warnings).toEqual([expect.objectContaining({ message: expect.stringContaining('dash 3') })]);
  });

  it.each([4, 5, 6, 8, 10, 12, 16, 20, 24])('has a tube-equivalent bore below the nominal one for dash %i', (dash) => {
    const { nominal_id: nominal, tube_equivalent_hose_id: bore } = run(hoseBore, `dash ${dash}`).outputs;
    expect(bore?.value).toBeLessThan(nominal?.value as number);
  });

  it('refuses half a dash, and none', () => {
    expect(refusalOf(hoseBore, 'dash 6.5')).toMatchObject({ field: 'dash' });
    expect(refusalOf(hoseBore, 'dash 0')).toMatchObject({ field: 'dash' });
  });
});
