/**
 * How long a vendor takes, from what that vendor has done: the arrivals, the lines still open, the promises kept. A share
 * is never shown without the number of lines behind it.
 * Sources: product-limit curve, Kaplan & Meier 1958; prior and data together, the conjugate update of Gelman et al.,
 * Bayesian Data Analysis, on log days. The numbers of lines from which a record speaks for itself are this product's own.
 */
import { type Distribution, quantile, shareUpTo } from '../forecast/distribution.ts';
import { Refusal } from '../refusal.ts';

/** One order line: days from order to accepted receipt, or, while it is open or was cancelled, to today or that day. */
export interface LeadObservation {
  readonly days: number;
  readonly arrived: boolean;
}

export interface CurveStep {
  readonly days: number;
  readonly atRisk: number;
  readonly arrived: number;
  /** Share of lines still waiting after this day. */
  readonly stillWaiting: number;
}

/**
 * The product-limit curve: a step at each day on which something arrived. Lines still open count while they were open;
 * at the same day arrivals come before lines that drop out.
 * @throws Refusal `bad-input` for days below zero or not whole numbers of days.
 */
export function waitingCurve(observations: readonly LeadObservation[]): CurveStep[] {
  for (const { days } of observations) requireDays(days, 'lead days');
  const arrivalDays = [...new Set(observations.filter((line) => line.arrived).map((line) => line.days))];
  arrivalDays.sort((a, b) => a - b);
  let stillWaiting = 1;
  return arrivalDays.map((days) => {
    const atRisk = observations.filter((line) => line.days >= days).length;
    const arrived = observations.filter((line) => line.arrived && line.days === days).length;
    stillWaiting *= (atRisk - arrived) / atRisk;
    return { days, atRisk, arrived, stillWaiting };
  });
}

/** What is expected of a class of vendor before any line has arrived. */
export interface LeadPrior {
  readonly medianDays: number;
  /** How many arrivals the median is worth. */
  readonly weight: number;
  /** Deviation of the natural logarithms of the days. */
  readonly deviation: number;
  /** Degrees of freedom behind the deviation. */
  readonly degrees: number;
}

export const leadClasses = ['in-stock', 'back-order', 'machine-shop', 'overseas'] as const;
export type LeadClass = (typeof leadClasses)[number];

/** Starting points until a vendor has a record. Source: common practice, no published source. */
export const leadPriors: Readonly<Record<LeadClass, LeadPrior>> = {
  'in-stock': { medianDays: 6, weight: 2, deviation: 0.6, degrees: 4 },
  'back-order': { medianDays: 35, weight: 2, deviation: 0.6, degrees: 4 },
  'machine-shop': { medianDays: 28, weight: 2, deviation: 0.6, degrees: 4 },
  overseas: { medianDays: 21, weight: 2, deviation: 0.6, degrees: 4 },
};

export interface LeadBelief {
  readonly arrivals: number;
  /** Centre of the log days. */
  readonly centre: number;
  /** Variance of the log days. */
  readonly variance: number;
  readonly degrees: number;
  /** Scale of the next log day. */
  readonly scale: number;
}

/**
 * Prior and arrivals together. An arrival on the day of the order counts as half a day, since a logarithm needs more
 * than zero.
 * @throws Refusal `bad-input` for a prior that is not above zero throughout, or days below zero.
 */
export function leadBelief(prior: LeadPrior, arrivedDays: readonly number[]): LeadBelief {
  for (const [field, value] of Object.entries(prior)) {
    if (!(Number.isFinite(value) && value > 0)) {
      throw new Refusal('bad-input', `The expected lead's ${field} ${value} is not above zero. Nothing was changed.`, {
        field,
        accepted: 'a number above 0',
      });
    }
  }
  const logs = arrivedDays.map((days) => Math.log(Math.max(requireDays(days, 'lead days'), 0.5)));
  const arrivals = logs.length;
  const before = Math.log(prior.medianDays);
  const weight = prior.weight + arrivals;
  const degrees = prior.degrees + arrivals;
  const mean = arrivals === 0 ? before : logs.reduce((sum, log) => sum + log, 0) / arrivals;
  const centre = (prior.weight * before + arrivals * mean) / weight;
  const spread = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0);
  const pull = ((prior.weight * arrivals) / weight) * (mean - before) ** 2;
  const variance = (prior.degrees * prior.deviation ** 2 + spread + pull) / degrees;
  return { arrivals, centre, variance, degrees, scale: Math.sqrt(variance * (1 + 1 / weight)) };
}

/** The next lead as that belief has it. */
export function leadOfBelief(belief: LeadBelief): Distribution {
  return { kind: 'log-student', centre: belief.centre, scale: belief.scale, degrees: belief.degrees };
}

