import {
  chmodSync,
  copyFileSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import type { Refusal } from '../../../../core/refusal.ts';
import { createWorkbookFile } from '../../../../core/workbook/file/create-file.ts';
import { APPLICATION_ID } from '../../../../core/workbook/file/identity.ts';
import { openWorkbookFile } from '../../../../core/workbook/file/open-file.ts';
import { addOrders, contentOf, folder, startChild, workbookWith } from './sample.ts';
import { now, schemaOne, schemaTwo } from './sample-schema.ts';

const options = { now, migrations: schemaOne };
const orders = (db: Database.Database) => db.prepare('SELECT count(*) FROM orders').pluck().get();

function refusalOf(work: () => unknown): Refusal {
  try {
    work();
  } catch (error) {
    return error as Refusal;
  }
  throw new Error('It was not refused.');
}

/** Gives a file another name and returns that. */
function named(link: (path: string, name: string) => void, path: string): string {
  const name = `${path}.other.hoistday`;
  link(path, name);
  return name;
}

/** Writes over bytes of a file; the place is counted from its start. */
function overwrite(path: string, at: number, bytes: Buffer): void {
  const content = readFileSync(path);
  bytes.copy(content, at);
  writeFileSync(path, content);
}

describe('making a workbook', () => {
  it('leaves one whole file and nothing else', () => {
    const place = folder();
    createWorkbookFile(join(place, 'a.hoistday'), options);
    expect(Object.keys(contentOf(place))).toEqual(['a.hoistday']);
    const { db, close } = openWorkbookFile(join(place, 'a.hoistday'), options);
    expect(db.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    expect(db.pragma('user_version', { simple: true })).toBe(2);
    close();
    expect(Object.keys(contentOf(place))).toEqual(['a.hoistday']);
  });

  it.each([
    ['a file is there', (path: string) => writeFileSync(path, 'mine'), 'not-allowed-from-here'],
    ['an empty file is there', (path: string) => writeFileSync(path, ''), 'not-allowed-from-here'],
    ['a folder is there', (path: string) => mkdirSync(path), 'not-allowed-from-here'],
    ['a link to nowhere is there', (path: string) => symlinkSync('/nowhere/at/all', path), 'not-allowed-from-here'],
  ])('refuses when %s', (_, prepare, code) => {
    const place = folder();
    const path = join(place, 'a.hoistday');
    prepare(path);
    const before = contentOf(place);
    expect(() => createWorkbookFile(path, options)).toThrow(expect.objectContaining({ code, field: 'path' }));
    expect(contentOf(place)).toEqual(before);
  });

  it.each(['a.db', '.hoistday', 'a'])('refuses the name %s', (name) => {
    expect(() => createWorkbookFile(join(folder(), name), options)).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });

  it('refuses a folder that does not exist', () => {
    const path = join(folder(), 'none', 'a.hoistday');
    expect(() => createWorkbookFile(path, options)).toThrow(expect.objectContaining({ code: 'not-found' }));
  });
});

describe('a file that is not a healthy workbook is refused and stays as it was', () => {
  const cases: [string, (path: string) => void, string][] = [
    ['text', (path) => writeFileSync(path, 'a shopping list\n'.repeat(50)), 'not-a-workbook'],
    ['an empty file', (path) => writeFileSync(path, ''), 'not-a-workbook'],
    ['a header and nothing more', (path) => truncateSync(path, 16), 'not-a-workbook'],
    ['a folder', (path) => mkdirSync(path.replace('drover', 'none')), 'not-found'],
    ["another program's database", (path) => overwrite(path, 68, Buffer.from([0, 0, 0, 1])), 'not-a-workbook'],
    ['a file cut in half', (path) => truncateSync(path, 4096 * 12), 'damaged'],
    ['a page of noise', (path) => overwrite(path, 4096 * 10, Buffer.alloc(4096, 0xa5)), 'damaged'],
    ['a lost schema', (path) => overwrite(path, 100, Buffer.alloc(3900, 0xff)), 'damaged'],
    ['a newer schema', (path) => overwrite(path, 60, Buffer.from([0, 0, 0, 9])), 'newer-version'],
  ];
  it.each(cases)('%s', (_, spoil, code) => {
    const path = workbookWith(300);
    spoil(path);
    const target = code === 'not-found' ? join(dirname(path), 'gone.hoistday') : path;
    const before = contentOf(dirname(path));
    const refusal = refusalOf(() => openWorkbookFile(target, options));
    expect(refusal).toMatchObject({ code, field: 'path' });
    expect(refusal.message).toMatch(/Nothing was changed\.$/);
    expect(refusal.accepted).toBeTruthy();
    expect(contentOf(dirname(path))).toEqual(before);
  });

  it('a folder by the name of a workbook', () => {
    const place = folder();
    mkdirSync(join(place, 'a.hoistday'));
    expect(refusalOf(() => openWorkbookFile(join(place, 'a.hoistday'), options)).code).toBe('not-a-workbook');
  });

  it('damage met with a journal beside it: neither is touched', () => {
    const path = workbookWith(300);
    const writer = openWorkbookFile(path, options);
    addOrders(writer.db, 5);
    const place = folder();
    for (const ending of ['', '-wal']) copyFileSync(path + ending, join(place, `a.hoistday${ending}`));
    writer.close();
    overwrite(join(place, 'a.hoistday'), 4096 * 10, Buffer.alloc(4096, 0xa5));
    const before = contentOf(place);
    expect(refusalOf(() => openWorkbookFile(join(place, 'a.hoistday'), options)).code).toBe('damaged');
    expect(contentOf(place)).toEqual(before);
  });

  it('a workbook whose guards were taken out', () => {
    const path = workbookWith(3);
    const db = new Database(path);
    db.exec('DROP TRIGGER lines_never_change; CREATE TABLE extra (a)');
    db.close();
    const findings = ['table extra does not belong', 'trigger lines_never_change is missing'];
    const refusal = refusalOf(() => openWorkbookFile(path, options));
    expect(refusal.code).toBe('damaged');
    expect([...(refusal.detail['findings'] as string[])].sort()).toEqual(findings);
  });
});

describe('looking without writing', () => {
  it.each([
    ['damaged', (path: string) => overwrite(path, 4096 * 10, Buffer.alloc(4096, 0xa5)), /damaged/],
    ['newer', (path: string) => overwrite(path, 60, Buffer.from([0, 0, 0, 9])), /schema 9/],
    ['healthy', () => undefined, /^$/],
  ])('opens a %s workbook as a copy and touches nothing', (_, spoil, notice) => {
    const path = workbookWith(300);
    spoil(path);
    const before = contentOf(dirname(path));
    const workbook = openWorkbookFile(path, { ...options, readOnly: true });
    expect(workbook.readOnly).toBe(true);
    expect(workbook.notices.join(' ')).toMatch(notice);
    expect(workbook.db.prepare('SELECT value FROM settings').pluck().get()).toBe('EUR');
    expect(() => workbook.db.exec("INSERT INTO orders (name) VALUES ('x')")).toThrow(/readonly/);
    expect(workbook.close()).toBeUndefined();
    expect(contentOf(dirname(path))).toEqual(before);
  });

  it('shows an older workbook in the present schema without changing it', () => {
    const path = workbookWith(4);
    const before = contentOf(dirname(path));
    const workbook = openWorkbookFile(path, { now, migrations: schemaTwo, readOnly: true });
    expect(workbook.db.prepare('SELECT count(*) FROM history').pluck().get()).toBe(8);
    workbook.close();
    expect(contentOf(dirname(path))).toEqual(before);
  });

  it('shows beside its writer what the writer saves', () => {
    const path = workbookWith(1);
    const writer = openWorkbookFile(path, options);
    const reader = openWorkbookFile(path, { ...options, readOnly: true });
    expect(reader.notices.join(' ')).toContain('another window');
    addOrders(writer.db, 2);
    expect(orders(reader.db)).toBe(3);
    reader.close();
    addOrders(writer.db, 1);
    writer.close();
  });

  it.skipIf(process.getuid?.() !== 0)('opens what this person may not write read-only, with a notice', async () => {
    const path = workbookWith(1);
    chmodSync(dirname(path), 0o755);
    chmodSync(path, 0o444);
    const before = contentOf(dirname(path));
    const { ended, said } = startChild('open.ts', path, 'one', '0', 'write', '65534');
    await ended;
    expect(said.out).toMatch(/open read-only .*nothing can be changed here/);
    expect(contentOf(dirname(path))).toEqual(before);
  });
});

describe('what is remembered between two openings', () => {
  it('checks a file again that is not as it was left', () => {
    const path = workbookWith(300);
    const mark = openWorkbookFile(path, options).close();
    if (mark === undefined) throw new Error('no mark');
    expect(openWorkbookFile(path, { ...options, lastSeen: mark }).close()).toEqual(mark);
    overwrite(path, 4096 * 10, Buffer.alloc(4096, 0xa5));
    expect(refusalOf(() => openWorkbookFile(path, { ...options, lastSeen: mark })).code).toBe('damaged');
  });

  it('says when a file holds less than before: copied without its journal', () => {
    const path = workbookWith(2);
    const older = readFileSync(path);
    const workbook = openWorkbookFile(path, options);
    addOrders(workbook.db, 5);
    const mark = workbook.close();
    writeFileSync(path, older);
    const again = openWorkbookFile(path, { ...options, ...(mark === undefined ? {} : { lastSeen: mark }) });
    expect(again.notices.join(' ')).toContain('holds less than when it was last open here');
    again.close();
  });

  it('closes twice without harm and tells of another version beside it', () => {
    const path = workbookWith(1);
    copyFileSync(path, path.replace('.hoistday', ' (conflicted copy).hoistday'));
    const workbook = openWorkbookFile(path, options);
    expect(workbook.notices.join(' ')).toContain('drover (conflicted copy).hoistday');
    expect(workbook.close()).toEqual(workbook.close());
  });
});

it('a folder that is copied between machines: one file holds everything, and nobody looks in meanwhile', () => {
  const place = join(folder(), 'My Cloud');
  mkdirSync(place);
  const workbook = openWorkbookFile(workbookWith(1, join(place, 'a.hoistday')), options);
  expect(workbook.notices).toEqual([expect.stringContaining('copied between machines')]);
  addOrders(workbook.db, 3);
  expect(readdirSync(place).filter((name) => /-(wal|shm)$/.test(name))).toEqual([]);
  const refusal = refusalOf(() => openWorkbookFile(join(place, 'a.hoistday'), { ...options, readOnly: true }));
  expect(refusal.code).toBe('open-elsewhere');
  workbook.close();
  expect(readdirSync(place)).toEqual(['a.hoistday']);
});

describe('one writer', () => {
  it.each([
    ['the same name', (path: string) => path],
    ['a soft link', (path: string) => named(symlinkSync, path)],
    ['a second hard name', (path: string) => named(linkSync, path)],
  ])('keeps a second opening of this process out: %s', (_, other) => {
    const path = workbookWith(1);
    const name = other(path);
    const workbook = openWorkbookFile(path, options);
    const refusal = refusalOf(() => openWorkbookFile(name, options));
    expect(refusal.code).toBe('open-elsewhere');
    expect(refusal.message).toContain('read-only');
    workbook.close();
    openWorkbookFile(name, options).close();
  });

  it.each(['the same name', 'a second hard name'])('keeps another process out: %s', async (kind) => {
    const path = workbookWith(1);
    const name = kind === 'the same name' ? path : `${path}.hard.hoistday`;
    if (name !== path) linkSync(path, name);
    const workbook = openWorkbookFile(path, options);
    const second = startChild('open.ts', name, 'one', '0');
    await second.ended;
    expect(second.said.out).toContain('open-elsewhere');
    const reader = startChild('open.ts', path, 'one', '0', 'read');
    await reader.ended;
    expect(reader.said.out).toContain('open read-only');
    workbook.close();
  });

  it('is not kept out by what a killed process left', async () => {
    const path = workbookWith(1);
    const writer = startChild('writer.ts', path);
    await writer.firstWord;
    expect(refusalOf(() => openWorkbookFile(path, options)).code).toBe('open-elsewhere');
    writer.child.kill('SIGKILL');
    await writer.ended;
    const workbook = openWorkbookFile(path, options);
    expect(workbook.notices.join(' ')).toContain('not closed properly');
    workbook.close();
    expect(Object.keys(contentOf(dirname(path)))).toEqual(['drover.hoistday']);
  });

  it('waits for nobody when a stranger holds the file', () => {
    const path = workbookWith(1);
    const stranger = new Database(path);
    stranger.pragma('locking_mode = EXCLUSIVE');
    stranger.exec('BEGIN EXCLUSIVE');
    expect(refusalOf(() => openWorkbookFile(path, options)).code).toBe('open-elsewhere');
    stranger.exec('ROLLBACK');
    stranger.close();
  });
});
