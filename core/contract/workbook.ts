import { z } from 'zod';
import { currency, day, id, line, optionalLine, procedure } from './common.ts';

/** The form in which the interface writes and reads. Kept in the workbook. */
export const settings = z.object({
  currency,
  /** How dates are written: day first, month first, year first. */
  dateForm: z.enum(['d Mon yyyy', 'dd/mm/yyyy', 'mm/dd/yyyy', 'yyyy-mm-dd']),
  units: z.enum(['metric', 'inch']),
  weekStart: z.enum(['monday', 'sunday', 'saturday']),
  /** Tax that orders start with, as a percentage in decimal text: "8.25". */
  taxRate: z.string().regex(/^\d{1,2}(\.\d{1,4})?$/, 'A percentage such as 8.25.'),
  taxBase: z.enum(['goods', 'goods+freight', 'all']),
  taxIncluded: z.boolean(),
  /** Who makes the entries on this machine. */
  author: optionalLine(80),
  /** Free evenings for the hoist check's dates: minutes a week that the builder really has. */
  weekWindows: z.array(
    z.object({
      weekday: z.int().min(1).max(7),
      from: z.string().regex(/^\d\d:\d\d$/),
      to: z.string().regex(/^\d\d:\d\d$/),
    }),
  ),
});
export type Settings = z.infer<typeof settings>;

export const workbookStatus = z.object({
  open: z
    .object({
      name: z.string(),
      path: z.string(),
      readOnly: z.boolean(),
      notices: z.array(z.string()),
      schemaVersion: z.int(),
      baseCurrency: currency,
    })
    .nullable(),
  /** Folder in which new workbooks are made by name. */
  folder: z.string(),
  /** Workbooks found in that folder, newest first. */
  found: z.array(z.object({ name: z.string(), path: z.string(), changedAt: z.string(), bytes: z.int() })),
  appVersion: z.string(),
  today: day,
});
export type WorkbookStatus = z.infer<typeof workbookStatus>;

export const verifyReport = z.object({
  ok: z.boolean(),
  entries: z.int(),
  postings: z.int(),
  integrity: z.array(z.string()),
  foreignKeys: z.array(z.string()),
  /** Where refolding every entry gives another figure than the one kept. */
  differences: z.array(z.string()),
  /** Broken invariants, each named. */
  invariants: z.array(z.string()),
});
export type VerifyReport = z.infer<typeof verifyReport>;

export const workbookContract = {
  status: procedure.output(workbookStatus),
  create: procedure
    .input(z.object({ name: line(80), currency, build: line(120).optional(), path: z.string().optional() }))
    .output(workbookStatus),
  /** Opens by name in the folder, or by path where the shell allows one. */
  open: procedure
    .input(z.object({ path: z.string().min(1).max(4096), readOnly: z.boolean().optional() }))
    .output(workbookStatus),
  /** Makes (or opens, when it is there) the demo workbook. */
  demo: procedure.output(workbookStatus),
  close: procedure.output(workbookStatus),
  verify: procedure.output(verifyReport),
  backUp: procedure.output(z.object({ file: z.string(), bytes: z.int() })),
  backups: procedure.output(
    z.array(z.object({ file: z.string(), madeAt: z.string(), bytes: z.int(), verified: z.boolean() })),
  ),
  restore: procedure.input(z.object({ file: z.string() })).output(workbookStatus),
  settings: procedure.output(settings),
  saveSettings: procedure.input(z.object({ key: z.string().min(8), settings: settings.partial() })).output(settings),
};

export const buildRow = z.object({
  id,
  name: z.string(),
  car: z.string(),
  engine: z.string(),
  /** What the day is called: "engine-in". */
  gateName: z.string(),
  startedOn: day,
  targetOn: day.nullable(),
  note: z.string(),
});
export type BuildRow = z.infer<typeof buildRow>;
