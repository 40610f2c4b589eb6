import { getTableColumns, getTableName } from 'drizzle-orm';
import type { SQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { RecordKind } from '../../contract/records.ts';
import type { PayloadValue } from '../../ledger/entry.ts';
import { Refusal } from '../../refusal.ts';
import * as schema from '../schema/index.ts';
import { all, type Connection, first } from './connection.ts';
import type { RecordTable } from './edits.ts';

/** Which table holds which kind of record, and how a value becomes a column and back. One home for both directions. */

const tables: Record<RecordTable, SQLiteTable> = {
  builds: schema.builds,
  systems: schema.systems,
  phases: schema.phases,
  vendors: schema.vendors,
  bins: schema.bins,
  jobs: schema.jobs,
  tools: schema.tools,
  decisions: schema.decisions,
  boltGroups: schema.boltGroups,
  budgetLines: schema.budgetLines,
  savedCases: schema.savedCases,
  targets: schema.targets,
  checks: schema.checks,
  measuringSheets: schema.measuringSheets,
  ports: schema.ports,
  connections: schema.connections,
  declaredFits: schema.declaredFits,
  hoseLines: schema.hoseLines,
  hoseLengths: schema.hoseLengths,
  billParts: schema.billParts,
  people: schema.people,
  calendarDays: schema.calendarDays,
  incomes: schema.incomes,
  cashCounts: schema.cashCounts,
  offers: schema.offers,
  variants: schema.variants,
  baselines: schema.baselines,
  savedViews: schema.savedViews,
  rates: schema.rates,
  parts: schema.parts,
  lots: schema.lots,
  orders: schema.orders,
  orderLines: schema.orderLines,
};

export const tableOfKind: Record<RecordKind, RecordTable> = {
  build: 'builds',
  system: 'systems',
  phase: 'phases',
  vendor: 'vendors',
  bin: 'bins',
  job: 'jobs',
  tool: 'tools',
  decision: 'decisions',
  boltGroup: 'boltGroups',
  budgetLine: 'budgetLines',
  savedCase: 'savedCases',
  target: 'targets',
  check: 'checks',
  measuringSheet: 'measuringSheets',
  port: 'ports',
  connection: 'connections',
  declaredFit: 'declaredFits',
  hoseLine: 'hoseLines',
  hoseLength: 'hoseLengths',
  billPart: 'billParts',
  person: 'people',
  calendarDay: 'calendarDays',
  income: 'incomes',
  cashCount: 'cashCounts',
  offer: 'offers',
  variant: 'variants',
  baseline: 'baselines',
  savedView: 'savedViews',
  rate: 'rates',
};

interface TablePlan {
  readonly name: string;
  readonly columns: ReadonlyMap<string, SQLiteColumn>;
  readonly select: string;
}

const plans = new Map<RecordTable, TablePlan>();

function planOf(table: RecordTable): TablePlan {
  let plan = plans.get(table);
  if (plan === undefined) {
    const columns = new Map(Object.entries(getTableColumns(tables[table]) as Record<string, SQLiteColumn>));
    const list = [...columns].map(([property, column]) => `"${column.name}" AS "${property}"`).join(', ');
    plan = { name: getTableName(tables[table]), columns, select: `SELECT ${list} FROM ${getTableName(tables[table])}` };
    plans.set(table, plan);
  }
  return plan;
}

export type RecordValuesRow = Record<string, PayloadValue> & {
  id: number;
  build: number | null;
  revision: number;
  gone: boolean;
  retiredOn: string | null;
};

function toColumn(column: SQLiteColumn, value: unknown): unknown {
  return value === null || value === undefined ? null : column.mapToDriverValue(value);
}

function fromRow(plan: TablePlan, row: Record<string, unknown>): RecordValuesRow {
  const values: Record<string, unknown> = {};
  for (const [property, column] of plan.columns) {
    const raw = row[property];
    values[property] = raw === null || raw === undefined ? null : column.mapFromDriverValue(raw);
  }
  return values as RecordValuesRow;
}

/** One record, gone or not; undefined when there never was one. */
export function readRecord(connection: Connection, table: RecordTable, id: number): RecordValuesRow | undefined {
  const plan = planOf(table);
  const row = first<Record<string, unknown>>(connection, `${plan.select} WHERE id = ?`, id);
  return row === undefined ? undefined : fromRow(plan, row);
}

const spoken: Record<RecordTable, string> = {
  builds: 'build',
  systems: 'system',
  phases: 'phase',
  vendors: 'vendor',
  bins: 'bin',
  jobs: 'job',
  tools: 'tool',
  decisions: 'decision',
  boltGroups: 'bolt group',
  budgetLines: 'budget line',
  savedCases: 'saved case',
  targets: 'target',
  checks: 'check',
  measuringSheets: 'measuring sheet',
  ports: 'port',
  connections: 'connection',
  declaredFits: 'fit',
  hoseLines: 'line',
  hoseLengths: 'length of hose',
  billParts: 'thing of a bill',
  people: 'person',
  calendarDays: 'day of the calendar',
  incomes: 'income',
  cashCounts: 'cash count',
  offers: 'offer',
  variants: 'variant',
  baselines: 'baseline',
  savedViews: 'saved view',
  rates: 'exchange rate',
  parts: 'part line',
  lots: 'lot',
  orders: 'order',
  orderLines: 'order line',
};
export const spokenTable = (table: RecordTable): string => spoken[table];

/** One record that stands. @throws Refusal `not-found`. */
export function needRecord(connection: Connection, table: RecordTable, id: number, field?: string): RecordValuesRow {
  const record = readRecord(connection, table, id);
  if (record === undefined || record.gone) {
    throw new Refusal('not-found', `There is no ${spoken[table]} number ${id}. Nothing was changed.`, {
      ...(field === undefined ? {} : { field }),
      accepted: `the number of a ${spoken[table]} of this workbook`,
    });
  }
  return record;
}

/** Records of a table that stand. `where` is our own SQL over column names, never text from outside. */
export function listRecords(
  connection: Connection,
  table: RecordTable,
  where = '1',
  ...values: unknown[]
): RecordValuesRow[] {
  const plan = planOf(table);
  return all<Record<string, unknown>>(
    connection,
    `${plan.select} WHERE gone = 0 AND (${where}) ORDER BY id`,
    ...values,
  ).map((row) => fromRow(plan, row));
}

/** Inserts a record and returns its id. Only `act` calls this: the entry that goes with it is written there. */
export function insertRecord(connection: Connection, table: RecordTable, values: Record<string, unknown>): number {
  const plan = planOf(table);
  const given = Object.entries(values).filter(([property]) => plan.columns.has(property) && property !== 'id');
  const names = given.map(([property]) => `"${(plan.columns.get(property) as SQLiteColumn).name}"`);
  const sql = `INSERT INTO ${plan.name} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`;
  const result = connection
    .prepare(sql)
    .run(...given.map(([property, value]) => toColumn(plan.columns.get(property) as SQLiteColumn, value)));
  return Number(result.lastInsertRowid);
}

/** Writes some columns of a record and counts its revision up. Only `act` calls this. */
export function writeRecord(
  connection: Connection,
  table: RecordTable,
  id: number,
  values: Readonly<Record<string, unknown>>,
): void {
  const plan = planOf(table);
  const given = Object.entries(values).filter(([property]) => plan.columns.has(property) && property !== 'id');
  const sets = given.map(([property]) => `"${(plan.columns.get(property) as SQLiteColumn).name}" = ?`);
  connection
    .prepare(`UPDATE ${plan.name} SET ${[...sets, 'revision = revision + 1'].join(', ')} WHERE id = ?`)
    .run(...given.map(([property, value]) => toColumn(plan.columns.get(property) as SQLiteColumn, value)), id);
}

/** Property names that a table has, besides those that every record has. */
export function ownProperties(table: RecordTable): string[] {
  const shared = new Set(['id', 'build', 'revision', 'gone', 'retiredOn']);
  return [...planOf(table).columns.keys()].filter((property) => !shared.has(property));
}
