import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignLeastCost } from '../../../core/measuring/assignment.ts';
import { type FitSetup, fitSays, selectFit } from '../../../core/measuring/select-fit.ts';

const lash = { least: 0.2, most: 0.3 };
const shims = (more: Partial<FitSetup> = {}): FitSetup => ({
  way: 'shim',
  target: 0.25,
  step: 0.05,
  sizes: [],
  now: [],
  ...more,
});

describe('least-cost assignment', () => {
  it('solves the 3 × 3 example worked by hand', () => {
    // Rows 4 1 3 / 2 0 5 / 3 2 2: of the six ways the least is 1 + 2 + 2 = 5, by listing all six.
    const costs = [
      [4, 1, 3],
      [2, 0, 5],
      [3, 2, 2],
    ];
    expect(assignLeastCost(costs)).toEqual([1, 0, 2]);
  });

  it('is as cheap as the cheapest of all ways', () => {
    const best = (costs: readonly (readonly number[])[], row: number, used: ReadonlySet<number>): number => {
      const own = costs[row];
      if (own === undefined) return 0;
      return Math.min(
        ...own.map((cost, column) =>
          used.has(column) ? Number.POSITIVE_INFINITY : cost + best(costs, row + 1, new Set([...used, column])),
        ),
      );
    };
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }).chain((rows) =>
          fc.array(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 6, maxLength: 6 }), {
            minLength: rows,
            maxLength: rows,
          }),
        ),
        (costs) => {
          const chosen = assignLeastCost(costs);
          expect(new Set(chosen).size).toBe(costs.length);
          const total = chosen.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Number.NaN), 0);
          expect(total).toBe(best(costs, 0, new Set()));
        },
      ),
    );
  });
});

describe('shims', () => {
  it('takes new = old + measured − target', () => {
    // 2.80 + 0.40 − 0.25 = 2.95, by hand; the next step of 0.05 is 2.95, and the lash becomes 0.25.
    const [choice] = selectFit(shims({ now: [2.8] }), [{ place: 'Ex 1', measured: 0.4 }], lash);
    expect(choice?.wanted).toBeCloseTo(2.95, 12);
    expect(choice).toMatchObject({ use: 2.95, from: 'to buy', becomes: 0.25 });
  });

  it('leaves what is inside its limits', () => {
    const [choice] = selectFit(shims({ now: [2.8] }), [{ place: 'Ex 1', measured: 0.22 }], lash);
    expect(choice).toMatchObject({ use: 2.8, from: 'stays' });
  });

  it('changes two places over rather than buy', () => {
    // Each wants just what the other has: 2.80 + 0.40 − 0.25 = 2.95 and 2.95 + 0.10 − 0.25 = 2.80.
    const places = [
      { place: 'Ex 1', measured: 0.4 },
      { place: 'Ex 2', measured: 0.1 },
    ];
    const choices = selectFit(shims({ now: [2.8, 2.95] }), places, lash);
    expect(choices.map(({ from, use, fromPlace }) => [from, use, fromPlace])).toEqual([
      ['another place', 2.95, 'Ex 2'],
      ['another place', 2.8, 'Ex 1'],
    ]);
    expect(fitSays(choices, 'mm')).toBe('2 from another place.');
  });

  it('buys fewer than taking each place by itself would', () => {
    // One 2.90 at hand does for either place (0.20 to 0.30); the other can take the 2.95 that comes out of the third.
    const places = [
      { place: '1', measured: 0.4 },
      { place: '2', measured: 0.35 },
      { place: '3', measured: 0.1 },
    ];
    const setup = shims({ now: [2.8, 2.8, 2.95], sizes: [{ name: '290', size: 2.9, count: 1 }] });
    const choices = selectFit(setup, places, lash);
    expect(choices.filter(({ from }) => from === 'to buy')).toHaveLength(0);
    for (const { becomes } of choices) expect(becomes).toBeGreaterThanOrEqual(0.2 - 1e-9);
    for (const { becomes } of choices) expect(becomes).toBeLessThanOrEqual(0.3 + 1e-9);
  });

  it('never puts one shim into two places, and never leaves the limits with what it did not buy', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ now: fc.integer({ min: 50, max: 60 }), lash: fc.integer({ min: 0, max: 12 }) }), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.integer({ min: 0, max: 2 }),
        (list, count) => {
          const sizes = [54, 55, 56].map((size) => ({ name: '', size: size * 0.05, count }));
          const setup = shims({ now: list.map(({ now }) => now * 0.05), sizes });
          const places = list.map(({ lash: read }, index) => ({ place: String(index), measured: read * 0.05 }));
          const choices = selectFit(setup, places, lash);
          const taken = choices.flatMap(({ from, fromPlace, place }) =>
            from === 'another place' ? [fromPlace] : from === 'stays' ? [place] : [],
          );
          expect(new Set(taken).size).toBe(taken.length);
          for (const { from, becomes } of choices) {
            if (from === 'to buy') continue;
            expect(becomes).toBeGreaterThanOrEqual(0.2 - 1e-9);
            expect(becomes).toBeLessThanOrEqual(0.3 + 1e-9);
          }
        },
      ),
    );
  });

  it('leaves alone what is not measured or not known', () => {
    const choices = selectFit(
      shims({ now: [null, 2.8] }),
      [
        { place: '1', measured: 0.4 },
        { place: '2', measured: null },
      ],
      lash,
    );
    expect(choices.map(({ from }) => from)).toEqual(['not known', 'not known']);
  });
});

describe('bearing shells', () => {
  it('counts a wall twice, since a bearing has two shells', () => {
    // Clearance 0.060 with walls of 1.990, 0.045 wanted: (0.060 − 0.045)/2 = 0.0075 thicker, by hand.
    const [choice] = selectFit(
      { way: 'shell', target: 0.045, step: 0.0025, sizes: [{ name: 'blue', size: 1.9975, count: 1 }], now: [1.99] },
      [{ place: 'Main 1', measured: 0.06 }],
      { least: 0.04, most: 0.05 },
    );
    expect(choice?.wanted).toBeCloseTo(1.9975, 9);
    expect(choice).toMatchObject({ name: 'blue', from: 'at hand' });
    expect(choice?.becomes).toBeCloseTo(0.045, 9);
  });
});
