import { createHash } from 'node:crypto';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readTables } from '../../../core/exchange/read-tables.ts';
import { Refusal } from '../../../core/refusal.ts';
import { sampleBytes, tableOf } from './samples.ts';

const cells = async (text: string) => (await tableOf(text)).rows.map((row) => row.cells);
const refusal = async (bytes: Uint8Array): Promise<Refusal> => {
  try {
    await readTables(bytes, 'list.bin');
  } catch (error) {
    expect(error).toBeInstanceOf(Refusal);
    const found = error as Refusal;
    expect(found.code).toBe('file-unreadable');
    expect(found.field).toBe('file');
    expect(found.accepted).toContain('CSV');
    expect(found.message).toMatch(/“list.bin” can't be read as a list: .* Nothing was changed\.$/s);
    return found;
  }
  throw new Error('was read');
};

describe('separated text', () => {
  // Source: RFC 4180 section 2, definitions 1 to 7.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b""bb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b"bb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
  ])('is read as RFC 4180 says: %j', async (text, expected) => {
    expect(await cells(text)).toEqual(expected);
  });

  it('takes any mixture of line ends, blank rows included', async () => {
    expect(await cells('a,b\r\n\r\nc,d\ne,f\rg,h')).toEqual([['a', 'b'], [''], ['c', 'd'], ['e', 'f'], ['g', 'h']]);
  });

  it('keeps inch marks inside a field', async () => {
    expect(await cells('item,qty\nhose 3/4" long,2\n')).toEqual([
      ['item', 'qty'],
      ['hose 3/4" long', '2'],
    ]);
  });

  it.each([
    ['a;b\n1,50;2\n3,75;4\n', ';'],
    ['a\tb\n1,2\t3\n', '\t'],
    ['part,note\nx,"one; two; three; four"\n', ','],
  ])('finds the separator of %j', async (text, separator) => {
    expect((await readTables(new TextEncoder().encode(text), 'x.txt')).separator).toBe(separator);
  });

  it('refuses a quote that is never closed, and names its row', async () => {
    const found = await refusal(new TextEncoder().encode('a,b\n1,2\n3,"4\n5,6\n'));
    expect(found.message).toContain('row 3');
  });

  it('keeps ragged rows, repeated and blank headings apart', async () => {
    const table = await tableOf('part,qty,qty,\nbolt,1\nnut,1,2,3,4\n');
    expect(table.columns.map((column) => column.title)).toEqual(['part', 'qty', 'qty (C)', 'Column D', 'Column E']);
    expect(table.rows.map((row) => row.cells.length)).toEqual([4, 2, 5]);
  });

  it('treats the names of an object’s machinery as text', async () => {
    const table = await tableOf('part,__proto__,constructor\nbolt,polluted,x\n');
    expect(table.columns.map((column) => column.title)).toContain('__proto__');
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('finds headings below a title and an address', async () => {
    const table = await tableOf('Parts for the truck,,\nupdated often,,\n,,\nPart,Qty,Price\nbolt,1,2\n');
    expect(table.headerRow).toBe(4);
  });
});

describe('letters', () => {
  const text = 'Teil,Menge\nKühler,1\n';
  const utf16 = (big: boolean, mark: boolean) => {
    const bytes = Buffer.from(`${mark ? '\ufeff' : ''}${text}`, 'utf16le');
    return big ? bytes.swap16() : bytes;
  };
  it.each([
    ['UTF-8', Buffer.from(text), 'utf-8'],
    ['UTF-8 with a mark', Buffer.from(`\ufeff${text}`), 'utf-8'],
    ['UTF-16, low byte first', utf16(false, true), 'utf-16le'],
    ['UTF-16, high byte first', utf16(true, true), 'utf-16be'],
    ['UTF-16 without a mark', utf16(false, false), 'utf-16le'],
  ])('are certain in %s', async (_name, bytes, encoding) => {
    const read = await readTables(bytes, 'x.csv');
    expect(read.encoding).toEqual({ used: encoding, certain: true });
    expect(read.tables[0]?.rows.map((row) => row.cells)).toEqual([
      ['Teil', 'Menge'],
      ['Kühler', '1'],
    ]);
  });

  it('are asked about in an old code page, with a line to look at', async () => {
    // Windows-1252: 0x80 is the euro sign, 0xFC is ü (Unicode consortium's mapping table).
    const bytes = Uint8Array.from([...strToU8('a,b\n'), 0x80, 0x2c, 0xfc, 0x0a]);
    const read = await readTables(bytes, 'x.csv');
    expect(read.encoding).toEqual({ used: 'windows-1252', certain: false });
    expect(read.tables[0]?.rows[1]?.cells).toEqual(['€', 'ü']);
    const [question] = read.tables[0]?.questions ?? [];
    expect(question).toMatchObject({ id: 'encoding', blocking: true, answer: null, rowsConcerned: [2] });
    expect(question?.choices.find((choice) => choice.value === 'windows-1252')?.preview).toBe('€,ü');
    const cyrillic = await readTables(bytes, 'x.csv', { encoding: 'windows-1251' });
    expect(cyrillic.tables[0]?.rows[1]?.cells).toEqual(['Ђ', 'ь']);
    expect(cyrillic.tables[0]?.questions[0]?.answer).toBe('windows-1251');
  });
});

describe('the bytes', () => {
  it('are known again by their SHA-256', async () => {
    // Source: FIPS 180-2, appendix B.1, SHA-256 of "abc".
    const read = await readTables(new TextEncoder().encode('abc'), 'x.csv');
    expect(read.sha256).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    const bytes = sampleBytes('drover-parts.xlsx');
    const hash = createHash('sha256').update(bytes).digest('hex');
    expect((await readTables(bytes, 'x')).sha256).toBe(hash);
  });

  it.each([
    ['nothing at all', Uint8Array.of()],
    ['an old-style office file', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0)],
    ['a PDF', strToU8('%PDF-1.7 ...')],
    ['a picture', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10)],
    ['a program', Uint8Array.from({ length: 400 }, (_, index) => (index * 37) % 256)],
    ['blanks only', strToU8(' \n\n ')],
    ['a cut-off archive', strToU8('PK\u0003\u0004 and no more')],
    ['an archive of something else', zipSync({ 'letter.txt': strToU8('hello') })],
    ['a very long cell', strToU8(`a,b\n${'x'.repeat(40_000)},1\n`)],
    ['far too many columns', strToU8(`${'a,'.repeat(300)}a\n`)],
    ['far too many rows', strToU8('a,b\n'.repeat(200_001))],
  ])('are refused when they are %s', async (_name, bytes) => {
    await refusal(bytes);
  });
});

