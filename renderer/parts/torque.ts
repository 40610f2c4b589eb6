import { roundHalfAway } from '../../core/money/currency.ts';
import { Refusal } from '../../core/refusal.ts';
import type { LocaleSettings } from './locale.tsx';

/**
 * One pound-force foot in newton metres × 10¹⁶, exact: 0.3048 m (international foot) × 4.4482216152605 N (pound-force).
 * Source: NIST Special Publication 811 (2008), appendix B.
 */
const poundFootE16 = 13_558_179_483_314_004n;
const e16 = 10n ** 16n;

/** Most that the workbook keeps: 5000 N·m, in thousandths. */
export const maximumTorqueMilliNm = 5_000_000;

/** Thousandths of a pound-force foot as thousandths of a newton metre, to the nearest. */
export const milliNmOfMilliPoundFeet = (milliPoundFeet: number): number =>
  Number(roundHalfAway(BigInt(milliPoundFeet) * poundFootE16, e16));

/** Thousandths of a newton metre as hundredths of a pound-force foot, to the nearest: what was typed comes back. */
const centiPoundFeet = (torqueMilliNm: number): number =>
  Number(roundHalfAway(BigInt(torqueMilliNm) * e16, poundFootE16 * 10n));

const trimmed = (whole: number, places: number): string => {
  const digits = String(whole).padStart(places + 1, '0');
  const decimals = digits.slice(digits.length - places).replace(/0+$/, '');
  const before = digits.slice(0, digits.length - places);
  return decimals === '' ? before : `${before}.${decimals}`;
};

export const torqueUnit = (units: LocaleSettings['units']): string => (units === 'inch' ? 'lb·ft' : 'N·m');

/** A torque as plain decimal text in the reader's unit, without the unit. */
export const plainTorque = (torqueMilliNm: number, units: LocaleSettings['units']): string =>
  units === 'inch' ? trimmed(centiPoundFeet(torqueMilliNm), 2) : trimmed(torqueMilliNm, 3);

/** A torque as the reader writes it: "88 N·m" or "65 lb·ft". */
export const torqueText = (torqueMilliNm: number, units: LocaleSettings['units']): string =>
  `${plainTorque(torqueMilliNm, units)} ${torqueUnit(units)}`;

/**
 * Reads a torque typed in the reader's unit.
 * @returns thousandths of a newton metre, above 0 and up to 5000 N·m.
 * @throws Refusal `bad-input` naming the field and what it accepts.
 */
export function parseTorque(text: string, units: LocaleSettings['units'], field = 'torqueMilliNm'): number {
  const found = /^(\d{1,4})(?:[.,](\d{1,3}))?$/.exec(text.trim());
  const typed = Number(found?.[1] ?? 0) * 1000 + Number((found?.[2] ?? '').padEnd(3, '0'));
  const torque = units === 'inch' ? milliNmOfMilliPoundFeet(typed) : typed;
  if (torque > 0 && torque <= maximumTorqueMilliNm) return torque;
  throw new Refusal('bad-input', `The torque “${text.trim()}” can't be taken. Nothing was changed.`, {
    field,
    accepted:
      units === 'inch'
        ? 'pound-force feet above 0 and up to 3687, such as 65 or 9.5'
        : 'newton metres above 0 and up to 5000, such as 88 or 12.5',
  });
}
