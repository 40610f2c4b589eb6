/** What stands around a price in a builder's list: "~9.8" is a guess, "?" is not known yet. */

export type PriceMark = 'known' | 'guess' | 'unknown' | 'blank';

export interface PriceCell {
  readonly mark: PriceMark;
  /** The amount without its marks, for the reader of amounts. */
  readonly amount: string;
}

const unknownWords =
  /^(?:\?+|-+|—|–|n\/?a|tbd|tba|tbc|poa|unknown|ask|quote|none|unbekannt|offen|k\.?a\.?|auf anfrage|\.+)$/i;
const guessBefore = /^(?:~|≈|±|approx\.?|about|around|circa|ca\.?|est\.?|c\.(?=\s*\d)|etwa|rund|env\.?)\s*/i;

/** Takes the marks of a guess off a price; "?" and the like mean that there is no estimate. */
export function readPriceCell(text: string): PriceCell {
  const trimmed = text.replace(/[\s\u00a0\u202f]+/g, ' ').trim();
  if (trimmed === '') return { mark: 'blank', amount: '' };
  if (trimmed.length > 80) return { mark: 'known', amount: trimmed };
  if (unknownWords.test(trimmed)) return { mark: 'unknown', amount: '' };
  const bare = trimmed.replace(guessBefore, '').replace(/\s*(?:\?+|\(?est\.?\)?|ish)$/i, '');
  return bare === trimmed ? { mark: 'known', amount: trimmed } : { mark: 'guess', amount: bare };
}
