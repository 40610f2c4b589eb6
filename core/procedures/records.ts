import { buildKinds, type RecordKind, type RecordRow } from '../contract/records.ts';
import type { EntryDraft, EntryKind, EntryPayload } from '../ledger/entry.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { all, type Connection } from '../workbook/store/connection.ts';
import type { Edit } from '../workbook/store/edits.ts';
import {
  listRecords,
  needRecord,
  ownProperties,
  type RecordValuesRow,
  spokenTable,
  tableOfKind,
} from '../workbook/store/record-tables.ts';
import { subjectSums } from '../workbook/store/states.ts';
import { act, type Context, counted, needBuild, procedures } from './context.ts';
import { checkFitRecord, checkPortUnused } from './fit-records.ts';
import { checkEarlier, checkLinks, checkMeaning, checkName, checkSheetUnit, readValues } from './record-checks.ts';

const { records } = procedures;

type CountedKind = 'job' | 'tool' | 'decision' | 'boltGroup';
const countedKinds: Record<
  CountedKind,
  { subject: 'job' | 'tool' | 'decision' | 'bolt-group'; listed: EntryKind; dropped: EntryKind }
> = {
  job: { subject: 'job', listed: 'job-planned', dropped: 'job-dropped' },
  tool: { subject: 'tool', listed: 'tool-listed', dropped: 'tool-dropped' },
  decision: { subject: 'decision', listed: 'decision-listed', dropped: 'decision-dropped' },
  boltGroup: { subject: 'bolt-group', listed: 'bolts-listed', dropped: 'bolts-dropped' },
};
const isCounted = (kind: RecordKind): kind is CountedKind => kind in countedKinds;
const ofABuild = (kind: RecordKind): boolean => (buildKinds as readonly string[]).includes(kind);

const nameOf = (record: Readonly<Record<string, unknown>>): string =>
  String(record['name'] ?? record['title'] ?? record['currency'] ?? '');

/** Entry about a record: with its counts where the kind is counted, plain otherwise. */
function recordEntry(
  kind: RecordKind,
  on: string,
  build: number,
  id: number,
  did: string,
  name: string,
  more: EntryPayload = {},
): EntryDraft {
  const payload = { record: spokenTable(tableOfKind[kind]), did, name, ...more };
  return isCounted(kind)
    ? { kind: 'record', on, build, subjectKind: countedKinds[kind].subject, subject: id, payload }
    : { kind: 'record', on, build, payload };
}

/** Makes a record with the entry that lists it; imports and forms alike. Returns its id. */
export function createRecord(
  writer: ActWriter,
  kind: RecordKind,
  build: number | null,
  on: string,
  given: Record<string, unknown>,
): number {
  const { connection } = writer;
  const values = readValues(kind, given, false);
  checkLinks(connection, build, values);
  checkName(connection, kind, build, values['name'], 0);
  checkMeaning(connection, kind, values);
  checkFitRecord(connection, kind, build, values);
  if (kind === 'system' || kind === 'phase' || kind === 'job') {
    const siblings = listRecords(connection, tableOfKind[kind], 'build = ?', build);
    if (given['sort'] === undefined) values['sort'] = siblings.length * 10;
  }
  const made = writer.make(tableOfKind[kind], { ...values, build: ofABuild(kind) ? build : null });
  const name = nameOf(values);
  if (kind === 'job') checkEarlier(connection, made.id, (values['earlier'] as number[]) ?? []);
  if (isCounted(kind)) {
    const { subject, listed } = countedKinds[kind];
    const count = kind === 'boltGroup' ? Number(values['count']) * 1000 : 1000;
    writer.post(
      {
        kind: listed,
        on,
        build: build ?? 0,
        subjectKind: subject,
        subject: made.id,
        quantityMilli: count,
        payload: { record: kind, did: 'added', name },
      },
      [made.edit],
    );
  } else {
    writer.post(recordEntry(kind, on, build ?? 0, made.id, 'added', name), [made.edit]);
  }
  writer.made.push(made.id);
  return made.id;
}

