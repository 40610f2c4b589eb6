import { z } from 'zod';
import { actBase, actResult, currency, day, id, line, longText, minor, optionalLine, procedure } from './common.ts';

/**
 * Reference records: what entries are about. Creating, changing and retiring them are acts like any other, so they are
 * in the journal and can be undone. One schema a kind; forms and checks are drawn from these.
 */
const sort = z.int().min(0).max(1_000_000);
const ids = z.array(id).max(500);

export const recordValues = {
  build: z.object({
    name: line(120),
    car: optionalLine(200),
    engine: optionalLine(200),
    gateName: line(40),
    startedOn: day,
    targetOn: day.nullable(),
    note: longText,
  }),
  system: z.object({ name: line(80), sort }),
  phase: z.object({
    name: line(80),
    sort,
    /** What must be true before the phase counts as passed. */
    gate: optionalLine(400),
    plannedStart: day.nullable(),
    plannedEnd: day.nullable(),
  }),
  vendor: z.object({
    name: line(120),
    site: optionalLine(400),
    contact: optionalLine(400),
    account: optionalLine(80),
    currency: currency.nullable(),
    /** Usual days from order to arrival, if known. */
    leadDays: z.int().min(0).max(2000).nullable(),
    note: longText,
  }),
  bin: z.object({ name: line(80), place: optionalLine(200), note: longText }),
  job: z.object({
    title: line(200),
    phase: id.nullable(),
    system: id.nullable(),
    sort,
    minutesGuess: z.int().min(0).max(600_000).nullable(),
    tools: ids,
    earlier: ids,
    /** Stands before the hoist check. */
    beforeGate: z.boolean(),
    needsSignOff: z.boolean(),
    note: longText,
  }),
  tool: z.object({
    name: line(120),
    /** Where it is when it isn't at hand: "Uncle's garage", "to buy". */
    whereabouts: optionalLine(200),
    dueOn: day.nullable(),
    hireMinor: minor.min(0).nullable(),
    note: longText,
  }),
  decision: z.object({
    title: line(200),
    options: z.array(z.object({ text: line(200), costMinor: minor.nullable() })).max(20),
    owner: optionalLine(80),
    neededBy: day.nullable(),
    beforeGate: z.boolean(),
    note: longText,
  }),
  boltGroup: z.object({
    name: line(120),
    part: id.nullable(),
    job: id.nullable(),
    system: id.nullable(),
    /** Bolts in the group; whole. */
    count: z.int().min(1).max(1000),
    method: z.enum(['torque', 'torque and angle', 'stretch']),
    /** Final torque in newton metres × 1000. */
    torqueMilliNm: z.int().min(1).max(5_000_000).nullable(),
    angleDeg: z.int().min(0).max(720).nullable(),
    /** Where the figure was read: the maker's sheet, page. */
    source: optionalLine(200),
    sequence: optionalLine(400),
    lubricant: optionalLine(120),
    beforeGate: z.boolean(),
    note: longText,
  }),
  budgetLine: z.object({ name: line(120), system: id.nullable(), phase: id.nullable() }),
  savedView: z.object({ name: line(80), screen: line(40), view: z.string().max(20_000) }),
  rate: z.object({
    currency,
    on: day,
    /** Base units for one unit of the currency, as decimal text. */
    rate: z.string().regex(/^\d{1,9}(\.\d{1,10})?$/, 'A rate such as 1.0842.'),
    source: optionalLine(120),
  }),
} as const;

export type RecordKind = keyof typeof recordValues;
export type RecordValues = { [K in RecordKind]: z.infer<(typeof recordValues)[K]> };
/** Kinds that belong to one build; the others are shared by all builds of the workbook. */
export const buildKinds = [
  'system',
  'phase',
  'job',
  'tool',
  'decision',
  'boltGroup',
  'budgetLine',
] as const satisfies RecordKind[];

const recordKind = z.enum(Object.keys(recordValues) as [RecordKind, ...RecordKind[]]);

export const recordRow = z.object({
  kind: recordKind,
  id,
  build: id.nullable(),
  retiredOn: day.nullable(),
  /** Changes with every edit; sent back with an edit so that two editors can't overwrite each other. */
  revision: z.int(),
  values: z.record(z.string(), z.unknown()),
  /** How many part lines, orders and others stand on it. */
  uses: z.int(),
  /** What counts say: tool at hand, job done, decision made, bolts snug and final. */
  standing: z.record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.null()])),
});
export type RecordRow = z.infer<typeof recordRow>;

export const recordsContract = {
  list: procedure
    .input(z.object({ kind: recordKind, build: id.optional(), retired: z.boolean().optional() }))
    .output(z.array(recordRow)),
  /** Creates (no id) or changes (id and revision) one record. `values` may be partial when changing. */
  save: procedure
    .input(
      actBase.extend({
        kind: recordKind,
        build: id.optional(),
        id: id.optional(),
        revision: z.int().optional(),
        values: z.record(z.string(), z.unknown()),
      }),
    )
    .output(actResult),
  retire: procedure
    .input(actBase.extend({ kind: recordKind, id, reason: optionalLine(400), back: z.boolean().optional() }))
    .output(actResult),
  /** Puts jobs, phases or systems in the order given. */
  reorder: procedure.input(actBase.extend({ kind: z.enum(['system', 'phase', 'job']), ids })).output(actResult),
  /** Tool at hand or away; decision made (with the option) or open again. */
  toolStanding: procedure
    .input(actBase.extend({ tool: id, atHand: z.boolean(), whereabouts: optionalLine(200), dueOn: day.nullable() }))
    .output(actResult),
  decide: procedure
    .input(
      actBase.extend({ decision: id, choice: line(400).nullable(), by: optionalLine(80), reason: optionalLine(400) }),
    )
    .output(actResult),
  /** Bolts of a group brought to snug or to final torque, or loosened again. `count` whole bolts. */
  bolts: procedure
    .input(
      actBase.extend({
        boltGroup: id,
        to: z.enum(['snug', 'final', 'loose']),
        count: z.int().min(1).max(1000),
        by: optionalLine(80),
        wrench: optionalLine(120),
        torqueMilliNm: z.int().min(1).max(5_000_000).nullable(),
        reason: optionalLine(400),
      }),
    )
    .output(actResult),
};
