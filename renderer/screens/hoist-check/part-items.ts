import type { BlockerKind } from '../../../core/contract/gate.ts';
import type { PartAct, PartDetail } from '../../../core/contract/parts.ts';

/** An act that clears what blocks about a part, with what it would move. */
export interface ClearingAct {
  readonly act: PartAct;
  readonly mostMilli: number;
  /** The very lots, where only units of some lots are meant: those on trial, those that belong to somebody else. */
  readonly lots?: readonly { readonly lot: number; readonly quantityMilli: number }[];
}

type Lot = PartDetail['lots'][number];

const onTrial = (lot: Lot): number => lot.places['trial-fitted'] ?? 0;
const onEngine = (lot: Lot): number =>
  ['trial-fitted', 'fitted', 'snug', 'verified'].reduce((sum, place) => sum + (lot.places[place] ?? 0), 0);
const offEngine = (lot: Lot): number => (lot.places['allocated'] ?? 0) + (lot.places['shelf'] ?? 0);

/** Which units an act from the check takes; the whole part line unless trial or borrowed units are meant. */
function lotsFor(detail: PartDetail, kind: BlockerKind, act: PartAct): ClearingAct['lots'] {
  const held =
    kind === 'trial part on'
      ? detail.lots.map((lot) => ({ lot: lot.id, quantityMilli: onTrial(lot) }))
      : kind === 'borrowed part on'
        ? detail.lots
            .filter(({ source }) => source === 'borrowed')
            .map((lot) => ({ lot: lot.id, quantityMilli: act === 'give back' ? offEngine(lot) : onEngine(lot) }))
        : undefined;
  return held?.filter(({ quantityMilli }) => quantityMilli > 0);
}

/** The acts of those given that are possible on the part now. */
export function clearingItems(detail: PartDetail, kind: BlockerKind, acts: readonly PartAct[]): readonly ClearingAct[] {
  return acts.flatMap((act) => {
    const most = detail.possible.find((possible) => possible.act === act)?.mostMilli ?? 0;
    if (most === 0) return [];
    const lots = lotsFor(detail, kind, act);
    if (lots === undefined) return [{ act, mostMilli: most }];
    if (lots.length === 0) return [];
    return [{ act, mostMilli: lots.reduce((sum, { quantityMilli }) => sum + quantityMilli, 0), lots }];
  });
}
