import { describe, expect, it } from 'vitest';
import {
  creditOf,
  earnedIndices,
  earnedSchedule,
  estimatesAtCompletion,
  toComplete,
} from '../../../core/progress/earned-value.ts';

const near = (figure: { value: number | null }, value: number): void => expect(figure.value).toBeCloseTo(value, 4);
const ways = (state: Parameters<typeof estimatesAtCompletion>[0], lineByLine = 0) =>
  Object.fromEntries(estimatesAtCompletion(state, lineByLine).map(({ way, eac }) => [way, eac.value]));

describe('indices and estimates', () => {
  // D20: inputs of an open teaching vignette of a CRAN package on project risk analysis; outputs recomputed.
  it('gives those of the open worked example, period 3 of 5', () => {
    const state = { bac: 100_000, pv: 40_000, ev: 35_000, ac: 63_000 };
    const { cv, sv, cpi, spi, tcpi } = earnedIndices(state);
    expect([cv, sv]).toEqual([-28_000, -5000]);
    near(cpi, 0.5556);
    near(spi, 0.875);
    near(tcpi, 1.7568);
    const eac = ways(state);
    expect(eac['rest as planned']).toBeCloseTo(128_000, 4);
    expect(eac['past cost']).toBeCloseTo(180_000, 4);
    expect(eac['past cost and pace']).toBeCloseTo(196_714.2857, 3);
    near(toComplete(state, 180_000), 0.5556);
    const past = estimatesAtCompletion(state, 0).find(({ way }) => way === 'past cost');
    expect(past?.etc.value).toBeCloseTo(117_000, 4);
    expect(past?.vac.value).toBeCloseTo(-80_000, 4);
  });

  // D21: public course exercise (20 days, 200 000 budget, linear plan, 70 % done, 130 000 spent); outputs recomputed.
  it('gives those of the 20-day job on day 12', () => {
    const state = { bac: 200_000, pv: 120_000, ev: 140_000, ac: 130_000 };
    const { cv, sv, cpi, spi, tcpi } = earnedIndices(state);
    expect([cv, sv]).toEqual([10_000, 20_000]);
    near(cpi, 1.0769);
    near(spi, 1.1667);
    near(tcpi, 0.8571);
    const eac = ways(state);
    expect(eac['rest as planned']).toBe(190_000);
    expect(eac['past cost']).toBeCloseTo(185_714.2857, 3);
    expect(eac['past cost and pace']).toBeCloseTo(177_755.102, 2);
    const past = estimatesAtCompletion(state, 0).find(({ way }) => way === 'past cost');
    expect(past?.etc.value).toBeCloseTo(55_714.2857, 3);
    expect(past?.vac.value).toBeCloseTo(14_285.7143, 3);
    near(toComplete(state, past?.eac.value ?? 0), 1.0769);
  });

  // D22 and D23: inputs of public exam quizzes; formula as in PMI and GAO texts; outputs recomputed.
  it('gives the performance still needed', () => {
    near(earnedIndices({ bac: 40_000, pv: 0, ev: 17_000, ac: 15_000 }).tcpi, 0.92);
    near(toComplete({ bac: 100_000, pv: 0, ev: 68_000, ac: 70_000 }, 107_000), 0.8649);
  });

  // D24: public engineering review question; that TCPI(EAC) = CPI when EAC = BAC ÷ CPI is proven by hand.
  it('needs the past cost index to end on the past cost estimate', () => {
    const state = { bac: 5_000_000, pv: 1_500_000, ev: 1_500_000, ac: 1_800_000 };
    expect(ways(state)['past cost']).toBeCloseTo(6_000_000, 4);
    near(toComplete(state, 6_000_000), 0.8333);
    near(earnedIndices(state).cpi, 0.8333);
  });

  // D25: derived by hand, recomputed independently.
  it('has no figure where one can’t be formed, and says why', () => {
    const nothing = { bac: 1000, pv: 0, ev: 0, ac: 0 };
    expect(earnedIndices(nothing).cpi.value).toBeNull();
    expect(earnedIndices(nothing).spi.value).toBeNull();
    expect(ways(nothing)['past cost']).toBeNull();
    const none = { bac: 1000, pv: 500, ev: 0, ac: 200 };
    expect([earnedIndices(none).cpi.value, earnedIndices(none).spi.value]).toEqual([0, 0]);
    expect(ways(none)['past cost']).toBeNull();
    expect(ways(none)['rest as planned']).toBe(1200);
    const free = { bac: 1000, pv: 500, ev: 300, ac: 0 };
    expect(earnedIndices(free).cpi).toEqual({ value: null, why: 'something is earned and no cost is booked' });
    expect(ways(free)['past cost']).toBeNull();
    near(earnedIndices(free).spi, 0.6);
    expect(ways(free)['rest as planned']).toBe(700);
    const finished = { bac: 1000, pv: 1000, ev: 1000, ac: 1000 };
    expect(earnedIndices(finished).cpi.value).toBe(1);
    expect(earnedIndices(finished).tcpi.value).toBeNull();
    expect(ways(finished)['past cost']).toBe(1000);
    const spent = { bac: 1000, pv: 900, ev: 800, ac: 1000 };
    near(earnedIndices(spent).cpi, 0.8);
    expect(earnedIndices(spent).tcpi).toEqual({ value: null, why: 'no budget is left' });
    expect(ways(spent)['past cost']).toBe(1250);
    near(toComplete(spent, 1250), 0.8);
    expect(earnedIndices({ bac: 10, pv: 1, ev: 1, ac: -1 }).cpi.value).toBeNull();
  });
});

