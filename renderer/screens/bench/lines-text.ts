import { Refusal } from '../../../core/refusal.ts';

/** Names typed one a line, empty lines left out. */
export const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** A number as people type it, or null for nothing. @throws Refusal naming the field. */
export function readNumber(text: string, name: string, negative = false): number {
  const value = Number(text.trim().replace(',', '.'));
  if (text.trim() !== '' && Number.isFinite(value) && (negative || value >= 0)) return value;
  throw new Refusal('bad-input', `“${text.trim()}” can't be taken. Nothing was changed.`, {
    field: name,
    accepted: negative ? 'a number such as 0.04 or -0.5' : 'a number of zero or more, such as 0.04',
  });
}

/** A whole number from 1 to `most`. @throws Refusal naming the field. */
export function readWhole(text: string, name: string, most: number): number {
  const value = /^\d{1,6}$/.test(text.trim()) ? Number(text.trim()) : 0;
  if (value >= 1 && value <= most) return value;
  throw new Refusal('bad-input', `“${text.trim()}” can't be taken. Nothing was changed.`, {
    field: name,
    accepted: `a whole number from 1 to ${most}`,
  });
}

/** Whole numbers between commas or blanks: "1, 3, 2". @throws Refusal naming the field. */
export function readNumbers(text: string, name: string): number[] {
  const pieces = text.split(/[\s,;]+/).filter((piece) => piece !== '');
  if (pieces.every((piece) => /^\d{1,4}$/.test(piece))) return pieces.map(Number);
  throw new Refusal('bad-input', `“${text.trim()}” can't be taken. Nothing was changed.`, {
    field: name,
    accepted: 'bolt numbers with commas between, such as 1, 3, 2, 4',
  });
}
