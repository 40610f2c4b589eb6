import { tooMany } from './limits.ts';
import { type Bucket, bucketName, isSettling, movable, moves, type SettleKind, type UnitMoveKind } from './moves.ts';
import type { PartState } from './part-state.ts';
import type { PostingList } from './posting-list.ts';

/** Some units of one lot to be moved out of one bucket: becomes one entry. */
export interface LotPick {
  readonly lot: number;
  readonly from: Bucket;
  readonly quantityMilli: number;
}

export interface LotWish {
  /** Only this lot. */
  readonly lot?: number;
  /** Lots taken before the others. */
  readonly preferLot?: number;
  /** Only this bucket. */
  readonly from?: Bucket;
}

/**
 * Chooses units for an act on a part line as a whole: the bucket that the act takes from first, and in each bucket
 * the oldest lot first, so that one act becomes one entry per lot and bucket.
 * @param quantityMilli above 0.
 * @throws Refusal `not-allowed-from-here` naming the buckets and how many units they hold together.
 */
export function chooseLots(
  state: PartState,
  kind: UnitMoveKind | SettleKind,
  quantityMilli: number,
  wish: LotWish = {},
): LotPick[] {
  const all: readonly Bucket[] = isSettling(kind) ? ['returned'] : moves[kind].from;
  const from = wish.from === undefined ? all : all.filter((bucket) => bucket === wish.from);
  const lots = state.lots
    .filter((lot) => wish.lot === undefined || lot.lot === wish.lot)
    .sort((a, b) => Number(b.lot === wish.preferLot) - Number(a.lot === wish.preferLot) || a.lot - b.lot);

  const picks: LotPick[] = [];
  let open = quantityMilli;
  for (const bucket of from) {
    for (const lot of lots) {
      const taken = Math.min(open, Math.max(0, movable(lot, kind, bucket)));
      if (taken <= 0) continue;
      picks.push({ lot: lot.lot, from: bucket, quantityMilli: taken });
      open -= taken;
    }
  }
  if (open > 0) {
    const name = bucketName(kind, from.length > 0 || wish.from === undefined ? from : [wish.from]);
    throw tooMany(name, quantityMilli - open, quantityMilli);
  }
  return picks;
}

/** Moves picked units from their buckets into another bucket of the same lots. */
export function postMove(list: PostingList, state: PartState, picks: readonly LotPick[], to: Bucket): void {
  for (const pick of picks) {
    const lot = state.lots.find((one) => one.lot === pick.lot);
    if (lot === undefined) continue;
    list.lot(lot, pick.from, { quantityMilli: -pick.quantityMilli });
    list.lot(lot, to, { quantityMilli: pick.quantityMilli });
  }
}
