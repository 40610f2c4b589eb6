import type { ImportedPart, PlannedRow } from '../exchange/import-types.ts';
import type { NewPart } from './part-writing.ts';

type Texts = Pick<ImportedPart, 'description' | 'note' | 'facts'> &
  Partial<Record<'partNumber' | 'maker' | 'link', string | undefined>>;

/** Texts within the length that a part line's form takes; what is longer stands in full in the note. */
export function fittingTexts(
  given: Texts,
): Pick<NewPart, 'partNumber' | 'maker' | 'link' | 'note' | 'facts'> & { readonly description: string } {
  const kept: string[] = given.note === '' ? [] : [given.note];
  const shorten = (text: string | undefined, most: number, name: string): string => {
    if (text === undefined || text.length <= most) return text ?? '';
    kept.push(`${name}: ${text}`);
    return text.slice(0, most).trim();
  };
  const facts = given.facts.map(({ key, value, unit }) => ({
    key: shorten(key.trim() === '' ? 'Column' : key, 80, 'Column'),
    value: shorten(value, 400, key),
    unit: unit ?? '',
  }));
  const texts = {
    description: shorten(given.description, 300, 'Description'),
    partNumber: shorten(given.partNumber, 80, 'Part number'),
    maker: shorten(given.maker, 80, 'Maker'),
    link: shorten(given.link, 600, 'Link'),
  };
  return { ...texts, facts: facts.slice(0, 200), note: kept.join('\n').slice(0, 20_000) };
}

/** Remarks that want a person's eye. */
export const remarksOf = (row: PlannedRow): string[] =>
  row.findings.filter(({ severity }) => severity === 'attention').map(({ message }) => message);

/** Remarks as one text of the length that a part line takes, each once. */
export const joined = (remarks: readonly string[]): string => [...new Set(remarks)].join(' ').slice(0, 2000);
