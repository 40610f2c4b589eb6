import type { SubjectKind } from './accounts.ts';

/** Where a lot's units came from. */
export const lotSources = ['bought', 'owned', 'donor', 'borrowed', 'found', 'made', 'over-delivery'] as const;
export type LotSource = (typeof lotSources)[number];

/** Why units were refused. */
export const rejectReasons = ['wrong part', 'faulty', 'transit damage', 'wrong quantity'] as const;
export type RejectReason = (typeof rejectReasons)[number];

/** Every kind of entry that moves a position. Record edits are entries too, of kind `record`. */
export const entryKinds = [
  'need-added',
  'need-changed',
  'need-dropped',
  'quoted',
  'ordered',
  'acknowledged',
  'back-ordered',
  'promised',
  'shipped',
  'chased',
  'repriced',
  'received',
  'over-delivered',
  'accepted',
  'rejected',
  'sent-back',
  'exchanged',
  'refunded',
  'cancelled',
  'paid',
  'deposit-paid',
  'old-unit-sent',
  'deposit-refunded',
  'deposit-kept',
  'came-in',
  'put-in-bin',
  'allocated',
  'released',
  'trial-fitted',
  'fitted',
  'taken-off',
  'snugged',
  'verified',
  'verification-withdrawn',
  'lent',
  'came-back',
  'given-back',
  'lost',
  'scrapped',
  'consumed',
  'found-again',
  'moved',
  'budgeted',
  'contingency-drawn',
  'job-planned',
  'job-done',
  'job-reopened',
  'job-dropped',
  'hours',
  'tool-listed',
  'tool-at-hand',
  'tool-away',
  'tool-dropped',
  'decision-listed',
  'decision-made',
  'decision-reopened',
  'decision-dropped',
  'bolts-listed',
  'bolts-snugged',
  'bolts-final',
  'bolts-loosened',
  'bolts-dropped',
  'bolt-turned',
  'bolts-rechecked',
  'waived',
  'waiver-ended',
  'gate-passed',
  'measured',
  'line-step',
  'job-started',
  'job-stopped',
  'forecast-kept',
  'imported',
  'record',
  'reversal',
] as const;
export type EntryKind = (typeof entryKinds)[number];

/**
 * What an entry says, before it is numbered and recorded. `payload` holds what the kind needs beyond the columns
 * (reason, promised date, who, torque, …) as plain JSON.
 */
export interface EntryDraft {
  readonly kind: EntryKind;
  /** The day it happened, by the user's account. */
  readonly on: string;
  readonly build: number;
  readonly part?: number;
  readonly order?: number;
  readonly line?: number;
  readonly lot?: number;
  readonly subjectKind?: SubjectKind;
  readonly subject?: number;
  readonly quantityMilli?: number;
  readonly amountMinor?: number;
  readonly currency?: string;
  readonly note?: string;
  readonly payload?: EntryPayload;
}

export type EntryPayload = { readonly [key: string]: PayloadValue };
export type PayloadValue = string | number | boolean | null | readonly PayloadValue[] | EntryPayload;

/** An entry as stored, with the postings it made. */
export interface Entry extends EntryDraft {
  readonly seq: number;
  readonly act: number;
  readonly recordedAt: string;
  /** The entry that this one takes back, if it is a reversal. */
  readonly reverses?: number;
}