export function changeRecord(
  writer: ActWriter,
  kind: RecordKind,
  record: RecordValuesRow,
  on: string,
  given: Record<string, unknown>,
): void {
  const { connection } = writer;
  const values = readValues(kind, given, true);
  checkLinks(connection, record.build, { plannedStart: record['plannedStart'], ...values });
  checkName(connection, kind, record.build, values['name'], record.id);
  checkMeaning(connection, kind, { ...record, ...values });
  checkFitRecord(connection, kind, record.build, { ...record, ...values });
  if (kind === 'measuringSheet') checkSheetUnit(connection, record, values);
  if (kind === 'job' && Array.isArray(values['earlier'])) {
    checkEarlier(connection, record.id, values['earlier'] as number[]);
  }
  const edit = writer.change(tableOfKind[kind], record.id, values as Edit['after']);
  if (edit === undefined) return;
  const build = record.build ?? 0;
  const name = nameOf({ ...record, ...values });
  const changed = Object.keys(edit.after).join(', ');
  writer.post(recordEntry(kind, on, build, record.id, `changed (${changed})`, name), [edit]);
  if (kind === 'boltGroup' && typeof values['count'] === 'number') {
    const more = values['count'] - Number(record['count']);
    if (more !== 0) {
      writer.post({
        kind: more > 0 ? 'bolts-listed' : 'bolts-dropped',
        on,
        build,
        subjectKind: 'bolt-group',
        subject: record.id,
        quantityMilli: Math.abs(more) * 1000,
        payload: { record: kind, did: 'count changed', name },
      });
    }
  }
}

const usesSql: Partial<Record<RecordKind, string>> = {
  system: `SELECT system AS id, count(*) AS uses FROM parts WHERE gone = 0 AND retired_on IS NULL AND system IS NOT NULL GROUP BY system`,
  phase: `SELECT phase AS id, count(*) AS uses FROM parts WHERE gone = 0 AND retired_on IS NULL AND phase IS NOT NULL GROUP BY phase
    UNION ALL SELECT phase, count(*) FROM jobs WHERE gone = 0 AND retired_on IS NULL AND phase IS NOT NULL GROUP BY phase`,
  vendor: `SELECT vendor AS id, count(*) AS uses FROM parts WHERE gone = 0 AND retired_on IS NULL AND vendor IS NOT NULL GROUP BY vendor
    UNION ALL SELECT vendor, count(*) FROM orders WHERE gone = 0 GROUP BY vendor`,
  bin: `SELECT bin AS id, count(*) AS uses FROM parts WHERE gone = 0 AND retired_on IS NULL AND bin IS NOT NULL GROUP BY bin`,
  job: `SELECT job AS id, count(*) AS uses FROM parts WHERE gone = 0 AND retired_on IS NULL AND job IS NOT NULL GROUP BY job`,
  port: `SELECT json_extract(one, '$.port') AS id, count(*) AS uses FROM connections WHERE gone = 0 AND retired_on IS NULL
      AND json_extract(one, '$.port') IS NOT NULL GROUP BY 1
    UNION ALL SELECT json_extract(other, '$.port'), count(*) FROM connections WHERE gone = 0 AND retired_on IS NULL
      AND json_extract(other, '$.port') IS NOT NULL GROUP BY 1
    UNION ALL SELECT from_port, count(*) FROM hose_lines WHERE gone = 0 AND retired_on IS NULL AND from_port IS NOT NULL GROUP BY 1
    UNION ALL SELECT to_port, count(*) FROM hose_lines WHERE gone = 0 AND retired_on IS NULL AND to_port IS NOT NULL GROUP BY 1`,
  tool: `SELECT t.value AS id, count(*) AS uses FROM jobs j, json_each(j.tools) t WHERE j.gone = 0 AND j.retired_on IS NULL GROUP BY t.value`,
};

function usesOf(connection: Connection, kind: RecordKind): Map<number, number> {
  const uses = new Map<number, number>();
  const sql = usesSql[kind];
  if (sql === undefined) return uses;
  for (const row of all<{ id: number; uses: number }>(connection, sql)) {
    uses.set(row.id, (uses.get(row.id) ?? 0) + row.uses);
  }
  return uses;
}

function standingsOf(
  connection: Connection,
  kind: RecordKind,
  build: number | null,
): Map<number, RecordRow['standing']> {
  const standings = new Map<number, RecordRow['standing']>();
  if (!isCounted(kind) || build === null) return standings;
  for (const [id, sums] of subjectSums(connection, build, countedKinds[kind].subject)) {
    const quantity = (account: Parameters<typeof sums.get>[0]): number =>
      (sums.get(account)?.quantityMilli ?? 0) / 1000;
    const own: Record<CountedKind, () => RecordRow['standing']> = {
      job: () => ({ done: quantity('job-done') > 0 }),
      tool: () => ({ atHand: quantity('tool-at-hand') > 0 }),
      decision: () => ({ made: quantity('decision-made') > 0 }),
      boltGroup: () => ({ bolts: quantity('bolts'), snug: quantity('bolts-snug'), final: quantity('bolts-final') }),
    };
    standings.set(id, own[kind]());
  }
  return standings;
}

