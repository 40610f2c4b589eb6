import type { RecordKind } from '../../../core/contract/records.ts';
import { buildKinds } from '../../../core/contract/records.ts';

/** The kinds of record that have their place here; jobs are planned on the plan, views belong to their sheets. */
export const listKinds = [
  'vendor',
  'bin',
  'system',
  'phase',
  'tool',
  'person',
  'calendarDay',
  'decision',
  'boltGroup',
  'budgetLine',
  'build',
  'rate',
] as const satisfies readonly RecordKind[];
export type ListKind = (typeof listKinds)[number];

/** One field of a record's form; its name is the one that the workbook uses. */
export interface FieldSpec {
  readonly name: string;
  readonly label: string;
  readonly type:
    | 'text'
    | 'long'
    | 'day'
    | 'currency'
    | 'whole'
    | 'money'
    | 'system'
    | 'phase'
    | 'job'
    | 'part'
    | 'person'
    | 'week'
    | 'hours'
    | 'flag'
    | 'method'
    | 'torque'
    | 'options'
    | 'rate';
  readonly required?: boolean;
  readonly longest?: number;
  readonly description?: string;
  /** Bounds and unit of a whole number. */
  readonly least?: number;
  readonly most?: number;
  readonly unit?: string;
  /** The words for choosing none, where none means something. */
  readonly none?: string;
  /** Stands in the table too. */
  readonly inTable?: boolean;
}

export interface KindSpec {
  /** The words of the tab, and of one record in a sentence. */
  readonly title: string;
  readonly one: string;
  readonly many: string;
  /** What belongs here, for the empty list. */
  readonly purpose: string;
  /** The field that names a record. */
  readonly nameField: string;
  readonly fields: readonly FieldSpec[];
}

const note: FieldSpec = { name: 'note', label: 'Note', type: 'long', longest: 20_000 };
const beforeGate: FieldSpec = { name: 'beforeGate', label: 'Stands before the hoist check', type: 'flag' };
const named = (longest: number): FieldSpec => ({ name: 'name', label: 'Name', type: 'text', required: true, longest });

