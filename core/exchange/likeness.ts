/** How alike two descriptions are, from 0 to 1: words in common, and runs of three letters in common. */
import { plainWords } from './clean-text.ts';

/** Part numbers are compared without capitals, blanks and punctuation: "ps 9350" is "PS-9350". */
export function plainPartNumber(text: string): string {
  return plainWords(text).replace(/[^\p{L}\p{N}]+/gu, '');
}

export interface TextShape {
  readonly words: ReadonlySet<string>;
  readonly runs: ReadonlySet<string>;
}

export function textShape(text: string): TextShape {
  const plain = plainWords(text)
    .replace(/[^\p{L}\p{N}./-]+/gu, ' ')
    .trim();
  const words = new Set(
    plain
      .split(' ')
      .map(singular)
      .filter((word) => word !== ''),
  );
  const runs = new Set<string>();
  for (const word of words) {
    const padded = ` ${word} `;
    for (let at = 0; at + 3 <= padded.length; at += 1) runs.add(padded.slice(at, at + 3));
  }
  return { words, runs };
}

function singular(word: string): string {
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}

/**
 * Twice what two sets share over the sum of their sizes (Dice's coefficient), words and three-letter runs half each.
 * Source of the coefficient: Dice 1945; the weights are ours.
 */
export function likeness(a: TextShape, b: TextShape): number {
  return 0.5 * dice(a.words, b.words) + 0.5 * dice(a.runs, b.runs);
}

function dice(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  if (a.size + b.size === 0) return 0;
  let shared = 0;
  for (const item of a) if (b.has(item)) shared += 1;
  return (2 * shared) / (a.size + b.size);
}
