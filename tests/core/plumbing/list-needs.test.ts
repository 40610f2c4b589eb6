import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BillItem } from '../../../core/plumbing/bill.ts';
import { type ListedPart, needsOnList } from '../../../core/plumbing/list-needs.ts';

const keys = ['ends', 'hose', 'labels'] as const;
const bill: fc.Arbitrary<readonly BillItem[]> = fc.array(
  fc
    .record({ key: fc.constantFrom(...keys), count: fc.integer({ min: 1, max: 40 }) })
    .map(
      ({ key, count }): BillItem =>
        key === 'hose'
          ? { key, kind: 'hose', text: key, quantityMilli: count * 137, unit: 'm' }
          : { key, kind: 'hose-end', text: key, quantityMilli: count * 1000, unit: 'piece' },
    ),
  { maxLength: 12 },
);
const parts: fc.Arbitrary<readonly ListedPart[]> = fc
  .array(
    fc.record({
      is: fc.uniqueArray(fc.constantFrom(...keys), { minLength: 1, maxLength: 3 }),
      need: fc.integer({ min: 0, max: 30 }),
      shelf: fc.integer({ min: 0, max: 30 }),
      coming: fc.integer({ min: 0, max: 30 }),
      metres: fc.boolean(),
    }),
    { maxLength: 4 },
  )
  .map((all) =>
    all.map(({ is, need, shelf, coming, metres }, at) => ({
      id: at + 1,
      keys: new Set<string>(is),
      unit: metres ? 'm' : 'piece',
      needMilli: need * 1000,
      coveredMilli: (shelf + coming) * 1000,
      shelfMilli: shelf * 1000,
    })),
  );

const uncovered = (list: readonly ListedPart[]): number =>
  list.reduce((sum, { needMilli, coveredMilli }) => sum + Math.max(0, needMilli - coveredMilli), 0);

describe('needs against the parts list', () => {
  // Properties that follow from the words "without doubling what is there or in stock"; no outside figures.
  it('are nothing once they were added, and order no more than was said', () => {
    fc.assert(
      fc.property(bill, parts, (items, list) => {
        const needs = needsOnList(items, list, new Map());
        const raised = list.map((part) => ({
          ...part,
          needMilli:
            part.needMilli +
            needs
              .flatMap(({ raises }) => raises)
              .filter((raise) => raise.part === part.id)
              .reduce((sum, { byMilli }) => sum + byMilli, 0),
        }));
        const made = needs
          .filter(({ raises, toAddMilli }) => raises.length === 0 && toAddMilli > 0)
          .map(
            ({ key, unit, toAddMilli }, at): ListedPart => ({
              id: 100 + at,
              keys: new Set([key]),
              unit,
              needMilli: toAddMilli,
              coveredMilli: 0,
              shelfMilli: 0,
            }),
          );
        const after = [...raised, ...made];
        const toOrder = needs.reduce((sum, need) => sum + need.toOrderMilli, 0);
        expect(uncovered(after) - uncovered(list)).toBe(toOrder);
        for (const need of needsOnList(items, after, new Map())) expect(need.toAddMilli).toBe(0);
      }),
      { numRuns: 500 },
    );
  });

  it('raise the part line that has some free before another one is bought for', () => {
    const part = (id: number, coveredMilli: number): ListedPart => ({
      id,
      keys: new Set(['ends']),
      unit: 'piece',
      needMilli: 0,
      coveredMilli,
      shelfMilli: coveredMilli,
    });
    const item: BillItem = { key: 'ends', kind: 'hose-end', text: 'ends', quantityMilli: 5000, unit: 'piece' };
    expect(needsOnList([item], [part(1, 0), part(2, 2000)], new Map())).toMatchObject([
      {
        toAddMilli: 5000,
        toOrderMilli: 3000,
        raises: [
          { part: 2, byMilli: 2000 },
          { part: 1, byMilli: 3000 },
        ],
      },
    ]);
  });
});
