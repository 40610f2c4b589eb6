/** What the build requires: needs added, changed and dropped, with their price guess. */
import { onEngine, tied } from './coverage.ts';
import type { EntryDraft } from './entry.ts';
import { notFromHere, tooMany } from './limits.ts';
import type { PartState } from './part-state.ts';
import { payloadNumber, quantityOf, wholeNumber } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';

/** Need n at estimate e: need + n. A spare needs 0. */
export function postNeedAdded(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  if (state.needMilli > 0) {
    throw notFromHere('This part line has a need already.', 'need', 'a change of the need instead');
  }
  list.part('need', { quantityMilli: wholeNumber(draft.quantityMilli, 'quantity', 0, 'a quantity of 0 or more') });
  return postEstimate(list, state, draft) ? { by: 'new estimate' } : { by: 'estimate' };
}

/** Another need, another estimate, or both; a need can't go below what is on the engine. */
export function postNeedChanged(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const need = payloadNumber(draft, 'needMilli');
  if (need !== undefined) {
    if (need < onEngine(state)) {
      throw notFromHere(
        'More units are on the engine than the new need.',
        'need',
        'a need of at least what is fitted, or take units off first',
      );
    }
    list.part('need', { quantityMilli: need - state.needMilli });
  }
  return postEstimate(list, state, draft) ? { by: 'new estimate' } : { by: 'estimate' };
}

/** Drops what nothing is tied to; units on the shelf stay as spares. */
export function postNeedDropped(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const asked = draft.quantityMilli === undefined ? state.needMilli : quantityOf(draft);
  const free = Math.max(0, state.needMilli - tied(state));
  if (asked > free) throw tooMany('need not tied to units on order, allocated or on the engine', free, asked);
  list.part('need', { quantityMilli: -asked });
  return { by: 'estimate' };
}

/** Posts the change of the estimate; whether it changed. An estimate of null takes the estimate away. */
function postEstimate(list: PostingList, state: PartState, draft: EntryDraft): boolean {
  const given = draft.payload?.['estimateEachE4'];
  if (given === undefined) return false;
  const each = given === null ? null : wholeNumber(given, 'estimate', 0, 'a price of 0 or more');
  if (each === state.estimateEachE4) return false;
  list.part('estimate', {
    quantityMilli: (each === null ? 0 : 1000) - state.estimateBalance.quantityMilli,
    amountMinor: (each ?? 0) - state.estimateBalance.amountE4,
  });
  return true;
}