describe('a workbook made to do harm', () => {
  const workbook = (sheet: string, more: Record<string, Uint8Array> = {}) =>
    zipSync({
      '[Content_Types].xml': strToU8(
        '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"></Types>',
      ),
      'xl/workbook.xml': strToU8(
        '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ' +
          'xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><workbookPr/><sheets>' +
          '<sheet name="list" sheetId="1" r:id="rId1"/></sheets></workbook>',
      ),
      'xl/_rels/workbook.xml.rels': strToU8(
        '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
          '<Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" ' +
          'Target="worksheets/sheet1.xml"/></Relationships>',
      ),
      'xl/worksheets/sheet1.xml': strToU8(
        `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${sheet}</sheetData></worksheet>`,
      ),
      ...more,
    });
  const text = (address: string, value: string) => `<c r="${address}" t="str"><v>${value}</v></c>`;

  it('is read when it does none: values, failed formulas, formulas without a value', async () => {
    const sheet =
      `<row r="1">${text('A1', 'part')}${text('B1', 'price')}</row>` +
      `<row r="3">${text('A3', 'bolt')}<c r="B3"><f>1+2</f><v>3.3000000000000003</v></c></row>` +
      `<row r="4">${text('A4', 'nut')}<c r="B4" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>` +
      `<row r="5">${text('A5', 'stud')}<c r="B5"><f>NOW()</f></c></row>` +
      '<row r="900000"><c r="XFD900000" s="0"/></row>';
    const [table] = (await readTables(workbook(sheet), 'x')).tables;
    expect(table?.rows.map((row) => row.cells)).toEqual([
      ['part', 'price'],
      ['', ''],
      ['bolt', '3.3'],
      ['nut', '#DIV/0!'],
      ['stud', '#NO RESULT'],
    ]);
    expect(table?.rows.map((row) => row.kinds?.[1])).toEqual(['text', 'text', 'number', 'error', 'error']);
    expect(table?.findings.map((entry) => entry.finding.message).join()).toContain('3 cells are formulas');
  });

  it('is refused with a document type, a distant cell, a path outside, a nested archive, macros or a password', async () => {
    const plain = `<row r="1">${text('A1', 'part')}</row>`;
    const doctype = strToU8('<?xml version="1.0"?><!DOCTYPE x [<!ENTITY e "boom">]><x>&e;</x>');
    expect((await refusal(workbook(plain, { 'xl/sharedStrings.xml': doctype }))).message).toContain('document type');
    expect((await refusal(workbook(`<row r="1048576">${text('A1048576', 'far')}</row>`))).message).toContain('rows');
    expect((await refusal(workbook(`<row r="1">${text('XFD1', 'far')}</row>`))).message).toContain('columns');
    expect((await refusal(workbook(plain, { '../evil.xml': strToU8('x') }))).message).toContain('outside');
    expect((await refusal(workbook(plain, { 'xl/inner.zip': strToU8('x') }))).message).toContain('another archive');
    expect((await refusal(workbook(plain, { 'xl/vbaProject.bin': strToU8('x') }))).message).toContain('macros');
    const locked = workbook(plain);
    const view = new DataView(locked.buffer, locked.byteOffset);
    const directory = view.getUint32(locked.length - 6, true);
    view.setUint16(directory + 8, view.getUint16(directory + 8, true) | 1, true);
    expect((await refusal(locked)).message).toContain('password');
  });

  it('is refused when it would unpack to a hundred times its size, before it is unpacked', async () => {
    const bomb = workbook('', { 'xl/media.xml': new Uint8Array(30_000_000) });
    expect((await refusal(bomb)).message).toContain('unpack');
  });

  it('is refused when two entries share the same bytes', async () => {
    const bytes = workbook(`<row r="1">${text('A1', 'part')}</row>`);
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    const directory = view.getUint32(bytes.length - 6, true);
    const second = directory + 46 + view.getUint16(directory + 28, true);
    view.setUint32(second + 42, view.getUint32(directory + 42, true), true);
    expect((await refusal(bytes)).message).toContain('overlap');
  });
});
