import { oc } from '@orpc/contract';
import { z } from 'zod';
import { refusalCodes } from '../refusal.ts';

/** Shapes that every area shares. Amounts are whole minor units of the base currency unless a currency stands beside. */

const bound = Number.MAX_SAFE_INTEGER;
export const id = z.int().positive().max(bound);
export const milli = z.int().min(-bound).max(bound);
export const positiveMilli = z.int().positive('Type a quantity above zero.').max(1_000_000_000, 'At most 1 000 000.');
export const minor = z.int().min(-bound).max(bound);
export const positiveMinor = z.int().positive('Type an amount above zero.').max(bound);
export const currency = z.string().regex(/^[A-Z]{3}$/, 'Three capital letters, such as EUR.');
/** A calendar day from 1900 to 2199, as text: 2026-03-14. */
export const day = z.iso
  .date('Type a day of the calendar, such as 2026-03-14.')
  .refine((text) => text >= '1900-01-01' && text <= '2199-12-31', 'A day from 1900 to 2199.');
export const line = (max = 200) =>
  z.string().trim().min(1, 'Type something here.').max(max, `At most ${max} characters.`);
export const optionalLine = (max = 200) => z.string().trim().max(max, `At most ${max} characters.`);
export const longText = z.string().max(20_000, 'At most 20 000 characters.');

/** What a refused call carries, the same on every shell. */
export const refusal = z.object({
  code: z.enum(refusalCodes),
  message: z.string(),
  field: z.string().optional(),
  accepted: z.string().optional(),
  detail: z.record(z.string(), z.union([z.string(), z.number(), z.array(z.string()), z.array(z.number())])),
});
export type RefusalData = z.infer<typeof refusal>;

/** Base of every procedure: the one typed error. */
export const procedure = oc.errors({ REFUSED: { status: 409, data: refusal } });

/** Every act carries an idempotency key (a retried request is applied once) and the day it happened. */
export const actBase = z.object({ key: z.string().min(8).max(80), on: day });

/** What every act answers: what to offer for undo, and what to read again. */
export const actResult = z.object({
  act: id,
  /** Such as "Receipt of 12 lines"; the undo button says "Undo receipt of 12 lines". */
  label: z.string(),
  entries: z.int(),
  /** Part lines whose position changed. */
  parts: z.array(id),
  /** Ids of records or orders made by the act, in the order asked. */
  made: z.array(id),
  /** Plain warnings that didn't stop the act ("The day is in the future."). */
  notices: z.array(z.string()),
});
export type ActResult = z.infer<typeof actResult>;

/** A read of one build, as it stood at the end of a day; without `asOf`, as it stands now. */
export const ofBuild = z.object({ build: id, asOf: day.optional() });
