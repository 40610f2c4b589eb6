import { z } from 'zod';
import { lotSources, rejectReasons } from '../ledger/entry.ts';
import {
  actBase,
  actResult,
  currency,
  day,
  id,
  line,
  longText,
  milli,
  minor,
  ofBuild,
  optionalLine,
  positiveMilli,
  procedure,
} from './common.ts';

/** One word for where a part line stands, in order of how far it has come. */
export const standings = [
  'wrong',
  'needed',
  'quoted',
  'back-ordered',
  'ordered',
  'in transit',
  'to inspect',
  'part in hand',
  'in hand',
  'trial-fitted',
  'part fitted',
  'fitted',
  'snug',
  'final',
  'not needed',
] as const;
export type Standing = (typeof standings)[number];

export const fact = z.object({ key: line(80), value: line(400), unit: optionalLine(40) });

/** What a person types about a part line. Prices are 1/10 000 of a minor unit, so that 0.0345 each can be kept. */
export const partValues = z.object({
  description: line(300),
  partNumber: optionalLine(80),
  maker: optionalLine(80),
  link: optionalLine(600),
  unit: line(20),
  system: id.nullable(),
  phase: id.nullable(),
  job: id.nullable(),
  vendor: id.nullable(),
  priority: z.int().min(1).max(5),
  neededBy: day.nullable(),
  optional: z.boolean(),
  needsVerification: z.boolean(),
  stretchOnce: z.boolean(),
  /** Something about the line still wants a person's eye. */
  attention: optionalLine(2000),
  note: longText,
  /** What kind of thing it is, in the vocabulary of facts; empty when nobody has said. */
  kind: optionalLine(60),
  facts: z.array(fact).max(200),
  needMilli: z.int().min(0).max(1_000_000_000, 'At most 1 000 000.'),
  /** Guess of the price each in the base currency, 1/10 000 of a minor unit; null = no estimate. */
  estimateEachE4: z.int().min(0).max(Number.MAX_SAFE_INTEGER).nullable(),
});
export type PartValues = z.infer<typeof partValues>;

/** A part line with its position. Every screen that shows a part shows these figures. */
export const partRow = partValues.omit({ facts: true }).extend({
  id,
  build: id,
  revision: z.int(),
  dropped: z.boolean(),
  bin: id.nullable(),
  standing: z.enum(standings),
  /** The sentence behind the standing: "3 of 8 on back-order since 2 Mar, no date promised". */
  standingText: z.string(),
  onOrderMilli: milli,
  placedMilli: milli,
  acknowledgedMilli: milli,
  backOrderedMilli: milli,
  inTransitMilli: milli,
  inspectionMilli: milli,
  shelfMilli: milli,
  allocatedMilli: milli,
  trialMilli: milli,
  fittedMilli: milli,
  snugMilli: milli,
  verifiedMilli: milli,
  rejectedMilli: milli,
  lentMilli: milli,
  /** Borrowed units that are here, on the engine or off it. */
  borrowedMilli: milli,
  borrowedOnMilli: milli,
  /** Units needed that are neither in hand nor on the way. */
  uncoveredMilli: milli,
  /** Cost recognised, commitment, remaining estimate, paid, still to pay, forecast: RV, K, E, P, U, F. */
  costMinor: minor,
  commitmentMinor: minor,
  remainingMinor: minor,
  paidMinor: minor,
  stillToPayMinor: minor,
  forecastMinor: minor,
  promisedOn: day.nullable(),
  backOrderedOn: day.nullable(),
});
export type PartRow = z.infer<typeof partRow>;

/** What can be done to units in hand, or to bring units in without an order. */
export const partActs = [
  'own', // already owned: lot from the builder's own stock
  'donor', // taken from another car
  'borrow', // needs owner and due day
  'find',
  'make',
  'accept', // out of inspection, to the shelf
  'reject', // needs a reason
  'send back',
  'bin',
  'allocate',
  'release',
  'trial-fit',
  'fit',
  'take off',
  'snug',
  'verify', // final torque or other final check
  'withdraw', // a verification; needs a reason
  'lend',
  'come back',
  'give back',
  'lose',
  'find again', // a lost unit turned up
  'scrap',
  'use up',
  'settle by exchange', // vendor sends a replacement for what went back
] as const;
export type PartAct = (typeof partActs)[number];

