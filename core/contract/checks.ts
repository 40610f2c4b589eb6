import { z } from 'zod';
import { actBase, actResult, day, id, line, minor, ofBuild, optionalLine, procedure } from './common.ts';
import { checkLimit, checkSource } from './records.ts';

export const verdicts = ['holds', 'close', 'fails', 'lacks data'] as const;
export type Verdict = (typeof verdicts)[number];

/** One input of a check, with what it came to and where from. */
export const checkInput = z.object({
  name: z.string(),
  label: z.string(),
  source: checkSource,
  /** As a person reads it: “1050 cc/min, injector set (fitted)”, “target sheet: boost 1.4 bar gauge”. */
  from: z.string(),
  /** The value used, as typed, and its unit; null when it is lacking. */
  value: z.string().nullable(),
  unit: z.string(),
  /** A default of the calculator was used, since nothing is bound. */
  assumed: z.boolean(),
  /** What is lacking, in words, with the part or target to fill in; empty when there is a value. */
  lacks: z.string(),
  /** Part line that the value came from, or that lacks the fact. */
  part: id.nullable(),
});

/** A check worked out for the build as it stands. */
export const checkRow = z.object({
  id,
  revision: z.int(),
  title: z.string(),
  calculator: z.string(),
  calculatorTitle: z.string(),
  output: z.string(),
  outputLabel: z.string(),
  limit: checkLimit,
  system: id.nullable(),
  shipped: z.string(),
  beforeGate: z.boolean(),
  note: z.string(),
  verdict: z.enum(verdicts),
  /** One sentence with the figure, the limit and the margin, or what is lacking. */
  says: z.string(),
  value: z.number().nullable(),
  unit: z.string(),
  /** Room to the nearest limit in the unit of the limit; negative when it fails. */
  margin: z.number().nullable(),
  inputs: z.array(checkInput),
  /** Other outputs of the calculator, for the detail. */
  outputs: z.array(z.object({ name: z.string(), label: z.string(), text: z.string() })),
  warnings: z.array(z.string()),
  formula: z.string(),
  source: z.string(),
  caution: z.string(),
  /** Waived for the hoist check, with the reason. */
  waived: z.string(),
});
export type CheckRow = z.infer<typeof checkRow>;

export const targetRow = z.object({
  /** Null for a line of the vocabulary that nobody has filled in. */
  id: id.nullable(),
  revision: z.int().nullable(),
  name: z.string(),
  label: z.string(),
  hint: z.string(),
  value: z.string(),
  unit: z.string(),
  units: z.array(z.string()),
  source: z.string(),
  note: z.string(),
  /** How many checks read it. */
  uses: z.int(),
});
export type TargetRow = z.infer<typeof targetRow>;

export const checksView = z.object({
  /** The page's first sentence: “2 of 19 checks fail and 3 lack a figure.” */
  answer: z.string(),
  counts: z.object({ holds: z.int(), close: z.int(), fails: z.int(), lacks: z.int() }),
  checks: z.array(checkRow),
  targets: z.array(targetRow),
  /** Shipped checks that the build doesn't have yet. */
  offered: z.array(z.object({ shipped: z.string(), title: z.string(), about: z.string() })),
});
export type ChecksView = z.infer<typeof checksView>;

/** A part as it would be if something else took its place. Facts not named stay as they are. */
export const candidate = z.object({
  label: line(80),
  part: id,
  facts: z.array(z.object({ key: line(80), value: line(400), unit: optionalLine(40) })).max(60),
  /** Price of the whole line, base currency; null = as the line stands. */
  priceMinor: minor.min(0).nullable(),
  /** Days until it would be here; null = as the line stands. */
  arrivesInDays: z.int().min(0).max(2000).nullable(),
});

export const swapView = z.object({
  answer: z.string(),
  /** The build as it stands first, then each candidate in the order given. */
  columns: z.array(
    z.object({
      label: z.string(),
      forecastMinor: minor,
      gateOn: day.nullable(),
      atLeastOn: day,
      fails: z.int(),
      lacks: z.int(),
    }),
  ),
  /** One row a check, one cell a column. `changed` when any cell's verdict or figure differs. */
  rows: z.array(
    z.object({
      check: id,
      title: z.string(),
      changed: z.boolean(),
      cells: z.array(z.object({ verdict: z.enum(verdicts), says: z.string(), figure: z.string() })),
    }),
  ),
});
export type SwapView = z.infer<typeof swapView>;

/** What a part of a kind may say, in field terms. */
export const factTerm = z.object({
  key: z.string(),
  label: z.string(),
  hint: z.string(),
  /** Units accepted; empty for a word or a plain count. */
  units: z.array(z.string()),
  unit: z.string(),
});
export const partKindRow = z.object({ kind: z.string(), label: z.string(), facts: z.array(factTerm) });

export const factProposal = z.object({
  key: z.string(),
  label: z.string(),
  value: z.string(),
  unit: z.string(),
  /** The piece of the description that says it, or the build that it is copied from. */
  because: z.string(),
});

export const checksContract = {
  view: procedure.input(ofBuild).output(checksView),
  /** Verdicts of one check over time: one point for each day on which the verdict or the figure changed. */
  history: procedure
    .input(ofBuild.extend({ check: id }))
    .output(z.array(z.object({ on: day, verdict: z.enum(verdicts), value: z.number().nullable(), says: z.string() }))),
  /** Works a check out that isn't kept yet, for the form that makes one. Refuses as saving would. */
  tryOut: procedure
    .input(
      ofBuild.extend({
        title: line(120),
        calculator: line(8),
        inputs: z.record(line(60), checkSource),
        output: line(60),
        limit: checkLimit,
      }),
    )
    .output(checkRow.omit({ id: true, revision: true })),
  /** Adds shipped checks to the build, all that are offered or those named. */
  addShipped: procedure.input(actBase.extend({ build: id, shipped: z.array(line(60)).max(100) })).output(actResult),
  /** Fills in or changes lines of the target sheet; an empty value takes the line off. */
  setTargets: procedure
    .input(
      actBase.extend({
        build: id,
        targets: z
          .array(
            z.object({ name: line(60), value: optionalLine(60), unit: optionalLine(24), source: optionalLine(200) }),
          )
          .min(1)
          .max(100),
      }),
    )
    .output(actResult),
  /** All checks, cost and date as they stand, and with each candidate in the place of its part. Writes nothing. */
  swap: procedure.input(z.object({ build: id, candidates: z.array(candidate).min(1).max(6) })).output(swapView),
  vocabulary: procedure.output(z.array(partKindRow)),
  /** Facts that a part line's description says plainly, and facts of the same part in an earlier build. */
  proposals: procedure
    .input(z.object({ part: id }))
    .output(z.object({ kind: z.string(), kindBecause: z.string(), facts: z.array(factProposal) })),
  /** Sets the kind and the facts of a part line, each refused with its key when the value or unit can't be. */
  setFacts: procedure
    .input(
      actBase.extend({
        part: id,
        revision: z.int().optional(),
        kind: optionalLine(60),
        facts: z.array(z.object({ key: line(80), value: line(400), unit: optionalLine(40) })).max(200),
      }),
    )
    .output(actResult),
};
