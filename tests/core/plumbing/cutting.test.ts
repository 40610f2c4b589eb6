import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CuttingWanted, planCuts } from '../../../core/plumbing/cutting.ts';
import type { Supply } from '../../../core/plumbing/cutting-problem.ts';

/**
 * Every way to put the pieces into lengths, written as plainly as possible and without the program's own search: least
 * pieces left over, then least bought, then least stock opened, then fewest lengths.
 */
function bruteForce(pieces: readonly number[], stock: readonly number[], supply: Supply, kerf: number): number[] {
  let best: number[] = [Number.POSITIVE_INFINITY];
  const better = (one: number[]): boolean => {
    for (const [at, value] of one.entries()) {
      const other = best[at] ?? Number.POSITIVE_INFINITY;
      if (value !== other) return value < other;
    }
    return false;
  };
  // Groups of pieces; each group is then given the cheapest kind of length by trying all.
  const used = (group: readonly number[]): number => group.reduce((a, b) => a + b, 0) + kerf * (group.length - 1);
  const give = (
    groups: readonly number[][],
    at: number,
    free: readonly number[],
    bought: number[],
    opened: number,
    roll: number[],
    left: number,
  ): void => {
    const group = groups[at];
    if (group === undefined) {
      const onRoll =
        roll.length === 0 || supply.kind !== 'by-step' ? 0 : Math.ceil(used(roll) / supply.stepMm) * supply.stepMm;
      const lengths = groups.length - left;
      const cost = [left, bought.reduce((a, b) => a + b, 0) + onRoll, opened, lengths];
      if (better(cost)) best = cost;
      return;
    }
    for (const [which, length] of free.entries()) {
      if (length >= used(group)) {
        give(
          groups,
          at + 1,
          free.filter((_, other) => other !== which),
          bought,
          opened + length,
          roll,
          left,
        );
      }
    }
    if (supply.kind === 'lengths') {
      for (const length of supply.lengthsMm) {
        if (length >= used(group)) give(groups, at + 1, free, [...bought, length], opened, roll, left);
      }
    }
    if (supply.kind === 'by-step' && roll.length === 0) give(groups, at + 1, free, bought, opened, group, left);
    // Left over only one at a time, and only what nothing sold would hold.
    const holds =
      supply.kind === 'by-step' || (supply.kind === 'lengths' && Math.max(...supply.lengthsMm) >= (group[0] ?? 0));
    if (group.length === 1 && !holds) give(groups, at + 1, free, bought, opened, roll, left + 1);
  };
  const split = (at: number, groups: number[][]): void => {
    const piece = pieces[at];
    if (piece === undefined) {
      give(groups, 0, stock, [], 0, [], 0);
      return;
    }
    for (const [which] of groups.entries()) {
      split(
        at + 1,
        groups.map((group, other) => (other === which ? [...group, piece] : group)),
      );
    }
    split(at + 1, [...groups, [piece]]);
  };
  split(0, []);
  return best;
}

const wantedOf = (
  pieces: readonly number[],
  stock: readonly number[],
  supply: Supply,
  kerfMm: number,
): CuttingWanted => ({
  pieces: pieces.map((lengthMm, at) => ({ id: `p${at}`, lengthMm, count: 1 })),
  stock: stock.map((lengthMm, at) => ({ id: `s${at}`, lengthMm, count: 1 })),
  supply,
  kerfMm,
});

const lengthMm = fc.integer({ min: 1, max: 12 }).map((n) => n * 50);
const supplies: fc.Arbitrary<Supply> = fc.oneof(
  fc.constant<Supply>({ kind: 'none' }),
  fc.constantFrom(1, 100).map((stepMm): Supply => ({ kind: 'by-step', stepMm })),
  fc
    .uniqueArray(
      fc.integer({ min: 4, max: 20 }).map((n) => n * 50),
      { minLength: 1, maxLength: 2 },
    )
    .map(
      (lengthsMm): Supply => ({
        kind: 'lengths',
        lengthsMm,
      }),
    ),
);

