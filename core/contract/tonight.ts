import { z } from 'zod';
import { id, milli, ofBuild, optionalLine, procedure } from './common.ts';
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
  /** How to begin, when there is nothing to do; else empty. */
  begin: optionalLine(400),
  caution: z.string(),
});
export type TonightView = z.infer<typeof tonightView>;

export const tonightContract = {
  /** What to do with some hours; without them, what is left of today's, else three. */
  view: procedure
    .input(ofBuild.extend({ minutes: z.int().min(1, 'At least a minute.').max(1440, 'At most 24 hours.').optional() }))
    .output(tonightView),
};
