import { z } from 'zod';
import { entryKinds } from '../ledger/entry.ts';
import { actBase, actResult, currency, day, id, milli, minor, optionalLine, procedure } from './common.ts';

export const journalRow = z.object({
  seq: z.int(),
  act: z.int(),
  actLabel: z.string(),
  on: day,
  recordedAt: z.string(),
  author: z.string(),
  kind: z.enum(entryKinds),
  /** The entry in words: "8 received of head stud kit". */
  text: z.string(),
  build: z.int(),
  part: z.int().nullable(),
  description: z.string(),
  order: z.int().nullable(),
  orderNumber: z.string(),
  vendorName: z.string(),
  quantityMilli: milli.nullable(),
  unit: z.string(),
  amountMinor: minor.nullable(),
  currency,
  note: z.string(),
  reverses: z.int().nullable(),
  reversedBy: z.int().nullable(),
});
export type JournalRow = z.infer<typeof journalRow>;

export const journalFilter = z.object({
  build: id.optional(),
  text: z.string().max(200).optional(),
  kinds: z.array(z.enum(entryKinds)).optional(),
  part: id.optional(),
  order: id.optional(),
  vendor: id.optional(),
  from: day.optional(),
  to: day.optional(),
  act: id.optional(),
  /** Leave out entries that were reversed and the reversals themselves. */
  standingOnly: z.boolean().optional(),
});
export type JournalFilter = z.infer<typeof journalFilter>;

/** What can be taken back or done again, by the name of the act itself: "Receipt of 12 lines". */
export const undoState = z.object({
  undo: z.object({ act: z.int(), label: z.string() }).nullable(),
  redo: z.object({ act: z.int(), label: z.string() }).nullable(),
});

export const journalContract = {
  list: procedure
    .input(journalFilter.extend({ before: z.int().optional(), limit: z.int().min(1).max(1000) }))
    .output(z.object({ rows: z.array(journalRow), next: z.int().nullable(), total: z.int() })),
  undoState: procedure.output(undoState),
  undo: procedure.input(z.object({ key: z.string().min(8), act: z.int().optional() })).output(actResult),
  redo: procedure.input(z.object({ key: z.string().min(8), act: z.int().optional() })).output(actResult),
  /** Takes one entry, or a whole act, back by equal and opposite entries. */
  reverse: procedure
    .input(actBase.extend({ entry: z.int().optional(), wholeAct: z.int().optional(), reason: optionalLine(400) }))
    .output(actResult),
};

/** Figures that can be asked why. Each names what it is about. */
export const whyFigures = [
  'need',
  'on-order',
  'back-ordered',
  'in-hand',
  'trial-fitted',
  'fitted',
  'final',
  'rejected',
  'cost',
  'commitment',
  'remaining',
  'paid',
  'still-to-pay',
  'forecast',
  'claims',
  'deposits',
  'loss',
  'exchange',
  'budget',
  'variance',
  'received-share',
  'fitted-share',
  'verified-share',
  'jobs-share',
  'spend-share',
  'gate-date',
  'gate-cost',
  'blocker-count',
] as const;
export type WhyFigure = (typeof whyFigures)[number];

export const whyQuestion = z.object({
  build: id,
  figure: z.enum(whyFigures),
  part: id.optional(),
  order: id.optional(),
  system: id.nullable().optional(),
  phase: id.nullable().optional(),
  vendor: id.nullable().optional(),
  asOf: day.optional(),
});
export type WhyQuestion = z.infer<typeof whyQuestion>;

/** One shape for every derivation: entries with their amounts, or a formula with its inputs. */
export const derivation = z.object({
  title: z.string(),
  /** The figure itself, the same as on the screen that asked. */
  quantityMilli: milli.nullable(),
  amountMinor: minor.nullable(),
  text: z.string(),
  formula: z.string(),
  source: z.string(),
  terms: z.array(
    z.object({ label: z.string(), amountMinor: minor.nullable(), quantityMilli: milli.nullable(), text: z.string() }),
  ),
  entries: z.array(
    z.object({
      seq: z.int(),
      on: day,
      text: z.string(),
      part: z.int().nullable(),
      description: z.string(),
      quantityMilli: milli,
      amountMinor: minor,
      reversed: z.boolean(),
    }),
  ),
  /** Entries beyond those listed. */
  more: z.int(),
});
export type Derivation = z.infer<typeof derivation>;

export const searchHit = z.object({
  kind: z.enum([
    'part',
    'order',
    'vendor',
    'bin',
    'system',
    'phase',
    'job',
    'tool',
    'decision',
    'boltGroup',
    'check',
    'measuringSheet',
    'savedCase',
    'port',
    'connection',
    'hoseLine',
    'person',
    'entry',
    'build',
  ]),
  id,
  title: z.string(),
  detail: z.string(),
  build: id.nullable(),
});
export type SearchHit = z.infer<typeof searchHit>;
