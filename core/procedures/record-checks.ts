import { findCalculator } from '../calculators/index.ts';
import { checkPlan } from '../checks/plan-checks.ts';
import type { CheckPlan } from '../checks/source.ts';
import { checkTarget } from '../checks/target-terms.ts';
import { type RecordKind, type RecordValues, recordValues } from '../contract/records.ts';
import { checkSheet } from '../measuring/sheet-rules.ts';
import { isCurrency } from '../money/currency.ts';
import { Refusal } from '../refusal.ts';
import { customSequence } from '../torque/sequence.ts';
import { standingReadings } from '../workbook/store/bench.ts';
import type { Connection } from '../workbook/store/connection.ts';
import type { RecordTable } from '../workbook/store/edits.ts';
import {
  listRecords,
  needRecord,
  type RecordValuesRow,
  readRecord,
  spokenTable,
  tableOfKind,
} from '../workbook/store/record-tables.ts';
import { checkBuyingRecord } from './buying-checks.ts';
import { inputRefusal } from './handler.ts';
import { checkBillPart, checkHoseLength, checkLine } from './plumbing-checks.ts';
import { checkPlanning } from './record-planning-checks.ts';

/** What a new record starts with where nothing was typed. */
const defaults: { [K in RecordKind]: Record<string, unknown> } = {
  build: { car: '', engine: '', gateName: 'engine-in', targetOn: null, note: '' },
  system: { sort: 0 },
  phase: { sort: 0, gate: '', plannedStart: null, plannedEnd: null },
  vendor: {
    site: '',
    contact: '',
    account: '',
    currency: null,
    leadDays: null,
    shippingMinor: null,
    freeFromMinor: null,
    note: '',
  },
  bin: { place: '', note: '' },
  job: {
    phase: null,
    system: null,
    sort: 0,
    minutesGuess: null,
    minutesLow: null,
    minutesHigh: null,
    tools: [],
    earlier: [],
    lags: [],
    notBefore: null,
    oneSitting: false,
    hands: true,
    person: null,
    place: '',
    consumables: '',
    beforeGate: true,
    needsSignOff: false,
    note: '',
  },
  tool: { whereabouts: '', dueOn: null, hireMinor: null, note: '' },
  decision: { options: [], owner: '', neededBy: null, beforeGate: true, note: '' },
  boltGroup: {
    part: null,
    job: null,
    system: null,
    method: 'torque',
    torqueMilliNm: null,
    angleDeg: null,
    source: '',
    sequence: '',
    lubricant: '',
    thread: '',
    boltClass: '',
    stages: [],
    pattern: 'star',
    rows: 2,
    order: [],
    sourceKind: 'unknown',
    beforeGate: true,
    note: '',
  },
  savedCase: { units: {}, note: '' },
  target: { unit: '', source: '', note: '' },
  check: { system: null, shipped: '', beforeGate: true, note: '' },
  measuringSheet: {
    quantity: 'other',
    part: null,
    job: null,
    system: null,
    readings: ['reading'],
    instrument: '',
    resolution: null,
    uncertainty: null,
    expansionPpm: null,
    limits: { least: null, most: null, source: '' },
    less: null,
    clearance: { least: null, most: null, source: '' },
    fit: null,
    beforeGate: true,
    note: '',
  },
  port: { part: null, place: '', role: 'fluid', medium: '', sort: 0, note: '' },
  connection: {
    role: 'fluid',
    medium: '',
    pressureBar: null,
    accepted: null,
    adapter: null,
    beforeGate: true,
    note: '',
  },
  declaredFit: { shipped: '', rule: null, things: {}, values: [], accepted: null, beforeGate: true, note: '' },
  hoseLine: { from: null, to: null, system: null, job: null, definition: {}, beforeGate: true, note: '' },
  hoseLength: { boreMm: null, count: 1, note: '' },
  billPart: {},
  person: { windows: [], note: '' },
  calendarDay: { until: null, person: null, windows: [], note: '' },
  income: { every: 'month', until: null, note: '' },
  cashCount: { floorMinor: 0, note: '' },
  offer: { fromMilli: 1000, until: null, note: '' },
  variant: { changes: [], note: '' },
  baseline: { note: '' },
  budgetLine: { system: null, phase: null },
  savedView: {},
  rate: { source: '' },
};

/** The values of a record as the contract wants them; `partial` for a change. @throws Refusal `bad-input` naming the field. */
export function readValues(
  kind: RecordKind,
  values: Record<string, unknown>,
  partial: boolean,
): Record<string, unknown> {
  const schema = recordValues[kind];
  const strict = partial ? schema.partial().strict() : schema.strict();
  const read = strict.safeParse(partial ? values : { ...defaults[kind], ...values });
  if (!read.success) {
    const data = inputRefusal(read.error.issues);
    throw new Refusal(data.code, data.message, {
      field: data.field ?? '',
      accepted: data.accepted ?? '',
      detail: data.detail,
    });
  }
  return Object.fromEntries(Object.entries(read.data).filter(([, value]) => value !== undefined));
}

