/** Refundable deposits on old units: cash out, but no cost until the vendor keeps them. */
import type { EntryDraft } from './entry.ts';
import { lineOf } from './find-in-state.ts';
import { tooMuch } from './limits.ts';
import type { PartState } from './part-state.ts';
import { amountOf, requireReason } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';

const accounts = { 'deposit-refunded': 'cash', 'deposit-kept': 'cost' } as const;

/** Deposit paid d: deposits + d, cash − d. */
export function postDepositPaid(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const amountMinor = amountOf(draft, 1);
  list.line(line, 'deposits', { amountMinor });
  list.line(line, 'cash', { amountMinor: -amountMinor });
  return { by: 'estimate' };
}

/** Deposit refunded d: cash + d, deposits − d. Kept by the vendor d, with a reason: cost + d, deposits − d. */
export function postDepositClosed(
  list: PostingList,
  state: PartState,
  draft: EntryDraft,
  kind: keyof typeof accounts,
): RemainingRule {
  const line = lineOf(state, draft);
  const amountMinor = amountOf(draft, 1);
  if (kind === 'deposit-kept') requireReason(draft);
  if (amountMinor > line.depositsMinor) throw tooMuch('deposits', line.depositsMinor, amountMinor);
  list.line(line, accounts[kind], { amountMinor });
  list.line(line, 'deposits', { amountMinor: -amountMinor });
  return { by: 'estimate' };
}
