/**
 * The hoist check: everything that still stands before the engine goes in, derived from facts and never typed. Items
 * without an estimate have no date, and then the gate has none either, only the earliest it could be.
 */
import { addDays, compareDates } from '../dates/calendar-date.ts';
import { parseInstant, startOfDay } from '../dates/instant.ts';
import { hasWorkingTime, readWorkingTime } from '../schedule/working-time.ts';
import { type Blocker, type BlockerKind, blockerKey, blockerKinds, type Finding } from './blocker.ts';
import { type ClearItem, clearDay, clearTimes } from './clear-times.ts';
import type { GateFacts, GateOptions, WaiverFact } from './facts.ts';
import { boltFinding, decisionFinding, jobFinding, jobKey, openGateJobs, toolFinding } from './other-findings.ts';
import { partFindings } from './part-findings.ts';
import { heldWaivers } from './waivers.ts';

/** Minute of the day from which something that arrives can be worked on. Common practice, no published source. */
const arrivalMinuteOfDay = 12 * 60;

/** Stands beside every hoist check. */
export const gateCaution =
  'The vehicle and part makers’ manuals govern, and local rules apply. Have lifting, brake, fuel and road-legal work ' +
  'done or checked by someone licensed where the law asks for it.';

export interface WaivedBlocker extends Blocker {
  readonly waiver: WaiverFact;
}

export interface GateReview {
  readonly gateName: string;
  readonly asOf: string;
  /** The day at best; null when an item has no date. Today when nothing blocks. */
  readonly gateOn: string | null;
  /** The earliest it can be by what is known. */
  readonly atLeastOn: string;
  /** A sentence; empty when there is a date. */
  readonly noDate: string;
  /** Without a date first (and of these what lacks it by itself), then the latest cleared, the dearest, and by name. */
  readonly blockers: readonly Blocker[];
  readonly waived: readonly WaivedBlocker[];
  /** Sum of the costs that are known. */
  readonly costMinor: number;
  /** Items whose cost is not known. */
  readonly costUnknown: number;
  readonly minutes: number;
  readonly counts: readonly { readonly kind: BlockerKind; readonly count: number; readonly costMinor: number }[];
  /** Items whose work or day was assumed because nobody has guessed it. */
  readonly assumed: number;
  readonly caution: string;
}

/** Lists every blocker with its dates, and the day of the gate. Clearing several may be needed before the day moves. */
export function reviewGate(facts: GateFacts, options: GateOptions): GateReview {
  const today = options.now.slice(0, 10);
  const held = heldWaivers(facts.waivers, today, options.noWaiver);
  const all = findAll(facts, options).map((finding) => ({ finding, key: blockerKey(finding.kind, finding.subject) }));
  const open = all.filter(({ key }) => !held.has(key)).map(({ finding }) => finding);
  const dated = dateFindings(open, options);
  const blockers = dated.sort(byHold).map(({ blocker }) => blocker);
  const waived = all.flatMap(({ finding, key }) => {
    const waiver = held.get(key);
    return waiver === undefined ? [] : [{ ...undatedBlocker(finding, 'waived'), noDate: '', waiver }];
  });

  const atLeastOn = [today, ...dated.map((item) => item.atLeastOn)].sort(compareDates).at(-1) ?? today;
  const undated = blockers.filter((blocker) => blocker.clearOn === null);
  return {
    gateName: facts.gateName,
    asOf: today,
    gateOn: undated.length === 0 ? atLeastOn : null,
    atLeastOn,
    noDate: noDateSentence(undated, options.words.day(atLeastOn)),
    blockers,
    waived,
    costMinor: sum(blockers.map((blocker) => blocker.costMinor ?? 0)),
    costUnknown: blockers.filter((blocker) => blocker.costMinor === null).length,
    minutes: sum(blockers.map((blocker) => blocker.minutes)),
    counts: blockerKinds.flatMap((kind) => {
      const ofKind = blockers.filter((blocker) => blocker.kind === kind);
      const costMinor = sum(ofKind.map((blocker) => blocker.costMinor ?? 0));
      return ofKind.length === 0 ? [] : [{ kind, count: ofKind.length, costMinor }];
    }),
    assumed: open.filter((finding) => finding.assumed).length,
    caution: gateCaution,
  };
}

