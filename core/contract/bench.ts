import { z } from 'zod';
import { actBase, actResult, day, id, line, ofBuild, optionalLine, procedure } from './common.ts';
import { torqueStage } from './records.ts';

/** How a place or a sheet stands against its limits; `at limit` is within the uncertainty of one. */
const measureVerdicts = ['pass', 'at limit', 'out', 'missing', 'no limits'] as const;

const limits = z.object({ least: z.number().nullable(), most: z.number().nullable(), source: z.string() });

/** One reading that stands: the latest for its place and name that wasn't taken back. */
const reading = z.object({
  name: z.string(),
  /** As typed, with its unit. */
  typed: z.string(),
  /** In the sheet's unit as read, and corrected to 20 °C where the sheet says so. */
  value: z.number(),
  corrected: z.number(),
  temperatureC: z.number().nullable(),
  by: z.string(),
  on: day,
  instrument: z.string(),
  /** The journal entry. */
  entry: z.int(),
});

const placeRow = z.object({
  place: z.string(),
  readings: z.array(reading),
  missing: z.array(z.string()),
  mean: z.number().nullable(),
  least: z.number().nullable(),
  most: z.number().nullable(),
  /** Most less least of the place, by its readings' names: across one section, and along the axis. */
  outOfRound: z.number().nullable(),
  taper: z.number().nullable(),
  verdict: z.enum(measureVerdicts),
  clearance: z.number().nullable(),
  clearanceUncertainty: z.number().nullable(),
  clearanceVerdict: z.enum(measureVerdicts),
});

const fitLine = z.object({
  place: z.string(),
  now: z.number().nullable(),
  measured: z.number().nullable(),
  /** Exact size wanted, and the size to use. */
  wanted: z.number().nullable(),
  use: z.number().nullable(),
  name: z.string(),
  from: z.enum(['stays', 'another place', 'at hand', 'to buy', 'not known']),
  fromPlace: z.string(),
  /** What the clearance or lash becomes. */
  becomes: z.number().nullable(),
});

export const sheetView = z.object({
  id,
  revision: z.int(),
  title: z.string(),
  quantity: z.string(),
  unit: z.string(),
  part: id.nullable(),
  partDescription: z.string(),
  job: id.nullable(),
  jobTitle: z.string(),
  beforeGate: z.boolean(),
  instrument: z.string(),
  resolution: z.number().nullable(),
  uncertainty: z.number().nullable(),
  expansionPpm: z.number().nullable(),
  limits,
  clearanceLimits: limits,
  /** The sheet whose means are taken off, for a clearance. */
  less: id.nullable(),
  lessTitle: z.string(),
  readingNames: z.array(z.string()),
  places: z.array(placeRow),
  count: z.int(),
  mean: z.number().nullable(),
  range: z.number().nullable(),
  deviation: z.number().nullable(),
  standing: z.enum(['in limits', 'missing', 'out']),
  /** One sentence: what is missing or out, or that all is in its limits. */
  says: z.string(),
  fit: z.object({ way: z.enum(['shim', 'shell']), says: z.string(), lines: z.array(fitLine) }).nullable(),
  note: z.string(),
  caution: z.string(),
});
export type SheetView = z.infer<typeof sheetView>;

const boltMark = z.object({
  bolt: z.int(),
  /** Stages done, 0 to the number of stages. */
  stages: z.int(),
  rechecked: z.boolean(),
  /** 0 to 1 in both directions, for the drawing. */
  x: z.number(),
  y: z.number(),
});

