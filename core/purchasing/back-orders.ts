/** Back-orders: how long they have waited since the vendor's notice, and how far past the latest promise they are. */
import { daysBetween } from '../dates/calendar-date.ts';

export interface PromisedDate {
  readonly givenOn: string;
  /** Null when the vendor gave no date; that is an answer too. */
  readonly promisedOn: string | null;
}

export interface BackOrder {
  readonly id: number;
  /** Day of the back-order notice. */
  readonly noticeOn: string;
  /** Every promise made for the line, in the order they were made. */
  readonly promises: readonly PromisedDate[];
}

export const ageBands = ['0-14', '15-30', '31-60', 'over 60'] as const;
export type AgeBand = (typeof ageBands)[number];

export interface AgedBackOrder {
  readonly id: number;
  /** Days since the notice. */
  readonly ageDays: number;
  readonly band: AgeBand;
  readonly latestPromise: string | null;
  /** Days past the latest promise; 0 while it holds, null when no date was ever given. */
  readonly pastPromiseDays: number | null;
  /** How often the vendor moved a date it had given. */
  readonly promiseChanges: number;
}

/** Ages the back-orders known on `today`, oldest first; notices and promises made later are not yet known. */
export function agedBackOrders(orders: readonly BackOrder[], today: string): AgedBackOrder[] {
  return orders
    .filter((order) => order.noticeOn <= today)
    .map((order) => age(order, today))
    .sort((a, b) => b.ageDays - a.ageDays);
}

/** The band an age in days falls in. */
export function ageBand(days: number): AgeBand {
  if (days <= 14) return '0-14';
  if (days <= 30) return '15-30';
  return days <= 60 ? '31-60' : 'over 60';
}

/** How many back-orders stand in each band; every band is listed. */
export function countByBand(aged: readonly AgedBackOrder[]): Record<AgeBand, number> {
  const counts: Record<AgeBand, number> = { '0-14': 0, '15-30': 0, '31-60': 0, 'over 60': 0 };
  for (const order of aged) counts[order.band] += 1;
  return counts;
}

function age(order: BackOrder, today: string): AgedBackOrder {
  const known = order.promises.filter((promise) => promise.givenOn <= today);
  const dated = known.flatMap((promise) => (promise.promisedOn === null ? [] : [promise.promisedOn]));
  const latestPromise = dated.at(-1) ?? null;
  const ageDays = daysBetween(order.noticeOn, today);
  return {
    id: order.id,
    ageDays,
    band: ageBand(ageDays),
    latestPromise,
    pastPromiseDays: latestPromise === null ? null : Math.max(0, daysBetween(latestPromise, today)),
    promiseChanges: dated.filter((date, index) => index > 0 && date !== dated[index - 1]).length,
  };
}
