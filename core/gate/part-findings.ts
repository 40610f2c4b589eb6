/** What blocks about part lines: at most one finding for the missing units, and one each for trial and borrowed ones. */
import { daysBetween } from '../dates/calendar-date.ts';
import type { Finding } from './blocker.ts';
import type { GateOptions, PartFact } from './facts.ts';

/**
 * Findings of one part line. An optional part blocks only while a trial or borrowed unit of it is on the engine.
 * @param jobs keys of the open jobs before the gate that use the part: their minutes cover its fitting.
 */
export function partFindings(part: PartFact, jobs: readonly string[], options: GateOptions): Finding[] {
  const onEngineMilli = part.fittedMilli + part.snugMilli + part.verifiedMilli;
  const missing = part.optional ? null : missingUnits(part, onEngineMilli, options);
  const drafts = [
    missing,
    part.trialFittedMilli > 0 ? trialPart(part, options) : null,
    part.borrowedOnMilli > 0 ? borrowedPart(part, options) : null,
    missing === null && !part.optional ? unverified(part, onEngineMilli, options) : null,
  ].filter((draft) => draft !== null);

  // What the line still costs and takes is counted once, on its first finding.
  return drafts.map((draft, index) => {
    const verifying = draft.kind === 'part not verified';
    const assumed = verifying ? options.assume.verifying : options.assume.fitting;
    const given = verifying ? null : (part.fittingMinutes ?? null);
    const counted = index === 0 && jobs.length === 0;
    return {
      ...draft,
      subject: { kind: 'part', id: part.id } as const,
      title: part.description,
      costMinor: index > 0 ? 0 : part.estimateKnown ? part.costToComeMinor : null,
      minutes: counted ? (given ?? assumed) : 0,
      assumed: counted && given === null && assumed !== null,
      after: [],
      clearedBy: jobs,
    };
  });
}

type Ready = Pick<Finding, 'readyOn' | 'readyLateOn' | 'readySays' | 'notReady'>;
type Draft = Pick<Finding, 'kind' | 'standing' | 'why' | 'clears'> & Ready;

function missingUnits(part: PartFact, onEngineMilli: number, options: GateOptions): Draft | null {
  const toFit = part.needMilli - onEngineMilli - part.trialFittedMilli;
  if (toFit <= 0) return null;
  const short = toFit - part.inHandMilli;
  const say = (milli: number): string => options.words.quantity(milli, part.unit);
  if (short <= 0) {
    return {
      kind: 'part not fitted',
      standing: 'in hand, not fitted',
      why: `In hand, but ${say(toFit)} of ${say(part.needMilli)} not yet fitted.`,
      clears: 'Fit it and record it as fitted.',
      ...readyNow(options),
    };
  }
  const whole = say(part.needMilli);
  const draft = (standing: string, why: string, clears: string, ready: Ready): Draft => ({
    kind: 'part not in hand',
    standing,
    why,
    clears,
    ...ready,
  });
  const covered = part.onOrderMilli + part.backOrderedMilli + (part.inspectionMilli ?? 0) + part.lentMilli;
  if (covered < short && part.rejectedUnsettledMilli > 0) {
    return {
      kind: 'wrong part not settled',
      standing: 'wrong or faulty, not settled',
      why: `${say(part.rejectedUnsettledMilli)} came wrong or faulty and nothing is on the way in its place.`,
      clears: 'Agree an exchange with the vendor, or take a refund and order the right part.',
      ...expected(part, 'no replacement has been agreed or ordered', options),
    };
  }
  if (covered < short) {
    const left = say(short - covered);
    const ready = expected(part, 'it is not ordered yet', options);
    return draft('not ordered', `${left} of ${whole} not ordered.`, 'Order it, receive it and fit it.', ready);
  }
  if (part.backOrderedMilli > 0) {
    const days = part.backOrderedOn == null ? null : daysBetween(part.backOrderedOn, today(options));
    const standing = days === null ? 'back-ordered' : `back-ordered ${days} ${days === 1 ? 'day' : 'days'}`;
    const why = `${say(part.backOrderedMilli)} of ${whole} ${standing}.`;
    return draft(standing, why, 'The vendor delivers it; then fit it.', arrival(part, options));
  }
  if (part.onOrderMilli > 0) {
    const why = `${say(part.onOrderMilli)} of ${whole} on order, not here yet.`;
    return draft('on order', why, 'Receive it, accept it and fit it.', arrival(part, options));
  }
  if (part.lentMilli > 0) {
    const why = `${say(part.lentMilli)} of ${whole} lent out.`;
    const due = dayAhead(
      part.lentDueOn,
      'the day it was due back has passed',
      'nobody has said when it comes back',
      options,
    );
    return draft('lent out', why, 'Get it back and fit it.', due);
  }
  return draft(
    'arrived, not looked at',
    `${say(part.inspectionMilli ?? 0)} of ${whole} arrived and not yet looked at.`,
    'Look it over, accept it and fit it.',
    readyNow(options),
  );
}

