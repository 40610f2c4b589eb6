import { describe, expect, it } from 'vitest';
import { formatPort } from '../../../core/fit/format.ts';
import { parsePort } from '../../../core/fit/parse.ts';
import { accepted, refused } from './parse-examples.ts';

/** `R 1/8 series, female (Rc)` and the like are the canonical form with words for the reader; these are the forms alone. */
const plainForms: Readonly<Record<string, string>> = {
  'R 1/8 series, female (Rc)': 'Rc 1/8 female',
};

/** The words in brackets that are part of the form itself: the thread of a dash size. */
const form = (canonical: string): string =>
  plainForms[canonical] ?? canonical.replace(/ \+ .*$/, '').replace(/ \((?![\d#]).*\)$/, '');

// Source of every row: rules of this program; sizes from the thread tables (ISO 261, ASME B1.1, B1.20.1, ISO 7-1, 228-1,
// SAE J514, J512, J1926, J1453).
describe('a designation as people write it', () => {
  it.each(accepted)('%s with %j is %s', (typed, context, canonical, message) => {
    const read = parsePort(typed, context);
    if (!read.ok) throw new Error(read.message);
    expect(read.canonical).toBe(form(canonical));
    expect(read.typed).toBe(typed);
    if (message !== '') expect(read.warnings).toEqual([message]);
    const words = / \((?![\d#])(.*)\)$/.exec(canonical)?.[1];
    if (words !== undefined && plainForms[canonical] === undefined) expect(read.notes.join()).toContain(words);
    const again = parsePort(read.canonical);
    expect(again).toMatchObject({ ok: true, port: read.port, canonical: read.canonical });
    expect(formatPort(read.port)).toBe(read.canonical);
  });

  it.each(refused)('%s with %j is refused: %s', (typed, context, message) => {
    const read = parsePort(typed, context);
    if (read.ok) throw new Error(read.canonical);
    expect(read.message).toContain(message);
    expect(read.write.length).toBeGreaterThan(0);
    // Each way to write it that is offered can itself be read.
    for (const way of read.write) expect([way, parsePort(way).ok]).toEqual([way, true]);
  });

  // Rules of this program: other ways in which people write the same.
  it.each([
    ['M14x1.5 (m)', 'M14x1.5 male'],
    ['m14x1.5 6H f', 'M14x1.5 female'],
    ['3/4" 16 UNF', '3/4-16 UNF'],
    ['9/16 - 18', '9/16-18 UNF'],
    ['7/16-20 unjf-3a male', '7/16-20 UNF male'],
    ['female JIC -6', 'JIC -6 (9/16-18) female'],
    ['JIC 8', 'JIC -8 (3/4-16)'],
    ['37 degree flare -6', 'JIC -6 (9/16-18)'],
    ['45 flare 3/8', 'SAE45 -6 (5/8-18)'],
    ['-8 ORB', 'ORB -8 (3/4-16)'],
    ['JIC −6', 'JIC -6 (9/16-18)'],
    ['hose 1 1/2 in', 'hose 38.1 mm'],
    ['3/8 hose', 'hose 9.5 mm'],
    ['8 mm hose', 'hose 8 mm'],
    ['1/8 inch npt', '1/8-27 NPT'],
    ['AN-3 bolt', '#10-32 UNF'],
    ['QC 3/8 male', 'QC 9.49 male'],
    ['ISO6149 M14', 'ISO6149 M14x1.5'],
  ])('%s is %s', (typed, canonical) => {
    expect(parsePort(typed)).toMatchObject({ ok: true, canonical });
  });

  // None of these may be read as something near: glued letters, slips of the pen, left-hand and other kinds.
  it.each([
    'm14x1.5f',
    'M14x1.56g',
    '7/16-202a',
    '14x1.5',
    'hose 3/8 mm',
    'hose 2',
    'slip 63.5',
    'M14x1.5 male female',
    'M14x1.5 lh',
    '24° cone 12L',
    'M1,000.5x2',
    '1-1/4 NPT',
    'Rc 1/4 male',
    'banjo M10x1 female',
    'M14x0',
    'M0',
    '1/0 UNF',
    '',
    'x'.repeat(200),
  ])('%s is refused', (typed) => {
    expect(parsePort(typed).ok).toBe(false);
  });
});
