import { z } from 'zod';
import { portRoles } from '../fit/port.ts';
import {
  actBase,
  actResult,
  currency,
  day,
  id,
  line,
  longText,
  minor,
  optionalLine,
  positiveMilli,
  procedure,
} from './common.ts';

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

/** A day or a week is made of these: wall time, the day's last minute being 24:00. */
const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'A time such as 18:30.');
export const dayWindow = z.object({ from: clockTime, to: clockTime });
export const weekWindow = dayWindow.extend({ weekday: z.int().min(1).max(7) });
export type DayWindow = z.infer<typeof dayWindow>;
export type WeekWindow = z.infer<typeof weekWindow>;

/** An earlier job after whose end some time must pass: on the clock (a cure) or in hours of work. */
export const lag = z.object({ job: id, minutes: z.int().min(0).max(1_000_000), on: z.enum(['clock', 'work']) });
export type Lag = z.infer<typeof lag>;

/** One side of a connection: a port kept with the build, or one typed for a part that isn't bought. */
export const connectionSide = z.object({ port: id.nullable(), typed: optionalLine(120) });
export type ConnectionSide = z.infer<typeof connectionSide>;

/** A look-alike or failing fit that somebody accepted, for these very ports and no others. */
const accepted = z.object({ reason: line(400), by: optionalLine(80), on: day, for: line(600) }).nullable();

/** A value of a fit as it was typed, by the path that the fit asks for. */
const fitValue = z.object({ path: line(120), value: line(400), unit: optionalLine(40) });

/** Anything that a line is defined by, under the names that a take-off reads. */
const scalar = z.union([z.string().max(200), z.number(), z.boolean(), z.null()]);
export const lineDefinition = z.record(
  line(40),
  z.union([
    scalar,
    z.array(z.number()).max(50),
    z.record(line(40), scalar),
    z.array(z.record(line(40), scalar)).max(50),
  ]),
);
export type LineDefinition = z.infer<typeof lineDefinition>;

/** One thing changed in a what-if, and to what. */
export const variantChange = z.discriminatedUnion('what', [
  z.object({ what: z.literal('hours'), person: id.nullable(), windows: z.array(weekWindow).max(50) }),
  z.object({
    what: z.literal('income'),
    income: id.nullable(),
    name: optionalLine(80),
    amountMinor: minor.min(0),
    every: z.enum(['once', 'month']),
    from: day,
    until: day.nullable(),
  }),
  z.object({ what: z.literal('lead time'), part: id, days: z.int().min(0).max(2000) }),
  z.object({ what: z.literal('job hours'), job: id, minutes: z.int().min(0).max(600_000) }),
  z.object({ what: z.literal('drop part'), part: id }),
  z.object({
    what: z.literal('swap part'),
    part: id,
    description: optionalLine(300),
    priceMinor: minor.min(0).nullable(),
    days: z.int().min(0).max(2000).nullable(),
  }),
]);
export type VariantChange = z.infer<typeof variantChange>;

