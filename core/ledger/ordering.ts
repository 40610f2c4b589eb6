/** Order lines before anything arrives: placed, labelled, cancelled. */
import { type OutstandingAccount, outstandingAccounts } from './accounts.ts';
import { outstandingOf } from './coverage.ts';
import type { EntryDraft } from './entry.ts';
import { lineOf } from './find-in-state.ts';
import { tooMany } from './limits.ts';
import type { LineState, PartState } from './part-state.ts';
import { amountOf, badInput, payloadChoice, quantityOf } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';
import { outstandingShare, overpaidOf } from './unit-costs.ts';

/** Order placed, landed value v: commitment + v, units placed; what they cover leaves the remaining estimate. */
export function postOrdered(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const quantityMilli = quantityOf(draft);
  const amountMinor = amountOf(draft, 0);
  if (draft.line === undefined || draft.order === undefined) {
    throw badInput('order line', 'is missing', 'an order and a new line of it');
  }
  if (state.lines.some((line) => line.line === draft.line && line.orderedMilli > 0)) {
    throw badInput('order line', 'was ordered before', 'a new line');
  }
  const line = { line: draft.line, order: draft.order };
  list.line(line, 'ordered', { quantityMilli, amountMinor });
  list.line(line, 'placed', { quantityMilli });
  list.line(line, 'commitment', { amountMinor });
  return { by: 'estimate' };
}

const relabels = {
  acknowledged: { from: ['placed'], to: 'acknowledged' },
  // A shipped notice can turn out short: units said to be in transit are back-ordered after all.
  'back-ordered': { from: ['placed', 'acknowledged', 'in-transit'], to: 'back-ordered' },
  shipped: { from: ['placed', 'acknowledged', 'back-ordered'], to: 'in-transit' },
} as const;

/** Acknowledged, back-order notice, shipped notice: outstanding units change their label, nothing else. */
export function postRelabelled(
  list: PostingList,
  state: PartState,
  draft: EntryDraft,
  kind: keyof typeof relabels,
): RemainingRule {
  const { from, to } = relabels[kind];
  const line = lineOf(state, draft);
  const quantityMilli = quantityOf(draft);
  takeLabels(list, line, draft, from, from.join(' + '));
  list.line(line, to, { quantityMilli });
  return { by: 'estimate' };
}

/**
 * Cancelled, value v: commitment − v. What was paid beyond the value received and still on order becomes a claim;
 * uncovered units come back into the remaining estimate.
 */
export function postCancelled(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const quantityMilli = quantityOf(draft);
  takeLabels(list, line, draft, ['back-ordered', 'placed', 'acknowledged', 'in-transit'], 'outstanding');
  list.line(line, 'cancelled', { quantityMilli });
  const value = outstandingShare(line, quantityMilli);
  list.line(line, 'commitment', { amountMinor: -value });
  const claim = Math.min(value, overpaidOf(line, line.commitmentMinor - value));
  list.line(line, 'claims', { amountMinor: claim });
  list.line(line, 'vendor', { amountMinor: -claim });
  return { by: 'estimate' };
}

const labelFields = {
  placed: 'placedMilli',
  acknowledged: 'acknowledgedMilli',
  'back-ordered': 'backOrderedMilli',
  'in-transit': 'inTransitMilli',
} as const satisfies Record<OutstandingAccount, keyof LineState>;

/**
 * Takes the draft's units out of the labels in the order given, or out of the payload's `from` alone.
 * @param bucket how a refusal names the labels together.
 */
export function takeLabels(
  list: PostingList,
  line: LineState,
  draft: EntryDraft,
  labels: readonly OutstandingAccount[],
  bucket: string,
): void {
  const asked = quantityOf(draft);
  const only = payloadChoice(draft, 'from', outstandingAccounts);
  if (only !== undefined && !labels.includes(only))
    throw badInput('from', `is “${only}”`, `one of: ${labels.join(', ')}`);
  let open = asked;
  for (const label of only === undefined ? labels : [only]) {
    const taken = Math.min(open, line[labelFields[label]]);
    list.line(line, label, { quantityMilli: -taken });
    open -= taken;
  }
  if (open === 0) return;
  throw tooMany(
    only ?? bucket,
    only === undefined && bucket === 'outstanding' ? outstandingOf(line) : asked - open,
    asked,
  );
}