describe('earned schedule', () => {
  const planned = [30, 90, 180, 270, 360, 420, 450];

  // D26 and D27: formula ES = C + I of Lipke 2003 and ISO 21508; numbers derived by hand, recomputed independently.
  it('reads the time of the plan that is earned', () => {
    const half = earnedSchedule(planned, 225, 4);
    expect(half.es).toBeCloseTo(3.5, 10);
    expect(half.sv).toBeCloseTo(-0.5, 10);
    near(half.spi, 0.875);
    near(half.duration, 8);
    const late = earnedSchedule(planned, 450, 9);
    expect(late.es).toBe(7);
    // SPI is 1 again when all is earned; that of the schedule is not.
    near(earnedIndices({ bac: 450, pv: 450, ev: 450, ac: 450 }).spi, 1);
    near(late.spi, 0.7778);
    expect(late.sv).toBe(-2);
  });

  // D28: rule of this program, no published source; derived by hand.
  it('is not late while the plan asks for nothing', () => {
    const flat = [0, 0, 100, 250, 250, 400];
    const at = (ev: number, gone: number) => earnedSchedule(flat, ev, gone).es;
    expect([at(0, 1), at(0, 3), at(250, 4.5), at(250, 6), at(325, 6)]).toEqual([1, 2, 4.5, 5, 5.5]);
    // All earned counts as the whole planned duration, also where the plan is flat at its end. By hand.
    expect(earnedSchedule([10, 20, 20], 20, 2).es).toBe(3);
  });

  it('has no pace before anything has gone or is earned', () => {
    expect(earnedSchedule(planned, 0, 0).spi.value).toBeNull();
    expect(earnedSchedule(planned, 0, 2).duration.value).toBeNull();
  });
});

// D29: rules of credit of EIA-748 practice guides and the PMI practice standard; numbers derived by hand.
it('earns by the rule of each piece of work', () => {
  const earned = [
    300 * creditOf({ rule: '0/100', done: true }),
    900 * creditOf({ rule: 'milestones', weights: [0.3, 0.7], reached: 1 }),
    600 * creditOf({ rule: '50/50', begun: true, done: false }),
    210 * creditOf({ rule: 'units', acceptedMilli: 0, needMilli: 10_000 }),
    180 * creditOf({ rule: 'units', acceptedMilli: 1000, needMilli: 2000 }),
    120 * creditOf({ rule: 'effort', plannedShare: 0.5 }),
  ];
  expect(earned).toEqual([300, 270, 300, 0, 90, 60]);
  const total = earned.reduce((sum, each) => sum + each, 0);
  const budget = 300 + 900 + 600 + 210 + 180 + 120;
  expect([total, budget, (total / budget).toFixed(4)]).toEqual([1020, 2310, '0.4416']);
});
