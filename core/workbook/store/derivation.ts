import type { Derivation, WhyQuestion } from '../../contract/journal.ts';
import type { Account } from '../../ledger/accounts.ts';
import { all, type Connection } from './connection.ts';
import { entryText } from './entry-text.ts';
import { subjectNameSql } from './journal.ts';

/** Postings that a figure counts: accounts with the sign in which they count, and whether units or money. */
export interface Counted {
  readonly measure: 'quantity' | 'amount';
  readonly accounts: readonly (readonly [Account, 1 | -1])[];
}

/** At most so many entries are listed; the sum is over all. */
const mostListed = 300;

interface EntryRow {
  readonly seq: number;
  readonly on_day: string;
  readonly kind: string;
  readonly part: number | null;
  readonly description: string | null;
  readonly unit: string | null;
  readonly subject_name: string | null;
  readonly quantity_milli: number | null;
  readonly payload: string | null;
  readonly note: string;
  readonly sum: number;
  readonly reversed: number;
}

function conditions(question: WhyQuestion, asOf: string): { where: string; values: unknown[] } {
  const where = ['q.build = ?', 'q.on_day <= ?'];
  const values: unknown[] = [question.build, asOf];
  const add = (sql: string, value?: unknown): void => {
    where.push(sql);
    if (value !== undefined) values.push(value);
  };
  if (question.part !== undefined) add('q.part = ?', question.part);
  if (question.order !== undefined) add('q.order_id = ?', question.order);
  if (question.system !== undefined) {
    if (question.system === null) add('p.system IS NULL');
    else add('p.system = ?', question.system);
  }
  if (question.phase !== undefined) {
    if (question.phase === null) add('p.phase IS NULL');
    else add('p.phase = ?', question.phase);
  }
  if (question.vendor !== undefined) {
    add(
      `coalesce((SELECT o.vendor FROM order_lines l JOIN orders o ON o.id = l.order_id
         WHERE l.part = q.part AND l.gone = 0 AND o.gone = 0 ORDER BY l.id DESC LIMIT 1), p.vendor) IS ?`,
      question.vendor,
    );
  }
  return { where: where.join(' AND '), values };
}

/** The entries behind a figure and their sum, oldest first. */
export function entriesBehind(
  connection: Connection,
  question: WhyQuestion,
  counted: Counted,
  asOf: string,
): { readonly total: number; readonly entries: Derivation['entries']; readonly more: number } {
  const { where, values } = conditions(question, asOf);
  const column = counted.measure === 'quantity' ? 'q.quantity_milli' : 'q.amount_minor';
  const signed = `CASE ${counted.accounts.map(([account, sign]) => `WHEN q.account = '${account}' THEN ${sign} * ${column}`).join(' ')} ELSE 0 END`;
  const accounts = JSON.stringify(counted.accounts.map(([account]) => account));
  const rows = all<EntryRow>(
    connection,
    `SELECT e.seq, q.on_day, e.kind, e.part, p.description, p.unit, ${subjectNameSql} AS subject_name, e.quantity_milli, e.payload, e.note,
     sum(${signed}) AS sum, EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) AS reversed
     FROM postings q JOIN entries e ON e.seq = q.entry LEFT JOIN parts p ON p.id = q.part
     WHERE ${where} AND q.account IN (SELECT value FROM json_each(?))
     GROUP BY e.seq, q.on_day HAVING sum(${signed}) <> 0 ORDER BY q.on_day, e.seq`,
    ...values,
    accounts,
  );
  return {
    total: rows.reduce((sum, row) => sum + row.sum, 0),
    more: Math.max(0, rows.length - mostListed),
    entries: rows.slice(-mostListed).map((row) => ({
      seq: row.seq,
      on: row.on_day,
      text: entryText({
        kind: row.kind,
        quantityMilli: row.quantity_milli,
        unit: row.unit ?? '',
        description: '',
        payload: row.payload === null ? {} : (JSON.parse(row.payload) as Record<string, unknown>),
        subjectName: row.subject_name ?? '',
        note: row.note,
      }),
      part: row.part,
      description: row.description ?? '',
      quantityMilli: counted.measure === 'quantity' ? row.sum : 0,
      amountMinor: counted.measure === 'amount' ? row.sum : 0,
      reversed: row.reversed === 1,
    })),
  };
}
