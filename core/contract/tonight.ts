import { z } from 'zod';
import { actBase, actResult, id, milli, ofBuild, optionalLine, procedure } from './common.ts';
import { planJob } from './plan.ts';

/** What lies in one bin for one job; a null bin is not written down. */
const fetched = z.object({
  bin: id.nullable(),
  binName: z.string(),
  /** Where the bin stands. */
  place: z.string(),
  parts: z.array(z.object({ part: id, description: z.string(), partNumber: z.string(), milli, unit: z.string() })),
});
export type Fetched = z.infer<typeof fetched>;

const tonightJob = z.object({
  job: planJob,
  /** Whole minutes left by the guess; null when nobody has guessed, or the guess is used up. */
  minutesLeft: z.int().nullable(),
  /** Days by which the hoist check's date moves earlier with this job done; null when the job isn't on it. */
  daysGained: z.int().nullable(),
  /** Jobs that wait for it, directly or through others. */
  waiting: z.int(),
  /** How it stands in these hours: finished, begun, no time for it, or nobody has guessed how long it takes. */
  fits: z.enum(['whole', 'begun', 'no', 'not guessed']),
  /** Minutes of these hours that the plan gives it. */
  minutesTonight: z.int(),
  /** A sentence on how it fits. */
  says: z.string(),
  fetch: z.array(fetched),
  /** Bolt groups and measuring sheets of the job or of its parts, to open on the bench. */
  torque: z.array(z.object({ id, name: z.string(), standing: z.string(), says: z.string(), lubricant: z.string() })),
  sheets: z.array(z.object({ id, title: z.string(), standing: z.string(), says: z.string() })),
  /** Hose lines of the job that have steps open. */
  lines: z.array(z.object({ id, name: z.string(), says: z.string() })),
  /** What it uses up: the job's own words, then its parts that are counted by volume, weight or length. */
  consumables: z.array(z.string()),
  /** Who it is for; empty = anyone. */
  who: z.string(),
  /** Since when somebody is at it; null = nobody is. */
  running: z
    .object({
      by: z.string(),
      /** The instant, ISO 8601 in UTC. */
      at: z.string(),
      minutes: z.int(),
      /** More hours than anybody works in one go, or a clock that was set back: how long must be said when it is stopped. */
      unsure: z.boolean(),
    })
    .nullable(),
});
export type TonightJob = z.infer<typeof tonightJob>;

export const tonightView = z.object({
  answer: z.string(),
  minutes: z.int(),
  /** Where the hours come from, in words. */
  minutesFrom: z.string(),
  minutesOver: z.int(),
  rule: z.string(),
  /** What the plan takes, in the order of work; then other jobs that can begin now, best first. */
  jobs: z.array(tonightJob),
  /** What would let other jobs begin, best first. */
  unlocks: z.array(
    z.object({
      wants: z.array(
        z.object({ kind: z.enum(['part', 'tool']), id, name: z.string(), does: z.string(), standing: z.string() }),
      ),
      jobs: z.array(z.object({ id, title: z.string() })),
      /** "Borrow the cam tool: brings “Degree the cam”." */
      says: z.string(),
    }),
  ),
  /** The place chosen; empty = any. */
  place: z.string(),
  /** Places that open jobs name. */
  places: z.array(z.string()),
  /** Jobs that could begin, but not here or not yet. */
  others: z.array(z.object({ id, title: z.string(), says: z.string() })),
  /** How to begin, when there is nothing to do; else empty. */
  begin: optionalLine(400),
  caution: z.string(),
});
export type TonightView = z.infer<typeof tonightView>;

/** Work that was really done: from 0 minutes to a week; null = by the clock, or not kept. */
const worked = z.int().min(0, 'From 0 minutes.').max(10_080, 'At most a week.').nullable();
const stillToDo = z
  .int()
  .min(1, 'At least a minute; what has nothing left is done.')
  .max(600_000, 'At most 10 000 hours.');
const atBench = actBase.extend({ job: id, by: optionalLine(80) });

export const tonightContract = {
  /** What to do with some hours; without them, what is left of today's, else three. */
  view: procedure
    .input(
      ofBuild.extend({
        minutes: z.int().min(1, 'At least a minute.').max(1440, 'At most 24 hours.').optional(),
        /** Only jobs of this place, and those of none; upper and lower case are one. */
        place: optionalLine(80).optional(),
      }),
    )
    .output(tonightView),
  /** Begins work now. What the same person is at is stopped in the same act, with its hours by the clock. */
  start: procedure.input(atBench).output(actResult),
  /** Ends work: logs the hours by the clock or as said; what is left, when said, is the new guess. */
  stop: procedure.input(atBench.extend({ minutes: worked, leftMinutes: stillToDo.nullable() })).output(actResult),
  /** Ends work and finishes the job. */
  done: procedure.input(atBench.extend({ minutes: worked, note: optionalLine(2000) })).output(actResult),
  /** Says how much is left of a job: with what was spent, the new guess. */
  left: procedure.input(actBase.extend({ job: id, leftMinutes: stillToDo })).output(actResult),
};
