import type { ActResult } from '../../contract/common.ts';
import type { Account, Posting } from '../../ledger/accounts.ts';
import { postCount } from '../../ledger/counts.ts';
import type { EntryDraft, EntryPayload, PayloadValue } from '../../ledger/entry.ts';
import { applyPostings, emptyPart, type PartState } from '../../ledger/part-state.ts';
import { isPartKind, post } from '../../ledger/post.ts';
import { reversalPostings, unitFloors } from '../../ledger/reverse.ts';
import type { SubjectBalances } from '../../ledger/subject-posting.ts';
import { Refusal } from '../../refusal.ts';
import { all, type Connection, first } from './connection.ts';
import { type Edit, editsOf, inverse, type RecordTable } from './edits.ts';
import { dayThatKeepsAFloor, requireFloors } from './floors.ts';
import { writePosition } from './positions.ts';
import { insertRecord, readRecord, spokenTable, writeRecord } from './record-tables.ts';
import { countsOf, partCounts, stateOf } from './states.ts';

export interface ActSpec {
  /** Idempotency key: the same key again answers what it answered before, and does nothing. */
  readonly key: string;
  readonly label: string;
  readonly author: string;
  /** The instant of recording, ISO 8601. */
  readonly recordedAt: string;
  readonly kind?: 'act' | 'undo' | 'redo';
  readonly target?: number;
}

/** Balance keys are texts: part, line, lot, subject kind, subject, account. */
interface Delta {
  readonly posting: Posting;
  readonly build: number;
  quantityMilli: number;
  amountMinor: number;
  firstDay: string;
  lastDay: string;
}

interface StoredEntry {
  seq: number;
  act: number;
  kind: string;
  on_day: string;
  build: number;
  part: number | null;
  order_id: number | null;
  line: number | null;
  lot: number | null;
  subject_kind: string | null;
  subject: number | null;
  quantity_milli: number | null;
  amount_minor: number | null;
  currency: string | null;
  note: string;
  payload: string | null;
}

const insertEntry = `INSERT INTO entries (act, kind, on_day, recorded_at, build, part, order_id, line, lot, subject_kind, subject,
  quantity_milli, amount_minor, currency, note, reverses, payload) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;
const insertPosting = `INSERT INTO postings (entry, on_day, build, account, part, order_id, line, lot, subject_kind, subject,
  quantity_milli, amount_minor) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;
const upsertBalance = `INSERT INTO balances (part, line, lot, subject_kind, subject, account, build, order_id, quantity_milli,
  amount_minor, last_day) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (part, line, lot, subject_kind, subject, account) DO UPDATE SET quantity_milli = quantity_milli + excluded.quantity_milli,
  amount_minor = amount_minor + excluded.amount_minor, last_day = max(last_day, excluded.last_day)`;

/**
 * Writes the entries of one act. Everything happens inside one IMMEDIATE transaction that `runAct` opens; a refusal at
 * any point leaves the workbook as it was.
 */
export class ActWriter {
  readonly act: number;
  readonly connection: Connection;
  readonly recordedAt: string;
  readonly made: number[] = [];
  readonly notices: string[] = [];
  entries = 0;
  private readonly states = new Map<number, PartState>();
  private readonly newParts = new Set<number>();
  private quoted = false;
  private readonly deltas = new Map<string, Delta>();
  /** The same by part line: an act over thousands of lines must not look through all of them for each. */
  private readonly deltasOfPart = new Map<number, Delta[]>();

  constructor(connection: Connection, act: number, recordedAt: string) {
    this.connection = connection;
    this.act = act;
    this.recordedAt = recordedAt;
  }

  /** The part's state as this act has left it so far. */
  state(part: number): PartState {
    let state = this.states.get(part);
    if (state === undefined) {
      state = stateOf(this.connection, part);
      this.states.set(part, state);
    }
    return state;
  }

  /** Forgets what is known of a part, after its record or its lots and lines changed. */
  private forget(part: number): void {
    if (!this.states.has(part)) return;
    this.states.set(part, stateOf(this.connection, part, this.unsaved(part)));
  }

  private unsaved(part: number): Posting[] {
    return (this.deltasOfPart.get(part) ?? []).map(({ posting, quantityMilli, amountMinor }) => ({
      ...posting,
      quantityMilli,
      amountMinor,
    }));
  }

