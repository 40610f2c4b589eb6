import { sql } from 'drizzle-orm';
import { check, index, integer, primaryKey, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import type { Account, SubjectKind } from '../../ledger/accounts.ts';
import type { EntryKind, EntryPayload } from '../../ledger/entry.ts';
import { flag, json } from './common.ts';

/** One thing that the user did: may be many entries. `kind` undo and redo point at the act that they took back. */
export const acts = sqliteTable(
  'acts',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    kind: text('kind').$type<'act' | 'undo' | 'redo'>().notNull(),
    label: text('label').notNull(),
    recordedAt: text('recorded_at').notNull(),
    author: text('author').notNull(),
    idempotencyKey: text('idempotency_key').notNull(),
    target: integer('target'),
    /** Taken back by an undo and not redone since. The only thing about an act that ever changes, with `carriedBy`. */
    undone: flag('undone').notNull().default(false),
    /** The act whose entries carry the effect now: itself, or its latest redo. */
    carriedBy: integer('carried_by'),
    result: json<Record<string, unknown>>('result').notNull(),
  },
  (t) => [
    uniqueIndex('acts_by_key').on(t.idempotencyKey),
    index('acts_by_kind').on(t.kind, t.undone, t.id),
    check('acts_kind', sql`${t.kind} IN ('act', 'undo', 'redo')`),
  ],
);

/** The journal: only ever added to (triggers refuse anything else). */
export const entries = sqliteTable(
  'entries',
  {
    seq: integer('seq').primaryKey({ autoIncrement: true }),
    act: integer('act').notNull(),
    kind: text('kind').$type<EntryKind>().notNull(),
    onDay: text('on_day').notNull(),
    recordedAt: text('recorded_at').notNull(),
    build: integer('build').notNull(),
    part: integer('part'),
    orderId: integer('order_id'),
    line: integer('line'),
    lot: integer('lot'),
    subjectKind: text('subject_kind').$type<SubjectKind>(),
    subject: integer('subject'),
    quantityMilli: integer('quantity_milli'),
    amountMinor: integer('amount_minor'),
    currency: text('currency'),
    note: text('note').notNull().default(''),
    reverses: integer('reverses'),
    payload: json<EntryPayload>('payload'),
  },
  (t) => [
    index('entries_by_act').on(t.act),
    index('entries_by_part').on(t.part, t.seq),
    // Most entries are about no order, no subject and no other entry: left out here, they cost an act no page to write.
    index('entries_by_order').on(t.orderId, t.seq).where(sql`${t.orderId} IS NOT NULL`),
    index('entries_by_subject').on(t.subjectKind, t.subject, t.seq).where(sql`${t.subject} IS NOT NULL`),
    index('entries_by_kind').on(t.kind, t.seq),
    index('entries_by_day').on(t.build, t.onDay),
    uniqueIndex('entries_reversed_once').on(t.reverses).where(sql`${t.reverses} IS NOT NULL`),
    check('entries_day', sql`length(${t.onDay}) = 10 AND date(${t.onDay}) IS ${t.onDay}`),
    check('entries_amount', sql`abs(coalesce(${t.amountMinor}, 0)) <= 9007199254740991`),
    check('entries_quantity', sql`abs(coalesce(${t.quantityMilli}, 0)) <= 9007199254740991`),
  ],
);

/**
 * Entries that are taken back as things stand. An undo that was redone and undone again makes a chain of reversals;
 * this says in one look what the chain comes to. Kept in the transaction of the reversal; can be rebuilt from it.
 */
export const takenBack = sqliteTable('taken_back', { seq: integer('seq').primaryKey() });

/** What each entry moves. Every figure in the program is a sum over these. */
export const postings = sqliteTable(
  'postings',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    entry: integer('entry')
      .notNull()
      .references(() => entries.seq),
    onDay: text('on_day').notNull(),
    build: integer('build').notNull(),
    account: text('account').$type<Account>().notNull(),
    part: integer('part').notNull(),
    orderId: integer('order_id').notNull(),
    line: integer('line').notNull(),
    lot: integer('lot').notNull(),
    subjectKind: text('subject_kind').$type<SubjectKind | ''>().notNull(),
    subject: integer('subject').notNull(),
    quantityMilli: integer('quantity_milli').notNull(),
    amountMinor: integer('amount_minor').notNull(),
  },
  (t) => [
    index('postings_by_entry').on(t.entry),
    index('postings_by_part').on(t.part, t.account, t.onDay),
    index('postings_by_build').on(t.build, t.onDay),
    index('postings_by_subject').on(t.subjectKind, t.subject, t.onDay),
  ],
);

/** Sums of postings by key, kept in the transaction of the entry; can be thrown away and rebuilt to the same. */
export const balances = sqliteTable(
  'balances',
  {
    part: integer('part').notNull(),
    line: integer('line').notNull(),
    lot: integer('lot').notNull(),
    subjectKind: text('subject_kind').$type<SubjectKind | ''>().notNull(),
    subject: integer('subject').notNull(),
    account: text('account').$type<Account>().notNull(),
    build: integer('build').notNull(),
    orderId: integer('order_id').notNull(),
    quantityMilli: integer('quantity_milli').notNull(),
    amountMinor: integer('amount_minor').notNull(),
    /** Latest day posted to this key: a back-dated act looks at every later day before it is let in. */
    lastDay: text('last_day').notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.part, t.line, t.lot, t.subjectKind, t.subject, t.account] }),
    index('balances_by_order').on(t.orderId),
    index('balances_by_subject').on(t.subjectKind, t.subject),
    index('balances_by_build').on(t.build, t.account),
  ],
);
