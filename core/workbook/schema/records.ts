import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type {
  BaselineRow,
  CheckLimit,
  CheckSource,
  ConnectionSide,
  DayWindow,
  GivenData,
  Lag,
  LineDefinition,
  TorqueStage,
  VariantChange,
  WeekWindow,
} from '../../contract/records.ts';
import type { PortRole } from '../../fit/port.ts';
import { flag, json, recordColumns } from './common.ts';

/** Reference records. Property names are those of the contract's `recordValues`, so that one mapping serves both. */

export const builds = sqliteTable('builds', {
  ...recordColumns,
  name: text('name').notNull(),
  car: text('car').notNull().default(''),
  engine: text('engine').notNull().default(''),
  gateName: text('gate_name').notNull().default('engine-in'),
  startedOn: text('started_on').notNull(),
  targetOn: text('target_on'),
  note: text('note').notNull().default(''),
});

export const systems = sqliteTable(
  'systems',
  { ...recordColumns, name: text('name').notNull(), sort: integer('sort').notNull().default(0) },
  (t) => [index('systems_by_build').on(t.build)],
);

export const phases = sqliteTable(
  'phases',
  {
    ...recordColumns,
    name: text('name').notNull(),
    sort: integer('sort').notNull().default(0),
    gate: text('gate').notNull().default(''),
    plannedStart: text('planned_start'),
    plannedEnd: text('planned_end'),
  },
  (t) => [index('phases_by_build').on(t.build)],
);

export const vendors = sqliteTable('vendors', {
  ...recordColumns,
  name: text('name').notNull(),
  site: text('site').notNull().default(''),
  contact: text('contact').notNull().default(''),
  account: text('account').notNull().default(''),
  currency: text('currency'),
  leadDays: integer('lead_days'),
  shippingMinor: integer('shipping_minor'),
  freeFromMinor: integer('free_from_minor'),
  note: text('note').notNull().default(''),
});

export const bins = sqliteTable('bins', {
  ...recordColumns,
  name: text('name').notNull(),
  place: text('place').notNull().default(''),
  note: text('note').notNull().default(''),
});

export const jobs = sqliteTable(
  'jobs',
  {
    ...recordColumns,
    title: text('title').notNull(),
    phase: integer('phase'),
    system: integer('system'),
    sort: integer('sort').notNull().default(0),
    minutesGuess: integer('minutes_guess'),
    minutesLow: integer('minutes_low'),
    minutesHigh: integer('minutes_high'),
    tools: json<number[]>('tools').notNull().default([]),
    earlier: json<number[]>('earlier').notNull().default([]),
    lags: json<Lag[]>('lags').notNull().default([]),
    notBefore: text('not_before'),
    oneSitting: flag('one_sitting').notNull().default(false),
    hands: flag('hands').notNull().default(true),
    person: integer('person'),
    place: text('place').notNull().default(''),
    consumables: text('consumables').notNull().default(''),
    beforeGate: flag('before_gate').notNull().default(true),
    needsSignOff: flag('needs_sign_off').notNull().default(false),
    note: text('note').notNull().default(''),
  },
  (t) => [index('jobs_by_build').on(t.build, t.phase)],
);

export const tools = sqliteTable('tools', {
  ...recordColumns,
  name: text('name').notNull(),
  whereabouts: text('whereabouts').notNull().default(''),
  dueOn: text('due_on'),
  hireMinor: integer('hire_minor'),
  note: text('note').notNull().default(''),
});

export const decisions = sqliteTable('decisions', {
  ...recordColumns,
  title: text('title').notNull(),
  options: json<{ text: string; costMinor: number | null }[]>('options').notNull().default([]),
  owner: text('owner').notNull().default(''),
  neededBy: text('needed_by'),
  beforeGate: flag('before_gate').notNull().default(true),
  note: text('note').notNull().default(''),
});

export const boltGroups = sqliteTable('bolt_groups', {
  ...recordColumns,
  name: text('name').notNull(),
  part: integer('part'),
  job: integer('job'),
  system: integer('system'),
  count: integer('count').notNull(),
  method: text('method').$type<'torque' | 'torque and angle' | 'stretch'>().notNull(),
  torqueMilliNm: integer('torque_milli_nm'),
  angleDeg: integer('angle_deg'),
  source: text('source').notNull().default(''),
  sequence: text('sequence').notNull().default(''),
  lubricant: text('lubricant').notNull().default(''),
  thread: text('thread').notNull().default(''),
  boltClass: text('bolt_class').notNull().default(''),
  stages: json<TorqueStage[]>('stages').notNull().default([]),
  pattern: text('pattern').$type<'star' | 'spiral' | 'custom'>().notNull().default('star'),
  rows: integer('rows').notNull().default(2),
  order: json<number[]>('bolt_order').notNull().default([]),
  sourceKind: text('source_kind').$type<'maker' | 'suggested' | 'unknown'>().notNull().default('unknown'),
  beforeGate: flag('before_gate').notNull().default(true),
  note: text('note').notNull().default(''),
});

