/** Text as searches compare it: no accents, lower case, single blanks. "Krümmer  M12×1,5" → "krummer m12x1,5". */
export function foldText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/[×✕]/g, 'x')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}
