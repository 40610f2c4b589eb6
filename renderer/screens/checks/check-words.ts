import { findCalculator } from '../../../core/calculators/index.ts';
import type { CheckRow } from '../../../core/contract/checks.ts';
import type { CheckLimit, CheckSource } from '../../../core/contract/records.ts';
import { unitLabel } from '../../../core/units/measure.ts';

/** A figure to four places with its unit as it is written; a plain ratio has none. */
function figureText(value: number, unit: string, language: string, places = 4): string {
  const figure = new Intl.NumberFormat(language, { maximumSignificantDigits: places }).format(value);
  return unit === '' || unit === '-' ? figure : `${figure} ${unit}`;
}

type Output = Pick<CheckRow, 'calculator' | 'output'>;

const dimensionOf = ({ calculator, output }: Output) => {
  const declared = findCalculator(calculator)?.outputs[output];
  return declared !== undefined && 'unit' in declared ? declared.dimension : undefined;
};

/** “°C” for degC, and so on. */
function written(unit: string, of: Output): string {
  const dimension = dimensionOf(of);
  return dimension === undefined ? unit : unitLabel(unit, dimension);
}

/** The figure of a check, or that there is none. */
export const valueText = (row: CheckRow, language: string): string =>
  row.value === null ? 'not known' : figureText(row.value, written(row.unit, row), language);

/** The limit in words: “at least 20 %”, “8.5 to 10.5”. */
export function limitText(row: Output & { readonly limit: CheckLimit }, language: string): string {
  const { least, most } = row.limit;
  const unit = written(row.limit.unit, row);
  if (least !== null && most !== null) {
    return `${figureText(least, '', language)} to ${figureText(most, unit, language)}`;
  }
  if (least !== null) return `at least ${figureText(least, unit, language)}`;
  if (most !== null) return `at most ${figureText(most, unit, language)}`;
  return 'not known';
}

/** Room to the nearest limit; a failing one says how far it is beyond. */
export function roomText(row: CheckRow, language: string): string {
  const { margin, limit, verdict } = row;
  if (margin === null) return 'not known';
  // A difference of temperatures is no temperature: 5 K, never 5 °C.
  const kelvins = dimensionOf(row) === 'temperature' && limit.unit !== 'degF';
  const room = figureText(Math.abs(margin), kelvins ? 'K' : written(limit.unit, row), language, 3);
  return verdict === 'fails' ? `${room} beyond` : room;
}

/** Where an input comes from, in a few words. */
export function sourceText(source: CheckSource): string {
  switch (source.from) {
    case 'fact':
      return source.part === null ? `${source.fact} of the ${source.partKind}` : `${source.fact} of a part line`;
    case 'target':
      return `target sheet: ${source.target}`;
    case 'measurement':
      return `measuring sheet, ${source.figure}`;
    case 'typed':
      return source.source === '' ? 'typed here' : `typed here; ${source.source}`;
  }
}

/** What blocks at the hoist check about it; null where nothing does. */
export function blockerKindOf({ verdict, beforeGate }: CheckRow): 'check failing' | 'check unknown' | null {
  if (!beforeGate) return null;
  if (verdict === 'fails') return 'check failing';
  return verdict === 'lacks data' ? 'check unknown' : null;
}

/** The value that went in, with its unit where the text doesn't say it already. */
export const inputText = ({ value, unit }: CheckRow['inputs'][number]): string =>
  value === null ? 'lacking' : unit === '' || unit === '-' || /[^\d\s.,;+/-]/.test(value) ? value : `${value} ${unit}`;

/** The calculator's address with the inputs of the check filled in as they were used. */
export function calculatorParams({ calculator, inputs }: CheckRow): Record<string, string> {
  const params: Record<string, string> = { id: calculator };
  for (const { name, value, unit } of inputs) {
    if (value === null) continue;
    // Groups of thousands are for reading; typed, a comma could be a decimal mark.
    params[`i.${name}`] = value.replace(/,(?=\d{3}(\D|$))/g, '');
    if (unit !== '' && unit !== '-') params[`u.${name}`] = unit;
  }
  return params;
}
