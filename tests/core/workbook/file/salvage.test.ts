import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { integrityFindings, schemaDifferences } from '../../../../core/workbook/file/checks.ts';
import { openWorkbookFile } from '../../../../core/workbook/file/open-file.ts';
import { salvage } from '../../../../core/workbook/file/salvage.ts';
import { addOrders, contentOf, folder, workbookWith } from './sample.ts';
import { now, schemaOne, schemaTwo } from './sample-schema.ts';

const options = { now, migrations: schemaOne };

/** Writes noise over whole pages of 4096 bytes, which is the page size of these files. */
function noise(path: string, ...pages: number[]): void {
  const content = readFileSync(path);
  for (const page of pages) content.fill(0xa5, 4096 * page, 4096 * (page + 1));
  writeFileSync(path, content);
}

it('carries a healthy workbook over whole, with its guards and its ids', () => {
  const path = workbookWith(50);
  const target = join(dirname(path), 'saved.hoistday');
  const { tables, brokenLinks, original } = salvage(path, target, options);
  expect(tables.map(({ table, rowsSaved, lost }) => [table, rowsSaved, lost])).toEqual([
    ['lines', 100, []],
    ['orders', 50, []],
    ['settings', 1, []],
  ]);
  expect([brokenLinks, original]).toEqual([[], path]);
  const { db, close } = openWorkbookFile(target, options);
  expect(schemaDifferences(db, schemaOne, 2)).toEqual([]);
  expect(() => db.exec('UPDATE lines SET amount_minor = 1')).toThrow('lines stay');
  expect(db.prepare("SELECT seq FROM sqlite_sequence WHERE name = 'lines'").pluck().get()).toBe(100);
  close();
});

it('saves what lies around broken pages, lists what is lost and leaves the damaged file alone', () => {
  const path = workbookWith(2000);
  noise(path, 20, 33);
  const damaged = contentOf(dirname(path));
  expect(() => openWorkbookFile(path, options)).toThrow(expect.objectContaining({ code: 'damaged' }));
  const target = join(folder(), 'saved.hoistday');
  const { tables } = salvage(path, target, options);
  expect(contentOf(dirname(path))).toEqual(damaged);
  const orders = tables.find(({ table }) => table === 'orders');
  const lines = tables.find(({ table }) => table === 'lines');
  expect(tables.some(({ lost }) => lost.length > 0)).toBe(true);
  // Two pages hold about a hundred orders or a few hundred lines; the rest must come over.
  expect(orders?.rowsSaved).toBeGreaterThan(1850);
  expect(lines?.rowsSaved).toBeGreaterThan(3000);
  for (const { rowsSaved, lost, table } of tables.filter(({ lost: { length } }) => length > 0)) {
    const listed = lost.reduce((sum, { count }) => sum + count, 0);
    expect(rowsSaved + listed).toBe(table === 'orders' ? 2000 : 4000);
  }
  const { db, close } = openWorkbookFile(target, options);
  expect(integrityFindings(db)).toEqual([]);
  expect(db.prepare('SELECT count(*) FROM orders').pluck().get()).toBe(orders?.rowsSaved);
  close();
});

it('takes the name of the damaged workbook and sets that aside with its journal', () => {
  const source = workbookWith(300);
  const writer = openWorkbookFile(source, options);
  addOrders(writer.db, 4);
  const path = join(folder(), 'drover.hoistday');
  for (const ending of ['', '-wal']) copyFileSync(source + ending, path + ending);
  writer.close();
  const { original, tables } = salvage(path, path, options);
  expect(original).toBe(join(dirname(path), 'drover.damaged-2026-03-04T05-06-07Z.hoistday'));
  expect([existsSync(original), existsSync(`${original}-wal`), existsSync(`${path}-wal`)]).toEqual([true, true, false]);
  expect(tables.find(({ table }) => table === 'orders')?.rowsSaved).toBe(304);
  openWorkbookFile(path, options).close();
});

it('brings the salvaged workbook up to date when no link is broken', () => {
  const path = workbookWith(3);
  const target = join(folder(), 'saved.hoistday');
  salvage(path, target, { now, migrations: schemaTwo });
  const { db, notices, close } = openWorkbookFile(target, { now, migrations: schemaTwo });
  expect(db.prepare('SELECT count(*) FROM history').pluck().get()).toBe(6);
  expect(notices).toEqual([]);
  close();
});

it('refuses an open workbook, a taken name and a file with nothing to read', () => {
  const path = workbookWith(30);
  const target = join(dirname(path), 'saved.hoistday');
  const workbook = openWorkbookFile(path, options);
  expect(() => salvage(path, target, options)).toThrow(expect.objectContaining({ code: 'open-elsewhere' }));
  workbook.close();
  writeFileSync(target, 'mine');
  expect(() => salvage(path, target, options)).toThrow(expect.objectContaining({ code: 'not-allowed-from-here' }));
  const content = readFileSync(path);
  writeFileSync(path, content.fill(0xff, 100, content.length));
  const before = contentOf(dirname(path));
  expect(() => salvage(path, join(dirname(path), 'b.hoistday'), options)).toThrow(
    expect.objectContaining({ code: 'damaged' }),
  );
  expect(contentOf(dirname(path))).toEqual(before);
});
