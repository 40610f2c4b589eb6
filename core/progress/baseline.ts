/** What is planned by when, as it was kept on a day. Jobs and parts get their planned days from phases and promises. */
import { addDays, daysBetween } from '../dates/calendar-date.ts';

export interface PlannedJob {
  readonly id: number;
  readonly title: string;
  readonly phase: number | null;
  /** Null when nobody has guessed; then it has no weight. */
  readonly minutes: number | null;
  readonly doneOn: string | null;
}

export interface PlannedPart {
  readonly id: number;
  readonly title: string;
  readonly phase: number | null;
  readonly job: number | null;
  readonly budgetMinor: number;
  readonly neededBy: string | null;
  readonly promisedOn: string | null;
  /** Accepted in full already. */
  readonly accepted: boolean;
}

export interface PlannedPhase {
  readonly id: number;
  readonly start: string | null;
  readonly end: string | null;
}

export interface BaselinePlan {
  readonly on: string;
  /** Day by which the whole should be done; null when nobody has said. */
  readonly targetOn: string | null;
  /** In the order of the work. */
  readonly phases: readonly PlannedPhase[];
  readonly jobs: readonly PlannedJob[];
  readonly parts: readonly PlannedPart[];
}

export interface BaselineRow {
  readonly kind: 'job' | 'part';
  readonly id: number;
  readonly title: string;
  readonly budgetMinor: number;
  readonly minutes: number;
  readonly startOn: string;
  readonly endOn: string;
}

interface Span {
  readonly start: string;
  readonly end: string;
}

/** A day of a span by the share of it that has gone. */
const dayAt = ({ start, end }: Span, share: number): string =>
  addDays(start, Math.round(daysBetween(start, end) * share));

const later = (one: string, other: string): string => (one < other ? other : one);

/**
 * Rows of a baseline. Jobs of a phase follow each other over its planned days, each as long as its share of the phase's
 * hours; a phase without days, and jobs without a phase, run from the day of the baseline to the target. A part is
 * planned for the day it is needed by, else promised for, else the start of its job, else of its phase. What is done
 * already is planned for the day it was done. Null when there is no day to plan to.
 */
export function baselineRows(plan: BaselinePlan): readonly BaselineRow[] | null {
  const ends = [plan.targetOn, ...plan.phases.map(({ end }) => end)].filter((day) => day !== null);
  const target = plan.targetOn ?? ends.sort().at(-1);
  if (target === undefined) return null;
  const whole: Span = { start: plan.on, end: later(plan.on, target) };
  const spans = new Map<number | null, Span>([[null, whole]]);
  for (const { id, start, end } of plan.phases) {
    const from = start ?? whole.start;
    spans.set(id, { start: from, end: later(from, end ?? whole.end) });
  }
  const spanOf = (phase: number | null): Span => spans.get(phase) ?? whole;
  const jobSpans = new Map<number, Span>();
  for (const [phase, jobs] of Map.groupBy(plan.jobs, ({ phase }) => (spans.has(phase) ? phase : null))) {
    const span = spanOf(phase);
    const total = jobs.reduce((sum, { minutes }) => sum + Math.max(1, minutes ?? 0), 0);
    let before = 0;
    for (const { id, minutes, doneOn } of jobs) {
      const start = dayAt(span, before / total);
      before += Math.max(1, minutes ?? 0);
      const end = dayAt(span, before / total);
      jobSpans.set(
        id,
        doneOn === null ? { start: later(start, plan.on), end: later(end, plan.on) } : { start: doneOn, end: doneOn },
      );
    }
  }
  return [
    ...plan.jobs.map(({ id, title, minutes }): BaselineRow => {
      const { start, end } = jobSpans.get(id) ?? whole;
      return { kind: 'job', id, title, budgetMinor: 0, minutes: minutes ?? 0, startOn: start, endOn: end };
    }),
    ...plan.parts.map((part): BaselineRow => {
      const own = part.neededBy ?? part.promisedOn;
      const job = part.job === null ? undefined : jobSpans.get(part.job);
      const day = part.accepted ? plan.on : later(own ?? job?.start ?? spanOf(part.phase).start, plan.on);
      const { id, title, budgetMinor } = part;
      return { kind: 'part', id, title, budgetMinor, minutes: 0, startOn: day, endOn: day };
    }),
  ];
}

/** Jobs that run this long earn half at their start; shorter ones all at their end. Common practice: about two weeks. */
const halfAtStartFromDays = 14;

/** Whether a planned job earns half at its start. */
export const earnsHalfAtStart = ({ startOn, endOn }: Pick<BaselineRow, 'startOn' | 'endOn'>): boolean =>
  daysBetween(startOn, endOn) >= halfAtStartFromDays;

/** Planned share of a row by the end of a day. */
export function plannedShare(row: BaselineRow, day: string): number {
  if (row.endOn <= day) return 1;
  return row.kind === 'job' && earnsHalfAtStart(row) && row.startOn <= day ? 0.5 : 0;
}
