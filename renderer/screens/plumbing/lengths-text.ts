import type { LocaleSettings } from '../../parts/locale.tsx';

const inMm = 25.4;
const figure = (value: number, language: string, digits: number): string =>
  new Intl.NumberFormat(language, { maximumFractionDigits: digits }).format(value);

/** A length in mm; readers of inches get them beside it, for the hose is measured with what is at hand. */
export function lengthText(mm: number, { language, units }: Pick<LocaleSettings, 'language' | 'units'>): string {
  const inches = units === 'inch' ? ` (${figure(mm / inMm, language, 2)} in)` : '';
  return `${figure(mm, language, 1)} mm${inches}`;
}

/** The cut and how far it may be off. */
export function cutText(
  { cutMm, toleranceMm }: { readonly cutMm: number | null; readonly toleranceMm: number | null },
  locale: Pick<LocaleSettings, 'language' | 'units'>,
): string {
  if (cutMm === null) return 'not known yet';
  return toleranceMm === null
    ? lengthText(cutMm, locale)
    : `${lengthText(cutMm, locale)} ± ${figure(toleranceMm, locale.language, 1)} mm`;
}
