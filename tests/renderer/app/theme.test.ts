import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { seriesColour, seriesDash } from '../../../renderer/app/theme.ts';

const sheet = readFileSync(path.join(import.meta.dirname, '../../../renderer/app/theme.css'), 'utf8');

/** Every colour of the sheet by its name: [day, night]. */
const colours = new Map<string, readonly [string, string]>();
for (const [, name = '', day = '', night = ''] of sheet.matchAll(/--([\w-]+): light-dark\((#\w{6}), (#\w{6})\)/g)) {
  colours.set(name, [day, night]);
}

const channel = (byte: number): number => {
  const share = byte / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};

/** Relative luminance. Source: WCAG 2.2, definition of relative luminance (with its note's threshold 0.04045). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => channel(Number.parseInt(hex.slice(at, at + 2), 16)));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours. Source: WCAG 2.2, definition of contrast ratio. */
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

function contrastOf(front: string, back: string, theme: 0 | 1): number {
  const pair = [colours.get(front)?.[theme], colours.get(back)?.[theme]];
  if (pair[0] === undefined || pair[1] === undefined) throw new Error(`no colour ${front} or ${back}`);
  return contrast(pair[0], pair[1]);
}

it('reckons contrast as WCAG defines it: black on white is 21, equal colours are 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#777777', '#777777')).toBe(1);
});

const papers = ['paper', 'paper-raised', 'paper-sunk'] as const;
const textPairs: readonly (readonly [string, string])[] = [
  ...['ink', 'ink-soft', 'link', 'blocks', 'good', 'warn'].flatMap((front) =>
    papers.map((back) => [front, back] as const),
  ),
  ...['ink', 'ink-soft', 'link', 'blocks'].map((front) => [front, 'link-soft'] as const),
  ['blocks', 'blocks-soft'],
  ['ink', 'warn-soft'],
  ['link', 'warn-soft'],
  ['on-link', 'link'],
  ['on-blocks', 'blocks'],
];

describe.each([
  [0, 'day'],
  [1, 'night'],
] as const)('theme %i (%s)', (theme, _name) => {
  it.each(textPairs)('writes %s on %s with 4.5:1 or more (WCAG 2.2, 1.4.3)', (front, back) => {
    expect(contrastOf(front, back, theme)).toBeGreaterThanOrEqual(4.5);
  });

  it('writes body text at 7:1 or more (WCAG 2.2, 1.4.6)', () => {
    for (const back of papers) expect(contrastOf('ink', back, theme)).toBeGreaterThanOrEqual(7);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8].map((number) => [`chart-${number}`]))(
    'draws %s on paper with 3:1 or more (WCAG 2.2, 1.4.11)',
    (front) => {
      expect(contrastOf(front, 'paper', theme)).toBeGreaterThanOrEqual(3);
    },
  );

  it.each(papers)('draws the edges of fields on %s with 3:1 or more (WCAG 2.2, 1.4.11)', (back) => {
    expect(contrastOf('line-strong', back, theme)).toBeGreaterThanOrEqual(3);
  });
});

describe('colours of charted things', () => {
  it('gives the same name the same colour and dash, however it is written', () => {
    expect(seriesColour('Committed')).toBe(seriesColour(' committed '));
    expect(seriesColour('Oil and cooling')).toBe(seriesColour('oil and cooling'));
    expect(seriesDash('paid')).toBe('');
  });

  it('tells apart the things that stand in one chart', () => {
    for (const together of [
      ['paid', 'committed', 'planned', 'estimate at completion'],
      ['received', 'fitted', 'planned'],
      ['planned', 'earned', 'spent'],
      ['planned', 'earned', 'worked'],
    ]) {
      expect(new Set(together.map(seriesColour)).size).toBe(together.length);
      expect(new Set(together.map(seriesDash)).size).toBe(together.length);
    }
  });

  it('names a colour of the sheet for any text', () => {
    for (const name of ['', 'Turbo and exhaust', 'Ölkreis', '🔧']) {
      expect(colours.has(seriesColour(name).slice('var(--'.length, -1))).toBe(true);
    }
  });
});
