import type { RecordKind } from '../contract/records.ts';
import { factName } from '../fit/checks/fact-names.ts';
import { ruleOf } from '../fit/kept/declared.ts';
import { readPort } from '../fit/kept/joined.ts';
import { askedPaths, thingsOf } from '../fit/kept/paths.ts';
import { readFitValue } from '../fit/kept/read-value.ts';
import type { FitValue, KeptConnection, KeptDeclaredFit, KeptSide } from '../fit/kept/records.ts';
import type { PortRole } from '../fit/port.ts';
import { Refusal } from '../refusal.ts';
import type { Connection } from '../workbook/store/connection.ts';
import type { RecordTable } from '../workbook/store/edits.ts';
import { listRecords, needRecord, type RecordValuesRow, spokenTable } from '../workbook/store/record-tables.ts';

const refuse = (message: string, field: string, accepted: string): Refusal =>
  new Refusal('bad-input', `${message} Nothing was changed.`, { field, accepted });

/** @throws Refusal naming the field, with ways to write a port. */
function checkDesignation(designation: string, role: PortRole, field: string): void {
  const read = readPort(designation, role);
  if (!read.ok) throw refuse(`“${designation}” can't be read: ${read.message}.`, field, read.write.join(', '));
}

/** A record of the build that is in use. */
function needOfBuild(
  connection: Connection,
  build: number | null,
  table: RecordTable,
  id: number,
  field: string,
): RecordValuesRow {
  const record = needRecord(connection, table, id, field);
  if (build !== null && record.build !== build) {
    throw refuse(
      `The ${spokenTable(table)} ${id} belongs to another build.`,
      field,
      `a ${spokenTable(table)} of this build`,
    );
  }
  return record;
}

function needPortInUse(connection: Connection, build: number | null, id: number, field: string): void {
  const port = needOfBuild(connection, build, 'ports', id, field);
  if (port.retiredOn === null) return;
  throw new Refusal('retired', `The port ${String(port['name'])} was retired. Nothing was changed.`, {
    field,
    accepted: 'a port in use; bring this one back first',
  });
}

interface Sides {
  readonly one: KeptSide;
  readonly other: KeptSide;
  readonly role: PortRole;
}

/**
 * What the two sides of a connection must be: exactly one of a port and a text each, readable, and not the same port.
 * @throws Refusal `bad-input` or `not-found` naming `one` or `other`
 */
export function checkSides(connection: Connection, build: number | null, { one, other, role }: Sides): void {
  for (const [field, side] of [
    ['one', one],
    ['other', other],
  ] as const) {
    const isTyped = side.typed !== '';
    if (side.port !== null && isTyped) {
      throw refuse('A side is either a port or typed, not both.', field, 'a port, or a designation typed');
    }
    if (side.port !== null) needPortInUse(connection, build, side.port, `${field}.port`);
    else if (isTyped) checkDesignation(side.typed, role, `${field}.typed`);
    else throw refuse('A side of the connection is empty.', field, 'a port, or a designation such as M14x1.5 male');
  }
  if (one.port !== null && one.port === other.port) {
    throw refuse('A port can’t join itself.', 'other.port', 'another port of this build');
  }
}

/**
 * What a declared fit must be: a rule that can be read, part lines of the build for things that it is about, and values
 * that its paths can take.
 * @throws Refusal `bad-input` or `not-found` naming the field
 */
export function checkDeclaredFit(
  connection: Connection,
  build: number | null,
  fit: Pick<KeptDeclaredFit, 'rule' | 'shipped' | 'things'> & { readonly values: readonly FitValue[] },
): void {
  const asked = askedPaths(ruleOf(fit));
  const things = thingsOf(asked);
  for (const [thing, part] of Object.entries(fit.things)) {
    const field = `things.${thing}`;
    if (!things.includes(thing)) {
      throw refuse(`The fit asks nothing about “${thing}”.`, field, `one of ${things.join(', ')}`);
    }
    needOfBuild(connection, build, 'parts', part, field);
  }
  const seen = new Set<string>();
  fit.values.forEach((value, index) => {
    const field = `values.${index}`;
    const known = asked.find(({ path }) => path === value.path);
    if (known === undefined) {
      const accepted = `one of ${asked.map(({ path }) => path).join(', ')}`;
      throw refuse(`The fit doesn’t ask for “${value.path}”.`, `${field}.path`, accepted);
    }
    if (seen.has(value.path)) {
      throw refuse(`“${factName(value.path) ?? value.path}” stands twice.`, `${field}.path`, 'each path once');
    }
    seen.add(value.path);
    readFitValue(known, value, `${field}.value`);
  });
}

/** What ports, connections and declared fits must be besides their shapes. `values` is the record as it would stand. */
export function checkFitRecord(
  connection: Connection,
  kind: RecordKind,
  build: number | null,
  values: Readonly<Record<string, unknown>>,
): void {
  if (kind === 'port') checkDesignation(String(values['designation']), values['role'] as PortRole, 'designation');
  if (kind === 'connection') {
    checkSides(connection, build, values as unknown as Sides);
    const adapter = values['adapter'] as KeptConnection['adapter'];
    for (const part of adapter?.parts ?? []) needOfBuild(connection, build, 'parts', part, 'adapter.parts');
  }
  if (kind === 'declaredFit') checkDeclaredFit(connection, build, values as unknown as KeptDeclaredFit);
}

const sideIs = "(json_extract(one, '$.port') = ? OR json_extract(other, '$.port') = ?)";

/**
 * Refuses to retire a port that a connection or a line still joins.
 * @throws Refusal `in-use` naming them
 */
export function checkPortUnused(connection: Connection, port: RecordValuesRow): void {
  const connections = listRecords(connection, 'connections', `retired_on IS NULL AND ${sideIs}`, port.id, port.id);
  const lines = listRecords(
    connection,
    'hoseLines',
    'retired_on IS NULL AND (from_port = ? OR to_port = ?)',
    port.id,
    port.id,
  );
  const users = [...connections.map(({ title }) => String(title)), ...lines.map(({ name }) => String(name))];
  if (users.length === 0) return;
  throw new Refusal(
    'in-use',
    `The port ${String(port['name'])} is joined by ${users.map((name) => `“${name}”`).join(', ')}. Nothing was changed.`,
    {
      field: 'id',
      accepted: 'a port that nothing joins; give these another port or retire them first',
      detail: { connections: connections.map(({ id }) => id), lines: lines.map(({ id }) => id) },
    },
  );
}
