import type { BarsView, PlanBar } from '../../../core/contract/plan.ts';
import { dateOfDayNumber, dayNumber, weekdayOfDayNumber } from '../../../core/dates/calendar-date.ts';
import { monthText } from '../../parts/formats.ts';

export type Zoom = 'weeks' | 'months';

/** Points of width that a day takes. */
const dayWidth: Readonly<Record<Zoom, number>> = { weeks: 18, months: 5 };

/** Days drawn at most; what lies behind is told in the table. */
const mostDays = 1500;

/** The days of the drawing, as numbers, and how wide each is. */
export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly perDay: number;
}

/** A scale that holds today, the gate and every bar. */
export function scaleOf(view: Pick<BarsView, 'today' | 'gate'>, bars: readonly PlanBar[], zoom: Zoom): Scale {
  const days = [view.today, view.gate.on, ...bars.flatMap((bar) => [bar.startOn, bar.finishOn, bar.lateFinishOn])]
    .filter((day) => day !== null)
    .map(dayNumber);
  // Room for the word behind the last bar.
  const last = Math.max(...days) + Math.ceil(150 / dayWidth[zoom]);
  // Long ago gives way to what is still to come.
  const first = Math.max(Math.min(...days) - 3, Math.min(dayNumber(view.today) - 3, last - mostDays));
  return { from: first, to: Math.min(last, first + mostDays), perDay: dayWidth[zoom] };
}

export const widthOf = ({ from, to, perDay }: Scale): number => (to - from + 1) * perDay;

/** Where a day begins. */
export const placeOf = ({ from, perDay }: Scale, day: string): number => (dayNumber(day) - from) * perDay;

export interface ScaleMark {
  readonly at: number;
  readonly label: string;
  readonly strong: boolean;
}

/** Mondays, or the first days of months. */
export function marksOf({ from, to, perDay }: Scale, zoom: Zoom): ScaleMark[] {
  const marks: ScaleMark[] = [];
  for (let day = from; day <= to; day += 1) {
    const date = dateOfDayNumber(day);
    const first = date.endsWith('-01');
    if (zoom === 'months' ? !first : weekdayOfDayNumber(day) !== 1) continue;
    const [month = '', year = ''] = monthText(date.slice(0, 7)).split(' ');
    const label = zoom === 'months' ? `${month} ${year}` : `${Number(date.slice(8))} ${month}`;
    marks.push({ at: (day - from) * perDay, label, strong: zoom === 'months' ? date.slice(5, 7) === '01' : false });
  }
  return marks;
}

/** The days that a bar covers, as a beginning and a width; a job of no length still shows. */
export function spanOf(scale: Scale, bar: PlanBar): { x: number; width: number } | null {
  if (bar.startOn === null || bar.finishOn === null) return null;
  const x = placeOf(scale, bar.startOn);
  return { x, width: Math.max(scale.perDay, placeOf(scale, bar.finishOn) + scale.perDay - x) };
}
