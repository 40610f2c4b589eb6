import { z } from 'zod';
import type { ForecastTask } from '../forecast/facts.ts';
import { actBase, actResult, day, id, ofBuild, optionalLine, procedure } from './common.ts';

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
  /** Its days and what holds them, in a sentence or two. */
  says: z.string(),
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
  /** Runs by the day on which they reached the gate, in order of days. */
  runsByDay: z.array(z.object({ on: day, runs: z.int() })),
  heldBy: z.array(holder),
});

const basis = z.enum(['promise', 'own-record', 'few-orders', 'no-orders']);

const coming = z.object({
  part: id,
  description: z.string(),
  vendorName: z.string(),
  /** The order line; null when nothing is ordered yet. */
  line: id.nullable(),
  basis,
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

const runs = z.int().min(1, 'From 1 to 20000 runs.').max(20_000, 'From 1 to 20000 runs.').default(2000);
const seed = z.int().min(0, 'A whole number from 0.').default(1);

/** A forecast that was kept: what it said on its day. */
const keptForecast = z.object({
  seq: id,
  act: id,
  /** The day that it was made for. */
  on: day,
  runs: z.int(),
  seed: z.int(),
  gates: z.array(z.object({ name: z.string(), p10On: day, p50On: day, p80On: day, p90On: day })),
  /** What happened between the day of the one before and this day; null for the first. */
  since: z.object({ jobsDone: z.int(), partsReceived: z.int() }).nullable(),
});
export type KeptForecast = z.infer<typeof keptForecast>;

/** One order line as its vendor's record has it. */
const leadLine = z.object({
  line: id,
  order: id,
  part: id,
  description: z.string(),
  /** Ordered on this day, or noted as a back-order on it. */
  from: day,
  /** Days until it was here, was cancelled, or until today. */
  days: z.int(),
  state: z.enum(['arrived', 'open', 'dropped']),
});

const vendorLead = z.object({
  vendor: id,
  vendorName: z.string(),
  /** From the order on, or, where the vendor had none, from the notice of a back-order on. */
  lineClass: z.enum(['in-stock', 'back-order']),
  arrivals: z.int(),
  open: z.int(),
  basis,
  /** What the days stand on, with its counts. */
  says: z.string(),
  /** Days that an order of today takes: as likely as not, and in four of five cases. */
  p50Days: z.number(),
  p80Days: z.number(),
  /** Median of the lines that arrived; null without one. */
  medianDays: z.number().nullable(),
  /** Share still waiting after so many days, open lines counted while they were open. */
  curve: z.array(z.object({ days: z.int(), atRisk: z.int(), stillWaiting: share })),
  /** The latest lines, at most 200. */
  lines: z.array(leadLine),
});
export type VendorLead = z.infer<typeof vendorLead>;

export const forecastContract = {
  /** Writes nothing. The same build on the same minute, runs and seed give the same answer. */
  run: procedure
    .input(
      ofBuild.extend({
        /** Only this gate; all of the build's when left out. */
        gate: optionalLine(200).optional(),
        runs,
        seed,
      }),
    )
    .output(forecastView),
  /** All that a run needs, to be run elsewhere (`forecastRun` of core/forecast); the same answer as `run` comes out. */
  facts: procedure.input(ofBuild).output(z.custom<ForecastTask>()),
  /**
   * The days of the hoist check's gate by a forecast of 2,000 runs and seed 1. Null where that would take long, and
   * nothing was kept that day, or where nothing can be forecast.
   */
  gateDays: procedure
    .input(ofBuild)
    .output(z.object({ name: z.string(), p50On: day, p80On: day, runs: z.int(), seed: z.int() }).nullable()),
  /**
   * Keeps what the forecast says at the end of the day `on` (of today: now), as an entry.
   * Refused for a day ahead, and where there is nothing to forecast.
   */
  keep: procedure.input(actBase.extend({ build: id, runs, seed })).output(actResult),
  /** The forecasts that were kept and not taken back, in order of their days. */
  history: procedure.input(ofBuild).output(z.array(keptForecast)),
  /** How long each vendor has taken, line by line, and what is expected of it; of all builds in the workbook. */
  leadTimes: procedure.input(z.object({ asOf: day.optional() })).output(z.array(vendorLead)),
};
