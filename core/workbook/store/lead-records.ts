import { daysBetween } from '../../dates/calendar-date.ts';
import { type LeadObservation, type LeadRecord, leadPriors } from '../../purchasing/lead-time.ts';
import type { SlipRecord } from '../../purchasing/lead-time-promise.ts';
import { all, type Connection } from './connection.ts';
import { linePositions } from './order-states.ts';
import { arrivalDays, hasArrived } from './order-vendors.ts';
import { lineWords } from './promises.ts';
import { remembered } from './remembered.ts';

export type LineClass = 'in-stock' | 'back-order';

interface PastLine {
  readonly vendor: number;
  readonly lineClass: LineClass;
  readonly seen: LeadObservation;
  readonly line: number;
  readonly order: number;
  readonly part: number;
  /** The day that the wait counts from. */
  readonly from: string;
  /** Still to come, and not cancelled. */
  readonly open: boolean;
}

/** What the workbook's order lines say of every vendor's waits and promises, up to a day. */
export interface LeadRecords {
  /**
   * The record to judge a line by. A vendor's stated usual days stand in for the expected wait and then count before
   * what other vendors did.
   */
  lead(vendor: number | null, lineClass: LineClass, statedDays: number | null): LeadRecord;
  slips(vendor: number | null): SlipRecord;
  /** Every line that the records stand on; a line that went on back-order stands twice. */
  readonly lines: readonly PastLine[];
}

/** Last day on which something of a line was cancelled, by line. */
function cancelDays(connection: Connection, build: number, day: string): Map<number, string> {
  return new Map(
    all<{ line: number; on: string }>(
      connection,
      `SELECT line, max(on_day) AS "on" FROM entries e WHERE kind = 'cancelled' AND +build = ? AND on_day <= ? AND line IS NOT NULL
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY line`,
      build,
      day,
    ).map(({ line, on }) => [line, on]),
  );
}

/**
 * Reads the record of all builds in the workbook: a vendor is the same for each. A line counts from its order; one that
 * went on back-order counts as waiting without arrival up to the notice, and from the notice as a back-order. A line
 * cancelled before anything came counts as waiting up to its last day.
 * @param day the day that open lines are counted to.
 * @param asOf a past day, or undefined for now.
 */
export function leadRecords(connection: Connection, day: string, asOf: string | undefined): LeadRecords {
  return remembered(connection, `lead records ${day} ${asOf}`, () => readRecords(connection, day, asOf));
}

function readRecords(connection: Connection, day: string, asOf: string | undefined): LeadRecords {
  const until = asOf ?? day;
  const past: PastLine[] = [];
  const slips: { readonly vendor: number; readonly days: number }[] = [];
  for (const { id: build } of all<{ id: number }>(connection, 'SELECT id FROM builds WHERE gone = 0 ORDER BY id')) {
    const words = lineWords(connection, build, until);
    const arrivals = arrivalDays(connection, build, until);
    const cancelled = cancelDays(connection, build, until);
    const vendorOf = new Map(
      all<{ id: number; vendor: number }>(connection, 'SELECT id, vendor FROM orders WHERE build = ?', build).map(
        (order) => [order.id, order.vendor],
      ),
    );
    const positions = linePositions(connection, { build, asOf });
    for (const [line, word] of words) {
      const vendor = vendorOf.get(word.order);
      const position = positions.get(line);
      if (vendor === undefined || word.orderedOn > until) continue;
      const arrivedOn = position !== undefined && hasArrived(position) ? (arrivals.get(line) ?? null) : null;
      const open = (position?.outstandingMilli ?? 0) > 0;
      const endOn = arrivedOn ?? (open ? until : (cancelled.get(line) ?? null));
      // Here but not good yet, or taken back altogether: neither an arrival nor a wait.
      if (endOn === null) continue;
      const arrived = arrivedOn !== null;
      const span = (from: string, to: string): number => Math.max(0, daysBetween(from, to));
      const { order, part, orderedOn, backOrderedOn: notice } = word;
      const about = { vendor, line, order, part };
      const end = { arrived, open: open && !arrived };
      const add = (lineClass: LineClass, from: string, to: string, { arrived, open } = end): void => {
        past.push({ ...about, lineClass, from, open, seen: { days: span(from, to), arrived } });
      };
      if (notice === null) add('in-stock', orderedOn, endOn);
      else {
        add('in-stock', orderedOn, notice, { arrived: false, open: false });
        add('back-order', notice, endOn);
      }
      const promise = word.promises.find(({ promisedOn }) => promisedOn !== null)?.promisedOn ?? null;
      if (arrivedOn !== null && promise !== null) slips.push({ vendor, days: daysBetween(promise, arrivedOn) });
    }
  }
  return {
    lines: past,
    lead(vendor, lineClass, statedDays) {
      const pooled = past.filter((line) => line.lineClass === lineClass);
      const stated = lineClass === 'in-stock' ? statedDays : null;
      const prior = leadPriors[lineClass];
      return {
        vendor: pooled.filter((line) => line.vendor === vendor).map(({ seen }) => seen),
        pooled: stated === null ? pooled.map(({ seen }) => seen) : [],
        // A logarithm needs more than zero: the same day counts as half a day.
        prior: stated === null ? prior : { ...prior, medianDays: Math.max(stated, 0.5) },
      };
    },
    slips: (vendor) => ({
      vendor: slips.filter((slip) => slip.vendor === vendor).map(({ days }) => days),
      pooled: slips.map(({ days }) => days),
    }),
  };
}
