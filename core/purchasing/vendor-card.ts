/** How a vendor has done: promises kept, wrong parts, and days from order to arrival. Counts always stand beside shares. */
import { daysBetween } from '../dates/calendar-date.ts';

export interface VendorLine {
  readonly orderedOn: string;
  /** The first promise made; later ones don't excuse a late line. */
  readonly firstPromiseOn: string | null;
  /** Day on which the last of the line came or was accepted; null while it is open. */
  readonly arrivedOn: string | null;
  readonly receivedMilli: number;
  /** Received units rejected as wrong or faulty. */
  readonly wrongMilli: number;
}

export interface VendorCard {
  readonly lines: number;
  readonly openLines: number;
  /** Lines arrived with a promise, or open past it. */
  readonly judgedLines: number;
  readonly onTimeLines: number;
  /** Null when no line can be judged. */
  readonly onTimeShare: number | null;
  readonly receivedMilli: number;
  readonly wrongMilli: number;
  /** Null when nothing was received. */
  readonly wrongShare: number | null;
  /** Lines of which nothing is to come or to inspect any more. */
  readonly arrivedLines: number;
  /** Median of days from order to arrival over those lines; null when there are none. */
  readonly medianLeadDays: number | null;
  /** Whether there are lines enough to set this vendor beside others by its shares. */
  readonly comparable: boolean;
}

/** Under this many judged lines a vendor's shares are not ranked; a rule of this product, no published source. */
export const linesToCompare = 5;

/**
 * The card of one vendor.
 * @param today arrivals after it are still open; a promise equal to it is not yet past.
 * @param orderedSince only lines ordered on or after this day count; null counts all.
 */
export function vendorCard(
  lines: readonly VendorLine[],
  today: string,
  orderedSince: string | null = null,
): VendorCard {
  const counted = lines.filter((line) => line.orderedOn <= today && line.orderedOn >= (orderedSince ?? ''));
  const hasArrived = (line: VendorLine): boolean => line.arrivedOn !== null && line.arrivedOn <= today;
  const arrived = counted.filter(hasArrived);
  const judged = counted.filter(
    (line) => line.firstPromiseOn !== null && (hasArrived(line) || line.firstPromiseOn < today),
  );
  const onTimeLines = judged.filter(
    (line) => hasArrived(line) && (line.arrivedOn ?? '') <= (line.firstPromiseOn ?? ''),
  ).length;
  const receivedMilli = counted.reduce((sum, line) => sum + line.receivedMilli, 0);
  const wrongMilli = counted.reduce((sum, line) => sum + line.wrongMilli, 0);
  return {
    lines: counted.length,
    openLines: counted.length - arrived.length,
    judgedLines: judged.length,
    onTimeLines,
    onTimeShare: judged.length === 0 ? null : onTimeLines / judged.length,
    receivedMilli,
    wrongMilli,
    wrongShare: receivedMilli === 0 ? null : wrongMilli / receivedMilli,
    arrivedLines: arrived.length,
    medianLeadDays: median(arrived.map((line) => daysBetween(line.orderedOn, line.arrivedOn ?? today))),
    comparable: judged.length >= linesToCompare,
  };
}

function median(numbers: readonly number[]): number | null {
  const sorted = [...numbers].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}
