import { z } from 'zod';
import { actBase, actResult, day, id, line, milli, minor, ofBuild, optionalLine, procedure } from './common.ts';
import { lag } from './records.ts';

export const share = z.object({
  /** 0 to 1, or null when there is nothing to divide by. */
  share: z.number().nullable(),
  /** As shown: "64 %", "<1 %", "no parts yet". */
  text: z.string(),
  done: z.number(),
  of: z.number(),
});

export const progressMeasures = z.object({
  received: z.object({ byLine: share, byQuantity: share, byValue: share }),
  fitted: z.object({ byLine: share, byQuantity: share, byValue: share }),
  verified: z.object({ byLine: share, byQuantity: share, byValue: share }),
  jobs: z.object({ byCount: share, byWeight: share }),
  spend: share,
});
export type ProgressMeasures = z.infer<typeof progressMeasures>;

export const planJob = z.object({
  id,
  title: z.string(),
  phase: id.nullable(),
  system: id.nullable(),
  sort: z.int(),
  done: z.boolean(),
  doneOn: day.nullable(),
  signedBy: z.string(),
  needsSignOff: z.boolean(),
  beforeGate: z.boolean(),
  minutesGuess: z.int().nullable(),
  minutesLow: z.int().nullable(),
  minutesHigh: z.int().nullable(),
  minutesSpent: z.int(),
  needs: z.array(
    z.object({ part: id, description: z.string(), standing: z.string(), missingMilli: milli, unit: z.string() }),
  ),
  tools: z.array(z.object({ id, name: z.string(), atHand: z.boolean() })),
  earlier: z.array(z.object({ id, title: z.string(), done: z.boolean() })),
  lags: z.array(lag),
  notBefore: day.nullable(),
  oneSitting: z.boolean(),
  hands: z.boolean(),
  /** Who does it; null = anyone. */
  person: id.nullable(),
  place: z.string(),
  consumables: z.string(),
  /** What it waits for, in words; empty = can be done tonight. */
  waitsFor: z.array(z.string()),
  note: z.string(),
  revision: z.int(),
});
export type PlanJob = z.infer<typeof planJob>;

export const planPhase = z.object({
  id: id.nullable(),
  name: z.string(),
  gate: z.string(),
  plannedStart: day.nullable(),
  plannedEnd: day.nullable(),
  jobsDone: z.int(),
  jobsTotal: z.int(),
  minutesLeft: z.int(),
  jobsWithoutGuess: z.int(),
  costMinor: minor,
  forecastMinor: minor,
  jobs: z.array(planJob),
});

export const planView = z.object({ answer: z.string(), phases: z.array(planPhase), measures: progressMeasures });
export type PlanView = z.infer<typeof planView>;

export const progressPoint = z.object({
  on: day,
  jobsByCount: z.number().nullable(),
  jobsByWeight: z.number().nullable(),
  receivedByLine: z.number().nullable(),
  receivedByValue: z.number().nullable(),
  fittedByLine: z.number().nullable(),
});

/** What a bar says by its look and in words. */
export const barStates = [
  'done',
  'in hand',
  'waiting for parts',
  'waiting for a tool',
  'waiting for another job',
  'free',
] as const;
export type BarState = (typeof barStates)[number];

/** A job over the calendar. Days are null where none can be said (nobody has hours). */
export const planBar = z.object({
  id,
  title: z.string(),
  phase: id.nullable(),
  state: z.enum(barStates),
  /** Levelled for an open job, as it was for one that is done. Times are of wall clock; null when only the day is known. */
  startOn: day.nullable(),
  startAt: z.string().nullable(),
  finishOn: day.nullable(),
  finishAt: z.string().nullable(),
  /** If hands and tools were never short; null for a job that is done. */
  earlyStartOn: day.nullable(),
  earlyFinishOn: day.nullable(),
  lateStartOn: day.nullable(),
  lateFinishOn: day.nullable(),
  /** Minutes of work (without hands: on the clock) that it can move without moving the gate, and the days that makes. */
  floatMinutes: z.int().nullable(),
  floatDays: z.int().nullable(),
  /** Minutes that it can move with all sequences of the levelled plan kept. */
  slackMinutes: z.int().nullable(),
  critical: z.boolean(),
  beforeGate: z.boolean(),
  /** Who does it by this plan; empty for nobody's hands. */
  who: z.string(),
  /** Who is named for it; null = anyone. */
  person: id.nullable(),
  hands: z.boolean(),
  oneSitting: z.boolean(),
  /** Left of the guess; null without one. */
  minutesLeft: z.int().nullable(),
  minutesGuess: z.int().nullable(),
  minutesLow: z.int().nullable(),
  minutesHigh: z.int().nullable(),
  notBefore: day.nullable(),
  after: z.array(z.object({ job: id, minutes: z.int(), on: z.enum(['clock', 'work']) })),
  /** What it lacks now, in words. */
  waitsFor: z.array(z.string()),
  /** What sets its beginning, in words; empty when nothing does. */
  heldBy: z.string(),
  revision: z.int(),
});
export type PlanBar = z.infer<typeof planBar>;

export const barsView = z.object({
  answer: z.string(),
  /** How the plan was levelled, in words. */
  rule: z.string(),
  assumes: z.array(z.string()),
  today: day,
  gate: z.object({
    name: z.string(),
    on: day.nullable(),
    /** If hands and tools were never short: no plan is sooner. */
    networkOn: day.nullable(),
  }),
  /** What the gate's day hangs on, first thing first; each line a job or what its beginning waits for. */
  chain: z.array(z.object({ job: id.nullable(), says: z.string() })),
  people: z.array(z.string()),
  /** People and tools that the plan would use twice at once: none. */
  overAllocated: z.array(z.string()),
  phases: z.array(z.object({ id: id.nullable(), name: z.string() })),
  bars: z.array(planBar),
});
export type BarsView = z.infer<typeof barsView>;

export const planContract = {
  bars: procedure.input(ofBuild).output(barsView),
  view: procedure.input(ofBuild).output(planView),
  progress: procedure.input(ofBuild).output(z.array(progressPoint)),
  finishJob: procedure
    .input(
      actBase.extend({
        jobs: z.array(id).min(1).max(500),
        by: optionalLine(80),
        minutesSpent: z.int().min(0).max(600_000).nullable(),
        note: optionalLine(2000),
      }),
    )
    .output(actResult),
  reopenJob: procedure.input(actBase.extend({ job: id, reason: line(400) })).output(actResult),
  addHours: procedure
    .input(actBase.extend({ job: id, minutes: z.int().min(1).max(600_000), note: optionalLine(400) }))
    .output(actResult),
};

/** The start page of a build. */
export const startView = z.object({
  answer: z.string(),
  holds: z.array(
    z.object({ title: z.string(), why: z.string(), clears: z.string(), clearOn: day.nullable(), part: id.nullable() }),
  ),
  came: z.array(z.object({ on: day, text: z.string(), part: id.nullable(), order: id.nullable() })),
  due: z.array(z.object({ on: day.nullable(), text: z.string(), part: id.nullable(), order: id.nullable() })),
  chase: z.array(z.object({ order: id, text: z.string(), ageDays: z.int() })),
  measures: progressMeasures,
});
export type StartView = z.infer<typeof startView>;
