import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { CheckLimit, CheckSource, GivenData, TorqueStage } from '../../contract/records.ts';
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
    tools: json<number[]>('tools').notNull().default([]),
    earlier: json<number[]>('earlier').notNull().default([]),
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
