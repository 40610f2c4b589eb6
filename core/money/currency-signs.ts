/**
 * What people write beside an amount to say which money it is. Some signs stand for one currency, some for several:
 * a dollar sign alone names none. The list of signs is common practice (no published source); codes are ISO 4217.
 */
import { isCurrency } from './currency.ts';

const codesBySign = new Map<string, readonly string[]>(
  (
    [
      ['$', 'USD CAD AUD NZD SGD HKD MXN TWD CLP COP ARS BZD BMD BBD BND BSD FJD GYD JMD KYD LRD NAD SBD SRD TTD XCD'],
      ['us$', 'USD'],
      ['c$', 'CAD'],
      ['ca$', 'CAD'],
      ['a$', 'AUD'],
      ['au$', 'AUD'],
      ['nz$', 'NZD'],
      ['r$', 'BRL'],
      ['€', 'EUR'],
      ['£', 'GBP GIP FKP SHP'],
      ['¥', 'JPY CNY'],
      ['￥', 'JPY CNY'],
      ['kr', 'SEK NOK DKK ISK'],
      ['kr.', 'DKK SEK NOK ISK'],
      ['₹', 'INR'],
      ['zł', 'PLN'],
      ['kč', 'CZK'],
      ['ft', 'HUF'],
      ['fr', 'CHF'],
      ['fr.', 'CHF'],
      ['sfr.', 'CHF'],
      ['lei', 'RON'],
      ['лв', 'BGN'],
      ['лв.', 'BGN'],
      ['₺', 'TRY'],
      ['₩', 'KRW'],
      ['₴', 'UAH'],
      ['₪', 'ILS'],
      ['฿', 'THB'],
      ['₫', 'VND'],
      ['r', 'ZAR'],
      ['euro', 'EUR'],
      ['eur.', 'EUR'],
    ] as const
  ).map(([sign, codes]) => [sign, codes.split(' ')] as const),
);

/** The currencies a sign or code can stand for, the commonest first; empty when it is neither. Capitals don't matter. */
function currenciesOfSign(sign: string): readonly string[] {
  const known = codesBySign.get(sign.toLowerCase());
  if (known !== undefined) return known;
  const code = sign.toUpperCase();
  return /^[A-Za-z]{3}$/.test(sign) && isCurrency(code) ? [code] : [];
}

/**
 * Takes a currency sign or code off one end of an amount.
 * @returns the rest, and the currencies the sign can stand for (null: there was none; empty: not a sign we know).
 */
export function splitSign(text: string): { readonly rest: string; readonly currencies: readonly string[] | null } {
  const before = /^([^\d\s.,'’()+\-−]+\.?)\s*(?=[\d.,'(+\-−])/u.exec(text);
  if (before?.[1] !== undefined) {
    return { rest: text.slice(before[0].length), currencies: currenciesOfSign(before[1]) };
  }
  const after = /(?<=[\d.,\-−)])\s*([^\d\s.,'’()+\-−]+\.?)$/u.exec(text);
  if (after?.[1] !== undefined) {
    return { rest: text.slice(0, after.index), currencies: currenciesOfSign(after[1]) };
  }
  return { rest: text, currencies: null };
}
