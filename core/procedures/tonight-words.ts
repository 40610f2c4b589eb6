import type { PartRow } from '../contract/parts.ts';
import type { PlanJob } from '../contract/plan.ts';
import type { BenchTurn } from '../schedule/tonight.ts';
import { showMinutes } from '../schedule/working-time.ts';
import { quantityWords } from '../workbook/store/entry-text.ts';

/** Minutes left by the guess; null without a guess, or when more was worked than guessed. */
export const leftOf = ({ minutesGuess, minutesSpent }: PlanJob): number | null =>
  minutesGuess === null || (minutesSpent > 0 && minutesSpent >= minutesGuess) ? null : minutesGuess - minutesSpent;

/** A sentence on how a job fits in the hours. */
export function fitsSaid(job: PlanJob, turn: BenchTurn | undefined, afterTitles: readonly string[]): string {
  const left = leftOf(job);
  if (left === null) {
    return job.minutesGuess === null
      ? 'Nobody has guessed how long it takes.'
      : `The guess of ${showMinutes(job.minutesGuess)} is used up; guess again how long it takes.`;
  }
  if (turn === undefined) return `${showMinutes(left)} left; no time for it in these hours.`;
  const after = afterTitles.length === 0 ? '' : `, after ${afterTitles.map((title) => `“${title}”`).join(', ')}`;
  return turn.whole
    ? `${showMinutes(left)} left: can be finished${after}.`
    : `${showMinutes(left)} left: begin it, ${showMinutes(turn.minutes)} of it fit${after}.`;
}

/** What gets a part here, and in which state it is now. */
export function partWant(row: PartRow, missingMilli: number): { does: string; name: string; standing: string } {
  const name = row.partNumber === '' ? row.description : row.partNumber;
  const what = `${quantityWords(missingMilli, row.unit)} ${name}`;
  const does =
    row.inspectionMilli > 0
      ? `look over ${what}`
      : row.uncoveredMilli > 0
        ? `order ${what}`
        : row.onOrderMilli > 0
          ? `ask the vendor for ${what}`
          : row.lentMilli > 0
            ? `ask back ${what}`
            : `get ${what}`;
  return { does, name: row.description, standing: row.standingText };
}

/** What gets a tool here, and where it is now. */
export const toolWant = (tool: { name: string; whereabouts: string; hireMinor: number | null }) => ({
  does: `${(tool.hireMinor ?? 0) > 0 ? 'hire' : /\bbuy\b/i.test(tool.whereabouts) ? 'buy' : 'borrow'} the ${tool.name}`,
  name: tool.name,
  standing: tool.whereabouts === '' ? 'not at hand' : tool.whereabouts,
});
