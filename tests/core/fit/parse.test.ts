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
});