/** From this many arrivals a vendor's own curve is used. */
export const arrivalsForCurve = 8;
/** From this many kept or broken promises a vendor's own slips are used. */
export const slipsForRecord = 5;

export interface LeadRecord {
  /** This vendor's lines of the class in question. */
  readonly vendor: readonly LeadObservation[];
  /** Lines of the same class at all vendors, this one's among them; they move the prior when the vendor has few. */
  readonly pooled: readonly LeadObservation[];
  readonly prior: LeadPrior;
}

export type LeadBasis = 'promise' | 'own-record' | 'few-orders' | 'no-orders';

export interface LeadOutlook {
  readonly basis: LeadBasis;
  /** Days from the order (or from the notice) to accepted receipt. */
  readonly distribution: Distribution;
  readonly arrivals: number;
  readonly open: number;
  /** The tail beyond the longest arrival is fitted, because the longest line is still open. */
  readonly tailFitted: boolean;
  /** What the figure stands on, with its counts, in one sentence. */
  readonly says: string;
}

/** How long an order placed now will take: the vendor's own curve from eight arrivals, else prior and data together. */
export function leadOutlook(record: LeadRecord): LeadOutlook {
  const arrivedDays = record.vendor.filter((line) => line.arrived).map((line) => line.days);
  const open = record.vendor.length - arrivedDays.length;
  const belief = leadBelief(pooledPrior(record), arrivedDays);
  if (arrivedDays.length >= arrivalsForCurve) {
    const curve = waitingCurve(record.vendor);
    const tailFitted = (curve.at(-1)?.stillWaiting ?? 0) > 0;
    return {
      basis: 'own-record',
      distribution: {
        kind: 'seen',
        values: curve.map((step) => step.days),
        shares: curve.map((step) => 1 - step.stillWaiting),
        tail: tailFitted ? leadOfBelief(belief) : null,
      },
      arrivals: arrivedDays.length,
      open,
      tailFitted,
      says: `From ${count(arrivedDays.length, 'arrival')} of this vendor${open > 0 ? ` and ${count(open, 'line')} not arrived` : ''}.`,
    };
  }
  return {
    basis: arrivedDays.length === 0 ? 'no-orders' : 'few-orders',
    distribution: leadOfBelief(belief),
    arrivals: arrivedDays.length,
    open,
    tailFitted: false,
    says: `${
      arrivedDays.length === 0
        ? 'This vendor has no arrivals yet'
        : `Only ${count(arrivedDays.length, 'arrival')} of this vendor`
    }, so mostly from ${poolWords(record)}.`,
  };
}

function poolWords(record: LeadRecord): string {
  const arrivals = record.pooled.filter((line) => line.arrived).length;
  const expected = `an expected ${record.prior.medianDays} days`;
  return arrivals === 0 ? expected : `${expected} and ${count(arrivals, 'arrival')} of all vendors`;
}

/** The prior, its median moved to what all vendors did; its weight stays, so that a vendor's own record soon counts. */
function pooledPrior(record: LeadRecord): LeadPrior {
  const days = record.pooled.filter((line) => line.arrived).map((line) => line.days);
  if (days.length === 0) return record.prior;
  return { ...record.prior, medianDays: Math.exp(leadBelief(record.prior, days).centre) };
}

/**
 * The remaining wait of a line that has waited `waited` days and not arrived. A record that nothing in it has waited so
 * long can't say; then the fallback does, and the answer says so.
 */
export function remainingWait(
  lead: Distribution,
  waited: number,
  fallback: Distribution,
): { distribution: Distribution; longerThanAnyPast: boolean } {
  requireDays(waited, 'days waited');
  const longerThanAnyPast = shareUpTo(lead, waited) >= 1 - 1e-12;
  return { distribution: { kind: 'remaining', of: longerThanAnyPast ? fallback : lead, waited }, longerThanAnyPast };
}

/** Days below which the shares 0.5 and 0.8 of waits lie, and 0.1 and 0.9 for a band. */
export function waitQuantiles(distribution: Distribution): { p10: number; p50: number; p80: number; p90: number } {
  const [p10, p50, p80, p90] = [0.1, 0.5, 0.8, 0.9].map((share) => quantile(distribution, share));
  return { p10: p10 ?? 0, p50: p50 ?? 0, p80: p80 ?? 0, p90: p90 ?? 0 };
}

function requireDays(days: number, field: string): number {
  if (!(Number.isFinite(days) && days >= 0)) {
    throw new Refusal('bad-input', `The ${field} ${days} is below zero or not a number. Nothing was changed.`, {
      field,
      accepted: 'days from 0 up',
    });
  }
  return days;
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