export const kindSpecs: Readonly<Record<ListKind, KindSpec>> = {
  vendor: {
    title: 'Vendors',
    one: 'vendor',
    many: 'vendors',
    purpose: 'Whom you buy from, with the account, the currency and the days that they usually take.',
    nameField: 'name',
    fields: [
      named(120),
      { name: 'contact', label: 'Contact', type: 'text', longest: 400, inTable: true },
      { name: 'site', label: 'Site', type: 'text', longest: 400 },
      { name: 'account', label: 'Account number', type: 'text', longest: 80, inTable: true },
      { name: 'currency', label: 'Currency', type: 'currency', inTable: true },
      {
        name: 'leadDays',
        label: 'Usual days to arrive',
        type: 'whole',
        least: 0,
        most: 2000,
        unit: 'days',
        inTable: true,
      },
      {
        name: 'shippingMinor',
        label: 'Shipping of an order',
        type: 'money',
        description: 'In the vendor’s own currency; the buying plan counts it once an order.',
      },
      {
        name: 'freeFromMinor',
        label: 'Shipping is free from',
        type: 'money',
        description: 'Goods of one order, in the vendor’s own currency.',
      },
      note,
    ],
  },
  bin: {
    title: 'Bins',
    one: 'bin',
    many: 'bins',
    purpose: 'Shelves, boxes and drawers, so that a part that came in can be found again.',
    nameField: 'name',
    fields: [named(80), { name: 'place', label: 'Where it is', type: 'text', longest: 200, inTable: true }, note],
  },
  system: {
    title: 'Systems',
    one: 'system',
    many: 'systems',
    purpose: 'What the engine is made of: fuel, cooling, ignition. Costs and counts are summed by system.',
    nameField: 'name',
    fields: [named(80)],
  },
  phase: {
    title: 'Phases',
    one: 'phase',
    many: 'phases',
    purpose: 'The stretches of the work, one after the other, each with what must be true at its end.',
    nameField: 'name',
    fields: [
      named(80),
      { name: 'gate', label: 'What must be true at its end', type: 'text', longest: 400, inTable: true },
      { name: 'plannedStart', label: 'Planned start', type: 'day', inTable: true },
      { name: 'plannedEnd', label: 'Planned end', type: 'day', inTable: true },
    ],
  },
  tool: {
    title: 'Tools',
    one: 'tool',
    many: 'tools',
    purpose: 'Tools that jobs wait for: where they are, when they are due back, what they cost to hire.',
    nameField: 'name',
    fields: [
      named(120),
      { name: 'whereabouts', label: 'Where it is', type: 'text', longest: 200, inTable: true },
      { name: 'dueOn', label: 'Due', type: 'day', inTable: true },
      { name: 'hireMinor', label: 'Hire', type: 'money', inTable: true },
      note,
    ],
  },
  person: {
    title: 'People',
    one: 'person',
    many: 'people',
    purpose: 'Who works on the builds and when. Without anybody here, one builder has the hours of the settings.',
    nameField: 'name',
    fields: [
      named(80),
      {
        name: 'windows',
        label: 'Hours of the week',
        type: 'week',
        description: 'Such as Tue 18:30-21, Sat 9-15. Left empty: the hours of the settings.',
        inTable: true,
      },
      note,
    ],
  },
  calendarDay: {
    title: 'Calendar',
    one: 'day of the calendar',
    many: 'days of the calendar',
    purpose: 'Days off and extra days: they go before the hours of the week, for everybody or one person.',
    nameField: 'on',
    fields: [
      { name: 'on', label: 'First day', type: 'day', required: true },
      { name: 'until', label: 'Last day', type: 'day', description: 'Left empty: the one day.' },
      { name: 'person', label: 'Who', type: 'person', none: 'Everybody', inTable: true },
      {
        name: 'windows',
        label: 'Hours instead',
        type: 'hours',
        description: 'Such as 9-12, 13:30-17. Left empty: off.',
        inTable: true,
      },
      { ...note, inTable: true },
    ],
  },
  decision: {
    title: 'Decisions',
    one: 'decision',
    many: 'decisions',
    purpose: 'Questions that parts and jobs wait for, with the options and what each would cost.',
    nameField: 'title',
    fields: [
      { name: 'title', label: 'What is to be decided', type: 'text', required: true, longest: 200 },
      { name: 'options', label: 'Options', type: 'options', inTable: true },
      { name: 'owner', label: 'Who decides', type: 'text', longest: 80, inTable: true },
      { name: 'neededBy', label: 'Needed by', type: 'day', inTable: true },
      beforeGate,
      note,
    ],
  },
  boltGroup: {
    title: 'Bolt groups',
    one: 'bolt group',
    many: 'bolt groups',
    purpose: 'Bolts that are tightened together, with the figure from the maker’s sheet and how far they are.',
    nameField: 'name',
    fields: [
      named(120),
      { name: 'count', label: 'Bolts in the group', type: 'whole', required: true, least: 1, most: 1000 },
      { name: 'method', label: 'Method', type: 'method', required: true, inTable: true },
      { name: 'torqueMilliNm', label: 'Final torque', type: 'torque', inTable: true },
      { name: 'angleDeg', label: 'Angle after torque', type: 'whole', least: 0, most: 720, unit: '°' },
      {
        name: 'source',
        label: 'Source of the figure',
        type: 'text',
        longest: 200,
        description: 'The maker’s sheet and page where it was read.',
        inTable: true,
      },
      { name: 'sequence', label: 'Sequence', type: 'text', longest: 400 },
      {
        name: 'lubricant',
        label: 'Lubricant',
        type: 'text',
        longest: 120,
        description: 'A torque holds only for the lubricant it was given for.',
      },
      { name: 'system', label: 'System', type: 'system' },
      { name: 'job', label: 'Job', type: 'job' },
      { name: 'part', label: 'Part line', type: 'part' },
      beforeGate,
      note,
    ],
  },
  budgetLine: {
    title: 'Budget lines',
    one: 'budget line',
    many: 'budget lines',
    purpose: 'What money is set aside for; the amounts are entered on the Money page.',
    nameField: 'name',
    fields: [
      named(120),
      { name: 'system', label: 'System', type: 'system', inTable: true },
      { name: 'phase', label: 'Phase', type: 'phase', inTable: true },
    ],
  },
  build: {
    title: 'Builds',
    one: 'build',
    many: 'builds',
    purpose: 'One build for each engine.',
    nameField: 'name',
    fields: [
      named(120),
      { name: 'car', label: 'Car', type: 'text', longest: 200, inTable: true },
      { name: 'engine', label: 'Engine', type: 'text', longest: 200, inTable: true },
      {
        name: 'gateName',
        label: 'What the day is called',
        type: 'text',
        required: true,
        longest: 40,
        description: 'Such as engine-in.',
      },
      { name: 'startedOn', label: 'Started on', type: 'day', required: true, inTable: true },
      { name: 'targetOn', label: 'Aimed at', type: 'day', inTable: true },
      note,
    ],
  },
  rate: {
    title: 'Exchange rates',
    one: 'exchange rate',
    many: 'exchange rates',
    purpose: 'What one unit of a foreign currency was worth on a day, with where you read it.',
    nameField: 'currency',
    fields: [
      { name: 'currency', label: 'Currency', type: 'currency', required: true },
      { name: 'on', label: 'Day', type: 'day', required: true, inTable: true },
      { name: 'rate', label: 'Rate', type: 'rate', required: true, inTable: true },
      { name: 'source', label: 'Source', type: 'text', longest: 120, inTable: true },
    ],
  },
};

export const isListKind = (text: string | undefined): text is ListKind => listKinds.some((kind) => kind === text);

/** Whether records of the kind belong to one build. */
export const ofOneBuild = (kind: RecordKind): boolean => (buildKinds as readonly string[]).includes(kind);

/** What a new record of a kind starts with. */
export function startValues(kind: ListKind, today: string): Record<string, unknown> {
  const empty = Object.fromEntries(
    kindSpecs[kind].fields.map(({ name, type }) => [
      name,
      type === 'text' || type === 'long' ? '' : ['options', 'week', 'hours'].includes(type) ? [] : null,
    ]),
  );
  switch (kind) {
    case 'boltGroup':
      return { ...empty, method: 'torque', beforeGate: true };
    case 'decision':
      return { ...empty, beforeGate: true };
    case 'build':
      return { ...empty, gateName: 'engine-in', startedOn: today };
    case 'rate':
    case 'calendarDay':
      return { ...empty, on: today };
    default:
      return empty;
  }
}