/** A line of a baseline: a job or a part with what was planned for it on the day it was set. */
const baselineRow = z.object({
  kind: z.enum(['job', 'part']),
  id,
  title: optionalLine(300),
  budgetMinor: minor,
  minutes: z.int().min(0),
  startOn: day,
  endOn: day,
});
export type BaselineRow = z.infer<typeof baselineRow>;

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
    /** Shipping of one order, and the goods from which it is free; in the vendor's currency, or the base currency. */
    shippingMinor: minor.min(0).nullable(),
    freeFromMinor: minor.min(0).nullable(),
    note: longText,
  }),
  bin: z.object({ name: line(80), place: optionalLine(200), note: longText }),
  job: z.object({
    title: line(200),
    phase: id.nullable(),
    system: id.nullable(),
    sort,
    minutesGuess: z.int().min(0).max(600_000).nullable(),
    /** At best and at worst, where somebody has said so; with the guess they make three points. */
    minutesLow: z.int().min(0).max(600_000).nullable(),
    minutesHigh: z.int().min(0).max(600_000).nullable(),
    tools: ids,
    earlier: ids,
    /** Time that must pass after some of the earlier jobs. */
    lags: z.array(lag).max(500),
    /** Not to begin before this day, whatever else allows it. */
    notBefore: day.nullable(),
    /** Must be done in one go, without going home in between. */
    oneSitting: z.boolean(),
    /** Needs somebody's hands; a cure or a stay at the machine shop runs on the clock without them. */
    hands: z.boolean(),
    /** Who does it; null = anyone. */
    person: id.nullable(),
    /** Where it is done: garage, machine shop. */
    place: optionalLine(80),
    /** What it uses up: sealant, rags, oil. */
    consumables: optionalLine(400),
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
  /** Where something joins: of a part line, or, without one, of the engine at `place` (block, head, sump). */
  port: z.object({
    name: line(80),
    part: id.nullable(),
    place: optionalLine(80),
    role: z.enum(portRoles),
    /** What flows through it: fuel, engine oil, coolant. */
    medium: optionalLine(80),
    /** As people write it: M14x1.5 male. What it comes to is read from it every time. */
    designation: line(120),
    sort,
    note: longText,
  }),
  /** Two ports that are to join. The verdict is worked out, never kept. */
  connection: z.object({
    title: line(120),
    one: connectionSide,
    other: connectionSide,
    role: z.enum(portRoles),
    medium: optionalLine(80),
    /** Gauge pressure in bar, for gases. */
    pressureBar: z.number().min(0).max(10_000).nullable(),
    accepted,
    /** Adapter chosen: its pieces in words, and the part lines that they became. */
    adapter: z.object({ pieces: z.array(line(200)).max(4), parts: ids }).nullable(),
    beforeGate: z.boolean(),
    note: longText,
  }),
  /** A fit that isn't a thread, as data, bound to part lines. */
  declaredFit: z.object({
    title: line(120),
    /** Which of the shipped fits it was made from; empty for the builder's own. */
    shipped: optionalLine(60),
    /** Its rule, in the form that core/fit/checks reads; null = that of the shipped fit. */
    rule: z.record(z.string(), z.unknown()).nullable(),
    /** Thing of the rule (head, block) → part line that it is. Things left out are the engine's own. */
    things: z.record(line(60), id),
    values: z.array(fitValue).max(100),
    accepted,
    beforeGate: z.boolean(),
    note: longText,
  }),
  /** A line from port to port. `definition` has the names that a take-off reads, without the two ports. */
  hoseLine: z.object({
    name: line(120),
    from: id.nullable(),
    to: id.nullable(),
    system: id.nullable(),
    job: id.nullable(),
    definition: lineDefinition,
    beforeGate: z.boolean(),
    note: longText,
  }),
  /** Hose at hand, by its type and size. */
  hoseLength: z.object({
    hose: line(80),
    boreMm: z.number().positive().max(1000).nullable(),
    lengthMm: z.int().min(1).max(1_000_000),
    count: z.int().min(0).max(1000),
    note: longText,
  }),
  /** A thing on the lines' bill, and the part line that it is. */
  billPart: z.object({ item: line(300), part: id }),
  /** Somebody who works on the builds; without hours of their own they have those of the settings. */
  person: z.object({ name: line(80), windows: z.array(weekWindow).max(50), note: longText }),
  /** Days that are otherwise than the week says: without windows they are off. */
  calendarDay: z.object({
    on: day,
    until: day.nullable(),
    person: id.nullable(),
    windows: z.array(dayWindow).max(12),
    note: longText,
  }),
  /** Money that comes in: once, or every month on the day of `from`. */
  income: z.object({
    name: line(80),
    amountMinor: minor.min(0),
    every: z.enum(['once', 'month']),
    from: day,
    until: day.nullable(),
    note: longText,
  }),
  /** Cash counted on a day, and what must always be left of it. The latest goes. */
  cashCount: z.object({ on: day, cashMinor: minor, floorMinor: minor, note: longText }),
  /** A price that a vendor gives for a part from a quantity on, perhaps for a time. */
  offer: z.object({
    part: id,
    vendor: id,
    fromMilli: positiveMilli,
    eachE4: z.int().min(0).max(Number.MAX_SAFE_INTEGER),
    currency,
    until: day.nullable(),
    note: longText,
  }),
  /** A named what-if. It touches nothing else. */
  variant: z.object({ name: line(80), changes: z.array(variantChange).max(50), note: longText }),
  /** What was planned, kept as it was on a day; later ones leave it as it is. */
  baseline: z.object({ name: line(80), on: day, rows: z.array(baselineRow).max(50_000), note: longText }),
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
  'port',
  'connection',
  'declaredFit',
  'hoseLine',
  'billPart',
  'calendarDay',
  'income',
  'cashCount',
  'offer',
  'variant',
  'baseline',
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
