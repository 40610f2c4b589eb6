/**
 * The accounts that postings move. Quantities are integer thousandths, amounts integer minor units of the workbook's
 * base currency, debits positive. Every figure in the program is a sum over postings of these accounts.
 */

/** How an order line's outstanding units are labelled; the four always add up to what is outstanding. */
export const outstandingAccounts = ['placed', 'acknowledged', 'back-ordered', 'in-transit'] as const;

/** What happened to an order line's units over its life: outstanding = ordered + replaced − cancelled − received. */
export const lineAccounts = ['ordered', 'replaced', 'cancelled', 'received'] as const;

/** Where a lot's units are while they are ours to move. */
export const placeAccounts = [
  'inspection',
  'shelf',
  'allocated',
  'trial-fitted',
  'fitted',
  'snug',
  'verified',
  'rejected',
  'lent',
] as const;

/** Where a lot's units went for good. `settled` marks returned units that were refunded or exchanged. */
export const exitAccounts = ['returned', 'given-back', 'consumed', 'lost', 'scrapped', 'moved'] as const;

/** Double-entry money accounts: they add up to zero over every entry. Vendor is a liability, so owing is negative. */
export const moneyAccounts = [
  'cash',
  'vendor',
  'claims',
  'deposits',
  'cost',
  'loss',
  'transfer',
  'exchange',
  'rounding',
] as const;

/** Memos outside the double entry: commitment on order, remaining estimate, budget, contingency. */
export const memoAccounts = ['commitment', 'remaining', 'budget', 'contingency'] as const;

/** Counts about things other than parts: jobs, tools, decisions, bolt groups, waivers. */
export const countAccounts = [
  'job-planned',
  'job-done',
  'tool-listed',
  'tool-at-hand',
  'decision-listed',
  'decision-made',
  'bolts',
  'bolts-snug',
  'bolts-final',
  'waived',
  'gate-passed',
] as const;

export type OutstandingAccount = (typeof outstandingAccounts)[number];
export type PlaceAccount = (typeof placeAccounts)[number];
export type ExitAccount = (typeof exitAccounts)[number];
export type MoneyAccount = (typeof moneyAccounts)[number];
export type CountAccount = (typeof countAccounts)[number];

export const accounts = [
  'need',
  // The price guess of a part line: the amount is 1/10,000 of a minor unit each; a quantity of 1000 says there is one.
  'estimate',
  ...outstandingAccounts,
  ...lineAccounts,
  ...placeAccounts,
  ...exitAccounts,
  'came-in',
  'settled',
  ...moneyAccounts,
  ...memoAccounts,
  ...countAccounts,
] as const;

export type Account = (typeof accounts)[number];

/** What a posting about something other than a part line is about. */
export const subjectKinds = [
  'budget-line',
  'job',
  'tool',
  'decision',
  'bolt-group',
  'measuring-sheet',
  'check',
  'connection',
  'declared-fit',
  'hose-line',
  'system',
  'phase',
  'waiver',
  'build',
] as const;
export type SubjectKind = (typeof subjectKinds)[number];

/**
 * One movement of one account by one entry. `part`, `line` and `lot` are 0 where they don't apply; `subjectKind` and
 * `subject` name the job, tool, … that a count is about.
 */
export interface Posting {
  readonly account: Account;
  readonly part: number;
  readonly order: number;
  readonly line: number;
  readonly lot: number;
  readonly subjectKind: SubjectKind | '';
  readonly subject: number;
  readonly quantityMilli: number;
  readonly amountMinor: number;
}

/** Balance of one account of one key: the sum of its postings. */
export interface Balance {
  readonly account: Account;
  readonly part: number;
  readonly line: number;
  readonly lot: number;
  readonly quantityMilli: number;
  readonly amountMinor: number;
}
