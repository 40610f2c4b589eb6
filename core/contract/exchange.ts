import { z } from 'zod';
import type { ImportPlan, Mapping } from '../exchange/import-types.ts';
import type { TableRead } from '../exchange/table-types.ts';
import { actBase, actResult, currency, day, id, line, procedure } from './common.ts';

/** Bringing a list in, and every table out. */

/** Plain data of our own, made by the importer: checked by its type, not again at the border. */
const planned = z.custom<ImportPlan>((value) => typeof value === 'object' && value !== null);
const mapping = z.custom<Mapping>((value) => typeof value === 'object' && value !== null && 'columns' in value);
const tableRead = z.custom<TableRead>((value) => typeof value === 'object' && value !== null);

export const importChoices = z.object({
  /** From `read`: names the bytes held for this import. */
  token: z.string().min(8).max(128),
  sheet: z.int().min(0).max(200),
  encoding: z.string().max(40).optional(),
  mapping: mapping.optional(),
  /** By question id, and `row:17` → 'skip' or 'import'. */
  answers: z.record(z.string().max(400), z.string().max(400)),
  defaults: z.object({
    currency,
    dateOrder: z.enum(['day-first', 'month-first']).optional(),
    decimalMark: z.enum(['.', ',']).optional(),
    paid: z.enum(['paid', 'not-paid', 'not-recorded']),
    missingQuantityIsOne: z.boolean(),
  }),
  build: id,
  /** For an orders file: file row → part line it belongs to (0 = a line of its own). */
  matches: z.record(z.string(), z.int().min(0)).optional(),
});
export type ImportChoices = z.infer<typeof importChoices>;

export const importMatch = z.object({
  row: z.int(),
  part: id.nullable(),
  how: z.enum(['part number', 'likeness', 'none', 'by hand']),
  score: z.number(),
  description: z.string(),
  alternatives: z.array(z.object({ part: id, description: z.string(), score: z.number() })),
});
export type ImportMatch = z.infer<typeof importMatch>;

export const importReport = actResult.extend({
  /** One line a file row. */
  rows: z.array(z.object({ row: z.int(), fate: z.string(), text: z.string(), part: z.int().nullable() })),
  counts: z.record(z.string(), z.int()),
  summary: z.string(),
});
export type ImportReport = z.infer<typeof importReport>;

export const exportTables = [
  'parts',
  'orders',
  'order lines',
  'money by system',
  'money by phase',
  'money by vendor',
  'jobs',
  'hoist check',
  'journal',
  'vendors',
  'bins',
  'tools',
  'decisions',
  'bolt groups',
  'due',
] as const;

export const exchangeContract = {
  read: procedure
    .input(
      z.object({ file: z.file().max(100 * 1024 * 1024, 'At most 100 MB.'), encoding: z.string().max(40).optional() }),
    )
    .output(
      z.object({
        token: z.string(),
        read: tableRead,
        /** Guess (or the saved mapping) for each sheet. */
        mappings: z.array(mapping),
        /** The same bytes were brought in before, by this act. */
        known: z.object({ act: id, on: day, label: z.string() }).nullable(),
      }),
    ),
  plan: procedure.input(importChoices).output(z.object({ plan: planned, mapping, matches: z.array(importMatch) })),
  bringIn: procedure
    .input(importChoices.extend({ ...actBase.shape, again: z.boolean().optional() }))
    .output(importReport),
  /** Imports made before, with their reports. */
  imports: procedure.input(z.object({ build: id })).output(
    z.array(
      z.object({
        act: id,
        on: day,
        fileName: z.string(),
        rows: z.int(),
        written: z.int(),
        undone: z.boolean(),
        summary: z.string(),
      }),
    ),
  ),
  report: procedure.input(z.object({ act: id })).output(importReport),
  exportTable: procedure
    .input(z.object({ build: id, asOf: day.optional(), table: z.enum(exportTables), format: z.enum(['csv', 'xlsx']) }))
    .output(z.file()),
  /** Promised and forecast days as a calendar file (RFC 5545). */
  calendarFile: procedure.input(z.object({ build: id, asOf: day.optional() })).output(z.file()),
  exportWorkbook: procedure.output(z.file()),
  /** Makes a new workbook from an exported one; refuses a name that is taken. */
  importWorkbook: procedure
    .input(z.object({ file: z.file().max(1024 * 1024 * 1024), name: line(80) }))
    .output(z.object({ path: z.string(), entries: z.int() })),
};
