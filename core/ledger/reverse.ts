/**
 * Taking an entry back: equal and opposite postings, let in only if no bucket, claim or deposit would fall below zero
 * on that day or on any later one, and only if the books are sound afterwards.
 */
import { Refusal } from '../refusal.ts';
import {
  type Account,
  exitAccounts,
  lineAccounts,
  outstandingAccounts,
  type Posting,
  placeAccounts,
} from './accounts.ts';
import type { EntryKind } from './entry.ts';
import { findings } from './invariants.ts';
import { applyPostings, type PartState } from './part-state.ts';

/** Equal and opposite postings, in the same order. Reversing a reversal brings the first entry's effect back. */
export function reversalPostings(postings: readonly Posting[]): Posting[] {
  return postings.map((posting) => ({
    ...posting,
    quantityMilli: 0 - posting.quantityMilli,
    amountMinor: 0 - posting.amountMinor,
  }));
}

/** A recorded entry with what it moved, as the check for floors needs it. */
export interface HistoryEntry {
  readonly seq: number;
  readonly on: string;
  readonly kind: EntryKind;
  readonly postings: readonly Posting[];
  /** The entry that it takes back. */
  readonly reverses?: number;
}

export interface FloorBreak {
  readonly account: Account;
  readonly part: number;
  readonly line: number;
  readonly lot: number;
  /** The first day at whose end it stands below zero. */
  readonly on: string;
  readonly quantityMilli: number;
  readonly amountMinor: number;
}

/** Accounts of units and counts, which may not be below zero at the end of any day. */
export const unitFloors: ReadonlySet<Account> = new Set([
  'need',
  ...outstandingAccounts,
  ...lineAccounts,
  ...placeAccounts,
  ...exitAccounts,
  'came-in',
  'settled',
  'job-planned',
  'job-done',
  'tool-listed',
  'tool-at-hand',
  'decision-listed',
  'decision-made',
  'bolts',
  'bolts-snug',
  'bolts-final',
  'waived',
  'gate-passed',
] as const);

const moneyFloors: ReadonlySet<Account> = new Set(['commitment', 'claims', 'deposits', 'contingency'] as const);

/**
 * The first day on which each account of each key falls below zero, in order of day. Claims and deposits are watched by
 * order line. The remaining estimate isn't: an order may well be dated before the day on which its need was typed in.
 * @param history everything posted to the keys, in any order; balances are taken at the end of each day.
 */
export function floorBreaks(history: Iterable<HistoryEntry>): FloorBreak[] {
  const days = new Map<string, Map<string, Posting>>();
  for (const entry of history) {
    const day = days.get(entry.on) ?? new Map<string, Posting>();
    days.set(entry.on, day);
    for (const posting of entry.postings) addTo(day, watched(posting));
  }
  const running = new Map<string, Posting>();
  const broken = new Map<string, FloorBreak>();
  for (const on of [...days.keys()].sort()) {
    for (const [key, moved] of days.get(on) ?? []) {
      addTo(running, moved);
      const { account, part, line, lot, quantityMilli, amountMinor } = running.get(key) ?? moved;
      const below = (unitFloors.has(account) && quantityMilli < 0) || (moneyFloors.has(account) && amountMinor < 0);
      if (below && !broken.has(key)) broken.set(key, { account, part, line, lot, on, quantityMilli, amountMinor });
    }
  }
  return [...broken.values()];
}

/** The posting by the key on which its floor is watched. */
function watched(posting: Posting): Posting {
  return moneyFloors.has(posting.account) ? { ...posting, lot: 0 } : posting;
}

function addTo(sums: Map<string, Posting>, posting: Posting): void {
  const key = `${posting.account}|${posting.part}|${posting.line}|${posting.lot}|${posting.subjectKind}|${posting.subject}`;
  const before = sums.get(key);
  sums.set(key, {
    ...posting,
    quantityMilli: (before?.quantityMilli ?? 0) + posting.quantityMilli,
    amountMinor: (before?.amountMinor ?? 0) + posting.amountMinor,
  });
}

/**
 * Checks that a new entry, dated before others, leaves no later day short.
 * @param history everything posted to the part lines and subjects that the entry touches, without it.
 * @throws Refusal `floor` naming the account, the day and the entry that would lack its units then.
 */