function trialPart(part: PartFact, options: GateOptions): Draft {
  return {
    kind: 'trial part on',
    standing: 'on for trial fit only',
    why: `${options.words.quantity(part.trialFittedMilli, part.unit)} on the engine for trial fit only.`,
    clears: 'Take it off, or fit it for good.',
    ...readyNow(options),
  };
}

function borrowedPart(part: PartFact, options: GateOptions): Draft {
  const own = part.inHandMilli >= part.borrowedOnMilli;
  const coming = part.onOrderMilli + part.backOrderedMilli > 0;
  const nothing = { readyOn: null, notReady: 'no part of our own is in hand or on order' };
  return {
    kind: 'borrowed part on',
    standing: 'borrowed',
    why: `${options.words.quantity(part.borrowedOnMilli, part.unit)} on the engine belongs to somebody else.`,
    clears: 'Fit a part of your own and give the borrowed one back, or agree to keep it.',
    ...(own ? readyNow(options) : coming ? arrival(part, options) : nothing),
  };
}

function unverified(part: PartFact, onEngineMilli: number, options: GateOptions): Draft | null {
  if (!part.needsVerification) return null;
  const left = Math.min(part.needMilli, onEngineMilli) - part.verifiedMilli;
  if (left <= 0) return null;
  const of = options.words.quantity(part.needMilli, part.unit);
  return {
    kind: 'part not verified',
    standing: 'fitted, not verified',
    why: `Fitted, but ${options.words.quantity(left, part.unit)} of ${of} not verified.`,
    clears: 'Do the final torque, measurement or check that it asks for, and record it as verified.',
    ...readyNow(options),
  };
}

/** The forecast arrival, else the vendor's promise; a day that has passed is no date any more. */
function arrival(part: PartFact, options: GateOptions): Ready {
  if (part.expectedOn != null) return expected(part, '', options);
  return dayAhead(part.promisedOn, 'the promised day has passed', 'the vendor has given no date', options);
}

/** The forecast day, with what it stands on. */
function expected(part: PartFact, none: string, options: GateOptions): Ready {
  const ready = dayAhead(part.expectedOn, 'the day it was expected has passed', none, options);
  return { ...ready, readyLateOn: part.expectedLateOn ?? null, readySays: part.expectedSays ?? '' };
}

/** A day still ahead (today counts), or the reason why there is none. */
export function dayAhead(date: string | null | undefined, passed: string, none: string, options: GateOptions): Ready {
  if (date == null) return { readyOn: null, notReady: none };
  if (date < today(options)) return { readyOn: null, notReady: `${passed} (${options.words.day(date)})` };
  return { readyOn: date, notReady: '' };
}

export function readyNow(options: GateOptions): Ready {
  return { readyOn: today(options), notReady: '' };
}

function today(options: GateOptions): string {
  return options.now.slice(0, 10);
}
