/** What jobs, people and days of the calendar must be besides their shapes. */
import type { RecordKind, RecordValues } from '../contract/records.ts';
import { daysBetween } from '../dates/calendar-date.ts';
import { Refusal } from '../refusal.ts';
import { readWorkingTime, showMinutes } from '../schedule/working-time.ts';

/** Ten years and a bit: as far ahead as working time is looked for. */
const longestRangeDays = 3653;

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}

/** @param values the record as it would stand. @throws Refusal `bad-input` naming the field. */
export function checkPlanning(kind: RecordKind, values: Readonly<Record<string, unknown>>): void {
  if (kind === 'job') {
    checkThreePoints(values as unknown as RecordValues['job']);
    checkLags(values as unknown as RecordValues['job']);
  }
  if (kind === 'person') {
    const { windows } = values as unknown as RecordValues['person'];
    checkWindows(() => readWorkingTime({ weekly: windows, exceptions: [] }));
  }
  if (kind === 'calendarDay') checkCalendarDay(values as unknown as RecordValues['calendarDay']);
}

function checkThreePoints({ minutesLow: low, minutesGuess: guess, minutesHigh: high }: RecordValues['job']): void {
  if (low !== null && guess !== null && low > guess) {
    const reason = `At best ${showMinutes(low)} is more than the guess of ${showMinutes(guess)}.`;
    throw refused('minutesLow', reason, `up to ${showMinutes(guess)}, the guess`);
  }
  if (high !== null && guess !== null && high < guess) {
    const reason = `At worst ${showMinutes(high)} is less than the guess of ${showMinutes(guess)}.`;
    throw refused('minutesHigh', reason, `${showMinutes(guess)}, the guess, or more`);
  }
  if (low !== null && high !== null && high < low) {
    const reason = `At worst ${showMinutes(high)} is less than at best ${showMinutes(low)}.`;
    throw refused('minutesHigh', reason, `${showMinutes(low)} or more`);
  }
}

function checkLags({ earlier, lags }: RecordValues['job']): void {
  const other = lags.find(({ job }) => !earlier.includes(job));
  if (other === undefined) return;
  const reason = `A time to wait is given after job ${other.job}, which is not among the earlier jobs.`;
  throw refused('lags', reason, 'times to wait after jobs that are among the earlier jobs');
}

function checkCalendarDay({ on, until, windows }: RecordValues['calendarDay']): void {
  if (until !== null && until < on) {
    throw refused('until', `The last day ${until} is before the first day ${on}.`, `a day from ${on} on, or none`);
  }
  if (until !== null && daysBetween(on, until) > longestRangeDays) {
    throw refused('until', `From ${on} to ${until} are more than ten years.`, 'a range of up to ten years');
  }
  checkWindows(() => readWorkingTime({ weekly: [], exceptions: [{ date: on, windows }] }));
}

/** What reading the windows refuses, told of the field that they stand in. */
function checkWindows(read: () => unknown): void {
  try {
    read();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(error.code, error.message, { field: 'windows', accepted: error.accepted ?? '' });
  }
}
