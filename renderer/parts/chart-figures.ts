import { dayNumber } from '../../core/dates/calendar-date.ts';
import { isCurrency, minorDigits } from '../../core/money/currency.ts';
import { moneyText, numberText } from './formats.ts';
import type { LocaleSettings } from './locale.tsx';

/** What the figures of a chart are: money in minor units of a currency (the workbook's own unless named), or a count. */
export type ChartUnit =
  | { readonly kind: 'money'; readonly currency?: string }
  | { readonly kind: 'count'; readonly name: string; readonly decimals?: number };

export interface TimeSeries {
  readonly name: string;
  readonly points: readonly { readonly on: string; readonly value: number }[];
  /** The value holds until the next point, as a sum of entries does. */
  readonly steps?: boolean;
  /** The name at the line's end, where it differs from the thing's name. */
  readonly endLabel?: string;
}

export interface MonthSeries {
  readonly name: string;
  readonly values: readonly number[];
}

/** Series whose values hold until the next point, carried on to `today`: what stood yesterday still stands. */
export const heldUntil = (series: readonly TimeSeries[], today: string): readonly TimeSeries[] =>
  series.map((one) => {
    const last = one.points.at(-1);
    if (one.steps !== true || last === undefined || last.on >= today) return one;
    return { ...one, points: [...one.points, { on: today, value: last.value }] };
  });

/** One date of a chart: each series' value, or null where it has none on that day. */
export interface TimeRow {
  readonly on: string;
  readonly day: number;
  readonly values: readonly (number | null)[];
}

/** All dates of all series in order, each with every series' value. */
export function timeRows(series: readonly TimeSeries[]): readonly TimeRow[] {
  const byDate = new Map<string, (number | null)[]>();
  series.forEach(({ points }, index) => {
    for (const { on, value } of points) {
      const values = byDate.get(on) ?? series.map(() => null);
      values[index] = value;
      byDate.set(on, values);
    }
  });
  return [...byDate].sort(([a], [b]) => (a < b ? -1 : 1)).map(([on, values]) => ({ on, day: dayNumber(on), values }));
}

export interface MonthRow {
  readonly month: string;
  readonly values: readonly number[];
}

/** Each month with every series' value; a series that is too short has 0. */
export const monthRows = (months: readonly string[], series: readonly MonthSeries[]): readonly MonthRow[] =>
  months.map((month, index) => ({ month, values: series.map(({ values }) => values[index] ?? 0) }));

/** A figure as the table behind a chart shows it; nothing where there is none. */
export function chartFigure(value: number | null, unit: ChartUnit, locale: LocaleSettings): string {
  if (value === null) return '';
  return unit.kind === 'money'
    ? moneyText(value, locale, unit.currency ?? locale.currency)
    : numberText(value, locale, unit.decimals ?? 0);
}

/** A figure at an axis: whole money, short, so that it fits. */
export function axisFigure(value: number, unit: ChartUnit, locale: LocaleSettings): string {
  if (unit.kind === 'count') return numberText(value, locale, Number.isInteger(value) ? 0 : (unit.decimals ?? 1));
  const currency = unit.currency ?? locale.currency;
  if (!isCurrency(currency)) return numberText(value, locale);
  const major = value / 10 ** minorDigits(currency);
  return new Intl.NumberFormat(locale.language, { style: 'currency', currency, maximumFractionDigits: 0 }).format(
    major,
  );
}

/** The name of what an axis counts: "EUR", "parts". */
export const axisName = (unit: ChartUnit, locale: LocaleSettings): string =>
  unit.kind === 'money' ? (unit.currency ?? locale.currency) : unit.name;

/** The largest of some values (1 when none is above 0, so that it can be divided by) and their sum. */
export function endsOf(values: readonly number[]): { readonly largest: number; readonly total: number } {
  const largest = Math.max(0, ...values);
  return { largest: largest === 0 ? 1 : largest, total: values.reduce((sum, value) => sum + value, 0) };
}

/** First days of months between two day numbers, thinned to at most `most`, as marks for a time axis. */
export function monthMarks(from: number, to: number, most: number): readonly number[] {
  const start = new Date(from * 86_400_000);
  const marks: number[] = [];
  for (let month = 0; ; month += 1) {
    const day = Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + month, 1) / 86_400_000;
    if (day > to) break;
    if (day >= from) marks.push(day);
  }
  const every = Math.max(1, Math.ceil(marks.length / Math.max(1, most)));
  return marks.filter((_, index) => index % every === 0);
}

/** Heights for labels that would overlap: each keeps its order and moves down until `gap` is between it and the last. */
export function spreadLabels(heights: readonly number[], gap: number, bottom: number): readonly number[] {
  const order = heights.map((height, index) => ({ height, index })).sort((a, b) => a.height - b.height);
  let last = Number.NEGATIVE_INFINITY;
  for (const item of order) {
    item.height = Math.max(item.height, last + gap);
    last = item.height;
  }
  // What was pushed past the bottom pushes the ones above it back up.
  let floor = bottom;
  for (const item of order.toReversed()) {
    item.height = Math.min(item.height, floor);
    floor = item.height - gap;
  }
  const spread = [...heights];
  for (const { height, index } of order) spread[index] = height;
  return spread;
}
