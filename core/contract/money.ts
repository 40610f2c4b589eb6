import { z } from 'zod';
import { actBase, actResult, currency, day, id, line, minor, ofBuild, optionalLine, procedure } from './common.ts';

/** The figures of a build's money; every screen shows these from this one place. */
export const moneyFigures = z.object({
  /** Current budget: original, changes and contingency drawn. */
  budgetMinor: minor,
  contingencyLeftMinor: minor,
  /** RV: cost of what came in, less what was rejected. */
  costMinor: minor,
  /** K: value on order, not received. */
  commitmentMinor: minor,
  /** E: estimate of what isn't ordered. */
  remainingMinor: minor,
  /** P: paid less refunded, deposits apart. */
  paidMinor: minor,
  /** U: still to pay for what was ordered. */
  stillToPayMinor: minor,
  /** F = cost + commitment + remaining = paid + still to pay + remaining. */
  forecastMinor: minor,
  /** Budget less forecast; negative = over. */
  varianceMinor: minor,
  depositsMinor: minor,
  claimsMinor: minor,
  lossMinor: minor,
  exchangeMinor: minor,
  /** Part lines that count as nothing because nobody has guessed their price. */
  withoutEstimate: z.int(),
});
export type MoneyFigures = z.infer<typeof moneyFigures>;

export const moneyRow = moneyFigures.extend({ id: id.nullable(), name: z.string() });
export type MoneyRow = z.infer<typeof moneyRow>;

export const moneyPoint = z.object({
  on: day,
  paidMinor: minor,
  committedMinor: minor,
  forecastMinor: minor,
  budgetMinor: minor,
});
export const monthSpend = z.object({ month: z.string(), costMinor: minor, paidMinor: minor, partial: z.boolean() });
export const budgetChange = z.object({
  seq: z.int(),
  on: day,
  /** Null for the contingency. */
  line: id.nullable(),
  lineName: z.string(),
  system: id.nullable(),
  phase: id.nullable(),
  kind: z.enum(['change', 'contingency', 'contingency drawn']),
  amountMinor: minor,
  reason: z.string(),
  by: z.string(),
  reversed: z.boolean(),
});

/** A figure in words, or why there is none. */
const index = z.object({
  name: z.string(),
  label: z.string(),
  value: z.number().nullable(),
  /** "0.94", or a dash. */
  text: z.string(),
  /** A sentence: what it says of the build, or why it can't be formed. */
  says: z.string(),
});

/** Earned value in one unit: minor units of money (parts), or minutes of work (jobs). */
export const earnedMeasure = z.object({
  of: z.enum(['money', 'hours']),
  says: z.string(),
  bac: z.number(),
  pv: z.number(),
  ev: z.number(),
  ac: z.number(),
  indices: z.array(index),
  estimates: z.array(
    z.object({
      way: z.string(),
      assumes: z.string(),
      value: z.number().nullable(),
      /** Still to be spent (or worked) by it, and what it leaves of the plan; below nothing when it ends over it. */
      toCome: z.number().nullable(),
      leftOver: z.number().nullable(),
      why: z.string(),
      first: z.boolean(),
    }),
  ),
  /** Whether the line-by-line estimate lies outside those of the formulas. */
  outside: z.boolean(),
  /** Less than a tenth is earned: the formulas are a hint. */
  early: z.boolean(),
  schedule: z.object({ earnedMonths: z.number(), goneMonths: z.number(), endOn: day.nullable(), says: z.string() }),
  curve: z.array(z.object({ on: day, pv: z.number(), ev: z.number().nullable(), ac: z.number().nullable() })),
});
export type EarnedMeasure = z.infer<typeof earnedMeasure>;

export const earnedView = z.object({
  answer: z.string(),
  /** The baseline that everything is held against; null = none yet, and `howTo` says how to set one. */
  baseline: z.object({ id, name: z.string(), on: day, parts: z.int(), jobs: z.int(), endOn: day }).nullable(),
  baselines: z.array(z.object({ id, name: z.string(), on: day })),
  howTo: z.string(),
  /** Part lines and jobs that came after the baseline: they cost, but were never planned. */
  unplanned: z.int(),
  measures: z.array(earnedMeasure),
  caution: z.string(),
});
export type EarnedView = z.infer<typeof earnedView>;

export const moneyContract = {
  summary: procedure.input(ofBuild).output(moneyFigures.extend({ currency, answer: z.string() })),
  by: procedure.input(ofBuild.extend({ by: z.enum(['system', 'phase', 'vendor']) })).output(z.array(moneyRow)),
  /** Cumulative paid, committed (paid and still to pay) and forecast against budget: one point a day on which something changed. */
  overTime: procedure.input(ofBuild).output(z.array(moneyPoint)),
  perMonth: procedure.input(ofBuild).output(z.array(monthSpend)),
  budgetChanges: procedure.input(ofBuild).output(z.array(budgetChange)),
  /** Adds to (or takes from) a budget line, or to the contingency, or draws contingency into a line. A reason is required. */
  changeBudget: procedure
    .input(
      actBase.extend({
        build: id,
        kind: z.enum(['change', 'contingency', 'contingency drawn']),
        line: id.nullable(),
        newLine: z.object({ name: line(120), system: id.nullable(), phase: id.nullable() }).optional(),
        amountMinor: minor,
        reason: line(400),
        by: optionalLine(80),
      }),
    )
    .output(actResult),
  /** Held against the newest baseline, or the one named. */
  earned: procedure.input(ofBuild.extend({ baseline: id.optional() })).output(earnedView),
  /** Keeps what is planned now, as it stands on the day, under a name. Earlier baselines stay. */
  setBaseline: procedure.input(actBase.extend({ build: id, name: line(80) })).output(actResult),
};