const pointsTo: Partial<Record<string, RecordTable>> = {
  system: 'systems',
  phase: 'phases',
  job: 'jobs',
  part: 'parts',
  less: 'measuringSheets',
  from: 'ports',
  to: 'ports',
  person: 'people',
};

/** Refuses a value that names a record which isn't there, or that belongs to another build. */
export function checkLinks(
  connection: Connection,
  build: number | null,
  values: Readonly<Record<string, unknown>>,
): void {
  const check = (table: RecordTable, id: unknown, field: string): void => {
    if (typeof id !== 'number') return;
    const record = needRecord(connection, table, id, field);
    if (build !== null && record.build !== null && record.build !== build) {
      throw new Refusal('bad-input', `The ${spokenTable(table)} ${id} belongs to another build. Nothing was changed.`, {
        field,
        accepted: `a ${spokenTable(table)} of this build`,
      });
    }
  };
  for (const [field, table] of Object.entries(pointsTo)) if (table !== undefined) check(table, values[field], field);
  check('vendors', values['vendor'], 'vendor');
  checkPersonWorks(connection, values['person']);
  for (const [field, table] of [
    ['tools', 'tools'],
    ['earlier', 'jobs'],
  ] as const) {
    const ids = values[field];
    if (Array.isArray(ids)) for (const id of ids) check(table, id, field);
  }
  const code = values['currency'];
  if (typeof code === 'string') checkCurrency(code, 'currency');
  const start = values['plannedStart'];
  const end = values['plannedEnd'];
  if (typeof start === 'string' && typeof end === 'string' && end < start) {
    throw new Refusal(
      'bad-input',
      `The planned end ${end} is before the planned start ${start}. Nothing was changed.`,
      {
        field: 'plannedEnd',
        accepted: `a day from ${start} on`,
      },
    );
  }
}

/** Refuses somebody who no longer works here. */
function checkPersonWorks(connection: Connection, id: unknown): void {
  if (typeof id !== 'number') return;
  const person = needRecord(connection, 'people', id, 'person');
  if (person.retiredOn === null) return;
  throw new Refusal('retired', `${person['name']} was retired on ${person.retiredOn}. Nothing was changed.`, {
    field: 'person',
    accepted: 'a person who is in use, or none for anyone',
  });
}

/** What some kinds must be besides their shapes. `values` is the record as it would stand. */
export function checkMeaning(
  connection: Connection,
  kind: RecordKind,
  values: Readonly<Record<string, unknown>>,
): void {
  checkPlanning(kind, values);
  checkBuyingRecord(kind, values);
  if (kind === 'target') checkTarget(String(values['name']), String(values['value']), String(values['unit']));
  if (kind === 'measuringSheet') {
    checkSheet(values as unknown as Parameters<typeof checkSheet>[0]);
    checkTakenOff(connection, values);
  }
  if (kind === 'boltGroup' && values['pattern'] === 'custom') {
    customSequence(values['order'] as readonly number[], Number(values['count']));
  }
  if (kind === 'hoseLine') checkLine(connection, values as unknown as RecordValues['hoseLine']);
  if (kind === 'hoseLength') checkHoseLength(values as unknown as RecordValues['hoseLength']);
  if (kind === 'billPart') checkBillPart(connection, values as unknown as RecordValues['billPart']);
  if (kind === 'savedCase') checkCase(values as unknown as RecordValues['savedCase']);
  if (kind !== 'check') return;
  const plan = values as unknown as CheckPlan;
  checkPlan(plan);
  for (const [name, source] of Object.entries(plan.inputs)) {
    if (source.from === 'fact' && source.part !== null) needRecord(connection, 'parts', source.part, `inputs.${name}`);
    if (source.from === 'measurement') needRecord(connection, 'measuringSheets', source.sheet, `inputs.${name}`);
  }
}