  /** A new record. The edit belongs into the payload of the entry that makes it (`post(draft, [edit])`). */
  make(table: RecordTable, values: Record<string, unknown>): { readonly id: number; readonly edit: Edit } {
    const id = insertRecord(this.connection, table, values);
    if (table === 'lots' || table === 'orderLines') this.forget(Number(values['part']));
    if (table === 'parts') {
      // Nothing can stand on a part line that is new: a list of thousands need not ask four tables about each.
      this.newParts.add(id);
      this.states.set(
        id,
        emptyPart({
          part: id,
          build: Number(values['build']),
          optional: values['optional'] === true,
          needsVerification: values['needsVerification'] === true,
          stretchOnce: values['stretchOnce'] === true,
        }),
      );
    }
    return { id, edit: { table, id, before: { gone: true }, after: { gone: false } } };
  }

  /** A change of a record: written now, and returned for the payload of its entry. Undefined when nothing differs. */
  change(table: RecordTable, id: number, after: Readonly<Record<string, PayloadValue>>): Edit | undefined {
    const now = readRecord(this.connection, table, id);
    if (now === undefined)
      throw new Refusal('not-found', `There is no ${spokenTable(table)} number ${id}. Nothing was changed.`);
    const changed = Object.entries(after).filter(
      ([property, value]) => JSON.stringify(now[property] ?? null) !== JSON.stringify(value),
    );
    if (changed.length === 0) return undefined;
    const edit: Edit = {
      table,
      id,
      before: Object.fromEntries(changed.map(([property]) => [property, now[property] ?? null])),
      after: Object.fromEntries(changed),
    };
    this.write(edit);
    return edit;
  }

  private write(edit: Edit): void {
    writeRecord(this.connection, edit.table, edit.id, edit.after);
    if (edit.table === 'parts') this.forget(edit.id);
    if (edit.table === 'lots' || edit.table === 'orderLines') {
      this.forget(Number(readRecord(this.connection, edit.table, edit.id)?.['part']));
    }
  }

  /** Adds one entry with the postings that the posting table gives it. Returns its sequence number. */
  post(draft: EntryDraft, edits: readonly Edit[] = []): number {
    const postings = this.postingsOf(draft);
    const payload: EntryPayload | undefined =
      edits.length === 0 ? draft.payload : { ...draft.payload, edits: edits as unknown as PayloadValue };
    return this.store({ ...draft, ...(payload === undefined ? {} : { payload }) }, postings, null);
  }

  private postingsOf(draft: EntryDraft): readonly Posting[] {
    if (isPartKind(draft.kind)) {
      if (draft.part === undefined) throw new Error(`An entry of kind ${draft.kind} needs a part line`);
      return post(this.state(draft.part), draft);
    }
    return postCount(draft, this.counts(draft));
  }

  /** What stands on the accounts of the draft's subject, this act's own postings included. */
  private counts(draft: EntryDraft): SubjectBalances {
    const { subjectKind, subject, part } = draft;
    const about = subjectKind !== undefined && subject !== undefined;
    const own = about ? countsOf(this.connection, subjectKind, subject) : partCounts(this.connection, part ?? 0);
    const sums: Partial<Record<Account, { quantityMilli: number; amountMinor: number }>> = { ...own };
    const add = (match: (posting: Posting) => boolean): void => {
      for (const { posting, quantityMilli, amountMinor } of this.deltas.values()) {
        if (!match(posting)) continue;
        const before = sums[posting.account] ?? { quantityMilli: 0, amountMinor: 0 };
        sums[posting.account] = {
          quantityMilli: before.quantityMilli + quantityMilli,
          amountMinor: before.amountMinor + amountMinor,
        };
      }
    };
    add((posting) =>
      about
        ? posting.subjectKind === subjectKind && posting.subject === subject
        : posting.part === part && posting.subjectKind === '' && posting.account === 'waived',
    );
    if ((draft.kind === 'budgeted' || draft.kind === 'contingency-drawn') && subjectKind !== 'build') {
      sums.contingency = countsOf(this.connection, 'build', draft.build).contingency ?? {
        quantityMilli: 0,
        amountMinor: 0,
      };
      add((posting) => posting.account === 'contingency' && posting.subject === draft.build);
    }
    return sums;
  }

