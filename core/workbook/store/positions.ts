import { uncovered } from '../../ledger/coverage.ts';
import { figures } from '../../ledger/figures.ts';
import type { PartState } from '../../ledger/part-state.ts';
import type { positions } from '../schema/index.ts';
import { all, type Connection, first } from './connection.ts';
import { type LineWord, latestPromise, partWords } from './promises.ts';

export type Position = Omit<typeof positions.$inferSelect, 'part' | 'build'>;

const sum = <T>(items: readonly T[], value: (item: T) => number): number =>
  items.reduce((total, item) => total + value(item), 0);

/** Every figure of a part line that tables show, from its state. The one home of what a position says. */
export function positionOf(state: PartState, words: ReadonlyMap<number, LineWord>, quotes: number): Position {
  const { lines, lots } = state;
  const money = figures(state);
  const own = (place: keyof PartState['lots'][number]['places']): number => sum(lots, ({ places }) => places[place]);
  const borrowed = lots.filter(({ source }) => source === 'borrowed');
  const on = (lot: PartState['lots'][number]): number =>
    lot.places['trial-fitted'] + lot.places.fitted + lot.places.snug + lot.places.verified;
  const open = lines.filter(
    (line) => line.placedMilli + line.acknowledgedMilli + line.backOrderedMilli + line.inTransitMilli > 0,
  );
  const promised = open.map(({ line }) => latestPromise(words.get(line))).filter((day) => day !== null);
  const waiting = lines
    .filter(({ backOrderedMilli }) => backOrderedMilli > 0)
    .map(({ line }) => words.get(line)?.backOrderedOn ?? null)
    .filter((day) => day !== null);
  return {
    needMilli: state.needMilli,
    estimateEachE4: state.estimateEachE4,
    placedMilli: sum(lines, (line) => line.placedMilli),
    acknowledgedMilli: sum(lines, (line) => line.acknowledgedMilli),
    backOrderedMilli: sum(lines, (line) => line.backOrderedMilli),
    inTransitMilli: sum(lines, (line) => line.inTransitMilli),
    inspectionMilli: own('inspection'),
    shelfMilli: own('shelf'),
    allocatedMilli: own('allocated'),
    trialMilli: own('trial-fitted'),
    fittedMilli: own('fitted'),
    snugMilli: own('snug'),
    verifiedMilli: own('verified'),
    rejectedMilli: own('rejected'),
    lentMilli: own('lent'),
    returnedUnsettledMilli: sum(lots, (lot) => lot.exits.returned - lot.settledMilli),
    borrowedMilli: sum(borrowed, (lot) => sum(Object.values(lot.places), (quantity) => quantity)),
    borrowedOnMilli: sum(borrowed, on),
    uncoveredMilli: uncovered(state),
    quotes,
    costMinor: money.costMinor,
    lossMinor: money.lossMinor,
    commitmentMinor: money.commitmentMinor,
    remainingMinor: money.remainingMinor,
    paidMinor: money.paidMinor,
    vendorOwedMinor: money.vendorOwedMinor,
    claimsMinor: money.claimsMinor,
    depositsMinor: money.depositsMinor,
    exchangeMinor: money.exchangeMinor,
    promisedOn: promised.sort()[0] ?? null,
    backOrderedOn: waiting.sort()[0] ?? null,
  };
}

export const quoteCountSql = `SELECT count(*) AS quotes FROM entries e WHERE e.part = ? AND e.kind = 'quoted'
  AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq)`;

const columns: readonly (readonly [keyof Position, string])[] = [
  ['needMilli', 'need_milli'],
  ['estimateEachE4', 'estimate_each_e4'],
  ['placedMilli', 'placed_milli'],
  ['acknowledgedMilli', 'acknowledged_milli'],
  ['backOrderedMilli', 'back_ordered_milli'],
  ['inTransitMilli', 'in_transit_milli'],
  ['inspectionMilli', 'inspection_milli'],
  ['shelfMilli', 'shelf_milli'],
  ['allocatedMilli', 'allocated_milli'],
  ['trialMilli', 'trial_milli'],
  ['fittedMilli', 'fitted_milli'],
  ['snugMilli', 'snug_milli'],
  ['verifiedMilli', 'verified_milli'],
  ['rejectedMilli', 'rejected_milli'],
  ['lentMilli', 'lent_milli'],
  ['returnedUnsettledMilli', 'returned_unsettled_milli'],
  ['borrowedMilli', 'borrowed_milli'],
  ['borrowedOnMilli', 'borrowed_on_milli'],
  ['uncoveredMilli', 'uncovered_milli'],
  ['quotes', 'quotes'],
  ['costMinor', 'cost_minor'],
  ['lossMinor', 'loss_minor'],
  ['commitmentMinor', 'commitment_minor'],
  ['remainingMinor', 'remaining_minor'],
  ['paidMinor', 'paid_minor'],
  ['vendorOwedMinor', 'vendor_owed_minor'],
  ['claimsMinor', 'claims_minor'],
  ['depositsMinor', 'deposits_minor'],
  ['exchangeMinor', 'exchange_minor'],
  ['promisedOn', 'promised_on'],
  ['backOrderedOn', 'back_ordered_on'],
];

const replace = `INSERT OR REPLACE INTO positions (part, build, ${columns.map(([, name]) => name).join(', ')})
  VALUES (?, ?, ${columns.map(() => '?').join(', ')})`;

/**
 * Keeps the position of a part line; in the transaction of the entry that moved it.
 * @param knownQuotes how many quotes there are for it, where the caller knows.
 */
export function writePosition(connection: Connection, part: number, state: PartState, knownQuotes?: number): void {
  const words = state.lines.length === 0 ? new Map<number, LineWord>() : partWords(connection, part);
  const quotes = knownQuotes ?? first<{ quotes: number }>(connection, quoteCountSql, part)?.quotes ?? 0;
  const position = positionOf(state, words, quotes);
  connection.prepare(replace).run(part, state.build, ...columns.map(([property]) => position[property]));
}

/** `positions.* AS property` for a join with parts. */
export const positionSelect = columns.map(([property, name]) => `q.${name} AS "${property}"`).join(', ');

/** All kept positions of a build, by part. */
export function keptPositions(connection: Connection, build: number): Map<number, Position> {
  const rows = all<Position & { part: number }>(
    connection,
    `SELECT q.part AS part, ${positionSelect} FROM positions q WHERE q.build = ?`,
    build,
  );
  return new Map(rows.map(({ part, ...position }) => [part, position]));
}
