/** Dates what blocks: one builder clears it item by item, and what isn't known leaves an item without a date. */
import { minutesPerDay, parseInstant, startOfDay } from '../dates/instant.ts';
import { hasWorkingTime, longestWindow, readWorkingTime, workingMinutes } from '../schedule/working-time.ts';
import { type Blocker, blockerKey, type Finding } from './blocker.ts';
import { type ClearItem, clearDay, clearTimes } from './clear-times.ts';
import type { GateOptions } from './facts.ts';

/** Minute of the day from which something that arrives can be worked on. Common practice, no published source. */
const arrivalMinuteOfDay = 12 * 60;

const minutesPerWeek = 7 * minutesPerDay;
/** Work beyond nine years of the builder's weeks is given no date. */
const weeksCounted = 9 * 52;

export interface DatedBlocker {
  readonly blocker: Blocker;
  readonly clearMinute: number;
  /** Whether it lacks a date by itself and not by what it waits for. */
  readonly ownGap: boolean;
  /** The day it is cleared at the earliest by what is known, dated or not. */
  readonly atLeastOn: string;
}

/** Dates every finding; what isn't known counts as nothing here and makes the items that depend on it undated. */
export function dateFindings(findings: readonly Finding[], options: GateOptions): DatedBlocker[] {
  const now = parseInstant(options.now);
  const set = options.workingTime !== null && hasWorkingTime(options.workingTime) ? options.workingTime : null;
  const worked = findings.reduce((sum, finding) => sum + handsMinutes(finding), 0);
  const tooMuch = set !== null && worked > workingMinutes(set, now, now + minutesPerWeek) * weeksCounted;
  const hours = tooMuch ? null : set;
  const longest = hours === null ? 0 : longestWindow(hours, now);
  const items = findings.map((finding): ClearItem => {
    const minutes = hours === null && finding.hands !== false ? 0 : (finding.minutes ?? 0);
    const readyMinute = finding.readyOn === null ? now : startOfDay(finding.readyOn) + arrivalMinuteOfDay;
    return {
      key: blockerKey(finding.kind, finding.subject),
      name: finding.title,
      readyMinute: finding.fromMinute ?? (finding.readyOn === options.now.slice(0, 10) ? now : readyMinute),
      minutes,
      after: finding.after,
      hands: finding.hands !== false,
      // One that is longer than every window is counted over several, as in the plan.
      oneSitting: finding.oneSitting === true && minutes <= longest,
      lags: finding.lags ?? [],
    };
  });
  const times = clearTimes(items, hours ?? readWorkingTime({ weekly: [], exceptions: [] }), now);
  const byKey = new Map(findings.map((finding, index) => [items[index]?.key ?? '', finding]));
  const noHours = tooMuch ? 'there is more work than years of your free hours hold' : 'no working hours are set';
  const reasons = undatedReasons(byKey, hours === null ? noHours : '');

  return findings.map((finding, index) => {
    const key = items[index]?.key ?? '';
    const cleared = [key, ...finding.clearedBy.filter((job) => byKey.has(job))];
    const ends = cleared.map((one) => times.clearMinutes.get(one) ?? now);
    const clearMinute = Math.max(...ends);
    const last = byKey.get(cleared[ends.indexOf(clearMinute)] ?? '');
    const atLeastOn = clearDay(clearMinute, hours !== null && last !== undefined && handsMinutes(last) > 0);
    const noDate = reasons.get(key) ?? '';
    const blocker = {
      ...undatedBlocker(finding, noDate),
      clearOn: noDate === '' ? atLeastOn : null,
      daysGained: times.daysGained.get(key) ?? 0,
    };
    const ownGap = finding.notReady !== '' || finding.minutes === null;
    return { blocker, clearMinute, ownGap, atLeastOn };
  });
}

/** Minutes that it takes of somebody's hands; what isn't guessed counts as nothing. */
const handsMinutes = ({ hands, minutes }: Finding): number => (hands === false ? 0 : (minutes ?? 0));

/** Why items have no date: their own reason, that of an item they wait for, or that of a job that clears them. */
function undatedReasons(byKey: ReadonlyMap<string, Finding>, noHours: string): Map<string, string> {
  const reasons = new Map<string, string>();
  const waitingFor = (key: string): string => `it waits for “${byKey.get(key)?.title}”, which has no date`;
  // Items never wait for each other in a ring: placing them would have refused it.
  const reasonOf = (key: string): string => {
    const known = reasons.get(key);
    const finding = byKey.get(key);
    if (known !== undefined || finding === undefined) return known ?? '';
    let reason = finding.notReady;
    if (reason === '' && finding.minutes === null) reason = 'nobody has guessed how long it takes';
    if (reason === '' && noHours !== '' && handsMinutes(finding) > 0) reason = noHours;
    const undated = finding.after.find((earlier) => reasonOf(earlier) !== '');
    if (reason === '' && undated !== undefined) reason = waitingFor(undated);
    reasons.set(key, reason);
    return reason;
  };
  for (const key of byKey.keys()) reasonOf(key);
  // A job waits for its parts to arrive and they for it to be done, so this comes after all arrivals are settled.
  const clearing = [...byKey].map(([key, finding]) => {
    const job = finding.clearedBy.find((other) => reasonOf(other) !== '');
    return [key, reasonOf(key) === '' && job !== undefined ? waitingFor(job) : reasonOf(key)] as const;
  });
  return new Map(clearing);
}

/** A finding as it stands before it is dated. */
export function undatedBlocker(finding: Finding, noDate: string): Blocker {
  const { kind, subject, title, standing, why, clears, readyOn, costMinor } = finding;
  const reason = noDate === '' ? '' : `No date: ${noDate}.`;
  const minutes = handsMinutes(finding);
  return {
    kind,
    subject,
    title,
    standing,
    why,
    clears,
    readyOn,
    readyLateOn: readyOn === null ? null : (finding.readyLateOn ?? null),
    readySays: readyOn === null ? '' : (finding.readySays ?? ''),
    clearOn: null,
    noDate: reason,
    daysGained: 0,
    costMinor,
    minutes,
  };
}

/**
 * What lacks a date first (and of these what lacks it by itself), then what gains most days, the latest cleared, the
 * dearest, and by name.
 */
export function byHold(a: DatedBlocker, b: DatedBlocker): number {
  const undated = Number(b.blocker.clearOn === null) - Number(a.blocker.clearOn === null);
  const gap = Number(b.ownGap) - Number(a.ownGap);
  const dated = a.blocker.clearOn !== null && b.blocker.clearOn !== null;
  const gain = dated ? b.blocker.daysGained - a.blocker.daysGained : 0;
  const cost = (b.blocker.costMinor ?? 0) - (a.blocker.costMinor ?? 0);
  const name = a.blocker.title < b.blocker.title ? -1 : a.blocker.title > b.blocker.title ? 1 : 0;
  return undated || gap || gain || b.clearMinute - a.clearMinute || cost || name;
}
