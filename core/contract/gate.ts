import { z } from 'zod';
import { type BlockerKind, blockerKinds } from '../gate/blocker.ts';
import { actBase, actResult, day, id, line, minor, ofBuild, optionalLine, procedure } from './common.ts';

export type { BlockerKind };

export const blockerSubject = z.object({
  kind: z.enum([
    'part',
    'job',
    'tool',
    'decision',
    'bolt-group',
    'check',
    'measuring-sheet',
    'connection',
    'declared-fit',
    'hose-line',
  ]),
  id,
});

export const blocker = z.object({
  kind: z.enum(blockerKinds),
  subject: blockerSubject,
  title: z.string(),
  why: z.string(),
  /** What clears it, in words. */
  clears: z.string(),
  /** A few words on where it stands: "back-ordered 34 days". */
  standing: z.string(),
  /** When work on it may begin, and when it is cleared at best; null = no date, and `noDate` says why. */
  readyOn: day.nullable(),
  /** Where `readyOn` is a forecast: work may begin by this day in four of five cases, and what both stand on. */
  readyLateOn: day.nullable(),
  readySays: z.string(),
  clearOn: day.nullable(),
  noDate: z.string(),
  daysGained: z.int(),
  /** What it still costs; null = not known. */
  costMinor: minor.nullable(),
  minutes: z.int(),
});
export type Blocker = z.infer<typeof blocker>;

export const gateReview = z.object({
  gateName: z.string(),
  /** Things that the check looked at; 0 = nothing is written down yet, which is no reason to hoist. */
  listed: z.int(),
  asOf: day,
  answer: z.string(),
  /** The day at best, or null with the reason and the earliest that is known. */
  gateOn: day.nullable(),
  noDate: z.string(),
  /** The earliest it can be by what is known. */
  atLeastOn: day,
  /** Items whose work was assumed because nobody has guessed it. */
  assumed: z.int(),
  blockers: z.array(blocker),
  waived: z.array(
    blocker.extend({ reason: z.string(), by: z.string(), waivedOn: day, until: day.nullable(), seq: z.int() }),
  ),
  costMinor: minor,
  costUnknown: z.int(),
  minutes: z.int(),
  counts: z.array(z.object({ kind: z.enum(blockerKinds), count: z.int(), costMinor: minor })),
  caution: z.string(),
});
export type GateReview = z.infer<typeof gateReview>;

export const gateContract = {
  review: procedure.input(ofBuild).output(gateReview),
  /** How the list shrank (and grew): a point a week and one today, plus what left and what came since `from`. */
  history: procedure.input(ofBuild).output(z.array(z.object({ on: day, count: z.int(), costMinor: minor }))),
  compare: procedure
    .input(z.object({ build: id, from: day, to: day.optional() }))
    .output(z.object({ gone: z.array(blocker), came: z.array(blocker), still: z.int() })),
  waive: procedure
    .input(
      actBase.extend({
        build: id,
        kind: z.enum(blockerKinds),
        subject: blockerSubject,
        reason: optionalLine(400),
        by: optionalLine(80),
        until: day.nullable(),
      }),
    )
    .output(actResult),
  endWaiver: procedure
    .input(
      actBase.extend({ build: id, kind: z.enum(blockerKinds), subject: blockerSubject, reason: optionalLine(400) }),
    )
    .output(actResult),
  /** The engine went in: a snapshot of the list is kept. Refused while anything blocks. */
  pass: procedure.input(actBase.extend({ build: id, by: line(80), note: optionalLine(2000) })).output(actResult),
};
