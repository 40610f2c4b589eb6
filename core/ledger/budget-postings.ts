/** Budget and contingency. Neither is money: they say what may be spent. */
import type { Posting } from './accounts.ts';
import type { EntryDraft } from './entry.ts';
import { tooMuch } from './limits.ts';
import { amountOf, badInput, requireReason } from './payloads.ts';
import { amountOn, type SubjectBalances, subjectPosting } from './subject-posting.ts';

/**
 * An approved change of a budget, or with the payload's `contingency` of the build's contingency; a negative amount
 * takes money away. Neither may go below 0.
 */
export function postBudgeted(draft: EntryDraft, current: SubjectBalances): Posting[] {
  const amountMinor = amountOf(draft, Number.MIN_SAFE_INTEGER);
  if (amountMinor === 0) throw badInput('amount', 'is 0', 'an amount above or below 0');
  const account = draft.payload?.['contingency'] === true ? 'contingency' : 'budget';
  const held = amountOn(current, account);
  if (held + amountMinor < 0) throw tooMuch(account, held, -amountMinor);
  return [subjectPosting(account === 'contingency' ? onBuild(draft) : draft, account, { amountMinor })];
}

/** Contingency drawn for a budget: a transfer. `current` holds the build's contingency. A reason is required. */
export function postContingencyDrawn(draft: EntryDraft, current: SubjectBalances): Posting[] {
  requireReason(draft);
  const amountMinor = amountOf(draft, 1);
  const left = amountOn(current, 'contingency');
  if (amountMinor > left) throw tooMuch('contingency', left, amountMinor);
  return [
    subjectPosting(onBuild(draft), 'contingency', { amountMinor: -amountMinor }),
    subjectPosting(draft, 'budget', { amountMinor }),
  ];
}

/** There is one contingency, and it is the build's. */
function onBuild(draft: EntryDraft): EntryDraft {
  return { ...draft, subjectKind: 'build', subject: draft.build };
}
