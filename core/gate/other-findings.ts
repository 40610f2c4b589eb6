/** What blocks about jobs, tools, decisions and groups of bolts. */
import { dateOfMinute, parseInstant } from '../dates/instant.ts';
import { showMinutes } from '../schedule/working-time.ts';
import { blockerKey, type Finding } from './blocker.ts';
import type { BoltGroupFact, DecisionFact, GateOptions, JobFact, ToolFact } from './facts.ts';
import { dayAhead, readyNow } from './part-findings.ts';

/** Days until a decision nobody has dated is taken to be made. Common practice, no published source. */
const undatedDecisionDays = 7;

/** Open jobs that must be done before the gate: those marked so, and every open job before one of them. */
export function openGateJobs(jobs: readonly JobFact[]): JobFact[] {
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const found = new Set<JobFact>();
  const add = (job: JobFact | undefined): void => {
    if (job === undefined || job.done || found.has(job)) return;
    found.add(job);
    for (const id of job.earlier) add(byId.get(id));
  };
  for (const job of jobs) if (job.beforeGate) add(job);
  return [...found];
}

/** The key of an open job's finding. */
export function jobKey(id: number): string {
  return blockerKey('job open', { kind: 'job', id });
}

/** An open job. It waits for earlier jobs, parts not in hand, missing tools and open decisions, as far as they block. */
export function jobFinding(job: JobFact, options: GateOptions): Finding {
  const after = [
    ...job.earlier.map(jobKey),
    ...job.parts.map((id) => blockerKey('part not in hand', { kind: 'part', id })),
    ...job.parts.map((id) => blockerKey('wrong part not settled', { kind: 'part', id })),
    ...job.tools.map((id) => blockerKey('tool missing', { kind: 'tool', id })),
    ...(job.decisions ?? []).map((id) => blockerKey('decision open', { kind: 'decision', id })),
  ];
  const { minutesGuess: guess, fromMinute: from } = job;
  const left = guess === null ? 'Not done, and nobody has guessed its hours.' : `Not done: ${showMinutes(guess)} left.`;
  return {
    kind: 'job open',
    subject: { kind: 'job', id: job.id },
    title: job.title,
    standing: 'not done',
    why: job.because === undefined ? left : `Not done: ${job.because}.`,
    clears:
      job.because === undefined ? 'Do the job and record it as done.' : 'Put it right, check it again and record it.',
    ...readyNow(options),
    ...(from === undefined || from <= parseInstant(options.now)
      ? {}
      : { readyOn: dateOfMinute(from), fromMinute: from }),
    costMinor: 0,
    ...counted(guess, options.assume.job),
    after,
    clearedBy: [],
    hands: job.hands !== false,
    oneSitting: job.oneSitting === true,
    lags: (job.lags ?? []).map(({ job: id, minutes, on }) => ({ after: jobKey(id), minutes, on })),
  };
}

/** A tool that an open job before the gate needs and that is elsewhere. */
export function toolFinding(tool: ToolFact, neededBy: readonly JobFact[], options: GateOptions): Finding | null {
  const first = neededBy[0];
  if (tool.atHand || first === undefined) return null;
  const more = neededBy.length === 1 ? '' : ` and ${neededBy.length - 1} more`;
  return {
    kind: 'tool missing',
    subject: { kind: 'tool', id: tool.id },
    title: tool.name,
    standing: 'not at hand',
    why: `Not at hand, and “${first.title}”${more} needs it.`,
    clears: 'Borrow, hire or buy it, and mark it as at hand.',
    ...dayAhead(tool.dueOn, 'the day it was due has passed', 'nobody has said when it comes', options),
    costMinor: tool.hireMinor ?? null,
    minutes: 0,
    assumed: false,
    after: [],
    clearedBy: [],
  };
}

/** A decision still open. Without a needed-by day it counts as made a week from now, and says so. */
export function decisionFinding(
  decision: DecisionFact,
  addDays: (days: number) => string,
  options: GateOptions,
): Finding | null {
  if (!decision.open) return null;
  const noDay = decision.neededBy == null;
  const why = noDay
    ? `Still open, and nobody has said by when; ${undatedDecisionDays} days are assumed.`
    : 'Still open.';
  return {
    kind: 'decision open',
    subject: { kind: 'decision', id: decision.id },
    title: decision.title,
    standing: 'still open',
    why,
    clears: 'Choose an option and record who chose it.',
    ...dayAhead(decision.neededBy ?? addDays(undatedDecisionDays), 'the day it was needed by has passed', '', options),
    costMinor: decision.costSpreadMinor ?? null,
    minutes: 0,
    assumed: noDay,
    after: [],
    clearedBy: [],
  };
}

/** A group of bolts not all at final torque, or tightened by a method nobody recorded. */
export function boltFinding(group: BoltGroupFact, options: GateOptions): Finding | null {
  const left = group.count - group.finalCount;
  if (left <= 0 && group.methodKnown) return null;
  const missing = left > 0 ? `${left} of ${group.count} not at final torque` : '';
  const method = group.methodKnown ? '' : 'the method and its value are not recorded';
  const reasons = [missing, method].filter((reason) => reason !== '').join(', and ');
  const perBolt = options.assume.perBolt;
  return {
    kind: 'bolts not final',
    subject: { kind: 'bolt-group', id: group.id },
    title: group.name,
    standing: missing === '' ? 'method not recorded' : missing,
    why: `${reasons.charAt(0).toUpperCase()}${reasons.slice(1)}.`,
    clears: "Tighten in sequence by the maker's method, and record who and when.",
    ...readyNow(options),
    costMinor: 0,
    ...(left > 0 ? counted(group.minutes ?? null, perBolt === null ? null : perBolt * left) : counted(0, null)),
    after: [],
    clearedBy: [],
  };
}

function counted(guess: number | null, assumed: number | null): Pick<Finding, 'minutes' | 'assumed'> {
  return { minutes: guess ?? assumed, assumed: guess === null && assumed !== null };
}
