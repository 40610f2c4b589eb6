import type { Posting } from '../../ledger/accounts.ts';
import { Refusal } from '../../refusal.ts';
import { all, type Connection, first } from './connection.ts';

/** The unary plus keeps the planner off the index by subject, which for a part line would read every posting. */
const keyWhere = 'part = ? AND account = ? AND line = ? AND lot = ? AND +subject_kind = ? AND +subject = ?';
const subjectWhere = 'subject_kind = ? AND subject = ? AND account = ? AND part = ? AND line = ? AND lot = ?';

const keyValues = (posting: Posting): unknown[] =>
  posting.part === 0
    ? [posting.subjectKind, posting.subject, posting.account, posting.part, posting.line, posting.lot]
    : [posting.part, posting.account, posting.line, posting.lot, posting.subjectKind, posting.subject];

const whereOf = (posting: Posting): string => (posting.part === 0 ? subjectWhere : keyWhere);

/**
 * Refuses when an account of this key would be below zero at the end of any day from `fromDay` on: a back-dated act
 * can't use what only came later, and a reversal can't take away what later entries used.
 */
export function requireFloors(connection: Connection, posting: Posting, fromDay: string): void {
  const balance = first<{ quantity_milli: number; last_day: string }>(
    connection,
    'SELECT quantity_milli, last_day FROM balances WHERE part = ? AND line = ? AND lot = ? AND subject_kind = ? AND subject = ? AND account = ?',
    posting.part,
    posting.line,
    posting.lot,
    posting.subjectKind,
    posting.subject,
    posting.account,
  );
  if (balance !== undefined && balance.quantity_milli >= 0 && balance.last_day <= fromDay) return;
  const days = all<{ on_day: string; quantity: number }>(
    connection,
    `SELECT on_day, sum(quantity_milli) AS quantity FROM postings WHERE ${whereOf(posting)} GROUP BY on_day ORDER BY on_day`,
    ...keyValues(posting),
  );
  let running = 0;
  for (const { on_day, quantity } of days) {
    running += quantity;
    if (running < 0 && on_day >= fromDay) throw belowZero(connection, posting, on_day, running, days);
  }
}

function belowZero(
  connection: Connection,
  posting: Posting,
  day: string,
  running: number,
  days: readonly { on_day: string; quantity: number }[],
): Refusal {
  const later = all<{ seq: number; kind: string; on_day: string }>(
    connection,
    `SELECT DISTINCT e.seq, e.kind, e.on_day FROM postings p JOIN entries e ON e.seq = p.entry
     WHERE ${whereOf(posting).replace(/(\+?)(\w+) = \?/g, '$1p.$2 = ?')} AND p.quantity_milli < 0 AND e.act IN (SELECT id FROM acts)
     AND e.reverses IS NULL AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY e.seq DESC LIMIT 6`,
    ...keyValues(posting),
  );
  const arrives = days.find(({ on_day, quantity }) => on_day > day && quantity > 0)?.on_day;
  const uses = later.map(({ seq, kind, on_day }) => `entry ${seq} (${kind}, ${on_day})`);
  const described = first<{ description: string }>(
    connection,
    'SELECT description FROM parts WHERE id = ?',
    posting.part,
  );
  const what = described === undefined ? posting.account : `“${described.description}”: ${posting.account}`;
  return new Refusal(
    'floor',
    `${what} would be ${-running / 1000} short on ${day}.` +
      (arrives === undefined ? '' : ` More comes there only on ${arrives}: date it on that day or later.`) +
      (uses.length === 0 ? '' : ` It is used by ${uses.join(', ')}; take those back first.`) +
      ' Nothing was changed.',
    {
      field: 'on',
      accepted:
        arrives === undefined ? 'an act that leaves no account below zero on any day' : `a day from ${arrives} on`,
      detail: { bucket: posting.account, day, shortMilli: -running, laterEntries: later.map(({ seq }) => seq) },
    },
  );
}

/**
 * The day on which a change of the remaining estimate counts: the day of the act, or the first later day from which
 * the estimate stays at zero or above. (An order dated before its need was listed uses the estimate up on the day of
 * the need, so no past day shows a negative remainder.)
 */
export function dayThatKeepsAFloor(
  connection: Connection,
  posting: Posting,
  onDay: string,
  movedInThisAct: boolean,
): string {
  if (posting.amountMinor >= 0) return onDay;
  const balance = first<{ last_day: string }>(
    connection,
    'SELECT last_day FROM balances WHERE part = ? AND line = ? AND lot = ? AND subject_kind = ? AND subject = ? AND account = ?',
    posting.part,
    posting.line,
    posting.lot,
    posting.subjectKind,
    posting.subject,
    posting.account,
  );
  if (!movedInThisAct && balance !== undefined && balance.last_day <= onDay) return onDay;
  const days = all<{ on_day: string; amount: number }>(
    connection,
    `SELECT on_day, sum(amount_minor) AS amount FROM postings WHERE ${whereOf(posting)} GROUP BY on_day ORDER BY on_day`,
    ...keyValues(posting),
  );
  let day = onDay;
  let running = 0;
  const sums = days.map(({ on_day, amount }) => {
    running += amount;
    return { on_day, sum: running };
  });
  for (let index = sums.length - 1; index >= 0; index -= 1) {
    const { on_day, sum } = sums[index] as { on_day: string; sum: number };
    const until = sums[index + 1]?.on_day;
    if (sum + posting.amountMinor < 0 && (until === undefined || until > onDay)) {
      day = until ?? (on_day > onDay ? on_day : onDay);
      break;
    }
  }
  const firstDay = sums[0]?.on_day;
  if (day === onDay && firstDay !== undefined && firstDay > onDay) day = firstDay;
  return day;
}
