import { expect, test } from 'vitest';
import { type Distribution, quantile, seenValues } from '../../../core/forecast/distribution.ts';
import {
  leadBelief,
  leadOfBelief,
  leadOutlook,
  leadPriors,
  remainingWait,
  waitingCurve,
  waitQuantiles,
} from '../../../core/purchasing/lead-time.ts';
import { arrivalOutlook } from '../../../core/purchasing/lead-time-promise.ts';

const arrived = (...days: number[]) => days.map((day) => ({ days: day, arrived: true }));
const open = (...days: number[]) => days.map((day) => ({ days: day, arrived: false }));
const rounded = (value: number, digits = 4) => Number(value.toFixed(digits));

test('D58: product-limit curve with still-open orders', () => {
  // Source: Kaplan & Meier 1958; data and values 0.750, 0.625, 0.500, 0.333, 0 as in Bewick et al. 2004 (Critical Care
  // 8:389), table 2.
  const curve = waitingCurve([...arrived(1, 1, 4, 5, 9, 22), ...open(6, 9)]);
  expect(curve.map((step) => ({ ...step, stillWaiting: rounded(step.stillWaiting) }))).toEqual([
    { days: 1, atRisk: 8, arrived: 2, stillWaiting: 0.75 },
    { days: 4, atRisk: 6, arrived: 1, stillWaiting: 0.625 },
    { days: 5, atRisk: 5, arrived: 1, stillWaiting: 0.5 },
    { days: 9, atRisk: 3, arrived: 1, stillWaiting: 0.3333 },
    { days: 22, atRisk: 1, arrived: 1, stillWaiting: 0 },
  ]);
});

test('D59: remaining wait from past orders, 10 days waited', () => {
  // Source: derived by hand, recomputed independently. Remaining waits 2, 10 and 25.
  const past = seenValues([5, 7, 7, 9, 12, 20, 35]);
  const { distribution, longerThanAnyPast } = remainingWait(past, 10, past);
  expect(longerThanAnyPast).toBe(false);
  expect([0.01, 1 / 3, 0.5, 0.8, 0.99].map((p) => quantile(distribution, p))).toEqual([2, 2, 10, 25, 25]);
});

test('D60: lognormal: the remaining wait first falls, then grows', () => {
  // Source: closed form of the conditional quantile; computed with a statistics library.
  const lead: Distribution = { kind: 'lognormal', median: 10, deviation: 0.5 };
  const at = (share: number) =>
    [0, 7, 14, 28].map((waited) => rounded(quantile(remainingWait(lead, waited, lead).distribution, share), 4));
  expect(at(0.5)).toEqual([10.0, 4.6335, 3.7638, 4.0806]);
  expect(at(0.8)).toEqual([15.232, 9.7033, 8.7493, 9.7454]);
});

test('D61: memoryless check', () => {
  // Source: closed form: the exponential's median, 10 ln 2 = 6.9315, whatever was waited. No vendor is modelled so; here it
  // is laid out as a fine table of values seen.
  const steps = Array.from({ length: 200_000 }, (_, index) => -10 * Math.log1p(-(index + 0.5) / 200_000));
  const lead = seenValues(steps);
  for (const waited of [0, 5, 30]) {
    expect(quantile(remainingWait(lead, waited, lead).distribution, 0.5)).toBeCloseTo(6.9315, 2);
  }
});

test('D62: few past orders: prior and data together', () => {
  // Source: normal-inverse-chi-squared conjugate update on log days (Gelman et al., Bayesian Data Analysis); numbers
  // computed with a statistics library.
  const prior = { medianDays: 10, weight: 2, deviation: 0.6, degrees: 4 };
  const wanted = [
    { past: [], mu: Math.LN10, variance: 0.36, degrees: 4, scale: 0.7348, p50: 10.0, p80: 19.9664 },
    { past: [18], mu: 2.4985, variance: 0.3341, degrees: 5, scale: 0.6674, p50: 12.1644, p80: 22.4708 },
    { past: [18, 25, 21], mu: 2.7518, variance: 0.3095, degrees: 7, scale: 0.6094, p50: 15.6706, p80: 27.0549 },
    {
      past: [18, 25, 21, 16, 30, 22, 19, 24],
      mu: 2.9146,
      variance: 0.2215,
      degrees: 12,
      scale: 0.4936,
      p50: 18.4419,
      p80: 28.3696,
    },
  ];
  for (const row of wanted) {
    const belief = leadBelief(prior, row.past);
    expect(belief.arrivals).toBe(row.past.length);
    expect(belief.degrees).toBe(row.degrees);
    expect(belief.centre).toBeCloseTo(row.mu, 4);
    expect(belief.variance).toBeCloseTo(row.variance, 4);
    expect(belief.scale).toBeCloseTo(row.scale, 4);
    const next = waitQuantiles(leadOfBelief(belief));
    expect(next.p50).toBeCloseTo(row.p50, 3);
    expect(next.p80).toBeCloseTo(row.p80, 3);
  }
});

