import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { LotSource } from '../../ledger/entry.ts';
import { flag, json, recordColumns } from './common.ts';

/** What the build needs, as typed. Needed quantity and price guess live in entries; here is what describes the line. */
export const parts = sqliteTable(
  'parts',
  {
    ...recordColumns,
    description: text('description').notNull(),
    partNumber: text('part_number').notNull().default(''),
    maker: text('maker').notNull().default(''),
    link: text('link').notNull().default(''),
    unit: text('unit').notNull().default('each'),
    system: integer('system'),
    phase: integer('phase'),
    job: integer('job'),
    vendor: integer('vendor'),
    bin: integer('bin'),
    priority: integer('priority').notNull().default(3),
    neededBy: text('needed_by'),
    optional: flag('optional').notNull().default(false),
    needsVerification: flag('needs_verification').notNull().default(false),
    stretchOnce: flag('stretch_once').notNull().default(false),
    attention: text('attention').notNull().default(''),
    note: text('note').notNull().default(''),
    /** What kind of thing it is, in the vocabulary of facts; empty = not said. */
    kind: text('kind').notNull().default(''),
    facts: json<{ key: string; value: string; unit: string }[]>('facts').notNull().default([]),
    /** Folded text for searching: lower case, no accents. */
    folded: text('folded').notNull().default(''),
    /** Key under which an import would know it again. */
    importKey: text('import_key'),
  },
  (t) => [
    // Covers the order and the count of the parts list, so that a page of it never sorts a build.
    index('parts_in_order').on(t.build, t.gone, t.system, t.phase, t.id, t.retiredOn),
    index('parts_by_job').on(t.job),
    index('parts_by_vendor').on(t.vendor),
  ],
);

/** Units that came in together. Where they are now is in the ledger. */
export const lots = sqliteTable(
  'lots',
  {
    ...recordColumns,
    part: integer('part').notNull(),
    line: integer('line').notNull().default(0),
    source: text('source').$type<LotSource>().notNull(),
    owner: text('owner').notNull().default(''),
    dueOn: text('due_on'),
    bin: integer('bin'),
    cameInOn: text('came_in_on').notNull(),
  },
  (t) => [index('lots_by_part').on(t.part), index('lots_by_line').on(t.line)],
);

/**
 * One row a part line: what its entries add up to now, so that a table of thousands is one read. Written in the
 * transaction of the entry; rebuilt by `verify` and compared.
 */
export const positions = sqliteTable(
  'positions',
  {
    part: integer('part').primaryKey(),
    build: integer('build').notNull(),
    needMilli: integer('need_milli').notNull().default(0),
    /** Guess of the price each, base currency, 1/10 000 of a minor unit; null = nobody has guessed. */
    estimateEachE4: integer('estimate_each_e4'),
    placedMilli: integer('placed_milli').notNull().default(0),
    acknowledgedMilli: integer('acknowledged_milli').notNull().default(0),
    backOrderedMilli: integer('back_ordered_milli').notNull().default(0),
    inTransitMilli: integer('in_transit_milli').notNull().default(0),
    inspectionMilli: integer('inspection_milli').notNull().default(0),
    shelfMilli: integer('shelf_milli').notNull().default(0),
    allocatedMilli: integer('allocated_milli').notNull().default(0),
    trialMilli: integer('trial_milli').notNull().default(0),
    fittedMilli: integer('fitted_milli').notNull().default(0),
    snugMilli: integer('snug_milli').notNull().default(0),
    verifiedMilli: integer('verified_milli').notNull().default(0),
    rejectedMilli: integer('rejected_milli').notNull().default(0),
    lentMilli: integer('lent_milli').notNull().default(0),
    returnedUnsettledMilli: integer('returned_unsettled_milli').notNull().default(0),
    borrowedMilli: integer('borrowed_milli').notNull().default(0),
    borrowedOnMilli: integer('borrowed_on_milli').notNull().default(0),
    uncoveredMilli: integer('uncovered_milli').notNull().default(0),
    quotes: integer('quotes').notNull().default(0),
    costMinor: integer('cost_minor').notNull().default(0),
    lossMinor: integer('loss_minor').notNull().default(0),
    commitmentMinor: integer('commitment_minor').notNull().default(0),
    remainingMinor: integer('remaining_minor').notNull().default(0),
    paidMinor: integer('paid_minor').notNull().default(0),
    vendorOwedMinor: integer('vendor_owed_minor').notNull().default(0),
    claimsMinor: integer('claims_minor').notNull().default(0),
    depositsMinor: integer('deposits_minor').notNull().default(0),
    exchangeMinor: integer('exchange_minor').notNull().default(0),
    promisedOn: text('promised_on'),
    backOrderedOn: text('back_ordered_on'),
  },
  (t) => [index('positions_by_build').on(t.build)],
);
