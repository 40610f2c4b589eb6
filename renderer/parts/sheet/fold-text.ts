/** Beyond plain ASCII there may be marks to take off; most part names don't need the slow road. */
const beyondAscii = /[^\p{ASCII}]/u;
const marks = /\p{M}/gu;
const digit = /\d/;
const numberInText = /(\d+)([.,]\d+)?/g;

/**
 * Lower case without diacritics, for comparing what people type: "Kühler" and "KUHLER" fold alike.
 * Letters that carry no separable mark (ø, ł, ß) stay as they are.
 */
export function foldText(text: string): string {
  return beyondAscii.test(text) ? text.normalize('NFKD').replace(marks, '').toLowerCase() : text.toLowerCase();
}

/** The folded words of a search line; all of them have to be found. */
export function searchWords(search: string): string[] {
  return foldText(search)
    .split(/\s+/)
    .filter((word) => word !== '');
}

/**
 * A key whose plain comparison puts M8 before M10 and 1.25 before 1.5: whole numbers padded, fractions left as digits.
 * Numbers longer than twelve digits compare as text.
 */
export function naturalKey(text: string): string {
  const folded = foldText(text);
  if (!digit.test(folded)) return folded;
  return folded.replace(numberInText, (_, whole: string, fraction: string | undefined) =>
    fraction === undefined ? whole.padStart(12, '0') : whole.padStart(12, '0') + fraction,
  );
}
