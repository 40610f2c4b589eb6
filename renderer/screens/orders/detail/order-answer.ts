import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { daysBetween } from '../../../../core/dates/calendar-date.ts';
import { counted } from '../../../parts/formats.ts';
import { openLines } from '../order-words.ts';

/** The order's first sentence: what is to come and how late it is. */
export function orderAnswer(detail: OrderDetail, day: string, say: (minor: number) => string): string {
  const { row } = detail;
  const open = openLines(detail);
  if (row.standing === 'cancelled') return `The order at ${row.vendorName} was cancelled.`;
  if (open.length === 0) {
    const pay = row.stillToPayMinor > 0 ? ` ${say(row.stillToPayMinor)} is still to pay.` : '';
    return row.claimsMinor > 0
      ? `Nothing more is to come; ${row.vendorName} owes ${say(row.claimsMinor)} for what was wrong or cancelled.${pay}`
      : `All of it is here, from ${row.vendorName}.${pay}`;
  }
  const what =
    open.length === 1 && open[0] !== undefined
      ? open[0].description
      : `${open.length} of ${counted(row.lines, 'line', 'lines')}`;
  const late = row.promisedOn === null ? 0 : daysBetween(row.promisedOn, day);
  const facts = [
    ...(row.backOrderAgeDays === null ? [] : [`on back-order for ${counted(row.backOrderAgeDays, 'day', 'days')}`]),
    row.promisedOn === null
      ? 'no date is promised'
      : late > 0
        ? `${counted(late, 'day', 'days')} past the promise`
        : late === 0
          ? 'promised for today'
          : `promised in ${counted(-late, 'day', 'days')}`,
  ];
  return `Still to come from ${row.vendorName}: ${what}, ${facts.join(', ')}.`;
}