function needRevision(record: RecordValuesRow, revision: number | undefined, what: string): void {
  if (revision === undefined || revision === record.revision) return;
  throw new Refusal(
    'conflict',
    `The ${what} was changed since you opened it. Nothing was changed; what you typed is kept here.`,
    { field: 'revision', accepted: 'the record as it stands now', detail: { revision: record.revision } },
  );
}

function needNotRetired(record: RecordValuesRow, what: string): void {
  if (record.retiredOn === null) return;
  throw new Refusal('retired', `The ${what} was retired on ${record.retiredOn}. Nothing was changed.`, {
    accepted: `a ${what} that is in use; bring this one back first`,
  });
}

function subjectAct(
  context: Context,
  input: { key: string; on: string },
  kind: CountedKind,
  id: number,
  label: (name: string) => string,
  entries: (record: RecordValuesRow, writer: ActWriter) => void,
): ReturnType<typeof act> {
  const record = needRecord(context.book().connection, tableOfKind[kind], id, kind);
  needNotRetired(record, spokenTable(tableOfKind[kind]));
  return act(context, input, label(nameOf(record)), (writer) => {
    entries(record, writer);
    return undefined;
  });
}

export const recordsProcedures = {
  list: records.list.handler(({ context, input }): RecordRow[] => {
    const { connection } = context.book();
    const table = tableOfKind[input.kind];
    const byBuild = ofABuild(input.kind) && input.build !== undefined;
    const retired = input.retired === true ? '1' : 'retired_on IS NULL';
    const rows = byBuild
      ? listRecords(connection, table, `build = ? AND ${retired}`, input.build)
      : listRecords(connection, table, retired);
    const uses = usesOf(connection, input.kind);
    const standings = standingsOf(connection, input.kind, input.build ?? null);
    const properties = ownProperties(table);
    return rows
      .sort((a, b) => Number(a['sort'] ?? 0) - Number(b['sort'] ?? 0) || a.id - b.id)
      .map((row) => ({
        kind: input.kind,
        id: row.id,
        build: row.build,
        retiredOn: row.retiredOn,
        revision: row.revision,
        values: Object.fromEntries(properties.map((property) => [property, row[property]])),
        uses: uses.get(row.id) ?? 0,
        standing: standings.get(row.id) ?? {},
      }));
  }),

  save: records.save.handler(({ context, input }) => {
    const { connection } = context.book();
    const what = spokenTable(tableOfKind[input.kind]);
    const { id } = input;
    if (id === undefined) {
      if (ofABuild(input.kind)) {
        if (input.build === undefined) {
          throw new Refusal('bad-input', `A ${what} belongs to a build, and none is named. Nothing was changed.`, {
            field: 'build',
            accepted: 'the number of a build',
          });
        }
        needBuild(context, input.build);
      }
      return act(context, input, `New ${what} ${nameOf(input.values)}`.trim(), (writer) => {
        createRecord(writer, input.kind, input.build ?? null, input.on, input.values);
        return undefined;
      });
    }
    const record = needRecord(connection, tableOfKind[input.kind], id, 'id');
    needRevision(record, input.revision, what);
    return act(context, input, `Change of ${what} ${nameOf(record)}`.trim(), (writer) => {
      changeRecord(writer, input.kind, record, input.on, input.values);
      return undefined;
    });
  }),

  retire: records.retire.handler(({ context, input }) => {
    const { connection } = context.book();
    const table = tableOfKind[input.kind];
    const record = needRecord(connection, table, input.id, 'id');
    const back = input.back === true;
    if (!back) needNotRetired(record, spokenTable(table));
    if (!back && input.kind === 'port') checkPortUnused(connection, record);
    const name = nameOf(record);
    return act(context, input, `${back ? 'Return' : 'Retirement'} of ${spokenTable(table)} ${name}`, (writer) => {
      const edit = writer.change(table, record.id, { retiredOn: back ? null : input.on });
      if (edit === undefined) return undefined;
      const build = record.build ?? 0;
      if (isCounted(input.kind)) {
        const { subject, listed, dropped } = countedKinds[input.kind];
        const count = input.kind === 'boltGroup' ? Number(record['count']) * 1000 : 1000;
        writer.post(
          {
            kind: back ? listed : dropped,
            on: input.on,
            build,
            subjectKind: subject,
            subject: record.id,
            quantityMilli: count,
            payload: { record: input.kind, did: back ? 'brought back' : 'retired', name, reason: input.reason },
          },
          [edit],
        );
      } else {
        writer.post(
          recordEntry(input.kind, input.on, build, record.id, back ? 'brought back' : 'retired', name, {
            reason: input.reason,
          }),
          [edit],
        );
      }
      return undefined;
    });
  }),

  reorder: records.reorder.handler(({ context, input }) =>
    act(context, input, `Order of ${counted(input.ids.length, input.kind)}`, (writer) => {
      const table = tableOfKind[input.kind];
      const edits: Edit[] = [];
      let build = 0;
      input.ids.forEach((id, index) => {
        build = needRecord(writer.connection, table, id, 'ids').build ?? 0;
        const edit = writer.change(table, id, { sort: index * 10 });
        if (edit !== undefined) edits.push(edit);
      });
      if (edits.length > 0) {
        writer.post(
          { kind: 'record', on: input.on, build, payload: { record: input.kind, did: 'put in order' } },
          edits,
        );
      }
      return undefined;
    }),
  ),

  toolStanding: records.toolStanding.handler(({ context, input }) =>
    subjectAct(
      context,
      input,
      'tool',
      input.tool,
      (name) => `${name} ${input.atHand ? 'at hand' : 'away'}`,
      (record, writer) => {
        const edit = writer.change('tools', record.id, { whereabouts: input.whereabouts, dueOn: input.dueOn });
        writer.post(
          {
            kind: input.atHand ? 'tool-at-hand' : 'tool-away',
            on: input.on,
            build: record.build ?? 0,
            subjectKind: 'tool',
            subject: record.id,
            quantityMilli: 1000,
            payload: {
              name: nameOf(record),
              reason: input.whereabouts,
              ...(input.dueOn === null ? {} : { dueOn: input.dueOn }),
            },
          },
          edit === undefined ? [] : [edit],
        );
      },
    ),
  ),

  decide: records.decide.handler(({ context, input }) =>
    subjectAct(
      context,
      input,
      'decision',
      input.decision,
      (name) => `${input.choice === null ? 'Reopening of' : 'Decision on'} ${name}`,
      (record, writer) => {
        writer.post({
          kind: input.choice === null ? 'decision-reopened' : 'decision-made',
          on: input.on,
          build: record.build ?? 0,
          subjectKind: 'decision',
          subject: record.id,
          quantityMilli: 1000,
          payload: {
            name: nameOf(record),
            by: input.by,
            reason: input.reason,
            ...(input.choice === null ? {} : { choice: input.choice }),
          },
        });
      },
    ),
  ),

  bolts: records.bolts.handler(({ context, input }) =>
    subjectAct(
      context,
      input,
      'boltGroup',
      input.boltGroup,
      (name) => `${counted(input.count, 'bolt')} of ${name} ${input.to === 'final' ? 'at final torque' : input.to}`,
      (record, writer) => {
        const kinds = { snug: 'bolts-snugged', final: 'bolts-final', loose: 'bolts-loosened' } as const;
        writer.post({
          kind: kinds[input.to],
          on: input.on,
          build: record.build ?? 0,
          subjectKind: 'bolt-group',
          subject: record.id,
          quantityMilli: input.count * 1000,
          payload: {
            name: nameOf(record),
            by: input.by,
            wrench: input.wrench,
            reason: input.reason,
            ...(input.torqueMilliNm === null ? {} : { torqueMilliNm: input.torqueMilliNm }),
          },
        });
      },
    ),
  ),
};

/** The id of the record of this name, made when there is none. Names are compared without regard to case. */
export function findOrCreate(
  writer: ActWriter,
  kind: 'system' | 'phase' | 'vendor' | 'bin' | 'job',
  build: number,
  on: string,
  name: string,
): number {
  const column = kind === 'job' ? 'title' : 'name';
  const [known] = listRecords(
    writer.connection,
    tableOfKind[kind],
    `lower(${column}) = lower(?) AND retired_on IS NULL AND (build IS NULL OR build = ?)`,
    name.trim(),
    build,
  );
  if (known !== undefined) return known.id;
  const before = writer.made.length;
  const id = createRecord(writer, kind, build, on, kind === 'job' ? { title: name.trim() } : { name: name.trim() });
  writer.made.length = before;
  return id;
}
