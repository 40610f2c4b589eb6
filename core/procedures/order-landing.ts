import type { Charges } from '../contract/orders.ts';
import { daysBetween } from '../dates/calendar-date.ts';
import { convertLines } from '../money/convert.ts';
import { landOrder, type OrderTax } from '../money/landed.ts';
import { rateOfPercent } from '../money/rate.ts';
import { Refusal } from '../refusal.ts';
import type { LandedShares } from '../workbook/schema/orders.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { atFields } from './order-acts.ts';
import { createRecord } from './records.ts';

/** A rate older than this many days is used with a warning. Common practice, no published source. */
const freshDays = 7;

export interface DayRate {
  /** Base units for one unit of the currency; null for the base currency itself. */
  readonly rate: string | null;
  /** The day it was noted for. */
  readonly rateOn: string | null;
  readonly onRecord: boolean;
  readonly notices: readonly string[];
}

/**
 * The rate for a day: the one given, else the latest on record up to that day.
 * @throws Refusal `no-rate` naming `rate` when there is neither; `bad-input` for a rate of 0, or for a rate given with
 * the base currency.
 */
export function dayRate(
  connection: Connection,
  base: string,
  currency: string,
  on: string,
  given: string | undefined,
): DayRate {
  if (currency === base) {
    if (given === undefined) return { rate: null, rateOn: null, onRecord: true, notices: [] };
    throw new Refusal('bad-input', `${base} is the workbook's own currency and takes no rate. Nothing was changed.`, {
      field: 'rate',
      accepted: 'no rate, or an order in another currency',
    });
  }
  if (given !== undefined) {
    if (!/[1-9]/.test(given)) {
      throw new Refusal('bad-input', 'The exchange rate is 0. Nothing was changed.', {
        field: 'rate',
        accepted: `how many ${base} one ${currency} costs, above 0, such as 1.1050`,
      });
    }
    const same = listRecords(
      connection,
      'rates',
      'currency = ? AND on_day = ? AND rate = ? AND retired_on IS NULL',
      currency,
      on,
      given,
    );
    return { rate: given, rateOn: on, onRecord: same.length > 0, notices: [] };
  }
  const [latest] = listRecords(
    connection,
    'rates',
    'currency = ? AND on_day <= ? AND retired_on IS NULL',
    currency,
    on,
  ).sort((a, b) => (String(a['on']) === String(b['on']) ? b.id - a.id : String(a['on']) < String(b['on']) ? 1 : -1));
  if (latest === undefined) {
    throw new Refusal('no-rate', `No exchange rate for ${currency} is on record up to ${on}. Nothing was changed.`, {
      field: 'rate',
      accepted: `how many ${base} one ${currency} costs that day, such as 1.1050`,
      detail: { currency, on },
    });
  }
  const rateOn = String(latest['on']);
  const age = daysBetween(rateOn, on);
  return {
    rate: String(latest['rate']),
    rateOn,
    onRecord: true,
    notices:
      age > freshDays
        ? [`The rate of ${currency} is from ${rateOn}, ${age} days before ${on}; check whether it holds.`]
        : [],
  };
}

/** Puts a rate that was typed with an act on record, so that the next one finds it. */
export function keepRate(writer: ActWriter, currency: string, used: DayRate, source: string): void {
  writer.notices.push(...used.notices);
  if (used.onRecord || used.rate === null || used.rateOn === null) return;
  createRecord(writer, 'rate', null, used.rateOn, {
    currency,
    on: used.rateOn,
    rate: used.rate,
    source: source.slice(0, 120),
  });
  // The act answers with what was asked for; the rate came along.
  writer.made.pop();
}

export interface PricedLine {
  readonly quantityMilli: number;
  readonly eachE4: number;
}

export interface Landed {
  readonly lines: readonly LandedShares[];
  readonly totalMinor: number;
  readonly totalBaseMinor: number;
}

const taxOf = (tax: Charges['tax']): OrderTax =>
  tax.kind === 'amount'
    ? tax
    : {
        kind: 'rate',
        rateText: rateOfPercent(tax.percent, 'charges.tax.percent'),
        inclusive: tax.included,
        base: tax.base,
        basis: 'document',
      };

/**
 * What the lines of an order cost once its charges are in, in its own currency and in the base currency. The total of
 * the document is converted once; the lines add up to it.
 * @param rate base units for one of the order's currency; null when that is the base currency.
 * @throws Refusal `bad-input` naming the charge.
 */
export function landLines(
  lines: readonly PricedLine[],
  charges: Charges,
  currency: string,
  base: string,
  rate: string | null,
): Landed {
  const landed = atFields({ discount: 'charges.discountMinor', 'line amount': 'lines', 'exchange rate': 'rate' }, () =>
    landOrder({
      currency,
      lines: lines.map(({ quantityMilli, eachE4 }) => ({ quantityMilli, unitPriceE4: eachE4 })),
      discountMinor: charges.discountMinor,
      shippingMinor: charges.shippingMinor,
      dutyMinor: charges.dutyMinor,
      tax: taxOf(charges.tax),
    }),
  );
  const own = landed.lines.map(({ landedMinor }) => landedMinor);
  const inBase = rate === null ? own : convertLines(own, currency, base, rate);
  return {
    lines: landed.lines.map((line, index) => ({ ...line, landedBaseMinor: inBase[index] ?? 0 })),
    totalMinor: landed.total.landedMinor,
    totalBaseMinor: inBase.reduce((sum, minor) => sum + minor, 0),
  };
}