  private store(
    draft: EntryDraft,
    postings: readonly (Posting & { readonly onDay?: string })[],
    reverses: number | null,
  ): number {
    const { connection } = this;
    const result = connection
      .prepare(insertEntry)
      .run(
        this.act,
        draft.kind,
        draft.on,
        this.recordedAt,
        draft.build,
        draft.part ?? null,
        draft.order ?? null,
        draft.line ?? null,
        draft.lot ?? null,
        draft.subjectKind ?? null,
        draft.subject ?? null,
        draft.quantityMilli ?? null,
        draft.amountMinor ?? null,
        draft.currency ?? null,
        draft.note ?? '',
        reverses,
        draft.payload === undefined ? null : JSON.stringify(draft.payload),
      );
    const seq = Number(result.lastInsertRowid);
    this.entries += 1;
    if (draft.kind === 'quoted') this.quoted = true;
    for (const posting of postings) this.storePosting(seq, draft, posting);
    if (draft.part !== undefined) this.states.set(draft.part, applyPostings(this.state(draft.part), postings));
    return seq;
  }

  private storePosting(seq: number, draft: EntryDraft, posting: Posting & { readonly onDay?: string }): void {
    if (posting.quantityMilli === 0 && posting.amountMinor === 0) return;
    const key = `${posting.part} ${posting.line} ${posting.lot} ${posting.subjectKind} ${posting.subject} ${posting.account}`;
    let delta = this.deltas.get(key);
    // What goes back goes back on the very day it was posted to, so that undo restores every past day as well.
    const day =
      posting.onDay ??
      (posting.account === 'remaining'
        ? dayThatKeepsAFloor(this.connection, posting, draft.on, delta !== undefined)
        : draft.on);
    this.connection
      .prepare(insertPosting)
      .run(
        seq,
        day,
        draft.build,
        posting.account,
        posting.part,
        posting.order,
        posting.line,
        posting.lot,
        posting.subjectKind,
        posting.subject,
        posting.quantityMilli,
        posting.amountMinor,
      );
    if (delta === undefined) {
      delta = { posting, build: draft.build, quantityMilli: 0, amountMinor: 0, firstDay: day, lastDay: day };
      this.deltas.set(key, delta);
      const ofPart = this.deltasOfPart.get(posting.part);
      if (ofPart === undefined) this.deltasOfPart.set(posting.part, [delta]);
      else ofPart.push(delta);
    }
    delta.quantityMilli += posting.quantityMilli;
    delta.amountMinor += posting.amountMinor;
    if (day < delta.firstDay) delta.firstDay = day;
    if (day > delta.lastDay) delta.lastDay = day;
  }

  /** Takes one entry back by an equal and opposite one, on the day of the entry itself. */
  reverse(seq: number, reason: string): number {
    const entry = first<StoredEntry>(this.connection, 'SELECT * FROM entries WHERE seq = ?', seq);
    if (entry === undefined)
      throw new Refusal('not-found', `There is no entry number ${seq}. Nothing was changed.`, { field: 'entry' });
    const earlier = first<{ seq: number }>(this.connection, 'SELECT seq FROM entries WHERE reverses = ?', seq);
    if (earlier !== undefined) {
      throw new Refusal(
        'already-reversed',
        `Entry ${seq} was already taken back by entry ${earlier.seq}; take that one back to restore it. Nothing was changed.`,
        { field: 'entry', detail: { reversedBy: earlier.seq } },
      );
    }
    const payload = entry.payload === null ? null : (JSON.parse(entry.payload) as EntryPayload);
    // A reversal of a reversal is about the entry that the chain began with.
    const root = typeof payload?.['root'] === 'number' && entry.kind === 'reversal' ? payload['root'] : seq;
    const edits = editsOf(payload).map(inverse).reverse();
    for (const edit of edits) this.takeBack(edit, seq);
    const stored = this.postingsOfEntry(seq);
    // Each goes back on the day it was posted to, which for an estimate may be later than the entry's own.
    const postings = reversalPostings(stored).map((posting, index) => ({
      ...posting,
      onDay: stored[index]?.onDay ?? entry.on_day,
    }));
    const parts = new Set<number>(postings.map(({ part }) => part).filter((part) => part !== 0));
    if (entry.part !== null) parts.add(entry.part);
    for (const part of parts) this.state(part);
    const restored = this.connection.prepare('DELETE FROM taken_back WHERE seq = ?').run(root).changes > 0;
    if (!restored) this.connection.prepare('INSERT INTO taken_back (seq) VALUES (?)').run(root);
    const draft: EntryDraft = {
      kind: 'reversal',
      on: entry.on_day,
      build: entry.build,
      ...(entry.part === null ? {} : { part: entry.part }),
      ...(entry.order_id === null ? {} : { order: entry.order_id }),
      ...(entry.line === null ? {} : { line: entry.line }),
      ...(entry.lot === null ? {} : { lot: entry.lot }),
      ...(entry.subject_kind === null
        ? {}
        : { subjectKind: entry.subject_kind as NonNullable<EntryDraft['subjectKind']> }),
      ...(entry.subject === null ? {} : { subject: entry.subject }),
      ...(entry.quantity_milli === null ? {} : { quantityMilli: -entry.quantity_milli }),
      ...(entry.amount_minor === null ? {} : { amountMinor: -entry.amount_minor }),
      ...(entry.currency === null ? {} : { currency: entry.currency }),
      note: reason,
      payload: {
        of: of(entry.kind, payload),
        root,
        restored,
        ...(edits.length === 0 ? {} : { edits: edits as unknown as PayloadValue }),
      },
    };
    return this.store(draft, postings, seq);
  }