export const savedCases = sqliteTable(
  'saved_cases',
  {
    ...recordColumns,
    title: text('title').notNull(),
    calculator: text('calculator').notNull(),
    inputs: json<Record<string, GivenData>>('inputs').notNull(),
    units: json<Record<string, string>>('units').notNull().default({}),
    note: text('note').notNull().default(''),
  },
  (t) => [index('saved_cases_by_build').on(t.build)],
);

export const targets = sqliteTable(
  'targets',
  {
    ...recordColumns,
    name: text('name').notNull(),
    value: text('value').notNull(),
    unit: text('unit').notNull().default(''),
    source: text('source').notNull().default(''),
    note: text('note').notNull().default(''),
  },
  (t) => [index('targets_by_build').on(t.build)],
);

export const checks = sqliteTable(
  'checks',
  {
    ...recordColumns,
    title: text('title').notNull(),
    calculator: text('calculator').notNull(),
    inputs: json<Record<string, CheckSource>>('inputs').notNull(),
    output: text('output').notNull(),
    limit: json<CheckLimit>('held_to').notNull(),
    system: integer('system'),
    shipped: text('shipped').notNull().default(''),
    beforeGate: flag('before_gate').notNull().default(true),
    note: text('note').notNull().default(''),
  },
  (t) => [index('checks_by_build').on(t.build)],
);

interface TypedLimits {
  readonly least: number | null;
  readonly most: number | null;
  readonly source: string;
}

export const measuringSheets = sqliteTable(
  'measuring_sheets',
  {
    ...recordColumns,
    title: text('title').notNull(),
    quantity: text('quantity').notNull(),
    part: integer('part'),
    job: integer('job'),
    system: integer('system'),
    places: json<string[]>('places').notNull(),
    readings: json<string[]>('readings').notNull(),
    unit: text('unit').notNull(),
    instrument: text('instrument').notNull().default(''),
    resolution: real('resolution'),
    uncertainty: real('uncertainty'),
    expansionPpm: real('expansion_ppm'),
    limits: json<TypedLimits>('limits').notNull(),
    less: integer('less'),
    clearance: json<TypedLimits>('clearance').notNull(),
    fit: json<unknown>('fit'),
    beforeGate: flag('before_gate').notNull().default(true),
    note: text('note').notNull().default(''),
  },
  (t) => [index('measuring_sheets_by_build').on(t.build)],
);

export const ports = sqliteTable(
  'ports',
  {
    ...recordColumns,
    name: text('name').notNull(),
    part: integer('part'),
    place: text('place').notNull().default(''),
    role: text('role').$type<PortRole>().notNull().default('fluid'),
    medium: text('medium').notNull().default(''),
    designation: text('designation').notNull(),
    sort: integer('sort').notNull().default(0),
    note: text('note').notNull().default(''),
  },
  (t) => [index('ports_by_build').on(t.build), index('ports_by_part').on(t.part)],
);

interface Accepted {
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly for: string;
}

export const connections = sqliteTable(
  'connections',
  {
    ...recordColumns,
    title: text('title').notNull(),
    one: json<ConnectionSide>('one').notNull(),
    other: json<ConnectionSide>('other').notNull(),
    role: text('role').$type<PortRole>().notNull().default('fluid'),
    medium: text('medium').notNull().default(''),
    pressureBar: real('pressure_bar'),
    accepted: json<Accepted>('accepted'),
    adapter: json<{ pieces: string[]; parts: number[] }>('adapter'),
    beforeGate: flag('before_gate').notNull().default(true),
    note: text('note').notNull().default(''),
  },
  (t) => [index('connections_by_build').on(t.build)],
);