export const partActInput = actBase.extend({
  build: id,
  act: z.enum(partActs),
  /** Quantity left out means all that the act could move (or all that is needed, for own, donor, borrow …). */
  items: z
    .array(z.object({ part: id, quantityMilli: positiveMilli.optional(), lot: id.optional() }))
    .min(1)
    .max(100_000),
  reason: optionalLine(400).optional(),
  rejectReason: z.enum(rejectReasons).optional(),
  /** Where taken-off units go. */
  to: z.enum(['shelf', 'allocated', 'rejected', 'scrapped']).optional(),
  bin: id.nullable().optional(),
  owner: optionalLine(120).optional(),
  dueOn: day.nullable().optional(),
  /** Value of owned, donor or found units, for the whole item. */
  valueMinor: minor.min(0).optional(),
  by: optionalLine(80).optional(),
  torqueMilliNm: z.int().min(1).max(5_000_000).nullable().optional(),
  note: optionalLine(2000).optional(),
});
export type PartActInput = z.infer<typeof partActInput>;

export const lotRow = z.object({
  id,
  line: id.nullable(),
  source: z.enum(lotSources),
  owner: z.string(),
  dueOn: day.nullable(),
  bin: id.nullable(),
  cameInOn: day,
  cameInMilli: milli,
  costMinor: minor,
  /** Bucket name → quantity, only those that hold something. */
  places: z.record(z.string(), milli),
});

export const orderLineOfPart = z.object({
  line: id,
  order: id,
  orderNumber: z.string(),
  vendor: z.string(),
  orderedOn: day,
  orderedMilli: milli,
  receivedMilli: milli,
  outstandingMilli: milli,
  backOrderedMilli: milli,
  promisedOn: day.nullable(),
  landedMinor: minor,
});

export const quoteRow = z.object({
  seq: z.int(),
  on: day,
  vendor: id.nullable(),
  vendorName: z.string(),
  eachE4: z.int(),
  currency,
  validUntil: day.nullable(),
  expired: z.boolean(),
  note: z.string(),
});

/** What the acts could do to the part right now, each with the most units; absent acts aren't possible. */
export const partDetail = z.object({
  row: partRow,
  facts: z.array(fact),
  lots: z.array(lotRow),
  lines: z.array(orderLineOfPart),
  quotes: z.array(quoteRow),
  possible: z.array(z.object({ act: z.enum(partActs), mostMilli: milli })),
});
export type PartDetail = z.infer<typeof partDetail>;

/** A quick-add line as understood; shown before it is added. */
export const quickAddReading = z.object({
  values: partValues,
  /** Each piece of the typed text and what it was taken for. */
  understood: z.array(z.object({ text: z.string(), as: z.string() })),
  findings: z.array(z.string()),
});

export const partsContract = {
  /** Rows from `from` on, in the order of system, phase and id; ask again with the next `from` until `total`. */
  rows: procedure
    .input(ofBuild.extend({ from: z.int().min(0), count: z.int().min(1).max(20_000), dropped: z.boolean().optional() }))
    .output(
      z.object({ total: z.int(), lastAct: z.int(), columns: z.array(z.string()), rows: z.array(z.array(z.unknown())) }),
    ),
  byIds: procedure.input(ofBuild.extend({ ids: z.array(id).max(5000) })).output(z.array(partRow)),
  detail: procedure.input(ofBuild.extend({ part: id })).output(partDetail),
  add: procedure
    .input(
      actBase.extend({
        build: id,
        parts: z
          .array(partValues.partial().required({ description: true, needMilli: true }))
          .min(1)
          .max(20_000),
      }),
    )
    .output(actResult),
  edit: procedure
    .input(actBase.extend({ part: id, revision: z.int(), values: partValues.partial() }))
    .output(actResult),
  /** The same change to many lines: system, phase, vendor, priority, job, needed-by … */
  editMany: procedure
    .input(
      actBase.extend({
        parts: z.array(id).min(1).max(100_000),
        values: partValues.omit({ description: true, facts: true }).partial(),
      }),
    )
    .output(actResult),
  drop: procedure
    .input(actBase.extend({ parts: z.array(id).min(1).max(100_000), reason: optionalLine(400) }))
    .output(actResult),
  readQuickAdd: procedure.input(z.object({ build: id, text: z.string().max(2000) })).output(quickAddReading),
  act: procedure.input(partActInput).output(actResult),
  quote: procedure
    .input(
      actBase.extend({
        part: id,
        vendor: id.nullable(),
        eachE4: z.int().min(0),
        currency,
        validUntil: day.nullable(),
        /** Also makes this the estimate (base currency only). */
        asEstimate: z.boolean(),
        note: optionalLine(2000),
      }),
    )
    .output(actResult),
};
