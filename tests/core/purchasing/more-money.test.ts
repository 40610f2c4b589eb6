import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { BuyingInput } from '../../../core/purchasing/buying-plan.ts';
import { type BuyingPlan, type NoBuyingPlan, planBuying } from '../../../core/purchasing/buying-plan-solve.ts';

const words = { currency: 'GBP', startOn: '2026-03-02', dayText: (date: string) => date };

const anyInput = fc
  .record({
    items: fc.array(
      fc.record({
        priceMinor: fc.integer({ min: 10, max: 600 }),
        vendor: fc.constantFrom('P', 'Q'),
        leadWeeks: fc.nat(4),
        workWeeks: fc.nat(3),
        priority: fc.nat(4),
        must: fc.oneof({ weight: 3, arbitrary: fc.constant(true) }, fc.constant(false)),
      }),
      { minLength: 1, maxLength: 8 },
    ),
    openingMinor: fc.integer({ min: 0, max: 1200 }),
    floorMinor: fc.nat(200),
    cash: fc.array(fc.integer({ min: -150, max: 500 }), { maxLength: 8 }),
    shippingMinor: fc.nat(60),
    freeFromMinor: fc.option(fc.integer({ min: 0, max: 900 })),
  })
  .map(
    (row): BuyingInput => ({
      items: row.items.map((each, index) => ({ ...each, id: `i${index}`, name: `i${index}` })),
      vendors: [
        { id: 'P', name: 'P', shippingMinor: row.shippingMinor, freeFromMinor: row.freeFromMinor },
        { id: 'Q', name: 'Q', shippingMinor: 15, freeFromMinor: null },
      ],
      openingMinor: row.openingMinor,
      floorMinor: row.floorMinor,
      cashMinor: Object.fromEntries(row.cash.map((amount, week) => [week, amount])),
      lastWeek: 10,
    }),
  );

const gateOf = (plan: BuyingPlan | NoBuyingPlan): number =>
  plan.status === 'plan' ? plan.figures.gateWeek : Number.POSITIVE_INFINITY;

const anyMore = fc.record({ cash: fc.nat(400), week: fc.nat(9), income: fc.nat(400), floor: fc.nat(200) });

const richer = (
  input: BuyingInput,
  more: { cash: number; week: number; income: number; floor: number },
): BuyingInput => ({
  ...input,
  openingMinor: input.openingMinor + more.cash,
  cashMinor: { ...input.cashMinor, [more.week]: (input.cashMinor[more.week] ?? 0) + more.income },
  floorMinor: Math.max(0, input.floorMinor - more.floor),
});

test('more cash, more income or a lower floor never make the proven gate later', () => {
  fc.assert(
    fc.property(anyInput, anyMore, (input, more) => {
      const [before, after] = [planBuying(input, words), planBuying(richer(input, more), words)];
      // Where the search for a proof gave up, the next test is what holds.
      const proven = [before, after].every((plan) => plan.status === 'none' || plan.method === 'exact');
      if (proven) expect(gateOf(after)).toBeLessThanOrEqual(gateOf(before));
    }),
    { numRuns: 60 },
  );
});

test('found by moves, with the plan of less money tried too, the gate is never later and the floor holds', () => {
  fc.assert(
    fc.property(anyInput, anyMore, (input, more) => {
      const before = planBuying(input, { ...words, quick: true });
      const alsoTry = before.status === 'plan' ? { alsoTry: before.weeks } : {};
      const after = planBuying(richer(input, more), { ...words, quick: true, ...alsoTry });
      expect(gateOf(after)).toBeLessThanOrEqual(gateOf(before));
      if (after.status === 'plan') expect([after.figures.shortMinor, after.figures.missing]).toEqual([0, 0]);
    }),
    { numRuns: 200 },
  );
});

test('another plan is only taken where it keeps the floor and buys what must be', () => {
  const input: BuyingInput = {
    items: [{ id: 'a', name: 'a', vendor: 'P', priceMinor: 100, leadWeeks: 1, workWeeks: 0, priority: 1 }],
    vendors: [{ id: 'P', name: 'P', shippingMinor: 0, freeFromMinor: null }],
    openingMinor: 0,
    cashMinor: { 2: 100 },
    floorMinor: 0,
    lastWeek: 5,
  };
  // By hand: the money is there in week 2, a week's lead: week 3. An order in week 0 would break the floor.
  for (const alsoTry of [new Map([['a', 0]]), new Map<string, number>(), new Map([['a', 9]])]) {
    expect(gateOf(planBuying(input, { ...words, quick: true, alsoTry }))).toBe(3);
  }
});