export const declaredFits = sqliteTable(
  'declared_fits',
  {
    ...recordColumns,
    title: text('title').notNull(),
    shipped: text('shipped').notNull().default(''),
    rule: json<Record<string, unknown>>('rule'),
    things: json<Record<string, number>>('things').notNull().default({}),
    values: json<{ path: string; value: string; unit: string }[]>('fit_values').notNull().default([]),
    accepted: json<Accepted>('accepted'),
    beforeGate: flag('before_gate').notNull().default(true),
    note: text('note').notNull().default(''),
  },
  (t) => [index('declared_fits_by_build').on(t.build)],
);

export const hoseLines = sqliteTable(
  'hose_lines',
  {
    ...recordColumns,
    name: text('name').notNull(),
    from: integer('from_port'),
    to: integer('to_port'),
    system: integer('system'),
    job: integer('job'),
    definition: json<LineDefinition>('definition').notNull(),
    beforeGate: flag('before_gate').notNull().default(true),
    note: text('note').notNull().default(''),
  },
  (t) => [index('hose_lines_by_build').on(t.build)],
);

export const hoseLengths = sqliteTable('hose_lengths', {
  ...recordColumns,
  hose: text('hose').notNull(),
  boreMm: real('bore_mm'),
  lengthMm: integer('length_mm').notNull(),
  count: integer('count').notNull(),
  note: text('note').notNull().default(''),
});

export const billParts = sqliteTable(
  'bill_parts',
  { ...recordColumns, item: text('item').notNull(), part: integer('part').notNull() },
  (t) => [index('bill_parts_by_build').on(t.build)],
);

export const people = sqliteTable('people', {
  ...recordColumns,
  name: text('name').notNull(),
  windows: json<WeekWindow[]>('windows').notNull().default([]),
  note: text('note').notNull().default(''),
});

export const calendarDays = sqliteTable(
  'calendar_days',
  {
    ...recordColumns,
    on: text('on_day').notNull(),
    until: text('until_day'),
    person: integer('person'),
    windows: json<DayWindow[]>('windows').notNull().default([]),
    note: text('note').notNull().default(''),
  },
  (t) => [index('calendar_days_by_build').on(t.build)],
);

export const incomes = sqliteTable(
  'incomes',
  {
    ...recordColumns,
    name: text('name').notNull(),
    amountMinor: integer('amount_minor').notNull(),
    every: text('every').$type<'once' | 'month'>().notNull(),
    from: text('from_day').notNull(),
    until: text('until_day'),
    note: text('note').notNull().default(''),
  },
  (t) => [index('incomes_by_build').on(t.build)],
);

export const cashCounts = sqliteTable(
  'cash_counts',
  {
    ...recordColumns,
    on: text('on_day').notNull(),
    cashMinor: integer('cash_minor').notNull(),
    floorMinor: integer('floor_minor').notNull(),
    note: text('note').notNull().default(''),
  },
  (t) => [index('cash_counts_by_build').on(t.build)],
);

export const offers = sqliteTable(
  'offers',
  {
    ...recordColumns,
    part: integer('part').notNull(),
    vendor: integer('vendor').notNull(),
    fromMilli: integer('from_milli').notNull(),
    eachE4: integer('each_e4').notNull(),
    currency: text('currency').notNull(),
    until: text('until_day'),
    note: text('note').notNull().default(''),
  },
  (t) => [index('offers_by_build').on(t.build)],
);

export const variants = sqliteTable(
  'variants',
  {
    ...recordColumns,
    name: text('name').notNull(),
    changes: json<VariantChange[]>('changes').notNull().default([]),
    note: text('note').notNull().default(''),
  },
  (t) => [index('variants_by_build').on(t.build)],
);

export const baselines = sqliteTable(
  'baselines',
  {
    ...recordColumns,
    name: text('name').notNull(),
    on: text('on_day').notNull(),
    rows: json<BaselineRow[]>('rows').notNull(),
    note: text('note').notNull().default(''),
  },
  (t) => [index('baselines_by_build').on(t.build)],
);

export const budgetLines = sqliteTable('budget_lines', {
  ...recordColumns,
  name: text('name').notNull(),
  system: integer('system'),
  phase: integer('phase'),
});

export const savedViews = sqliteTable('saved_views', {
  ...recordColumns,
  name: text('name').notNull(),
  screen: text('screen').notNull(),
  view: text('view').notNull(),
});

export const rates = sqliteTable(
  'rates',
  {
    ...recordColumns,
    currency: text('currency').notNull(),
    on: text('on_day').notNull(),
    rate: text('rate').notNull(),
    source: text('source').notNull().default(''),
  },
  (t) => [index('rates_by_currency').on(t.currency, t.on)],
);
