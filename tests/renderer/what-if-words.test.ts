import { expect, it } from 'vitest';
import type { VariantChange } from '../../core/contract/records.ts';
import { changeKinds, changeText, kindWords, type Names } from '../../renderer/screens/what-if/change-words.ts';

const locale = { currency: 'USD', dateForm: 'd Mon yyyy', weekStart: 'monday', units: 'metric' } as Parameters<
  typeof changeText
>[2];
const record = (id: number, values: Record<string, unknown>) => ({ id, values }) as unknown as Names['jobs'][number];
const names: Names = {
  parts: [{ value: '4', label: 'Oil pump' }],
  jobs: [record(7, { title: 'Fit the heads' })],
  people: [record(2, { name: 'Joren' })],
  incomes: [record(3, { name: 'Wages' })],
};

it('has words for every kind of change', () => {
  expect(Object.keys(kindWords).sort()).toEqual([...changeKinds].sort());
  const windows = [{ weekday: 6, from: '09:00', to: '15:00' }];
  const texts: readonly (readonly [VariantChange, string])[] = [
    [{ what: 'hours', person: null, windows }, 'Hours of the week: 6 h a week'],
    [{ what: 'hours', person: 2, windows }, 'Hours of Joren: 6 h a week'],
    [{ what: 'lead time', part: 4, days: 12 }, 'Oil pump: here in 12 days'],
    [{ what: 'job hours', job: 7, minutes: 90 }, 'Fit the heads: 1 h 30 min'],
    [{ what: 'drop part', part: 4 }, 'Oil pump: done without'],
    [{ what: 'drop part', part: 5 }, 'part 5: done without'],
    [
      { what: 'swap part', part: 4, description: 'Used pump', priceMinor: 15_000, days: 3 },
      'Oil pump: Used pump, $150.00, here in 3 days',
    ],
    [
      { what: 'income', income: 3, name: '', amountMinor: 30_000, every: 'month', from: '2026-12-01', until: null },
      'Income Wages: $300.00 a month from 1 Dec 2026',
    ],
  ];
  for (const [change, text] of texts) expect(changeText(change, names, locale)).toBe(text);
});
