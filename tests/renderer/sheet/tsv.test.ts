import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTsv, toTsv } from '../../../renderer/parts/sheet/tsv.ts';

describe('reading what a spreadsheet copies', () => {
  it('reads lines and tabs, with a line end after the last line or without', () => {
    expect(parseTsv('a\tb\r\nc\t\r\n')).toEqual([
      ['a', 'b'],
      ['c', ''],
    ]);
    expect(parseTsv('a\tb\nc\td')).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    expect(parseTsv('')).toEqual([['']]);
  });
  // RFC 4180 section 2, rules 5 to 7, with a tab in the comma's place.
  it('reads quoted cells with tabs, line ends and doubled quotes', () => {
    expect(parseTsv('"a\tb"\t"c\nd"\t"say ""so"""')).toEqual([['a\tb', 'c\nd', 'say "so"']]);
  });
  it('leaves inch marks and unclosed quotes as typed', () => {
    expect(parseTsv('5" pipe\t"half\n"3/8" rod')).toEqual([['5" pipe', '"half'], ['"3/8" rod']]);
  });
});

describe('writing', () => {
  // Characters that start a formula: OWASP's page on CSV injection, CWE-1236.
  it('marks text that a spreadsheet would run', () => {
    expect(toTsv([['=1+1', '+A1', '-A1', '@x', '＝1']])).toBe("'=1+1\t'+A1\t'-A1\t'@x\t'＝1");
  });
  it('leaves signed figures alone', () => expect(toTsv([['-12.50', '+3']])).toBe('-12.50\t+3'));
  it('puts no line end after a single cell', () => expect(toTsv([['Hose']])).toBe('Hose'));
  it('is read back exactly, whatever the text', () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom("'", '"', '=', '-', '\t', '\n', '\r', '1', 'a') }),
    );
    const cells = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.array(fc.array(text, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }),
      );
    fc.assert(
      fc.property(cells, (lines) => {
        expect(parseTsv(toTsv(lines))).toEqual(lines);
      }),
      { numRuns: 500 },
    );
  });
});
