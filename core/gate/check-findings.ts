/** What blocks about checks and measurements: a figure that fails or can't be had, a reading missing or out. */
import type { Finding } from './blocker.ts';
import type { CheckFact, GateOptions, SheetFact } from './facts.ts';
import { readyNow } from './part-findings.ts';

const atNoCost = { costMinor: 0, minutes: 0, assumed: false, after: [], clearedBy: [] } as const;

/** A check that fails, or that can't be worked out because a figure isn't known. */
export function checkFinding(check: CheckFact, options: GateOptions): Finding | null {
  if (check.verdict === 'holds' || check.verdict === 'close') return null;
  const fails = check.verdict === 'fails';
  return {
    kind: fails ? 'check failing' : 'check unknown',
    subject: { kind: 'check', id: check.id },
    title: check.title,
    standing: check.verdict,
    why: check.says,
    clears: fails
      ? 'Change the part, the target or the limit, or waive it with a reason.'
      : 'Write down the figure that it lacks, or waive it with a reason.',
    ...readyNow(options),
    ...atNoCost,
  };
}

/** A measuring sheet with a place not yet measured, or with a reading outside its limits. */
export function sheetFinding(sheet: SheetFact, options: GateOptions): Finding | null {
  if (sheet.standing === 'in limits') return null;
  const out = sheet.standing === 'out';
  return {
    kind: out ? 'measurement out' : 'measurement missing',
    subject: { kind: 'measuring-sheet', id: sheet.id },
    title: sheet.title,
    standing: out ? 'outside its limits' : 'not measured',
    why: sheet.says,
    clears: out
      ? 'Put it right and measure again, or waive it with a reason.'
      : 'Measure what is missing and write it on the sheet.',
    ...readyNow(options),
    ...atNoCost,
  };
}
