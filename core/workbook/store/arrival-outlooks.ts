import { dateOfMinute, minutesPerDay } from '../../dates/instant.ts';
import type { Distribution } from '../../forecast/distribution.ts';
import { type ArrivalGrounds, daysAhead } from '../../forecast/facts.ts';
import { type LeadRecord, leadOutlook, waitQuantiles } from '../../purchasing/lead-time.ts';
import { arrivalOutlook } from '../../purchasing/lead-time-promise.ts';
import type { Connection } from './connection.ts';
import { type LeadRecords, type LineClass, leadRecords } from './lead-records.ts';
import type { dueRows } from './order-due.ts';

/** When a delivery comes: as a spread of days from now, and in days of the calendar. */
export interface Outlook {
  readonly days: Distribution;
  readonly grounds: ArrivalGrounds;
}

/** An order that nobody has placed yet, at the vendor that is chosen for it. */
export interface OrderNow {
  readonly vendor: number | null;
  readonly statedDays: number | null;
}

export interface OrderOutlook extends Outlook {
  /** False where neither the vendor's record nor its stated days say anything. */
  readonly known: boolean;
  /** What the wait stands on, whenever the order is placed; the grounds say it of an order placed now. */
  readonly leadSays: string;
}

export interface ArrivalOutlooks {
  /** A line that is open. `statedDays`: the usual days of its vendor, where they count for this line. */
  ofLine(line: OpenRow, statedDays: number | null): Outlook;
  /** What would be ordered now. */
  ofOrder(order: OrderNow): OrderOutlook;
}

type OpenRow = Pick<
  ReturnType<typeof dueRows>[number],
  'vendor' | 'orderedOn' | 'backOrderedOn' | 'promisedOn' | 'line'
>;

export interface OutlookDay {
  readonly today: string;
  /** A past day, or undefined for now. */
  readonly asOf: string | undefined;
  /** The minute of wall time that days are counted from. */
  readonly nowMinute: number;
}

/**
 * When deliveries come, by the vendors' own records: the one home of every forecast arrival, for the forecast, the hoist
 * check, the buying plan and what stands on them. Lines that are alike in all that counts are worked out once.
 */
export function arrivalOutlooks(connection: Connection, { today, asOf, nowMinute }: OutlookDay): ArrivalOutlooks {
  const day = asOf ?? today;
  const records: LeadRecords = leadRecords(connection, day, asOf);
  const leads = new Map<string, LeadRecord>();
  const lines = new Map<string, Outlook>();
  const orders = new Map<string, OrderOutlook>();
  const leadOf = (vendor: number | null, lineClass: LineClass, stated: number | null): LeadRecord => {
    const key = `${vendor} ${lineClass} ${stated}`;
    const found = leads.get(key) ?? records.lead(vendor, lineClass, stated);
    leads.set(key, found);
    return found;
  };
  // A hundredth of a minute less, so that whole days stay whole.
  const dayAfter = (days: number): string =>
    dateOfMinute(nowMinute + Math.ceil(Math.min(days, daysAhead) * minutesPerDay - 0.01));
  const outlook = (
    days: Distribution,
    { basis, count, longerThanAnyPast, says }: Omit<ArrivalGrounds, 'p50Days' | 'p80Days' | 'p50On' | 'p80On'>,
  ): Outlook => {
    const { p50, p80 } = waitQuantiles(days);
    const [p50Days, p80Days] = [Math.max(0, p50), Math.max(0, p80)];
    const dates = { p50On: dayAfter(p50Days), p80On: dayAfter(p80Days) };
    return { days, grounds: { basis, count, longerThanAnyPast, says, p50Days, p80Days, ...dates } };
  };
  return {
    ofLine(line, statedDays) {
      const { vendor, orderedOn, backOrderedOn, promisedOn } = line;
      const key = `${vendor} ${statedDays} ${orderedOn} ${backOrderedOn} ${promisedOn}`;
      const kept = lines.get(key);
      if (kept !== undefined) return kept;
      const said = arrivalOutlook(
        { orderedOn, noticeOn: backOrderedOn, promisedOn },
        leadOf(vendor, backOrderedOn === null ? 'in-stock' : 'back-order', statedDays),
        records.slips(vendor),
        day,
      );
      const found = outlook(said.fromToday, said);
      lines.set(key, found);
      return found;
    },
    ofOrder({ vendor, statedDays }) {
      const key = `${vendor} ${statedDays}`;
      const kept = orders.get(key);
      if (kept !== undefined) return kept;
      const lead = leadOutlook(leadOf(vendor, 'in-stock', statedDays));
      const grounds = { basis: lead.basis, count: lead.arrivals, longerThanAnyPast: false };
      const says = `Not ordered yet; counted as ordered today. ${lead.says}`;
      const found = {
        ...outlook(lead.distribution, { ...grounds, says }),
        known: statedDays !== null || lead.arrivals > 0,
        leadSays: lead.says,
      };
      orders.set(key, found);
      return found;
    },
  };
}
