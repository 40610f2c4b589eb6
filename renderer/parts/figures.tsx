import { dateText, moneyText, quantityText, unitPriceText } from './formats.ts';
import { useLocale } from './locale.tsx';

/** An amount of money in whole minor units. */
export function Money({ amountMinor, currency }: { readonly amountMinor: number; readonly currency?: string }) {
  const locale = useLocale();
  return <span className="figure">{moneyText(amountMinor, locale, currency ?? locale.currency)}</span>;
}

/** A price each, in 1/10 000 of a minor unit. */
export function UnitPrice({ priceE4, currency }: { readonly priceE4: number; readonly currency?: string }) {
  const locale = useLocale();
  return <span className="figure">{unitPriceText(priceE4, locale, currency ?? locale.currency)}</span>;
}

/** A quantity in thousandths of its unit. */
export function Quantity({ quantityMilli, unit = 'each' }: { readonly quantityMilli: number; readonly unit?: string }) {
  return <span className="figure">{quantityText(quantityMilli, useLocale(), unit)}</span>;
}

/** A calendar date; `dateTime` keeps the machine's form for whoever copies or reads it aloud. */
export function DateText({ date }: { readonly date: string }) {
  return (
    <time className="figure" dateTime={date}>
      {dateText(date, useLocale())}
    </time>
  );
}