  private postingsOfEntry(seq: number): (Posting & { readonly onDay: string })[] {
    return all<Posting & { readonly onDay: string }>(
      this.connection,
      `SELECT account, part, order_id AS "order", line, lot, subject_kind AS subjectKind, subject, quantity_milli AS quantityMilli,
       amount_minor AS amountMinor, on_day AS onDay FROM postings WHERE entry = ? ORDER BY id`,
      seq,
    );
  }

  /** Writes an edit the other way, refusing when somebody changed the same value since. */
  private takeBack(edit: Edit, seq: number): void {
    const now = readRecord(this.connection, edit.table, edit.id);
    for (const [property, expected] of Object.entries(edit.before)) {
      if (JSON.stringify(now?.[property] ?? null) !== JSON.stringify(expected)) {
        throw new Refusal(
          'conflict',
          `The ${property} of the ${spokenTable(edit.table)} has been changed since entry ${seq}; take the later change back first. Nothing was changed.`,
          { field: property, detail: { entry: seq } },
        );
      }
    }
    this.write(edit);
  }

  /** Brings balances and positions up to date and checks that nothing fell below zero on any day. */
  finish(): readonly number[] {
    const { connection } = this;
    for (const delta of this.deltas.values()) {
      const { posting } = delta;
      connection
        .prepare(upsertBalance)
        .run(
          posting.part,
          posting.line,
          posting.lot,
          posting.subjectKind,
          posting.subject,
          posting.account,
          delta.build,
          posting.order,
          delta.quantityMilli,
          delta.amountMinor,
          delta.lastDay,
        );
    }
    for (const { posting, firstDay } of this.deltas.values()) {
      if (unitFloors.has(posting.account)) requireFloors(connection, posting, firstDay);
    }
    for (const [part, state] of this.states) {
      writePosition(connection, part, state, this.newParts.has(part) && !this.quoted ? 0 : undefined);
    }
    return [...this.states.keys()];
  }
}

const of = (kind: string, payload: EntryPayload | null): string =>
  kind === 'reversal' && typeof payload?.['of'] === 'string' ? payload['of'] : kind;

/** What the act of this idempotency key answered, if it was done. */
export function doneBefore(connection: Connection, key: string): ActResult | undefined {
  const row = first<{ result: string }>(connection, 'SELECT result FROM acts WHERE idempotency_key = ?', key);
  return row === undefined ? undefined : (JSON.parse(row.result) as ActResult);
}

/**
 * Runs one act: one IMMEDIATE transaction around all that `work` writes. The same key again returns the first answer.
 * @throws Refusal from `work`; then nothing was written.
 */
export function runAct(
  connection: Connection,
  spec: ActSpec,
  work: (writer: ActWriter) => string | undefined,
): ActResult {
  const { sqlite } = connection;
  return sqlite
    .transaction((): ActResult => {
      const before = doneBefore(connection, spec.key);
      if (before !== undefined) return before;
      const { next } = first<{ next: number }>(
        connection,
        "SELECT coalesce((SELECT seq FROM sqlite_sequence WHERE name = 'acts'), 0) + 1 AS next",
      ) as { next: number };
      const writer = new ActWriter(connection, next, spec.recordedAt);
      const label = work(writer) ?? spec.label;
      const parts = writer.finish();
      const result: ActResult = {
        act: next,
        label,
        entries: writer.entries,
        parts: [...parts],
        made: writer.made,
        notices: writer.notices,
      };
      connection
        .prepare(
          'INSERT INTO acts (id, kind, label, recorded_at, author, idempotency_key, target, undone, carried_by, result) VALUES (?, ?, ?, ?, ?, ?, ?, 0, ?, ?)',
        )
        .run(
          next,
          spec.kind ?? 'act',
          label,
          spec.recordedAt,
          spec.author,
          spec.key,
          spec.target ?? null,
          next,
          JSON.stringify(result),
        );
      return result;
    })
    .immediate();
}
