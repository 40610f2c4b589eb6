/**
 * Earned value: what was planned, what is done, what it cost, and what these say about the end. Amounts are in one unit
 * (minor units of money, or minutes of work). What can't be formed is null with a reason, never 0 and never infinite.
 * Source of terms and formulas: EIA-748 and ISO 21508 as in public formula sheets; earned schedule: Lipke 2003.
 */

export interface EarnedState {
  /** Budget at completion: everything that was planned. */
  readonly bac: number;
  /** Planned, earned and actual up to the day. */
  readonly pv: number;
  readonly ev: number;
  readonly ac: number;
}

/** A figure, or why there is none. */
export type Figure = { readonly value: number; readonly why: '' } | { readonly value: null; readonly why: string };

const figure = (value: number): Figure => ({ value, why: '' });
const none = (why: string): Figure => ({ value: null, why });

const ratio = (over: number, under: number, why: string): Figure => (under === 0 ? none(why) : figure(over / under));

export interface EarnedIndices {
  readonly cv: number;
  readonly sv: number;
  readonly cpi: Figure;
  readonly spi: Figure;
  /** Cost performance still needed to end on the budget. */
  readonly tcpi: Figure;
}

/** Variances and indices of a day. Cost booked below nothing (refunds) has no cost index. */
export function earnedIndices({ bac, pv, ev, ac }: EarnedState): EarnedIndices {
  const finished = ev >= bac && bac > 0;
  return {
    cv: ev - ac,
    sv: ev - pv,
    cpi:
      ac < 0
        ? none('more came back than was spent')
        : ratio(ev, ac, ev > 0 ? 'something is earned and no cost is booked' : 'nothing is booked as cost yet'),
    spi: ratio(ev, pv, 'nothing was planned to be done by now'),
    tcpi: finished
      ? none('finished: nothing is left to do')
      : bac - ac <= 0
        ? none('no budget is left')
        : figure((bac - ev) / (bac - ac)),
  };
}

/** Cost performance needed from here on to end at an estimate: (BAC − EV) ÷ (EAC − AC). */
export const toComplete = ({ bac, ev, ac }: EarnedState, eac: number): Figure =>
  eac - ac <= 0 ? none('the estimate leaves nothing to spend') : figure((bac - ev) / (eac - ac));

export const estimateWays = ['rest as planned', 'past cost', 'past cost and pace', 'blend', 'line by line'] as const;
export type EstimateWay = (typeof estimateWays)[number];

/** What each way of estimating takes for granted. */
export const estimateAssumes: Readonly<Record<EstimateWay, string>> = {
  'rest as planned': 'what went otherwise so far was a one-off',
  'past cost': 'what is left costs as much over (or under) as what is done',
  'past cost and pace': 'being late costs money too',
  blend: 'four parts of past cost, one part of pace; the weights are a habit',
  'line by line': 'nothing: what came in, what is on order and the estimate of each line',
};

export interface Estimate {
  readonly way: EstimateWay;
  readonly eac: Figure;
  /** What it leaves to come: EAC − AC. */
  readonly etc: Figure;
  /** What it leaves of the budget, below nothing when over it: BAC − EAC. */
  readonly vac: Figure;
}

/**
 * Estimates at completion. `lineByLine` is cost + on order + remaining estimate, and goes before the formulas.
 * Source: formulas as in public earned-value sheets; the blend's weights 0.8 and 0.2 from memory.
 */
export function estimatesAtCompletion(state: EarnedState, lineByLine: number): readonly Estimate[] {
  const { bac, ev, ac } = state;
  const { cpi, spi } = earnedIndices(state);
  const left = bac - ev;
  const by = (rate: number | null, why: string): Figure =>
    left <= 0
      ? figure(ac)
      : rate === null
        ? none(why)
        : rate === 0
          ? none('nothing is earned yet')
          : figure(ac + left / rate);
  const why = cpi.value === null ? cpi.why : spi.why;
  const both = cpi.value === null || spi.value === null ? null : { cpi: cpi.value, spi: spi.value };
  const estimate = (way: EstimateWay, eac: Figure): Estimate =>
    eac.value === null
      ? { way, eac, etc: eac, vac: eac }
      : { way, eac, etc: figure(eac.value - ac), vac: figure(bac - eac.value) };
  return [
    estimate('rest as planned', figure(ac + Math.max(0, left))),
    estimate('past cost', by(cpi.value, cpi.why)),
    estimate('past cost and pace', by(both === null ? null : both.cpi * both.spi, why)),
    estimate('blend', by(both === null ? null : 0.8 * both.cpi + 0.2 * both.spi, why)),
    estimate('line by line', figure(lineByLine)),
  ];
}

export interface EarnedSchedule {
  /** Periods of the plan that are earned. */
  readonly es: number;
  /** Periods gone. */
  readonly at: number;
  readonly sv: number;
  readonly spi: Figure;
  /** Periods that the whole will take at this pace. */
  readonly duration: Figure;
}

/**
 * How much of the plan's time is earned: the period in which the plan stood where the work stands, with its share.
 * While the plan asks for nothing (a flat stretch) one isn't late. A plan that is done counts as its whole duration.
 * @param planned cumulative plan at the end of each period, never falling.
 * @param at periods gone, 0 or more; may be broken.
 */
export function earnedSchedule(planned: readonly number[], ev: number, at: number): EarnedSchedule {
  const all = [0, ...planned];
  const bac = all.at(-1) ?? 0;
  const es = earnedPeriods(all, ev, bac, at);
  const spi = at === 0 ? none('the plan has only just begun') : figure(es / at);
  const duration =
    spi.value === null
      ? none(spi.why)
      : spi.value === 0
        ? none('nothing is earned yet')
        : figure(planned.length / spi.value);
  return { es, at, sv: es - at, spi, duration };
}

function earnedPeriods(all: readonly number[], ev: number, bac: number, at: number): number {
  if (ev >= bac) return all.length - 1;
  const low = all.findIndex((value) => value >= ev);
  // Of equal values, the stretch over which the plan asks for nothing more.
  if (low >= 0 && all[low] === ev) {
    let high = low;
    while (all[high + 1] === ev) high += 1;
    return Math.min(high, Math.max(low, at));
  }
  const next = low;
  const before = all[next - 1] ?? 0;
  return next - 1 + (ev - before) / ((all[next] ?? ev) - before);
}

/** Rules by which work earns its budget before it is done. */
export type CreditRule =
  | { readonly rule: '0/100'; readonly done: boolean }
  | { readonly rule: '50/50'; readonly begun: boolean; readonly done: boolean }
  | { readonly rule: 'units'; readonly acceptedMilli: number; readonly needMilli: number }
  | { readonly rule: 'milestones'; readonly weights: readonly number[]; readonly reached: number }
  | { readonly rule: 'effort'; readonly plannedShare: number };

/** Share of a budget that is earned, 0 to 1. Source: rules of credit of EIA-748 practice guides. */
export function creditOf(state: CreditRule): number {
  switch (state.rule) {
    case '0/100':
      return state.done ? 1 : 0;
    case '50/50':
      return state.done ? 1 : state.begun ? 0.5 : 0;
    case 'units':
      return state.needMilli <= 0 ? 1 : Math.min(1, Math.max(0, state.acceptedMilli) / state.needMilli);
    case 'milestones':
      return state.weights.slice(0, state.reached).reduce((sum, weight) => sum + weight, 0);
    case 'effort':
      return Math.min(1, Math.max(0, state.plannedShare));
  }
}
