import type { VerifyReport } from '../../contract/workbook.ts';
import type { Posting } from '../../ledger/accounts.ts';
import type { Entry, EntryKind, EntryPayload } from '../../ledger/entry.ts';
import { LedgerFold } from '../../ledger/fold.ts';
import { findings } from '../../ledger/invariants.ts';
import { all, type Connection, first } from './connection.ts';
import { keptPositions, positionOf, quoteCountSql } from './positions.ts';
import { partWords } from './promises.ts';
import { stateOf } from './states.ts';

/** At most so many differences are listed; the count goes on. */
const mostListed = 200;

interface EntryRow {
  seq: number;
  act: number;
  kind: EntryKind;
  on_day: string;
  recorded_at: string;
  build: number;
  part: number | null;
  order_id: number | null;
  line: number | null;
  lot: number | null;
  subject_kind: Entry['subjectKind'] | null;
  subject: number | null;
  quantity_milli: number | null;
  amount_minor: number | null;
  currency: string | null;
  note: string;
  reverses: number | null;
  payload: string | null;
}

const optional = <K extends string, V>(key: K, value: V | null): { [P in K]?: V } =>
  (value === null ? {} : { [key]: value }) as { [P in K]?: V };

function entryOf(row: EntryRow): Entry {
  return {
    seq: row.seq,
    act: row.act,
    kind: row.kind,
    on: row.on_day,
    recordedAt: row.recorded_at,
    build: row.build,
    note: row.note,
    ...optional('part', row.part),
    ...optional('order', row.order_id),
    ...optional('line', row.line),
    ...optional('lot', row.lot),
    ...optional('subjectKind', row.subject_kind ?? null),
    ...optional('subject', row.subject),
    ...optional('quantityMilli', row.quantity_milli),
    ...optional('amountMinor', row.amount_minor),
    ...optional('currency', row.currency),
    ...optional('reverses', row.reverses),
    ...(row.payload === null ? {} : { payload: JSON.parse(row.payload) as EntryPayload }),
  };
}

const keyOf = (p: Posting): string =>
  `${p.part} ${p.order} ${p.line} ${p.lot} ${p.subjectKind} ${p.subject} ${p.account}`;

function sums(list: readonly Posting[]): Map<string, string> {
  const totals = new Map<string, [number, number]>();
  for (const posting of list) {
    const [quantity, amount] = totals.get(keyOf(posting)) ?? [0, 0];
    totals.set(keyOf(posting), [quantity + posting.quantityMilli, amount + posting.amountMinor]);
  }
  return new Map(
    [...totals]
      .filter(([, [quantity, amount]]) => quantity !== 0 || amount !== 0)
      .map(([key, pair]) => [key, pair.join(' / ')]),
  );
}

/**
 * Derives everything anew and compares: every entry's postings from the entries, balances from the postings, positions
 * from the states; then the invariants, and the file's own integrity and links.
 */
export function verifyWorkbook(connection: Connection): VerifyReport {
  const differences: string[] = [];
  const invariants: string[] = [];
  const differ = (text: string): void => {
    if (differences.length < mostListed) differences.push(text);
  };

  const reversed = new Set(
    all<{ reverses: number }>(connection, 'SELECT reverses FROM entries WHERE reverses IS NOT NULL').map(
      (row) => row.reverses,
    ),
  );
  const fold = new LedgerFold(reversed);
  const stored = Map.groupBy(
    all<Posting & { entry: number }>(
      connection,
      `SELECT entry, account, part, order_id AS "order", line, lot, subject_kind AS subjectKind, subject,
       quantity_milli AS quantityMilli, amount_minor AS amountMinor FROM postings ORDER BY entry`,
    ),
    ({ entry }) => entry,
  );
  let entries = 0;
  let postings = 0;
  const rows = connection.sqlite.prepare('SELECT * FROM entries ORDER BY seq').iterate() as IterableIterator<EntryRow>;
  for (const row of rows) {
    entries += 1;
    const kept = stored.get(row.seq) ?? [];
    postings += kept.length;
    try {
      const derived = sums(fold.add(entryOf(row)).postings);
      const was = sums(kept);
      for (const key of new Set([...derived.keys(), ...was.keys()])) {
        if (derived.get(key) !== was.get(key)) {
          differ(
            `entry ${row.seq} (${row.kind}): ${key} should move ${derived.get(key) ?? 'nothing'} and moved ${was.get(key) ?? 'nothing'}`,
          );
        }
      }
    } catch (error) {
      differ(
        `entry ${row.seq} (${row.kind}) could not be let in again: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  }

  const unbalanced = all<{ key: string }>(
    connection,
    `SELECT b.account || ' of part ' || b.part || ', line ' || b.line || ', lot ' || b.lot || ', ' || b.subject_kind || ' ' || b.subject AS key
     FROM (SELECT part, line, lot, subject_kind, subject, account, sum(quantity_milli) AS quantity, sum(amount_minor) AS amount
       FROM (SELECT part, line, lot, subject_kind, subject, account, quantity_milli, amount_minor FROM postings
         UNION ALL SELECT part, line, lot, subject_kind, subject, account, -quantity_milli, -amount_minor FROM balances)
       GROUP BY part, line, lot, subject_kind, subject, account) b WHERE b.quantity <> 0 OR b.amount <> 0`,
  );
  for (const { key } of unbalanced) differ(`the kept balance of ${key} is not the sum of its postings`);

  for (const { build } of all<{ build: number }>(connection, 'SELECT DISTINCT build FROM positions')) {
    for (const [part, kept] of keptPositions(connection, build)) {
      const state = stateOf(connection, part);
      const { quotes } = first<{ quotes: number }>(connection, quoteCountSql, part) as { quotes: number };
      const derived = positionOf(state, partWords(connection, part), quotes);
      for (const key of Object.keys(derived) as (keyof typeof derived)[]) {
        if (derived[key] !== kept[key])
          differ(`part line ${part}: ${key} is kept as ${String(kept[key])} and folds to ${String(derived[key])}`);
      }
      for (const finding of findings(state)) {
        if (invariants.length < mostListed) invariants.push(`${finding.id}, part line ${part}: ${finding.text}`);
      }
    }
  }

  const integrity = all<{ integrity_check: string }>(connection, 'PRAGMA integrity_check')
    .map((row) => row.integrity_check)
    .filter((text) => text !== 'ok');
  const foreignKeys = all<{ table: string; rowid: number }>(connection, 'PRAGMA foreign_key_check').map(
    (row) => `${row.table} row ${row.rowid} points at nothing`,
  );
  return {
    ok: differences.length + invariants.length + integrity.length + foreignKeys.length === 0,
    entries,
    postings,
    integrity,
    foreignKeys,
    differences,
    invariants,
  };
}
