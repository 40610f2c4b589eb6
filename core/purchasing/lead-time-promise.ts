/**
 * When an open line will arrive. A promised date is trusted as far as the vendor has kept its promises: the past slips
 * (arrived minus promised) are added to it. A date that has passed, or no date at all, leaves the wait that remains given
 * the days already waited. No forecast lies before today.
 */
import { daysBetween } from '../dates/calendar-date.ts';
import { dayWords } from '../dates/day-words.ts';
import { type Distribution, seenValues, shareUpTo } from '../forecast/distribution.ts';
import {
  type LeadBasis,
  type LeadRecord,
  leadBelief,
  leadOfBelief,
  leadOutlook,
  remainingWait,
  slipsForRecord,
} from './lead-time.ts';

export interface OpenLine {
  readonly orderedOn: string;
  /** Day of a back-order notice; the wait counts from it. Null when there was none. */
  readonly noticeOn: string | null;
  /** The latest date promised; null when the vendor gave none. */
  readonly promisedOn: string | null;
}

export interface SlipRecord {
  /** Days from the first promise to the arrival, per arrived line; negative is early. */
  readonly vendor: readonly number[];
  readonly pooled: readonly number[];
}

export interface ArrivalOutlook {
  readonly basis: LeadBasis;
  /** Days from today to accepted receipt; never below zero. */
  readonly fromToday: Distribution;
  /** Lines or slips the answer stands on. */
  readonly count: number;
  /** Longer open than any line of the record: a warning sign, and a fitted tail. */
  readonly longerThanAnyPast: boolean;
  readonly says: string;
}

/**
 * The arrival of a line that is open today.
 * @throws Refusal `bad-input` when a date can't be read.
 */
export function arrivalOutlook(line: OpenLine, lead: LeadRecord, slips: SlipRecord, today: string): ArrivalOutlook {
  const byPromise = line.promisedOn === null ? null : fromPromise(line.promisedOn, slips, today);
  if (byPromise !== null) return byPromise;
  const outlook = leadOutlook(lead);
  const since = line.noticeOn ?? line.orderedOn;
  const waited = Math.max(0, daysBetween(since, today));
  const arrivedDays = lead.vendor.filter((past) => past.arrived).map((past) => past.days);
  const fitted = leadOfBelief(leadBelief(lead.prior, arrivedDays));
  const { distribution, longerThanAnyPast } = remainingWait(outlook.distribution, waited, fitted);
  const passed =
    line.promisedOn === null ? '' : ` The promised ${dayWords(line.promisedOn)} can no longer be relied on.`;
  return {
    basis: outlook.basis,
    fromToday: distribution,
    count: outlook.arrivals,
    longerThanAnyPast,
    says: `${outlook.says} It has waited ${waited} ${waited === 1 ? 'day' : 'days'}${
      longerThanAnyPast ? ', longer than any past order' : ''
    }.${passed}`,
  };
}

/** Null when nothing is known of slips, or the date is further past than any slip ever was. */
function fromPromise(promisedOn: string, slips: SlipRecord, today: string): ArrivalOutlook | null {
  const own = slips.vendor.length >= slipsForRecord;
  const used = own ? slips.vendor : slips.pooled;
  if (used.length === 0) {
    const ahead = daysBetween(today, promisedOn);
    if (ahead < 0) return null;
    return {
      basis: 'promise',
      fromToday: { kind: 'constant', value: ahead },
      count: 0,
      longerThanAnyPast: false,
      says: `Promised for ${dayWords(promisedOn)}; no promise of any vendor has come due yet, so it is taken as given.`,
    };
  }
  const past = daysBetween(promisedOn, today);
  const slip = seenValues(used);
  if (shareUpTo(slip, past) >= 1 - 1e-12) return null;
  const kept = used.filter((days) => days <= 0).length;
  return {
    basis: 'promise',
    fromToday: { kind: 'remaining', of: slip, waited: past },
    count: used.length,
    longerThanAnyPast: false,
    says: `Promised for ${dayWords(promisedOn)}; ${own ? 'this vendor' : 'all vendors together'} kept ${kept} of ${used.length} promises.`,
  };
}