export function checkFloors(history: readonly HistoryEntry[], entry: HistoryEntry): void {
  const broken = newBreaks(history, entry);
  if (broken === undefined) return;
  const { account, on, quantityMilli, amountMinor } = broken;
  throw new Refusal('floor', `On ${on} ${account} would stand below zero. Nothing was changed.`, {
    field: 'day',
    accepted: 'a day on which the units were there, and later entries still have theirs',
    detail: { bucket: account, on, quantityMilli, amountMinor },
  });
}

/** The earliest break that an entry adds to those which stand already. */
function newBreaks(history: readonly HistoryEntry[], entry: HistoryEntry): FloorBreak | undefined {
  const known = new Set(floorBreaks(history).map(breakKey));
  return floorBreaks([...history, entry]).find((one) => !known.has(breakKey(one)));
}

/**
 * Later entries that build on a reversed one: not taken back themselves and about the same lots, or the same order
 * lines, or the same part line or subject where it has neither. Latest first, the order in which to reverse them.
 */
export function laterEntries(history: readonly HistoryEntry[], reversed: HistoryEntry): HistoryEntry[] {
  const keys = new Set(reversed.postings.map(closestKey));
  const takenBack = new Set(history.map((entry) => entry.reverses));
  return history
    .filter((entry) => entry.seq > reversed.seq && entry.reverses === undefined && !takenBack.has(entry.seq))
    .filter((entry) => entry.postings.some((posting) => keysOf(posting).some((key) => keys.has(key))))
    .sort((a, b) => b.seq - a.seq);
}

function closestKey(posting: Posting): string {
  return keysOf(posting)[0] ?? '';
}

function keysOf(posting: Posting): string[] {
  if (posting.subject !== 0) return [`subject ${posting.subjectKind} ${posting.subject}`];
  const keys = [`part ${posting.part}`];
  if (posting.line !== 0) keys.unshift(`line ${posting.line}`);
  if (posting.lot !== 0) keys.unshift(`lot ${posting.lot}`);
  return keys;
}

/**
 * Checks a reversal and hands back its postings.
 * @param history everything posted to the part lines and subjects that the entry touches, the entry included.
 * @param on the day that the reversal is dated.
 * @param states the part lines that the entry touches, as they stand.
 * @throws Refusal `already-reversed`, or `floor` naming what would fall short and the later entries to reverse first.
 */
export function checkReversal(
  history: readonly HistoryEntry[],
  reversed: HistoryEntry,
  on: string,
  states: readonly PartState[],
): Posting[] {
  const before = history.find((entry) => entry.reverses === reversed.seq);
  if (before !== undefined) {
    throw new Refusal(
      'already-reversed',
      `Entry ${reversed.seq} was taken back by entry ${before.seq} already. Nothing was changed.`,
      { field: 'entry', accepted: `entry ${before.seq}, to bring it back`, detail: { entry: before.seq } },
    );
  }
  const postings = reversalPostings(reversed.postings);
  const reversal: HistoryEntry = { seq: Number.MAX_SAFE_INTEGER, on, kind: 'reversal', postings };
  const broken = newBreaks(history, reversal);
  if (broken !== undefined) throw refusal(history, reversed, broken.account, broken);
  for (const state of states) {
    const own = postings.filter((posting) => posting.part === state.part);
    const found = findings(applyPostings(state, own))[0];
    if (found !== undefined) throw refusal(history, reversed, found.text, undefined);
  }
  return postings;
}

function breakKey({ account, part, line, lot }: FloorBreak): string {
  return `${account}|${part}|${line}|${lot}`;
}

function refusal(
  history: readonly HistoryEntry[],
  reversed: HistoryEntry,
  bucket: string,
  broken: FloorBreak | undefined,
): Refusal {
  const later = laterEntries(history, reversed);
  const named = later.slice(0, 5).map((entry) => `${entry.kind} on ${entry.on} (entry ${entry.seq})`);
  const more = later.length > named.length ? ` and ${later.length - named.length} more` : '';
  const why = broken === undefined ? bucket : `${bucket} would fall below zero on ${broken.on}`;
  const first = named.length === 0 ? '' : ` Reverse first: ${named.join(', ')}${more}.`;
  return new Refusal('floor', `Entry ${reversed.seq} can’t be taken back: ${why}.${first} Nothing was changed.`, {
    field: 'entry',
    accepted: 'an entry that nothing later builds on',
    detail: {
      bucket,
      entries: later.map((entry) => entry.seq),
      ...(broken === undefined
        ? {}
        : { on: broken.on, quantityMilli: broken.quantityMilli, amountMinor: broken.amountMinor }),
    },
  });
}
