import type { CheckRow } from '../../../core/contract/checks.ts';
import type { CheckLimit, CheckSource } from '../../../core/contract/records.ts';

/** A figure to five places with its unit; a plain ratio has none. */
export function figureText(value: number, unit: string, language: string): string {
  const figure = new Intl.NumberFormat(language, { maximumSignificantDigits: 5 }).format(value);
  return unit === '' || unit === '-' ? figure : `${figure} ${unit}`;
}

/** The limit in words: “at least 20 %”, “8.5 to 10.5”. */
export function limitText({ least, most, unit }: CheckLimit, language: string): string {
  if (least !== null && most !== null) {
    return `${figureText(least, '', language)} to ${figureText(most, unit, language)}`;
  }
  if (least !== null) return `at least ${figureText(least, unit, language)}`;
  if (most !== null) return `at most ${figureText(most, unit, language)}`;
  return 'not known';
}

/** Room to the nearest limit; a failing one says how far it is beyond. */
export function roomText({ margin, limit, verdict }: CheckRow, language: string): string {
  if (margin === null) return 'not known';
  const room = figureText(Math.abs(margin), limit.unit, language);
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

/** The calculator's address with the inputs of the check filled in as they were used. */
export function calculatorParams({ calculator, inputs }: CheckRow): Record<string, string> {
  const params: Record<string, string> = { id: calculator };
  for (const { name, value, unit } of inputs) {
    if (value === null) continue;
    params[`i.${name}`] = value;
    if (unit !== '') params[`u.${name}`] = unit;
  }
  return params;
}