function findAll(facts: GateFacts, options: GateOptions): Finding[] {
  const jobs = openGateJobs(facts.jobs);
  const jobsByPart = new Map<number, string[]>();
  const jobsByTool = new Map<number, (typeof jobs)[number][]>();
  for (const job of jobs) {
    for (const part of job.parts) jobsByPart.set(part, [...(jobsByPart.get(part) ?? []), jobKey(job.id)]);
    for (const tool of job.tools) jobsByTool.set(tool, [...(jobsByTool.get(tool) ?? []), job]);
  }
  const inDays = (days: number): string => addDays(options.now.slice(0, 10), days);
  return [
    ...facts.parts.flatMap((part) => partFindings(part, jobsByPart.get(part.id) ?? [], options)),
    ...facts.boltGroups.map((group) => boltFinding(group, options)),
    ...jobs.map((job) => jobFinding(job, options)),
    ...facts.tools.map((tool) => toolFinding(tool, jobsByTool.get(tool.id) ?? [], options)),
    ...facts.decisions.map((decision) => decisionFinding(decision, inDays, options)),
  ].filter((finding) => finding !== null);
}

interface DatedBlocker {
  readonly blocker: Blocker;
  readonly clearMinute: number;
  /** Whether it lacks a date by itself and not by what it waits for. */
  readonly ownGap: boolean;
  /** The day it is cleared at the earliest by what is known, dated or not. */
  readonly atLeastOn: string;
}

/** Dates every finding; what isn't known counts as nothing here and makes the items that depend on it undated. */
function dateFindings(findings: readonly Finding[], options: GateOptions): DatedBlocker[] {
  const hours = options.workingTime !== null && hasWorkingTime(options.workingTime) ? options.workingTime : null;
  const now = parseInstant(options.now);
  const items = findings.map((finding): ClearItem => {
    const readyMinute = finding.readyOn === null ? now : startOfDay(finding.readyOn) + arrivalMinuteOfDay;
    return {
      key: blockerKey(finding.kind, finding.subject),
      name: finding.title,
      readyMinute: finding.readyOn === options.now.slice(0, 10) ? now : readyMinute,
      minutes: hours === null ? 0 : (finding.minutes ?? 0),
      after: finding.after,
    };
  });
  const times = clearTimes(items, hours ?? readWorkingTime({ weekly: [], exceptions: [] }), now);
  const byKey = new Map(findings.map((finding, index) => [items[index]?.key ?? '', finding]));
  const reasons = undatedReasons(byKey, hours !== null);

  return findings.map((finding, index) => {
    const key = items[index]?.key ?? '';
    const cleared = [key, ...finding.clearedBy.filter((job) => byKey.has(job))];
    const ends = cleared.map((one) => times.clearMinutes.get(one) ?? now);
    const clearMinute = Math.max(...ends);
    const last = byKey.get(cleared[ends.indexOf(clearMinute)] ?? '');
    const atLeastOn = clearDay(clearMinute, hours !== null && (last?.minutes ?? 0) > 0);
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

/** Why items have no date: their own reason, that of an item they wait for, or that of a job that clears them. */
function undatedReasons(byKey: ReadonlyMap<string, Finding>, hoursSet: boolean): Map<string, string> {
  const reasons = new Map<string, string>();
  const waitingFor = (key: string): string => `it waits for “${byKey.get(key)?.title}”, which has no date`;
  // Items never wait for each other in a ring: placing them would have refused it.
  const reasonOf = (key: string): string => {
    const known = reasons.get(key);
    const finding = byKey.get(key);
    if (known !== undefined || finding === undefined) return known ?? '';
    let reason = finding.notReady;
    if (reason === '' && finding.minutes === null) reason = 'nobody has guessed how long it takes';
    if (reason === '' && !hoursSet && (finding.minutes ?? 0) > 0) reason = 'no working hours are set';
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

function undatedBlocker(finding: Finding, noDate: string): Blocker {
  const { kind, subject, title, standing, why, clears, readyOn, costMinor } = finding;
  const reason = noDate === '' ? '' : `No date: ${noDate}.`;
  const minutes = finding.minutes ?? 0;
  return {
    kind,
    subject,
    title,
    standing,
    why,
    clears,
    readyOn,
    clearOn: null,
    noDate: reason,
    daysGained: 0,
    costMinor,
    minutes,
  };
}

function byHold(a: DatedBlocker, b: DatedBlocker): number {
  const undated = Number(b.blocker.clearOn === null) - Number(a.blocker.clearOn === null);
  const gap = Number(b.ownGap) - Number(a.ownGap);
  const cost = (b.blocker.costMinor ?? 0) - (a.blocker.costMinor ?? 0);
  const name = a.blocker.title < b.blocker.title ? -1 : a.blocker.title > b.blocker.title ? 1 : 0;
  return undated || gap || b.clearMinute - a.clearMinute || cost || name;
}

function noDateSentence(undated: readonly Blocker[], atLeast: string): string {
  const first = undated[0];
  if (first === undefined) return '';
  const items = undated.length === 1 ? '1 item has' : `${undated.length} items have`;
  return `No date, at least ${atLeast}: ${items} no date, such as “${first.title}”.`;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((before, number) => before + number, 0);
}
