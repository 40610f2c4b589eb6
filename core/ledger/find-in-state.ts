import { Refusal } from '../refusal.ts';
import type { EntryDraft } from './entry.ts';
import type { LineState, LotState, PartState } from './part-state.ts';
import { badInput } from './payloads.ts';

/** The order line that a draft is about. @throws Refusal `bad-input` without one, `not-found` for an unknown one. */
export function lineOf(state: PartState, draft: EntryDraft): LineState {
  if (draft.line === undefined) throw badInput('order line', 'is missing', 'an order line of this part');
  const line = state.lines.find((one) => one.line === draft.line);
  if (line !== undefined && line.orderedMilli > 0) return line;
  throw new Refusal('not-found', `Order line ${draft.line} has nothing on order here. Nothing was changed.`, {
    field: 'order line',
    accepted: 'an order line of this part',
  });
}

/** The lot that a draft is about. @throws Refusal `bad-input` without one, `not-found` for an unknown one. */
export function lotOf(state: PartState, draft: EntryDraft): LotState {
  if (draft.lot === undefined) throw badInput('lot', 'is missing', 'a lot of this part');
  const lot = state.lots.find((one) => one.lot === draft.lot);
  if (lot !== undefined && lot.cameInMilli > 0) return lot;
  throw new Refusal('not-found', `Lot ${draft.lot} holds no units of this part. Nothing was changed.`, {
    field: 'lot',
    accepted: 'a lot of this part',
  });
}

/** The id for a lot that a draft brings in. @throws Refusal `bad-input` without one or for one in use. */
export function newLotId(state: PartState, draft: EntryDraft): number {
  if (draft.lot === undefined) throw badInput('lot', 'is missing', 'a new lot');
  if (state.lots.some((lot) => lot.lot === draft.lot && lot.cameInMilli > 0)) {
    throw badInput('lot', 'has come in before', 'a new lot');
  }
  return draft.lot;
}
