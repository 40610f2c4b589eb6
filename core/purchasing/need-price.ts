/**
 * What a need would cost and at which vendor: the best offer that holds, else the best quote, else the estimate. A price
 * with a last day is a deal; what it costs after that day is another price of the same vendor, or the estimate.
 */
import { convertDocument } from '../money/convert.ts';
import { extendedMinor } from '../money/line-value.ts';

export interface PriceChoice {
  readonly from: 'offer' | 'quote' | 'estimate';
  readonly vendor: number;
  readonly eachE4: number;
  readonly currency: string;
  /** Base units for one of the currency; null in the base currency. */
  readonly rate: string | null;
  /** Fewest units at this price. */
  readonly fromMilli: number;
  /** Last day; null holds on. */
  readonly until: string | null;
}

export interface ChosenPrice {
  readonly from: PriceChoice['from'];
  readonly vendor: number;
  /** Units to order: more than needed where that is cheaper. */
  readonly orderMilli: number;
  readonly priceMinor: number;
  /** The lower price and its last day; null when there is none. */
  readonly deal: { readonly priceMinor: number; readonly until: string } | null;
  /** Last day of the price where nothing says what it costs afterwards; null when that is known. */
  readonly unknownAfter: string | null;
  /** Offers of that vendor that need more units than this need and its order have. */
  readonly breaks: readonly PriceChoice[];
}

/** Price of so many units in the base currency. */
export function choicePrice(choice: PriceChoice, milli: number, base: string): number {
  const minor = extendedMinor(milli, choice.eachE4);
  return choice.rate === null ? minor : convertDocument(minor, choice.currency, base, choice.rate);
}

const ranks = ['offer', 'quote', 'estimate'] as const;

/**
 * @param startOn the first day of the plan: what has ended by then is left out.
 * @returns null when no price holds.
 */
export function choosePrice(
  choices: readonly PriceChoice[],
  needMilli: number,
  base: string,
  startOn: string,
): ChosenPrice | null {
  const priced = choices
    .filter(({ until }) => until === null || until >= startOn)
    .map((choice) => {
      const orderMilli = Math.max(needMilli, choice.from === 'offer' ? choice.fromMilli : 0);
      return { choice, orderMilli, minor: choicePrice(choice, orderMilli, base) };
    });
  const best = ranks
    .map((rank) => priced.filter(({ choice }) => choice.from === rank).sort((a, b) => a.minor - b.minor)[0])
    .find((each) => each !== undefined);
  if (best === undefined) return null;
  const { choice, orderMilli, minor } = best;
  const same = priced.filter(({ choice: other }) => other.vendor === choice.vendor && other !== choice);
  const lasting = same.filter(({ choice: other }) => other.until === null).sort((a, b) => a.minor - b.minor);
  const later = ranks.map((rank) => lasting.find(({ choice: other }) => other.from === rank)).find((each) => each);
  const isDeal = choice.until !== null && later !== undefined && later.minor > minor;
  return {
    from: choice.from,
    vendor: choice.vendor,
    orderMilli,
    priceMinor: isDeal ? later.minor : minor,
    deal: isDeal && choice.until !== null ? { priceMinor: minor, until: choice.until } : null,
    unknownAfter: choice.until !== null && later === undefined ? choice.until : null,
    breaks: same
      .map(({ choice: other }) => other)
      .filter((other) => other.from === 'offer' && other.fromMilli > orderMilli && other.until === null),
  };
}
