import type { Account, Balance, Posting, SubjectKind } from '../../ledger/accounts.ts';
import type { LotSource } from '../../ledger/entry.ts';
import { addMovement, emptyPart, type MutablePart, type PartFacts, type PartState } from '../../ledger/part-state.ts';
import type { SubjectBalances } from '../../ledger/subject-posting.ts';
import { Refusal } from '../../refusal.ts';
import { all, type Connection, first } from './connection.ts';

interface FactsRow {
  readonly id: number;
  readonly build: number;
  readonly optional: number;
  readonly needs_verification: number;
  readonly stretch_once: number;
}

const factsOf = (
  row: FactsRow,
  lines: readonly { id: number; order_id: number }[],
  lots: readonly { id: number; line: number; source: string; owner: string }[],
): PartFacts => ({
  part: row.id,
  build: row.build,
  optional: row.optional === 1,
  needsVerification: row.needs_verification === 1,
  stretchOnce: row.stretch_once === 1,
  lines: lines.map(({ id, order_id }) => ({ line: id, order: order_id })),
  lots: lots.map(({ id, line, source, owner }) => ({
    lot: id,
    line,
    source: source as LotSource,
    ...(owner === '' ? {} : { owner }),
  })),
});

/** The state of one part line now, from its balances; `unsaved` adds what the running act has posted already. */
export function stateOf(connection: Connection, part: number, unsaved: readonly Posting[] = []): PartState {
  const row = first<FactsRow>(
    connection,
    'SELECT id, build, optional, needs_verification, stretch_once FROM parts WHERE id = ?',
    part,
  );
  if (row === undefined) {
    throw new Refusal('not-found', `There is no part line number ${part}. Nothing was changed.`, { field: 'part' });
  }
  const lines = all<{ id: number; order_id: number }>(
    connection,
    'SELECT id, order_id FROM order_lines WHERE part = ? AND gone = 0 ORDER BY id',
    part,
  );
  const lots = all<{ id: number; line: number; source: string; owner: string }>(
    connection,
    'SELECT id, line, source, owner FROM lots WHERE part = ? AND gone = 0 ORDER BY id',
    part,
  );
  const state = emptyPart(factsOf(row, lines, lots));
  const balances = all<Balance & { order: number }>(
    connection,
    `SELECT account, part, line, lot, order_id AS "order", quantity_milli AS quantityMilli, amount_minor AS amountMinor
     FROM balances WHERE part = ?`,
    part,
  );
  for (const balance of balances) {
    if (balance.quantityMilli !== 0 || balance.amountMinor !== 0) addMovement(state, balance, balance.order);
  }
  for (const posting of unsaved) addMovement(state, posting, posting.order);
  return state;
}

/** The states of all part lines of a build at the end of a day, in one pass over its postings. */
export function statesAsOf(
  connection: Connection,
  build: number,
  asOf: string,
  only?: readonly number[],
): Map<number, PartState> {
  const rows = all<FactsRow>(
    connection,
    'SELECT id, build, optional, needs_verification, stretch_once FROM parts WHERE build = ?',
    build,
  );
  const wanted = only === undefined ? undefined : new Set(only);
  const byId = new Map(rows.map((row) => [row.id, row]));
  const states = new Map<number, MutablePart>();
  for (const row of rows) {
    if (wanted === undefined || wanted.has(row.id)) states.set(row.id, emptyPart(factsOf(row, [], [])));
  }
  const lots = all<{ id: number; part: number; line: number; source: string; owner: string }>(
    connection,
    `SELECT l.id, l.part, l.line, l.source, l.owner FROM lots l JOIN parts p ON p.id = l.part
     WHERE p.build = ? AND l.gone = 0 ORDER BY l.id`,
    build,
  );
  const lotsOf = Map.groupBy(lots, ({ part }) => part);
  for (const [part, own] of lotsOf) {
    const state = states.get(part);
    const row = state === undefined ? undefined : byId.get(part);
    if (row !== undefined) states.set(part, emptyPart(factsOf(row, [], own)));
  }
  const sums = all<Balance & { order: number }>(
    connection,
    `SELECT account, part, line, lot, max(order_id) AS "order", sum(quantity_milli) AS quantityMilli,
     sum(amount_minor) AS amountMinor FROM postings WHERE build = ? AND on_day <= ? AND part <> 0 GROUP BY part, line, lot, account`,
    build,
    asOf,
  );
  for (const sum of sums) {
    const state = states.get(sum.part);
    if (state !== undefined && (sum.quantityMilli !== 0 || sum.amountMinor !== 0)) addMovement(state, sum, sum.order);
  }
  return states;
}

interface SumRow {
  readonly account: Account;
  readonly quantityMilli: number;
  readonly amountMinor: number;
}

const asSums = (rows: readonly SumRow[]): SubjectBalances =>
  Object.fromEntries(rows.map(({ account, quantityMilli, amountMinor }) => [account, { quantityMilli, amountMinor }]));

/** What stands on the accounts of a job, tool, decision, bolt group, budget line or build. */
export function countsOf(connection: Connection, kind: SubjectKind, subject: number): SubjectBalances {
  return asSums(
    all<SumRow>(
      connection,
      `SELECT account, quantity_milli AS quantityMilli, amount_minor AS amountMinor FROM balances
       WHERE subject_kind = ? AND subject = ?`,
      kind,
      subject,
    ),
  );
}

/** What stands on the accounts of a part line that aren't part of its state (waivers). */
export function partCounts(connection: Connection, part: number): SubjectBalances {
  return asSums(
    all<SumRow>(
      connection,
      `SELECT account, quantity_milli AS quantityMilli, amount_minor AS amountMinor FROM balances
       WHERE part = ? AND line = 0 AND lot = 0 AND subject_kind = '' AND account = 'waived'`,
      part,
    ),
  );
}

/** Quantity and amount by subject and account for all subjects of a kind in a build, at the end of a day. */
export function subjectSums(
  connection: Connection,
  build: number,
  kind: SubjectKind,
  asOf?: string,
): Map<number, Map<Account, { quantityMilli: number; amountMinor: number }>> {
  const rows =
    asOf === undefined
      ? all<{ subject: number; account: Account; quantityMilli: number; amountMinor: number }>(
          connection,
          `SELECT subject, account, quantity_milli AS quantityMilli, amount_minor AS amountMinor FROM balances
           WHERE +build = ? AND subject_kind = ?`,
          build,
          kind,
        )
      : all<{ subject: number; account: Account; quantityMilli: number; amountMinor: number }>(
          connection,
          `SELECT subject, account, sum(quantity_milli) AS quantityMilli, sum(amount_minor) AS amountMinor FROM postings
           WHERE +build = ? AND subject_kind = ? AND on_day <= ? GROUP BY subject, account`,
          build,
          kind,
          asOf,
        );
  const sums = new Map<number, Map<Account, { quantityMilli: number; amountMinor: number }>>();
  for (const { subject, account, quantityMilli, amountMinor } of rows) {
    const own = sums.get(subject) ?? new Map<Account, { quantityMilli: number; amountMinor: number }>();
    own.set(account, { quantityMilli, amountMinor });
    sums.set(subject, own);
  }
  return sums;
}
