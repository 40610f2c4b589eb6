import type { Settings } from '../../core/contract/workbook.ts';
import { readWorkingTime } from '../../core/schedule/working-time.ts';

export type WeekWindow = Settings['weekWindows'][number];

export const weekdays = [
  { value: '1', label: 'Monday' },
  { value: '2', label: 'Tuesday' },
  { value: '3', label: 'Wednesday' },
  { value: '4', label: 'Thursday' },
  { value: '5', label: 'Friday' },
  { value: '6', label: 'Saturday' },
  { value: '7', label: 'Sunday' },
] as const;

/** Minutes a week in windows that have been read. @throws Refusal for a window that can't be read or overlaps another. */
export function minutesAWeek(windows: readonly WeekWindow[]): number {
  const time = readWorkingTime({ weekly: [...windows], exceptions: [] });
  return [...time.byWeekday.values()].flat().reduce((sum, { from, to }) => sum + to - from, 0);
}

/** Typed clock time as the workbook keeps it: "7", "7:30" and "19.30" become "07:00", "07:30" and "19:30". */
export function clockOf(text: string): string | null {
  const found = /^(\d{1,2})(?:[:.](\d{2}))?$/.exec(text.trim());
  if (found === null) return null;
  const [hours, minutes] = [Number(found[1]), Number(found[2] ?? '0')];
  if (minutes > 59 || hours * 60 + minutes > 24 * 60) return null;
  return `${String(hours).padStart(2, '0')}:${String(minutes).padStart(2, '0')}`;
}
