import type { PartRow } from '../contract/parts.ts';
import type { PlanJob } from '../contract/plan.ts';
import { dayWords } from '../dates/day-words.ts';
import { dateOfMinute } from '../dates/instant.ts';
import { isHere } from '../schedule/place.ts';
import type { BenchTurn } from '../schedule/tonight.ts';
import { showMinutes } from '../schedule/working-time.ts';
import { isUnit, unitFamily } from '../units/quantity.ts';
import { quantityWords } from '../workbook/store/entry-text.ts';

/** Minutes left by the guess; null without a guess, or when more was worked than guessed. */
export const leftOf = ({ minutesGuess, minutesSpent }: PlanJob): number | null =>
  minutesGuess === null || (minutesSpent > 0 && minutesSpent >= minutesGuess) ? null : minutesGuess - minutesSpent;

/** A sentence on how a job fits in the hours. */
export function fitsSaid(job: PlanJob, turn: BenchTurn | undefined, afterTitles: readonly string[]): string {
  const left = leftOf(job);
  if (!job.hands) {
    const long = left === null ? '' : ` Then ${showMinutes(left)} pass by the clock.`;
    return `Needs nobody’s hands: set it going.${long}`;
  }
  if (left === null) {
    return job.minutesGuess === null
      ? 'Nobody has guessed how long it takes.'
      : `The guess of ${showMinutes(job.minutesGuess)} is used up; guess again how long it takes.`;
  }
  if (turn === undefined && job.oneSitting) {
    return `${showMinutes(left)} left, in one sitting: these hours don’t hold it.`;
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

const two = (count: number): string => String(count).padStart(2, '0');

/** "at 19:10", on another day than `today` "on 25 November 2026 at 19:10"; of an instant in UTC, by the local clock. */
export function sinceWords(at: string, today: string): string {
  const local = new Date(at);
  const day = `${local.getFullYear()}-${two(local.getMonth() + 1)}-${two(local.getDate())}`;
  const time = `at ${two(local.getHours())}:${two(local.getMinutes())}`;
  return day === today ? time : `on ${dayWords(day)} ${time}`;
}

/** How a job that somebody is at stands by its guess. */
export function runningSaid(job: PlanJob, minutes: number, since: string): string {
  const left = leftOf(job);
  const spent = minutes + job.minutesSpent;
  if (job.minutesGuess === null) return `Begun ${since}. Nobody has guessed how long it takes.`;
  if (left === null || minutes >= left) {
    return `Begun ${since}. The guess of ${showMinutes(job.minutesGuess)} is used up: ${showMinutes(spent)} by now.`;
  }
  return `Begun ${since}: ${showMinutes(left - minutes)} left by the guess.`;
}

/** Why a job that could begin otherwise doesn't in these hours; empty when it does. */
export function notTonight(job: PlanJob, place: string, allowedFrom: number, now: number): string {
  if (allowedFrom > now) {
    const day = dayWords(dateOfMinute(allowedFrom));
    return job.notBefore !== null && job.notBefore === dateOfMinute(allowedFrom)
      ? `not before ${day}`
      : `the wait after an earlier job lasts until ${day}`;
  }
  return isHere(job, place) ? '' : `done at another place, ${job.place}`;
}

/** What a job uses up: its own words, one thing each, then parts by volume, weight or length. */
export function consumablesOf(job: PlanJob, rows: readonly PartRow[]): string[] {
  const said = job.consumables
    .split(/[,;\n]/)
    .map((text) => text.trim())
    .filter((text) => text !== '');
  const measured = rows.flatMap(({ unit, needMilli, description }) =>
    isUnit(unit) && ['volume', 'mass', 'length'].includes(unitFamily(unit))
      ? [`${quantityWords(needMilli, unit)} ${description}`]
      : [],
  );
  return [...said, ...measured];
}
