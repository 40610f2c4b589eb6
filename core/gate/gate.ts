/**
 * The hoist check: everything that still stands before the engine goes in, derived from facts and never typed. Items
 * without an estimate have no date, and then the gate has none either, only the earliest it could be.
 */
import { addDays, compareDates } from '../dates/calendar-date.ts';
import { type Blocker, type BlockerKind, blockerKey, blockerKinds, type Finding } from './blocker.ts';
import { checkFinding, sheetFinding } from './check-findings.ts';
import { byHold, dateFindings, undatedBlocker } from './date-findings.ts';
import type { GateFacts, GateOptions, WaiverFact } from './facts.ts';
import { fitFinding, lineFindings } from './fit-findings.ts';
import { boltFinding, decisionFinding, jobFinding, jobKey, openGateJobs, toolFinding } from './other-findings.ts';
import { partFindings } from './part-findings.ts';
import { heldWaivers } from './waivers.ts';

/** Stands beside every hoist check. */
export const gateCaution =
  'The vehicle and part makers’ manuals govern, and local rules apply. Have lifting, brake, fuel and road-legal work ' +
  'done or checked by someone licensed where the law asks for it.';

export interface WaivedBlocker extends Blocker {
  readonly waiver: WaiverFact;
}

export interface GateReview {
  readonly gateName: string;
  /** Parts, jobs, tools, decisions, bolt groups, checks, measuring sheets, fits and lines that the check looked at; 0 = nothing is written down yet. */
  readonly listed: number;
  readonly asOf: string;
  /** The day at best; null when an item has no date. Today when nothing blocks. */
  readonly gateOn: string | null;
  /** The earliest it can be by what is known. */
  readonly atLeastOn: string;
  /** A sentence; empty when there is a date. */
  readonly noDate: string;
  /** Without a date first (and of these what lacks it by itself), then by days gained, the latest cleared, the dearest, and by name. */
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
  const { parts, jobs, tools, decisions, boltGroups, checks = [], sheets = [], fits = [], lines = [] } = facts;
  const listed = [parts, jobs, tools, decisions, boltGroups, checks, sheets, fits, lines].reduce(
    (sum, list) => sum + list.length,
    0,
  );
  return {
    gateName: facts.gateName,
    listed,
    asOf: today,
    gateOn: undated.length === 0 && listed > 0 ? atLeastOn : null,
    atLeastOn,
    noDate: listed === 0 ? 'Nothing is written down yet.' : noDateSentence(undated, options.words.day(atLeastOn)),
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
    ...(facts.checks ?? []).map((check) => checkFinding(check, options)),
    ...(facts.sheets ?? []).map((sheet) => sheetFinding(sheet, options)),
    ...(facts.fits ?? []).map((fit) => fitFinding(fit, options)),
    ...(facts.lines ?? []).flatMap((line) => lineFindings(line, options)),
    ...jobs.map((job) => jobFinding(job, options)),
    ...facts.tools.map((tool) => toolFinding(tool, jobsByTool.get(tool.id) ?? [], options)),
    ...facts.decisions.map((decision) => decisionFinding(decision, inDays, options)),
  ].filter((finding) => finding !== null);
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