test('uses a vendor’s own curve from eight arrivals, and says what it stands on', () => {
  const vendor = arrived(3, 4, 4, 5, 6, 8, 9, 12);
  const seven = leadOutlook({ vendor: vendor.slice(1), pooled: [], prior: leadPriors['in-stock'] });
  expect(seven.basis).toBe('few-orders');
  expect(seven.says).toBe('Only 7 arrivals of this vendor, so mostly from an expected 6 days.');
  const eight = leadOutlook({ vendor, pooled: [], prior: leadPriors['in-stock'] });
  expect(eight).toMatchObject({ basis: 'own-record', arrivals: 8, open: 0, tailFitted: false });
  // Half of eight arrivals had come by day 5.
  expect(waitQuantiles(eight.distribution).p50).toBe(5);
  expect(waitQuantiles(eight.distribution).p90).toBe(12);
});

test('a longest line that is still open leaves a fitted tail, longer than any arrival', () => {
  const vendor = [...arrived(3, 4, 4, 5, 6, 8, 9, 12), ...open(30, 40)];
  const outlook = leadOutlook({ vendor, pooled: [], prior: leadPriors['in-stock'] });
  expect(outlook.tailFitted).toBe(true);
  expect(outlook.says).toBe('From 8 arrivals of this vendor and 2 lines not arrived.');
  expect(waitQuantiles(outlook.distribution).p90).toBeGreaterThan(12);
});

test('other vendors’ arrivals move the expectation for a vendor without a record', () => {
  const alone = leadOutlook({ vendor: [], pooled: [], prior: leadPriors['in-stock'] });
  const slower = leadOutlook({ vendor: [], pooled: arrived(20, 25, 30), prior: leadPriors['in-stock'] });
  expect(waitQuantiles(alone.distribution).p50).toBeCloseTo(6, 6);
  expect(waitQuantiles(slower.distribution).p50).toBeGreaterThan(10);
  expect(slower.says).toBe(
    'This vendor has no arrivals yet, so mostly from an expected 6 days and 3 arrivals of all vendors.',
  );
});

const fewLeads = { vendor: [], pooled: [], prior: leadPriors['in-stock'] };

test('a promise is trusted as far as the vendor kept its promises', () => {
  const line = { orderedOn: '2026-03-01', noticeOn: null, promisedOn: '2026-03-20' };
  const slips = { vendor: [0, 0, 3, 5, 10], pooled: [] };
  const ahead = arrivalOutlook(line, fewLeads, slips, '2026-03-10');
  // By hand: promised in 10 days; slips 0, 0, 3, 5, 10, so the middle one is 13 days from today.
  expect(waitQuantiles(ahead.fromToday)).toMatchObject({ p10: 10, p50: 13, p90: 20 });
  expect(ahead.says).toBe('Promised for 20 Mar 2026; this vendor kept 2 of 5 promises.');
  // By hand: four days past the date, only the slips 5 and 10 are still possible: 1 or 6 more days.
  const late = arrivalOutlook(line, fewLeads, slips, '2026-03-24');
  expect(waitQuantiles(late.fromToday)).toMatchObject({ p10: 1, p50: 1, p80: 6 });
});

test('too few slips of its own: all vendors’ slips speak', () => {
  const line = { orderedOn: '2026-03-01', noticeOn: null, promisedOn: '2026-03-20' };
  const outlook = arrivalOutlook(line, fewLeads, { vendor: [0, 0], pooled: [0, 0, 14] }, '2026-03-10');
  expect(outlook.says).toBe('Promised for 20 Mar 2026; all vendors together kept 2 of 3 promises.');
  expect(waitQuantiles(outlook.fromToday).p90).toBe(24);
});

test('a promise further past than any slip leaves the wait that remains, never before today', () => {
  const line = { orderedOn: '2026-01-01', noticeOn: '2026-01-11', promisedOn: '2026-01-20' };
  const outlook = arrivalOutlook(line, fewLeads, { vendor: [0, 1, 2, 3, 4], pooled: [] }, '2026-03-01');
  expect(outlook.basis).toBe('no-orders');
  expect(outlook.says).toContain('It has waited 49 days. The promised 20 Jan 2026 can no longer be relied on.');
  expect(waitQuantiles(outlook.fromToday).p10).toBeGreaterThanOrEqual(0);
});

test('a line open longer than any arrival says so and takes the fitted tail', () => {
  const lead = { vendor: arrived(3, 4, 4, 5, 6, 8, 9, 12), pooled: [], prior: leadPriors['in-stock'] };
  const line = { orderedOn: '2026-01-01', noticeOn: null, promisedOn: null };
  const outlook = arrivalOutlook(line, lead, { vendor: [], pooled: [] }, '2026-02-01');
  expect(outlook.longerThanAnyPast).toBe(true);
  expect(outlook.says).toContain('longer than any past order');
  expect(waitQuantiles(outlook.fromToday).p50).toBeGreaterThan(0);
});

test('refuses days below zero and a prior of zero', () => {
  expect(() => waitingCurve(arrived(-1))).toThrow(/lead days -1 .* Nothing was changed/);
  expect(() => leadBelief({ medianDays: 0, weight: 2, deviation: 0.6, degrees: 4 }, [])).toThrow(/medianDays/);
});
