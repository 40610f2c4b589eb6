/** What blocks about fits and lines: two ports that don't join, a line that won't stand its work or isn't made yet. */
import type { Finding } from './blocker.ts';
import type { FitFact, GateOptions, LineFact } from './facts.ts';
import { readyNow } from './part-findings.ts';

const atNoCost = { costMinor: 0, assumed: false, after: [], clearedBy: [] } as const;

/** A connection or a declared fit that is wrong, or that can't be judged because something isn't known. */
export function fitFinding(fit: FitFact, options: GateOptions): Finding | null {
  if (fit.verdict === 'fits') return null;
  return {
    kind: fit.verdict === 'wrong' ? 'fit wrong' : 'fit unknown',
    subject: { kind: fit.kind, id: fit.id },
    title: fit.title,
    standing: fit.standing,
    why: fit.says,
    clears: fit.clears,
    ...readyNow(options),
    ...atNoCost,
    minutes: 0,
  };
}

/**
 * A hose line whose checks fail, or else that nobody has finished at the bench and that a check lacks something of: two
 * things, each waived by itself.
 */
export function lineFindings(line: LineFact, options: GateOptions): Finding[] {
  const { lacks } = line;
  const unknown: Finding[] =
    lacks === undefined || line.standing === 'unfit'
      ? []
      : [
          {
            kind: 'line unknown',
            subject: { kind: 'hose-line', id: line.id },
            title: line.title,
            standing: 'a check lacks something',
            why: lacks,
            clears: 'Give the line what the check lacks, or waive it with a reason.',
            ...readyNow(options),
            ...atNoCost,
            minutes: 0,
          },
        ];
  return line.standing === 'made' ? unknown : [...unknown, unfinished(line, options)];
}

function unfinished(line: LineFact, options: GateOptions): Finding {
  const unfit = line.standing === 'unfit';
  return {
    kind: unfit ? 'line unfit' : 'line not made',
    subject: { kind: 'hose-line', id: line.id },
    title: line.title,
    standing: unfit ? 'fails a check' : 'not made',
    why: line.says,
    clears: unfit
      ? 'Change the line, its hose or its ends, or waive it with a reason.'
      : 'Make the line at the bench and tick off its steps.',
    ...readyNow(options),
    ...atNoCost,
    minutes: unfit ? 0 : line.minutes,
  };
}
