import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { applyProfile, applyReadingProfile } from '../../../../core/workbook/file/profile.ts';
import { folder } from './sample.ts';

// The wanted values are those of sqlite.org, "PRAGMA Statements": synchronous 2 is FULL.
const wanted = { synchronous: 2, foreign_keys: 1, trusted_schema: 0, cell_size_check: 1, busy_timeout: 5000 };
const settingsOf = (db: Database.Database) =>
  Object.fromEntries(Object.keys(wanted).map((name) => [name, db.pragma(name, { simple: true })]));

/** A connection that answers one setting its own way. */
const stubborn = (db: Database.Database, setting: string, answer: unknown): Database.Database =>
  new Proxy(db, {
    get(target, name) {
      if (name === 'pragma') {
        return (text: string, options?: Database.PragmaOptions) =>
          text.startsWith(setting) ? answer : target.pragma(text, options);
      }
      const value = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });

it('holds after writing, after reading and on the next connection', () => {
  const path = join(folder(), 'a.db');
  for (const round of [1, 2]) {
    const db = new Database(path);
    expect(applyProfile(db)).toEqual([]);
    db.exec(`CREATE TABLE t${round} (a INTEGER) STRICT`);
    db.prepare('SELECT * FROM t1').all();
    expect(settingsOf(db)).toEqual(wanted);
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(db.pragma('journal_size_limit', { simple: true })).toBe(16 * 1024 * 1024);
    db.close();
  }
});

it('keeps everything in one file where files are shared or synced', () => {
  const db = new Database(join(folder(), 'a.db'));
  expect(applyProfile(db, 'rollback')).toEqual([]);
  expect(db.pragma('journal_mode', { simple: true })).toBe('delete');
  expect(db.pragma('locking_mode', { simple: true })).toBe('exclusive');
  expect(settingsOf(db)).toEqual(wanted);
  db.close();
});

it.each(['synchronous', 'foreign_keys', 'trusted_schema', 'cell_size_check', 'busy_timeout', 'journal_size_limit'])(
  'refuses when %s does not hold',
  (setting) => {
    const db = new Database(join(folder(), 'a.db'));
    const refusal = expect.objectContaining({ code: 'not-allowed-from-here', field: setting });
    expect(() => applyProfile(stubborn(db, setting, 77))).toThrow(refusal);
    db.close();
  },
);

it('says so when the disk does not support the write-ahead log', () => {
  const db = new Database(join(folder(), 'a.db'));
  expect(applyProfile(stubborn(db, 'journal_mode', 'delete'))).toEqual([expect.stringContaining('slower')]);
  db.close();
});

it('lets a reading connection write nothing', () => {
  const db = new Database(join(folder(), 'a.db'));
  db.exec('CREATE TABLE t (a INTEGER) STRICT');
  applyReadingProfile(db);
  expect(() => db.exec('INSERT INTO t VALUES (1)')).toThrow(expect.objectContaining({ code: 'SQLITE_READONLY' }));
  db.close();
});

it('runs on an engine with the reset race of the write-ahead log mended (sqlite.org, release 3.51.3)', () => {
  const db = new Database(':memory:');
  const version = db.prepare<[], string>('SELECT sqlite_version()').pluck().get() ?? '';
  const [major = 0, minor = 0, patch = 0] = version.split('.').map(Number);
  expect(major * 1_000_000 + minor * 1000 + patch).toBeGreaterThanOrEqual(3_051_003);
  db.close();
});
