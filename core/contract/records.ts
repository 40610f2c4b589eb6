import { z } from 'zod';
import { actBase, actResult, currency, day, id, line, longText, minor, optionalLine, procedure } from './common.ts';

/** A number, text, choice or list as it was typed, with its unit: what a calculator is given. */
const given = z.object({
  value: z.union([
    z.number(),
    z.string().max(200),
    z.boolean(),
    z.array(z.union([z.number(), z.string().max(60)])).max(200),
  ]),
  unit: optionalLine(24).optional(),
});
export type GivenData = z.infer<typeof given>;
const unitName = optionalLine(24);
/** A bound as it was typed: a number, with the unit of the limit it belongs to. */
const bound = z.number().nullable();

/**
 * Where an input of a check comes from. A fact is looked for on the part line named, or, where none is, on the part
 * lines of the kind named; of several the one that is fitted goes first, then in hand, on order, needed.
 */
export const checkSource = z.discriminatedUnion('from', [
  z.object({ from: z.literal('fact'), fact: line(60), part: id.nullable(), partKind: optionalLine(60) }),
  z.object({ from: z.literal('target'), target: line(60) }),
  z.object({
    from: z.literal('measurement'),
    sheet: id,
    figure: z.enum(['mean', 'least', 'most', 'clearance mean', 'clearance least', 'clearance most']),
  }),
  z.object({ from: z.literal('typed'), given, source: optionalLine(200) }),
]);
export type CheckSource = z.infer<typeof checkSource>;

/** What the output of a check is held against. */
export const checkLimit = z.object({
  least: bound,
  most: bound,
  unit: unitName,
  /** Within this share of a limit a check that holds is called close, in thousandths of the limit. */
  closeMilli: z.int().min(0).max(1000),
  source: optionalLine(200),
  /** Bounds that stand elsewhere, on the target sheet or as a fact of a part; they go before `least` and `most`. */
  leastFrom: checkSource.optional(),
  mostFrom: checkSource.optional(),
});
export type CheckLimit = z.infer<typeof checkLimit>;

/** One stage of tightening a group: to a torque, or on by an angle. */
export const torqueStage = z.object({
  torqueMilliNm: z.int().min(1).max(5_000_000).nullable(),
  angleDeg: z.int().min(1).max(720).nullable(),
});
export type TorqueStage = z.infer<typeof torqueStage>;

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
    /** Size of the bolt as written on it or in the manual, and its strength class. */
    thread: optionalLine(60),
    boltClass: optionalLine(40),
    /** Tightened one after the other; empty: the final figure in one go. */
    stages: z.array(torqueStage).max(12),
    /** The way round: opposite on a circle, from the middle of rows outwards, or as `order` says. */
    pattern: z.enum(['star', 'spiral', 'custom']),
    /** Rows of bolts, for a spiral. */
    rows: z.int().min(1).max(20),
    /** Bolt numbers from 1, each once, for a custom way round. */
    order: z.array(z.int().min(1).max(1000)).max(1000),
    /** Who stands behind the figure: a maker's manual that is named, or the nut-factor estimate. */
    sourceKind: z.enum(['maker', 'suggested', 'unknown']),
    lubricant: optionalLine(120),
    beforeGate: z.boolean(),
    note: longText,
  }),
  /** A calculation kept with the build. */
  savedCase: z.object({
    title: line(120),
    calculator: line(8),
    inputs: z.record(line(60), given),
    units: z.record(line(60), unitName),
    note: longText,
  }),
  /** One line of the target sheet: what the build aims at. `value` is kept as it was typed. */
  target: z.object({ name: line(60), value: line(60), unit: unitName, source: optionalLine(200), note: longText }),
  /** A calculator bound to the build, and the limit that its answer is held against. */
  check: z.object({
    title: line(120),
    calculator: line(8),
    inputs: z.record(line(60), checkSource),
    output: line(60),
    limit: checkLimit,
    system: id.nullable(),
    /** Which of the shipped checks it was made from; empty for the builder's own. */
    shipped: optionalLine(60),
    beforeGate: z.boolean(),
    note: longText,
  }),
  /** Places × readings of one thing that is measured. Lengths and limits are in `unit`. */
  measuringSheet: z.object({
    title: line(120),
    quantity: z.enum(['journal', 'bore', 'ring gap', 'clearance', 'end float', 'lash', 'volume', 'other']),
    part: id.nullable(),
    job: id.nullable(),
    system: id.nullable(),
    places: z.array(line(60)).min(1).max(200),
    /** What is read at each place, such as "top, thrust"; one reading a name. */
    readings: z.array(line(60)).min(1).max(24),
    unit: line(24),
    instrument: optionalLine(120),
    /** Smallest step that the instrument shows, and its stated uncertainty, both in `unit`. */
    resolution: z.number().min(0).nullable(),
    uncertainty: z.number().min(0).nullable(),
    /** For the correction to 20 °C: thermal expansion in millionths per kelvin; null = none is made. */
    expansionPpm: z.number().min(0).max(100).nullable(),
    limits: z.object({ least: bound, most: bound, source: optionalLine(200) }),
    /** A clearance is this sheet's mean less that of the sheet named, place by place, with its own limits. */
    less: id.nullable(),
    clearance: z.object({ least: bound, most: bound, source: optionalLine(200) }),
    /** Shims or shells: the sizes at hand and what is aimed at, in `unit`. */
    fit: z
      .object({
        way: z.enum(['shim', 'shell']),
        target: z.number(),
        step: z.number().positive(),
        /** Sizes at hand, with how many of each. */
        sizes: z
          .array(z.object({ name: optionalLine(40), size: z.number(), count: z.int().min(0).max(1000) }))
          .max(200),
        /** What is in each place now, place by place; null where none is. */
        now: z.array(z.number().nullable()).max(200),
      })
      .nullable(),
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
  'savedCase',
  'target',
  'check',
  'measuringSheet',
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