export const torqueView = z.object({
  id,
  revision: z.int(),
  name: z.string(),
  count: z.int(),
  thread: z.string(),
  boltClass: z.string(),
  lubricant: z.string(),
  method: z.string(),
  source: z.string(),
  sourceKind: z.enum(['maker', 'suggested', 'unknown']),
  pattern: z.enum(['star', 'spiral', 'custom']),
  /** Tightening order: bolt numbers from 1, each once. */
  sequence: z.array(z.int()),
  stages: z.array(torqueStage.extend({ text: z.string() })),
  bolts: z.array(boltMark),
  /** What to do next; null when all stages are done. */
  next: z.object({ bolt: z.int(), stage: z.int(), text: z.string() }).nullable(),
  standing: z.enum(['not begun', 'under way', 'snug', 'final', 'rechecked']),
  says: z.string(),
  beforeGate: z.boolean(),
  part: id.nullable(),
  job: id.nullable(),
  /** The last acts, newest first. */
  log: z.array(z.object({ entry: z.int(), on: day, at: z.string(), text: z.string(), by: z.string() })),
  caution: z.string(),
  note: z.string(),
});
export type TorqueView = z.infer<typeof torqueView>;

export const benchView = z.object({
  answer: z.string(),
  sheets: z.array(sheetView.pick({ id: true, title: true, standing: true, says: true, quantity: true })),
  groups: z.array(torqueView.pick({ id: true, name: true, count: true, standing: true, says: true })),
});
export type BenchView = z.infer<typeof benchView>;

export const benchContract = {
  view: procedure.input(ofBuild).output(benchView),
  sheet: procedure.input(ofBuild.extend({ sheet: id })).output(sheetView),
  torque: procedure.input(ofBuild.extend({ boltGroup: id })).output(torqueView),
  /** Writes readings down. `typed` is what the person wrote, with or without a unit (the sheet's, without). */
  read: procedure
    .input(
      actBase.extend({
        sheet: id,
        readings: z
          .array(
            z.object({
              place: line(60),
              name: line(60),
              typed: line(60),
              temperatureC: z.number().min(-40).max(200).nullable(),
            }),
          )
          .min(1)
          .max(500),
        by: optionalLine(80),
        instrument: optionalLine(120),
      }),
    )
    .output(actResult),
  /** Takes a reading off the sheet, with a reason. */
  strike: procedure
    .input(actBase.extend({ sheet: id, place: line(60), name: line(60), reason: line(400) }))
    .output(actResult),
  /** One bolt brought through one stage. Refused when it isn't the stage's turn. */
  turn: procedure
    .input(
      actBase.extend({
        boltGroup: id,
        bolt: z.int().min(1).max(1000),
        stage: z.int().min(1).max(12),
        by: optionalLine(80),
        wrench: optionalLine(120),
        /** What the wrench was set to, with a crowfoot or without. */
        settingMilliNm: z.int().min(1).max(5_000_000).nullable(),
      }),
    )
    .output(actResult),
  /** All bolts, or some, gone over again at final torque. */
  recheck: procedure
    .input(
      actBase.extend({
        boltGroup: id,
        bolts: z.array(z.int().min(1).max(1000)).max(1000),
        by: optionalLine(80),
        wrench: optionalLine(120),
      }),
    )
    .output(actResult),
  /** Loosened, and begun again from the first stage. */
  loosen: procedure.input(actBase.extend({ boltGroup: id, by: optionalLine(80), reason: line(400) })).output(actResult),
  /** What to set a wrench to when an adapter lies between it and the bolt (calculator F). Writes nothing. */
  setting: procedure
    .input(
      z.object({
        torqueMilliNm: z.int().min(1).max(5_000_000),
        /** Millimetres from the grip to the drive, from the drive to the bolt, and the angle between them. */
        wrenchMm: z.number().positive().max(3000),
        adapterMm: z.number().min(0).max(1000),
        angleDeg: z.number().min(0).max(180),
      }),
    )
    .output(z.object({ settingMilliNm: z.int(), formula: z.string(), source: z.string(), caution: z.string() })),
  /** A torque for a thread, class and lubricant, by calculator F, for a group whose maker says nothing. Writes nothing. */
  suggest: procedure.input(z.object({ thread: line(60), boltClass: line(40), lubricant: optionalLine(120) })).output(
    z.object({
      torqueMilliNm: z.int(),
      formula: z.string(),
      source: z.string(),
      caution: z.string(),
      says: z.string(),
    }),
  ),
};