describe('cutting', () => {
  it('is as good as trying every way, on small cases (brute force in this file)', () => {
    fc.assert(
      fc.property(
        fc.array(lengthMm, { minLength: 1, maxLength: 6 }),
        fc.array(
          lengthMm.map((n) => n * 2),
          { maxLength: 4 },
        ),
        supplies,
        fc.constantFrom(0, 3),
        (pieces, stock, supply, kerf) => {
          const plan = planCuts(wantedOf(pieces, stock, supply, kerf));
          expect(plan.proven).toBe(true);
          expect([plan.unplaced.length, plan.boughtMm, plan.stockUsedMm, plan.lengths.length]).toEqual(
            bruteForce(pieces, stock, supply, kerf),
          );
          expect(plan.boughtAtLeastMm).toBeLessThanOrEqual(plan.boughtMm);
        },
      ),
      { numRuns: 250 },
    );
  }, 60_000);

  it('cuts every piece once, within its length, and accounts for every millimetre', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 80, max: 2400 }), { minLength: 1, maxLength: 30 }),
        fc.array(fc.integer({ min: 200, max: 4000 }), { maxLength: 8 }),
        supplies,
        fc.integer({ min: 0, max: 4 }),
        (pieces, stock, supply, kerf) => {
          const plan = planCuts(wantedOf(pieces, stock, supply, kerf));
          const ids = [...plan.lengths.flatMap(({ cuts }) => cuts), ...plan.unplaced].map(({ id }) => id).sort();
          expect(ids).toEqual(pieces.map((_, at) => `p${at}`).sort());
          const stockIds = plan.lengths.map(({ id }) => id).filter((id) => id !== undefined);
          expect(new Set(stockIds).size).toBe(stockIds.length);
          let cut = 0;
          for (const { cuts, usedMm, lengthMm: length, restMm } of plan.lengths) {
            const sum = cuts.reduce((total, one) => total + one.lengthMm, 0);
            cut += sum;
            expect(usedMm).toBe(sum + kerf * (cuts.length - 1));
            expect(usedMm).toBeLessThanOrEqual(length);
            expect(restMm).toBe(length - usedMm);
          }
          expect(plan.boughtMm + plan.stockUsedMm).toBe(cut + plan.wasteMm + plan.keptMm);
        },
      ),
      { numRuns: 25 },
    );
  }, 30_000);

  it('uses up what is at hand before it buys: derived by hand', () => {
    // 600 + 400 fill the 1000 at hand exactly; longest-first into the tightest length would put 500 there and buy 400.
    const plan = planCuts(wantedOf([600, 500, 400], [1000], { kind: 'by-step', stepMm: 100 }, 0));
    expect(plan).toMatchObject({ boughtMm: 500, stockUsedMm: 1000, wasteMm: 0, proven: true });
  });

  it('keeps a long rest and calls a short one waste', () => {
    const plan = planCuts({ ...wantedOf([600], [1000], { kind: 'none' }, 2), keepFromMm: 300 });
    expect(plan.lengths[0]).toMatchObject({ restMm: 400, rest: 'keep' });
    expect(planCuts({ ...wantedOf([800], [1000], { kind: 'none' }, 2), keepFromMm: 300 })).toMatchObject({
      wasteMm: 200,
      wasteShare: 0.2,
      keptMm: 0,
    });
  });

  it('comes within one length of the least that is possible, for thirty pieces', () => {
    const pieces = Array.from({ length: 30 }, (_, at) => 300 + 3 * at);
    const plan = planCuts(wantedOf(pieces, [], { kind: 'lengths', lengthsMm: [1000] }, 0));
    expect(plan.boughtMm).toBeGreaterThanOrEqual(plan.boughtAtLeastMm);
    // Sum 10 305 mm: no plan does with fewer than 11 lengths.
    expect(plan.boughtAtLeastMm).toBe(11_000);
    expect(plan.boughtMm).toBeLessThanOrEqual(12_000);
  });

  it('says which pieces nothing is long enough for', () => {
    const plan = planCuts(wantedOf([900, 200], [500], { kind: 'lengths', lengthsMm: [800] }, 0));
    expect(plan.unplaced).toEqual([{ id: 'p0', lengthMm: 900 }]);
    expect(plan).toMatchObject({ boughtMm: 0, stockUsedMm: 500 });
  });

  it('plans the same each time', () => {
    const pieces = Array.from({ length: 24 }, (_, at) => 150 + ((at * 137) % 900));
    const wanted = wantedOf(pieces, [1200, 900, 2000, 650], { kind: 'lengths', lengthsMm: [3000, 5000] }, 2);
    expect(planCuts(wanted)).toEqual(planCuts(wanted));
  }, 30_000);
});
