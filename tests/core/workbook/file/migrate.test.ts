import { copyFileSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { integrityFindings, rowCounts, schemaDifferences } from '../../../../core/workbook/file/checks.ts';
import { createWorkbookFile } from '../../../../core/workbook/file/create-file.ts';
import { migrate } from '../../../../core/workbook/file/migrate.ts';
import type { Migration } from '../../../../core/workbook/file/migration.ts';
import { openWorkbookFile } from '../../../../core/workbook/file/open-file.ts';
import { applyProfile } from '../../../../core/workbook/file/profile.ts';
import { contentOf, folder, pause, seeded, startChild, workbookWith } from './sample.ts';
import { now, rebuildSql, schemaOne, schemaTwo } from './sample-schema.ts';

const [first, guard, rebuild, backfill] = schemaTwo as [Migration, Migration, Migration, Migration];

/** Opens a file the way `migrate` gets it. */
function connect(path: string): Database.Database {
  const db = new Database(path);
  applyProfile(db);
  return db;
}

function countsOf(path: string): Record<string, number> {
  const db = new Database(path, { readonly: true });
  const counts = Object.fromEntries(rowCounts(db));
  db.close();
  return counts;
}

describe('bringing a workbook up to date', () => {
  it('keeps every row, link, guard and a proved copy of what was', () => {
    const path = workbookWith(50);
    const workbook = openWorkbookFile(path, { now, migrations: schemaTwo });
    expect(Object.fromEntries(rowCounts(workbook.db))).toEqual({ orders: 50, lines: 100, settings: 1, history: 100 });
    expect(schemaDifferences(workbook.db, schemaTwo, 4)).toEqual([]);
    expect(workbook.db.pragma('foreign_keys', { simple: true })).toBe(1);
    expect(workbook.db.pragma('foreign_key_check')).toEqual([]);
    const copy = join(dirname(path), 'drover.v2-before.bak');
    expect(workbook.notices).toEqual([expect.stringContaining(copy)]);
    workbook.close();
    expect(countsOf(copy)).toEqual({ orders: 50, lines: 100, settings: 1 });
    expect(Object.keys(contentOf(dirname(path)))).toEqual(['drover.hoistday', 'drover.v2-before.bak']);
  });

  it('does nothing the second time', () => {
    const path = workbookWith(5);
    openWorkbookFile(path, { now, migrations: schemaTwo }).close();
    const before = contentOf(dirname(path));
    const db = connect(path);
    expect(migrate(path, db, { now, migrations: schemaTwo })).toEqual({ from: 4, to: 4 });
    db.close();
    expect(contentOf(dirname(path))).toEqual(before);
  });

  it('never writes over an earlier copy', () => {
    const path = workbookWith(5);
    for (const name of ['drover.v2-before.bak', 'drover.v2-before-2026-03-04T05-06-07Z.bak']) {
      copyFileSync(path, join(dirname(path), name));
    }
    const before = contentOf(dirname(path));
    const db = connect(path);
    const { copy } = migrate(path, db, { now, migrations: schemaTwo });
    db.close();
    expect(contentOf(dirname(path))).toMatchObject({ ...before, 'drover.hoistday': expect.any(String) });
    expect(Object.keys(before)).not.toContain(copy);
    expect(statSync(copy ?? '').size).toBeGreaterThan(0);
  });

  it('refuses to go back', () => {
    const path = workbookWith(5);
    const db = connect(path);
    const back = () => migrate(path, db, { now, migrations: [first] });
    expect(back).toThrow(expect.objectContaining({ code: 'newer-version', detail: { path, found: 2, known: 1 } }));
    db.close();
  });
});

describe('a step that would lose something is undone', () => {
  const steps: [string, Omit<Migration, 'name'>, RegExp][] = [
    ['a cascade', { sql: 'DELETE FROM lines WHERE order_id = 2' }, /lines has 8 rows instead of 10/],
    ['a table dropped in silence', { sql: 'DROP TABLE lines' }, /table lines with 10 rows is gone/],
    ['a table that should be gone', { sql: '', rows: { lines: 'dropped' } }, /lines is still there/],
    [
      'a wrong declaration',
      { sql: 'INSERT INTO settings VALUES (1, 1)', rows: { settings: 2 } },
      /settings has 2 rows/,
    ],
    [
      'a seed nobody declared',
      { sql: "CREATE TABLE a (b TEXT) STRICT; INSERT INTO a VALUES ('x')" },
      /a has 1 rows instead of 0/,
    ],
    ['guards lost in a rebuild', { sql: rebuildSql }, /trigger orders_never_go is gone/],
    [
      'links cut',
      {
        sql: 'UPDATE sqlite_sequence SET seq = 0; PRAGMA defer_foreign_keys=ON; INSERT INTO lines (order_id, amount_minor) VALUES (99, 1)',
        rows: { lines: 1 },
      },
      /points to no row of orders/,
    ],
    ['an error half-way', { sql: "INSERT INTO settings VALUES ('a', 'b'); SELECT nothing" }, /nothing/],
    ['a step that ends the transaction', { sql: 'COMMIT' }, /ended the transaction/],
  ];
  it.each(steps)('%s', (_, step, message) => {
    const path = workbookWith(5);
    const before = readFileSync(path);
    const migrations = [first, guard, { name: '0002_bad', ...step }];
    expect(() => openWorkbookFile(path, { now, migrations })).toThrow(message);
    expect(readFileSync(path).equals(before)).toBe(true);
    const workbook = openWorkbookFile(path, { now, migrations: schemaOne });
    expect(integrityFindings(workbook.db)).toEqual([]);
    workbook.close();
  });

  it('the rebuild that empties child tables when keys are left on loses nothing here', () => {
    const naive = new Database(workbookWith(5));
    naive.exec(`BEGIN; DROP TRIGGER orders_never_go; ${rebuildSql} COMMIT`); // as a migrator inside a transaction does
    expect(rowCounts(naive).get('lines')).toBe(0);
    naive.close();
    const path = workbookWith(5);
    openWorkbookFile(path, { now, migrations: [first, guard, rebuild] }).close();
    expect(countsOf(path)).toMatchObject({ orders: 5, lines: 10 });
  });

  it('a full disk in the middle of a step', () => {
    const path = workbookWith(5);
    const db = connect(path);
    db.pragma(`max_page_count = ${db.pragma('page_count', { simple: true })}`);
    const full = () => migrate(path, db, { now, migrations: schemaTwo });
    expect(full).toThrow(expect.objectContaining({ code: 'disk-full' }));
    expect(Object.fromEntries(rowCounts(db))).toEqual({ orders: 5, lines: 10, settings: 1 });
    expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
    db.pragma('max_page_count = 1000000');
    expect(migrate(path, db, { now, migrations: schemaTwo })).toMatchObject({ from: 2, to: 4 });
    db.close();
  });
});

it('killed at any point it leaves the old workbook or the new one', { timeout: 120_000 }, async () => {
  const place = folder();
  const model = workbookWith(1500, join(place, 'model.hoistday'));
  const random = seeded(20260304);
  const seen = { old: 0, new: 0 };
  for (let round = 0; round < 40; round += 1) {
    const path = join(place, `round-${round}.hoistday`);
    copyFileSync(model, path);
    const { child, ended, firstWord } = startChild('open.ts', path, 'two', '5000');
    await firstWord;
    await pause(random(90));
    child.kill('SIGKILL');
    await ended;
    // A reading in the old program's eyes tells which of the two it is; then the new one opens it for good.
    const { db, close } = openWorkbookFile(path, { now, migrations: schemaTwo, readOnly: true });
    expect(integrityFindings(db)).toEqual([]);
    close();
    const copies = readdirSync(place).filter((name) => name.startsWith(`round-${round}.v2-before`));
    for (const name of copies) expect(countsOf(join(place, name))).toEqual({ orders: 1500, lines: 3000, settings: 1 });
    const workbook = openWorkbookFile(path, { now, migrations: schemaTwo });
    seen[workbook.notices.some((notice) => notice.includes('brought up to date')) ? 'old' : 'new'] += 1;
    expect(Object.fromEntries(rowCounts(workbook.db))).toEqual({
      orders: 1500,
      lines: 3000,
      settings: 1,
      history: 3000,
    });
    workbook.close();
    expect(readdirSync(place).filter((name) => name.includes('.part'))).toEqual([]);
  }
  expect(seen.old).toBeGreaterThan(0);
  expect(seen.old + seen.new).toBe(40);
});

it('two processes at once: one does it, the other is turned away', async () => {
  const path = workbookWith(2000);
  const both = [startChild('open.ts', path, 'two', '1500'), startChild('open.ts', path, 'two', '1500')];
  await Promise.all(both.map(({ ended }) => ended));
  const said = both.map(({ said: { out } }) => out.replaceAll('opening\n', '').split(' ')[0]?.trim()).sort();
  expect(said).toEqual(['open', 'open-elsewhere']);
  expect(countsOf(path)).toMatchObject({ orders: 2000, lines: 4000, history: 4000 });
});

it('a new workbook goes through every step', () => {
  const path = join(folder(), 'new.hoistday');
  createWorkbookFile(path, { now, migrations: [first, guard, rebuild, backfill] });
  expect(countsOf(path)).toEqual({ orders: 0, lines: 0, settings: 1, history: 0 });
});