/** Refuses a saved case of a calculator that isn't there, or with inputs or outputs that it doesn't have. */
function checkCase({ calculator: id, inputs, units }: RecordValues['savedCase']): void {
  const calculator = findCalculator(id);
  if (calculator === undefined) {
    throw new Refusal('bad-input', `There is no calculator “${id}”. Nothing was changed.`, {
      field: 'calculator',
      accepted: 'a calculator of the list, such as B1',
    });
  }
  const known = { inputs: Object.keys(calculator.inputs), units: Object.keys(calculator.outputs) };
  for (const [field, names] of [
    ['inputs', Object.keys(inputs)],
    ['units', Object.keys(units)],
  ] as const) {
    const other = names.find((name) => !known[field].includes(name));
    if (other === undefined) continue;
    const what = field === 'inputs' ? 'input' : 'output';
    throw new Refusal('bad-input', `${calculator.id} has no ${what} “${other}”. Nothing was changed.`, {
      field: `${field}.${other}`,
      accepted: `the ${what}s ${known[field].join(', ')}`,
    });
  }
}

/** Refuses a sheet to be taken off that is the sheet itself, or that is kept in another unit. */
function checkTakenOff(connection: Connection, values: Readonly<Record<string, unknown>>): void {
  const less = values['less'];
  if (typeof less !== 'number') return;
  if (less === values['id']) {
    throw new Refusal('bad-input', "A sheet can't be taken off itself. Nothing was changed.", {
      field: 'less',
      accepted: 'another measuring sheet of this build',
    });
  }
  const other = needRecord(connection, 'measuringSheets', less, 'less');
  if (other['unit'] === values['unit']) return;
  throw new Refusal(
    'bad-input',
    `The sheet to be taken off is kept in ${other['unit']}, this one in ${values['unit']}. Nothing was changed.`,
    { field: 'less', accepted: `a measuring sheet in ${values['unit']}` },
  );
}

/** Refuses another unit for a sheet that has readings, or that another one is reckoned against: figures would change. */
export function checkSheetUnit(
  connection: Connection,
  record: RecordValuesRow,
  values: Readonly<Record<string, unknown>>,
): void {
  if (values['unit'] === undefined || values['unit'] === record['unit']) return;
  const read = standingReadings(connection, Number(record.build), undefined).get(record.id) ?? [];
  const others = listRecords(connection, 'measuringSheets', 'less = ? AND id <> ?', record.id, record.id);
  if (read.length + others.length === 0) return;
  throw new Refusal(
    'in-use',
    `The sheet has ${read.length > 0 ? 'readings' : 'a clearance reckoned from it'} in ${record['unit']}. Nothing was changed.`,
    {
      field: 'unit',
      accepted: `${record['unit']}; a reading may be typed in any unit, and a new sheet be kept in another`,
    },
  );
}

/** @throws Refusal `bad-input` for a code that ISO 4217 doesn't list. */
export function checkCurrency(code: string, field: string): void {
  if (isCurrency(code)) return;
  throw new Refusal('bad-input', `${code} is not a currency of ISO 4217. Nothing was changed.`, {
    field,
    accepted: 'three letters of ISO 4217, such as EUR or USD',
  });
}

const named: ReadonlySet<RecordKind> = new Set([
  'build',
  'system',
  'phase',
  'vendor',
  'bin',
  'tool',
  'budgetLine',
  'target',
  'person',
  'variant',
]);

/** Refuses a name that another record of the kind has, upper and lower case alike. */
export function checkName(
  connection: Connection,
  kind: RecordKind,
  build: number | null,
  name: unknown,
  self: number,
): void {
  if (!named.has(kind) || typeof name !== 'string') return;
  const taken = listRecords(
    connection,
    tableOfKind[kind],
    'lower(name) = lower(?) AND id <> ? AND retired_on IS NULL AND (build IS NULL OR build = ?)',
    name,
    self,
    build,
  );
  if (taken.length > 0) {
    throw new Refusal(
      'bad-input',
      `There is already a ${spokenTable(tableOfKind[kind])} called “${name}”. Nothing was changed.`,
      {
        field: 'name',
        accepted: 'a name that is not in use',
        detail: { existing: taken[0]?.id ?? 0 },
      },
    );
  }
}

/** Refuses a chain of earlier jobs that comes back to where it began, naming the way round. */
export function checkEarlier(connection: Connection, job: number, earlier: readonly number[]): void {
  const title = (id: number): string => String(readRecord(connection, 'jobs', id)?.['title'] ?? id);
  const seen = new Set<number>();
  const walk = (id: number, way: readonly number[]): void => {
    if (id === job) {
      const loop = [...way, id].map(title).join(' → ');
      throw new Refusal('bad-input', `These jobs would wait for each other: ${loop}. Nothing was changed.`, {
        field: 'earlier',
        accepted: 'jobs that do not wait for this one',
      });
    }
    if (seen.has(id)) return;
    seen.add(id);
    const next = readRecord(connection, 'jobs', id)?.['earlier'];
    if (Array.isArray(next)) for (const before of next) walk(Number(before), [...way, id]);
  };
  for (const id of earlier) walk(id, [job]);
}
