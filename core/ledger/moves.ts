/**
 * Which buckets each kind of entry takes a lot's units from, in the order it takes them, and who may be moved so.
 * Anything not listed is refused.
 */
import type { ExitAccount, PlaceAccount } from './accounts.ts';
import { isFromVendor, isOurs, room, unsettledOf } from './coverage.ts';
import type { EntryKind } from './entry.ts';
import type { LotState, PartState } from './part-state.ts';

export const unitMoveKinds = [
  'accepted',
  'rejected',
  'sent-back',
  'allocated',
  'released',
  'trial-fitted',
  'fitted',
  'taken-off',
  'snugged',
  'verified',
  'verification-withdrawn',
  'lent',
  'came-back',
  'given-back',
  'lost',
  'scrapped',
  'consumed',
  'found-again',
  'moved',
] as const satisfies readonly EntryKind[];
export type UnitMoveKind = (typeof unitMoveKinds)[number];

/** Kinds that settle units which went back to the vendor. */
export type SettleKind = 'exchanged' | 'refunded';

/** Whether a kind settles returned units instead of moving units between buckets. */
export function isSettling(kind: UnitMoveKind | SettleKind): kind is SettleKind {
  return kind === 'exchanged' || kind === 'refunded';
}

export type Bucket = PlaceAccount | ExitAccount;

/** Whose lots a kind may move, and how a refusal says that the others don't count. */
interface Whose {
  readonly includes: (lot: LotState) => boolean;
  readonly words: string;
}

const anyLot: Whose = { includes: () => true, words: '' };
const oursOnly: Whose = { includes: isOurs, words: ' (borrowed units left out)' };
const vendorOnly: Whose = { includes: isFromVendor, words: ' (of units that came from a vendor)' };
const borrowedOnly: Whose = { includes: (lot) => !isOurs(lot), words: ' (of borrowed units)' };

interface Move {
  readonly from: readonly Bucket[];
  readonly whose: Whose;
}

// Off the engine first, so that leaving the source open never takes a fitted part by surprise.
const everywhere = [
  'shelf',
  'allocated',
  'inspection',
  'lent',
  'rejected',
  'trial-fitted',
  'fitted',
  'snug',
  'verified',
] as const;

export const moves: Readonly<Record<UnitMoveKind, Move>> = {
  accepted: { from: ['inspection'], whose: anyLot },
  rejected: { from: ['inspection', 'shelf', 'allocated', 'trial-fitted'], whose: oursOnly },
  'sent-back': { from: ['rejected'], whose: vendorOnly },
  allocated: { from: ['shelf'], whose: anyLot },
  released: { from: ['allocated'], whose: anyLot },
  'trial-fitted': { from: ['allocated', 'shelf'], whose: anyLot },
  fitted: { from: ['trial-fitted', 'allocated', 'shelf'], whose: anyLot },
  'taken-off': { from: ['trial-fitted', 'fitted', 'snug', 'verified'], whose: anyLot },
  snugged: { from: ['fitted'], whose: anyLot },
  verified: { from: ['snug', 'fitted'], whose: anyLot },
  'verification-withdrawn': { from: ['verified'], whose: anyLot },
  lent: { from: ['shelf'], whose: oursOnly },
  'came-back': { from: ['lent'], whose: oursOnly },
  'given-back': { from: ['allocated', 'shelf'], whose: borrowedOnly },
  lost: { from: everywhere, whose: anyLot },
  scrapped: { from: everywhere, whose: oursOnly },
  // A refused unit isn't used up: it is the vendor's to take back.
  consumed: { from: ['shelf', 'allocated', 'trial-fitted', 'fitted', 'snug', 'verified'], whose: oursOnly },
  'found-again': { from: ['lost'], whose: anyLot },
  moved: { from: ['shelf', 'allocated'], whose: oursOnly },
};

const moveKinds: ReadonlySet<string> = new Set(unitMoveKinds);

export function isUnitMove(kind: EntryKind): kind is UnitMoveKind {
  return moveKinds.has(kind);
}

/** Units of a lot in a bucket, places and exits alike. */
export function unitsIn(lot: LotState, bucket: Bucket): number {
  return bucket in lot.places ? lot.places[bucket as PlaceAccount] : lot.exits[bucket as ExitAccount];
}

/** How a refusal names the buckets that a kind draws from. */
export function bucketName(kind: UnitMoveKind | SettleKind, from: readonly Bucket[]): string {
  if (isSettling(kind)) return 'returned and not settled';
  return `${from.join(' + ')}${moves[kind].whose.words}`;
}

/** Most units that a kind could move from here, over all lots. 0 means that the act isn't possible now. */
export function available(
  state: PartState,
  kind: UnitMoveKind | SettleKind,
  from: readonly Bucket[] = isSettling(kind) ? ['returned'] : moves[kind].from,
): number {
  let sum = 0;
  for (const lot of state.lots) for (const bucket of from) sum += movable(lot, kind, bucket);
  return sum;
}

/** Most units that an act could really move now: what is available, within what the engine and the part allow. */
export function most(state: PartState, kind: UnitMoveKind | SettleKind): number {
  if (kind === 'fitted') return Math.min(available(state, kind), Math.max(0, room(state)));
  // A stretched fastener can be taken off to the scrap, so only the withdrawal is out of the question.
  if (kind === 'verification-withdrawn' && state.stretchOnce) return 0;
  return available(state, kind);
}

/** Units of one bucket of one lot that a kind could move. */
export function movable(lot: LotState, kind: UnitMoveKind | SettleKind, bucket: Bucket): number {
  // Nothing was on order that an over-delivered unit could be exchanged for.
  if (kind === 'exchanged') return lot.source === 'bought' ? unsettledOf(lot) : 0;
  if (kind === 'refunded') return unsettledOf(lot);
  return moves[kind].whose.includes(lot) ? unitsIn(lot, bucket) : 0;
}
