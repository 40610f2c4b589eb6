import type { PlanBar } from '../../../core/contract/plan.ts';
import { dateText } from '../../parts/formats.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';
import { hoursText } from '../../parts/minutes.ts';
import { stateWords } from './bars-rows.ts';

/** "3 Mar 2026 18:30"; nothing where no day can be said. */
export function whenText(on: string | null, at: string | null, locale: LocaleSettings): string {
  if (on === null) return '';
  return at === null ? dateText(on, locale) : `${dateText(on, locale)} ${at}`;
}

/** The time to spare before the gate moves. */
export function floatText(bar: PlanBar): string {
  if (bar.floatMinutes === null) return '';
  if (bar.critical || bar.floatMinutes === 0) return 'none';
  const days = bar.floatDays ?? 0;
  return days === 0 ? hoursText(bar.floatMinutes) : `${days} ${days === 1 ? 'day' : 'days'}`;
}

/** A bar in one sentence, for who hears it and for its form. */
export function barSentence(bar: PlanBar, locale: LocaleSettings): string {
  const start = whenText(bar.startOn, bar.startAt, locale);
  const finish = whenText(bar.finishOn, bar.finishAt, locale);
  const days = start === '' ? ['no day can be said'] : [start === finish ? start : `${start} to ${finish}`];
  if (bar.who !== '') days.push(bar.who);
  const spare = floatText(bar);
  if (spare !== '') days.push(spare === 'none' ? 'no time to spare' : `${spare} to spare`);
  if (bar.heldBy !== '') days.push(`waits for: ${bar.heldBy}`);
  return `${stateWords[bar.state]}; ${days.join('; ')}.`;
}
