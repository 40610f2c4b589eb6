/** Widths of text, and text broken into lines. The drawing gives every word its room before anything is laid out. */

/** Width in px of a text set in one line, at a size in px. */
export type Measure = (text: string, size: number, bold: boolean) => number;

const narrow = /[iljtfr.,:;'’“”|!()\- ]/;
const wide = /[mwMW%@]/;

/** About the widths of the program's letters, a little on the safe side; for where nothing can measure. */
export const guessWidth: Measure = (text, size, bold) => {
  let ems = 0;
  for (const letter of text)
    ems += narrow.test(letter) ? 0.36 : wide.test(letter) ? 0.92 : /[A-Z]/.test(letter) ? 0.7 : 0.6;
  return ems * size * (bold ? 1.06 : 1);
};

/** Measures with the letters that the window has loaded. */
export function measureIn(page: Document): Measure {
  const pen = page.createElement('canvas').getContext?.('2d') ?? null;
  if (pen === null) return guessWidth;
  const family = getComputedStyle(page.body).fontFamily;
  return (text, size, bold) => {
    pen.font = `${bold ? 620 : 400} ${size}px ${family}`;
    return pen.measureText(text).width;
  };
}

/** One word too long for a line, in pieces that fit. */
function pieces(word: string, fits: (text: string) => boolean): string[] {
  const list: string[] = [];
  let rest = '';
  for (const letter of word) {
    if (rest !== '' && !fits(rest + letter)) {
      list.push(rest);
      rest = '';
    }
    rest += letter;
  }
  return [...list, rest];
}

/** The text in lines no wider than `most` px, broken between words where that is possible. */
export function wrapText(text: string, most: number, width: (text: string) => number): readonly string[] {
  const fits = (one: string): boolean => width(one) <= most;
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && fits(`${last} ${word}`)) lines[lines.length - 1] = `${last} ${word}`;
    else if (fits(word)) lines.push(word);
    else lines.push(...pieces(word, fits));
  }
  return lines;
}
