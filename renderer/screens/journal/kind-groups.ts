import type { EntryKind } from '../../../core/ledger/entry.ts';

/** Kinds of entries in plain words, as the filter offers them. Every kind is in exactly one group. */
export const kindGroups = {
  needs: { title: 'Needs and quotes', kinds: ['need-added', 'need-changed', 'need-dropped', 'quoted'] },
  orders: {
    title: 'Orders and promises',
    kinds: ['ordered', 'acknowledged', 'back-ordered', 'promised', 'shipped', 'chased', 'repriced', 'cancelled'],
  },
  arrivals: {
    title: 'Arrivals and what came in',
    kinds: ['received', 'over-delivered', 'accepted', 'rejected', 'came-in', 'found-again'],
  },
  returns: { title: 'Returns, exchanges, refunds', kinds: ['sent-back', 'exchanged', 'refunded'] },
  payments: {
    title: 'Payments and deposits',
    kinds: ['paid', 'deposit-paid', 'old-unit-sent', 'deposit-refunded', 'deposit-kept'],
  },
  shelf: { title: 'Bins and setting aside', kinds: ['put-in-bin', 'allocated', 'released', 'moved'] },
  fitting: {
    title: 'Trial fit, fitting, final checks',
    kinds: [
      'trial-fitted',
      'fitted',
      'taken-off',
      'snugged',
      'verified',
      'verification-withdrawn',
      'measured',
      'line-step',
    ],
  },
  leaving: {
    title: 'Lent, given back, lost, used up',
    kinds: ['lent', 'came-back', 'given-back', 'lost', 'scrapped', 'consumed'],
  },
  budget: { title: 'Budget', kinds: ['budgeted', 'contingency-drawn'] },
  jobs: {
    title: 'Jobs and hours',
    kinds: ['job-planned', 'job-done', 'job-reopened', 'job-dropped', 'job-started', 'job-stopped', 'hours'],
  },
  tools: { title: 'Tools', kinds: ['tool-listed', 'tool-at-hand', 'tool-away', 'tool-dropped'] },
  decisions: {
    title: 'Decisions',
    kinds: ['decision-listed', 'decision-made', 'decision-reopened', 'decision-dropped'],
  },
  bolts: {
    title: 'Bolts',
    kinds: [
      'bolts-listed',
      'bolts-snugged',
      'bolts-final',
      'bolts-loosened',
      'bolts-dropped',
      'bolt-turned',
      'bolts-rechecked',
    ],
  },
  gate: { title: 'Hoist check', kinds: ['waived', 'waiver-ended', 'gate-passed', 'forecast-kept'] },
  records: { title: 'Lists brought in and records', kinds: ['imported', 'record'] },
  corrections: { title: 'Taken back', kinds: ['reversal'] },
} as const satisfies Record<string, { readonly title: string; readonly kinds: readonly EntryKind[] }>;

export type KindGroup = keyof typeof kindGroups;

export const kindGroupNames = Object.keys(kindGroups) as readonly KindGroup[];

export const isKindGroup = (text: string): text is KindGroup => Object.hasOwn(kindGroups, text);
