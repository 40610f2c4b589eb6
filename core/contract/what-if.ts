import { z } from 'zod';
import { day, id, line, minor, procedure } from './common.ts';
import { variantChange } from './records.ts';

/** What one way of going on comes to. The first column is the build as it stands. */
const column = z.object({
  name: z.string(),
  /** What is otherwise than now, in words; empty for the build as it stands. */
  changes: z.array(z.string()),
  /** As likely as not, and four times of five; null with the reason in `noForecast`. */
  p50On: day.nullable(),
  p80On: day.nullable(),
  noForecast: z.string(),
  /** Estimate at completion of the build. */
  costMinor: minor,
  /** What is still to be paid and to be bought. */
  toComeMinor: minor,
  /** The buying plan: when the gate can be reached for the money, what it spends, and the least cash on the way. */
  planOn: day.nullable(),
  planSpendMinor: minor.nullable(),
  leastCashMinor: minor.nullable(),
  planSays: z.string(),
});

export const whatIfView = z.object({
  /** "With 4 h more a week: 12 days earlier, for the same money." */
  answer: z.string(),
  gateName: z.string(),
  columns: z.array(column),
  /** Parts whose order day differs between the columns, or that a change is about. */
  lines: z.array(
    z.object({
      part: id,
      description: z.string(),
      cells: z.array(z.object({ on: day.nullable(), priceMinor: minor.nullable(), says: z.string() })),
    }),
  ),
});
export type WhatIfView = z.infer<typeof whatIfView>;

export const whatIfContract = {
  /** Tries changes out on a copy of the workbook in memory. Writes nothing. */
  run: procedure
    .input(
      z.object({
        build: id,
        variants: z
          .array(
            z.object({
              name: line(80),
              changes: z.array(variantChange).min(1, 'At least one change.').max(50),
            }),
          )
          .min(1)
          .max(4, 'At most four side by side.'),
      }),
    )
    .output(whatIfView),
};
