import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { cleanText } from '../../../core/exchange/clean-text.ts';
import type { ExportTable } from '../../../core/exchange/export-table.ts';
import { guardText, unguardText } from '../../../core/exchange/formula-guard.ts';
import { readTables } from '../../../core/exchange/read-tables.ts';
import { tableToCsv } from '../../../core/exchange/table-to-csv.ts';
import { tableToXlsx } from '../../../core/exchange/table-to-xlsx.ts';

const parts: ExportTable = {
  name: 'Parts: all/2026',
  columns: [
    { key: 'what', title: 'What', kind: 'text' },
    { key: 'qty', title: 'Qty', kind: 'quantity' },
    { key: 'price', title: 'Price', kind: 'money', currency: 'USD' },
    { key: 'paid', title: 'Paid', kind: 'money', currencyKey: 'code' },
    { key: 'code', title: 'Currency', kind: 'text' },
    { key: 'share', title: 'Share', kind: 'number' },
    { key: 'on', title: 'Ordered', kind: 'date' },
  ],
  rows: [
    { what: 'bolt, "long"', qty: 4000, price: 12345, paid: 500, code: 'JPY', share: 0.25, on: '2026-03-04' },
    { what: '=HYPERLINK("http://x.example")', qty: 2500, price: -5, paid: null, code: 'USD', share: '-1.5', on: null },
    { what: '-10 hose end', qty: null, price: null, paid: 1005, code: 'KWD', share: null, on: 'soon' },
  ],
};
const decode = (bytes: Uint8Array) => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);

describe('a table as separated text', () => {
  it('has quotes doubled, CRLF line ends, plain numbers and guarded text', () => {
    // Source: RFC 4180 section 2 for quotes and line ends; OWASP "CSV Injection" for the apostrophe.
    expect(decode(tableToCsv(parts, { byteMark: false }))).toBe(
      [
        'What,Qty,Price,Paid,Currency,Share,Ordered',
        '"bolt, ""long""",4,123.45,500,JPY,0.25,2026-03-04',
        '"\'=HYPERLINK(""http://x.example"")",2.5,-0.05,,USD,-1.5,',
        '"\'-10 hose end",,,1.005,KWD,,soon',
        '',
      ].join('\r\n'),
    );
  });

  it('begins with the mark of UTF-8 unless told not to', () => {
    expect([...tableToCsv(parts).subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
  });

  it('never writes a text cell that a spreadsheet could run', () => {
    const starts = ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠', ' =', "'=", '\u00a0='];
    for (const start of starts) {
      const table: ExportTable = {
        name: 'x',
        columns: [{ key: 'a', title: 'a', kind: 'text' }],
        rows: [{ a: `${start}1+1` }],
      };
      const [, row] = Papa.parse<string[]>(decode(tableToCsv(table, { byteMark: false })), { newline: '\r\n' }).data;
      expect(row?.[0]).toBe(`'${start}1+1`);
    }
  });

  it('comes back as it was: 10,000 texts', () => {
    const text = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 12 }),
      fc
        .array(fc.constantFrom('=', '+', '-', '@', "'", '"', ',', ';', '\t', '\n', '\r\n', ' ', 'a', '1', '＝'), {
          maxLength: 8,
        })
        .map((all) => all.join('')),
    );
    fc.assert(
      fc.property(text, (original) => {
        expect(unguardText(guardText(original))).toBe(original);
      }),
      { numRuns: 10_000 },
    );
    const texts = fc.sample(text, { numRuns: 10_000, seed: 1 });
    const table: ExportTable = {
      name: 'x',
      columns: [
        { key: 'n', title: 'n', kind: 'number' },
        { key: 'a', title: 'a', kind: 'text' },
      ],
      rows: texts.map((a, n) => ({ n, a })),
    };
    const { data } = Papa.parse<string[]>(decode(tableToCsv(table, { byteMark: false })), { newline: '\r\n' });
    texts.forEach((original, index) => {
      expect(unguardText(data[index + 1]?.[1] ?? '')).toBe(original);
    });
  });

  it('is read back by our own import with its values', async () => {
    const read = await readTables(tableToCsv(parts), 'parts.csv');
    expect(read.tables[0]?.rows[1]?.cells).toEqual(['bolt, "long"', '4', '123.45', '500', 'JPY', '0.25', '2026-03-04']);
  });

  it('takes no value from an object’s own machinery', () => {
    const table: ExportTable = { name: 'x', columns: [{ key: 'constructor', title: 'c', kind: 'text' }], rows: [{}] };
    expect(decode(tableToCsv(table, { byteMark: false }))).toBe('c\r\n\r\n');
  });
});

describe('a table as a workbook', () => {
  it('keeps numbers as numbers, dates as dates and text as text', async () => {
    const bytes = await tableToXlsx([parts, { ...parts, rows: [] }]);
    const read = await readTables(bytes, 'parts.xlsx');
    const [table, empty] = read.tables;
    expect(table?.name).toBe('Parts  all 2026');
    expect(empty?.name).toBe('Parts  all 2026 2');
    expect(table?.rows.map((row) => row.cells)).toEqual([
      ['What', 'Qty', 'Price', 'Paid', 'Currency', 'Share', 'Ordered'],
      ['bolt, "long"', '4', '123.45', '500', 'JPY', '0.25', '2026-03-04'],
      ['=HYPERLINK("http://x.example")', '2.5', '-0.05', '', 'USD', '-1.5', ''],
      ['-10 hose end', '', '', '1.005', 'KWD', '', 'soon'],
    ]);
    expect(table?.rows[1]?.kinds).toEqual(['text', 'number', 'number', 'number', 'text', 'number', 'date']);
    expect(table?.rows[2]?.kinds?.[0]).toBe('text');
    // No remark about formulas: none were written.
    expect(table?.findings).toEqual([]);
  });

  it('keeps a number with more than 15 digits exact, as text', async () => {
    const table: ExportTable = {
      name: 'x',
      columns: [{ key: 'a', title: 'a', kind: 'money', currency: 'USD' }],
      rows: [{ a: 9007199254740991 }, { a: 1 }],
    };
    const [read] = (await readTables(await tableToXlsx(table), 'x')).tables;
    expect(read?.rows[1]?.cells).toEqual(['90071992547409.91']);
  });

  it('takes any text', async () => {
    const awkward = [
      'toString',
      '__proto__',
      'constructor',
      '_x0041_',
      '_x005F_x0041_',
      '</t>',
      ']]>',
      '&amp;',
      ' two  blanks',
    ];
    const texts = [...awkward, ...fc.sample(fc.string({ unit: 'binary', maxLength: 20 }), { numRuns: 300, seed: 7 })];
    const table: ExportTable = {
      name: '[]:*?/\\',
      columns: [
        { key: 'n', title: 'n', kind: 'number' },
        { key: 'a', title: 'a', kind: 'text' },
      ],
      rows: texts.map((a, n) => ({ n, a })),
    };
    const [read] = (await readTables(await tableToXlsx(table), 'x')).tables;
    texts.forEach((text, index) => {
      expect(read?.rows[index + 1]?.cells[1]?.replace(/\r\n?/g, '\n')).toBe(cleanText(text).replaceAll('\ufffd', ''));
    });
  });
});
