import type { Account, Posting } from './accounts.ts';
import type { EntryDraft } from './entry.ts';
import { badInput } from './payloads.ts';
import type { Movement } from './posting-list.ts';

/** What stands on the accounts of one subject, before an entry. Accounts that hold nothing may be left out. */
export type SubjectBalances = { readonly [A in Account]?: Required<Movement> };

/** Units on an account: a thing listed or done counts as 1000. */
export function countOn(current: SubjectBalances, account: Account): number {
  return current[account]?.quantityMilli ?? 0;
}

export function amountOn(current: SubjectBalances, account: Account): number {
  return current[account]?.amountMinor ?? 0;
}

/**
 * One posting about the draft's subject, or about its part line when it names one and no subject (a waiver).
 * @throws Refusal `bad-input` when it names neither.
 */
export function subjectPosting(draft: EntryDraft, account: Account, moved: Movement): Posting {
  const { subjectKind, subject, part } = draft;
  if ((subjectKind === undefined || subject === undefined) && part === undefined) {
    throw badInput('subject', 'is missing', 'what the entry is about');
  }
  const named = subjectKind !== undefined && subject !== undefined;
  return {
    account,
    part: named ? 0 : (part ?? 0),
    order: 0,
    line: 0,
    lot: 0,
    subjectKind: named ? subjectKind : '',
    subject: named ? subject : 0,
    quantityMilli: moved.quantityMilli ?? 0,
    amountMinor: moved.amountMinor ?? 0,
  };
}
