import { z } from 'zod';
import { day, id, ofBuild, optionalLine, procedure } from './common.ts';

const share = z.number().min(0).max(1);

/** What held a gate in some of the runs. */
const holder = z.object({
  kind: z.enum(['job', 'part']),
  id,
  name: z.string(),
  /** Share of runs in which it lay on the chain that held the gate. */
  criticality: share,
  /** Mean days by which the gate comes earlier if it came a week earlier; null where it wasn't worked out. */
  daysWon: z.number().nullable(),
});

const gate = z.object({
  name: z.string(),
  /** The gate is reached by this day in so many of a hundred runs. */
  p10On: day,
  p50On: day,
  p80On: day,
  p90On: day,
  /** Between these the true P50 and P80 lie with 95 % confidence, as far as the number of runs goes. */
  p50Band: z.tuple([day, day]),
  p80Band: z.tuple([day, day]),
  jobsOpen: z.int(),
  partsToCome: z.int(),
  heldBy: z.array(holder),
});

const coming = z.object({
  part: id,
  description: z.string(),
  vendorName: z.string(),
  /** The order line; null when nothing is ordered yet. */
  line: id.nullable(),
  basis: z.enum(['promise', 'own-record', 'few-orders', 'no-orders']),
  /** Past lines or promises that the answer stands on. */
  count: z.int(),
  longerThanAnyPast: z.boolean(),
  says: z.string(),
  p50On: day,
  p80On: day,
});

const gap = z.object({ kind: z.enum(['job', 'part', 'tool']), id, title: z.string(), why: z.string() });

export const forecastView = z.object({
  /** The page's first sentence, with the gate's days and what holds them. */
  answer: z.string(),
  runs: z.int(),
  seed: z.int(),
  /** Share of runs in which something lay beyond the ten years that are looked ahead. */
  beyondShare: share,
  /** Empty when there is nothing to forecast; the answer then says why. */
  gates: z.array(gate),
  coming: z.array(coming),
  /** What nobody has guessed or dated, and how it is counted. */
  gaps: z.array(gap),
  /** What the figures assume. */
  assumes: z.array(z.string()),
});
export type ForecastView = z.infer<typeof forecastView>;

export const forecastContract = {
  /** Writes nothing. The same build on the same minute, runs and seed give the same answer. */
  run: procedure
    .input(
      ofBuild.extend({
        /** Only this gate; all of the build's when left out. */
        gate: optionalLine(200).optional(),
        runs: z.int().min(1, 'From 1 to 20000 runs.').max(20_000, 'From 1 to 20000 runs.').default(2000),
        seed: z.int().min(0, 'A whole number from 0.').default(1),
      }),
    )
    .output(forecastView),
};
