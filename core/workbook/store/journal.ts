import type { z } from 'zod';
import type { JournalFilter, JournalRow, journalContract } from '../../contract/journal.ts';
import type { EntryKind } from '../../ledger/entry.ts';
import { all, type Connection, first, readSettings } from './connection.ts';
import { entryText } from './entry-text.ts';
import { foldText } from './folded-text.ts';
import { remembered } from './remembered.ts';

interface Row {
  readonly seq: number;
  readonly act: number;
  readonly label: string;
  readonly on_day: string;
  readonly recorded_at: string;
  readonly author: string;
  readonly kind: EntryKind;
  readonly build: number;
  readonly part: number | null;
  readonly description: string | null;
  readonly unit: string | null;
  readonly order_id: number | null;
  readonly number: string | null;
  readonly vendor_name: string | null;
  readonly quantity_milli: number | null;
  readonly amount_minor: number | null;
  readonly currency: string | null;
  readonly note: string;
  readonly reverses: number | null;
  readonly reversed_by: number | null;
  readonly payload: string | null;
  readonly subject_name: string | null;
}

/** Name of the job, tool, decision, bolt group or budget line that an entry is about. */
export const subjectNameSql = `CASE e.subject_kind
  WHEN 'job' THEN (SELECT title FROM jobs WHERE id = e.subject)
  WHEN 'tool' THEN (SELECT name FROM tools WHERE id = e.subject)
  WHEN 'decision' THEN (SELECT title FROM decisions WHERE id = e.subject)
  WHEN 'bolt-group' THEN (SELECT name FROM bolt_groups WHERE id = e.subject)
  WHEN 'measuring-sheet' THEN (SELECT title FROM measuring_sheets WHERE id = e.subject)
  WHEN 'hose-line' THEN (SELECT name FROM hose_lines WHERE id = e.subject)
  WHEN 'check' THEN (SELECT title FROM checks WHERE id = e.subject)
  WHEN 'budget-line' THEN (SELECT name FROM budget_lines WHERE id = e.subject) END`;

const from = `FROM entries e JOIN acts a ON a.id = e.act
  LEFT JOIN parts p ON p.id = e.part LEFT JOIN orders o ON o.id = e.order_id LEFT JOIN vendors v ON v.id = o.vendor`;

const select = `SELECT e.seq, e.act, a.label, e.on_day, e.recorded_at, a.author, e.kind, e.build, e.part, p.description, p.unit,
  e.order_id, o.number, v.name AS vendor_name, e.quantity_milli, e.amount_minor, e.currency, e.note, e.reverses,
  (SELECT r.seq FROM entries r WHERE r.reverses = e.seq) AS reversed_by, e.payload, ${subjectNameSql} AS subject_name`;

function conditions(filter: JournalFilter): { where: string; values: unknown[] } {
  const parts: string[] = ['1'];
  const values: unknown[] = [];
  const add = (sql: string, ...given: unknown[]): void => {
    parts.push(sql);
    values.push(...given);
  };
  // The plus keeps SQLite off the index by build and day: it would gather the whole build to sort it for one page.
  if (filter.build !== undefined) add('+e.build = ?', filter.build);
  if (filter.part !== undefined) add('e.part = ?', filter.part);
  if (filter.order !== undefined) add('e.order_id = ?', filter.order);
  if (filter.vendor !== undefined) add('o.vendor = ?', filter.vendor);
  if (filter.act !== undefined) add('e.act = ?', filter.act);
  if (filter.from !== undefined) add('e.on_day >= ?', filter.from);
  if (filter.to !== undefined) add('e.on_day <= ?', filter.to);
  if (filter.kinds !== undefined && filter.kinds.length > 0) {
    add('e.kind IN (SELECT value FROM json_each(?))', JSON.stringify(filter.kinds));
  }
  if (filter.standingOnly === true) {
    add('e.reverses IS NULL AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq)');
  }
  for (const word of foldText(filter.text ?? '')
    .split(' ')
    .filter((each) => each !== '')) {
    const like = `%${word.replace(/[%_\\]/g, '\\$&')}%`;
    add(
      `(p.folded LIKE ? ESCAPE '\\' OR lower(a.label) LIKE ? ESCAPE '\\' OR lower(e.note) LIKE ? ESCAPE '\\' OR e.kind LIKE ? ESCAPE '\\'
        OR lower(o.number) LIKE ? ESCAPE '\\' OR lower(v.name) LIKE ? ESCAPE '\\' OR lower(${subjectNameSql}) LIKE ? ESCAPE '\\')`,
      like,
      like,
      like,
      like,
      like,
      like,
      like,
    );
  }
  return { where: parts.join(' AND '), values };
}

type JournalInput = z.infer<NonNullable<(typeof journalContract.list)['~orpc']['inputSchema']>>;

/** A page of the journal, newest first. `before` is the `next` of the page before. */
export function listJournal(
  connection: Connection,
  input: JournalInput,
): { rows: JournalRow[]; next: number | null; total: number } {
  const { where, values } = conditions(input as JournalFilter);
  const base = readSettings(connection).currency;
  // Every entry has its act, and the other joins add no rows: without a condition on them they need not be made.
  const counted = /\b[aopv]\./.test(where) ? from : 'FROM entries e';
  const total = remembered(connection, `journal ${where} ${JSON.stringify(values)}`, () => {
    const row = first<{ total: number }>(connection, `SELECT count(*) AS total ${counted} WHERE ${where}`, ...values);
    return row?.total ?? 0;
  });
  const rows = all<Row>(
    connection,
    `${select} ${from} WHERE ${where} AND e.seq < ? ORDER BY e.seq DESC LIMIT ?`,
    ...values,
    input.before ?? Number.MAX_SAFE_INTEGER,
    input.limit,
  );
  return {
    total,
    next: rows.length === input.limit ? (rows.at(-1)?.seq ?? null) : null,
    rows: rows.map((row) => ({
      seq: row.seq,
      act: row.act,
      actLabel: row.label,
      on: row.on_day,
      recordedAt: row.recorded_at,
      author: row.author,
      kind: row.kind,
      text: entryText({
        kind: row.kind,
        quantityMilli: row.quantity_milli,
        unit: row.unit ?? '',
        description: row.description ?? '',
        payload: row.payload === null ? {} : (JSON.parse(row.payload) as Record<string, unknown>),
        subjectName: row.subject_name ?? '',
        note: row.note,
      }),
      build: row.build,
      part: row.part,
      description: row.description ?? row.subject_name ?? '',
      order: row.order_id,
      orderNumber: row.number ?? '',
      vendorName: row.vendor_name ?? '',
      quantityMilli: row.quantity_milli,
      unit: row.unit ?? '',
      amountMinor: row.amount_minor,
      currency: row.currency ?? base,
      note: row.note,
      reverses: row.reverses,
      reversedBy: row.reversed_by,
    })),
  };
}
