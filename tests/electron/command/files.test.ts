import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openRoom, openWorkbookRoom } from './command-room.ts';

describe('new', () => {
  it('makes a workbook with one build', async () => {
    const { run, folder } = openRoom();
    const made = await run('new', 'drover.hoistday', '--currency', 'EUR', '--build', 'Drover six', '--json');
    expect(made.exit).toBe(0);
    expect(made.json()).toEqual({ path: join(folder, 'drover.hoistday'), build: 1, currency: 'EUR' });
    expect((await run('money', 'drover.hoistday', '--json')).json()).toMatchObject({ summary: { currency: 'EUR' } });
  });

  it('refuses a name that is in use', async () => {
    const { run, folder } = await openWorkbookRoom();
    const before = readFileSync(join(folder, 'drover.hoistday'));
    const { exit, refusal } = await run('new', 'drover.hoistday', '--json');
    expect(exit).toBe(1);
    expect(refusal().accepted).toBe('a name that is not in use');
    expect(readFileSync(join(folder, 'drover.hoistday'))).toEqual(before);
  });

  it.each([
    ['--currency', 'euros'],
    ['--started', '2026-02-30'],
    ['--started', 'today'],
  ])('makes no file when %s is %s', async (option, value) => {
    const { run, folder } = openRoom();
    const { exit, error } = await run('new', 'drover.hoistday', option, value);
    expect(exit).toBe(2);
    expect(error).toContain(`${option} ${value}`);
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('demo', () => {
  it('makes the demo where it is asked to, once, and it is sound', async () => {
    const { run, folder } = openRoom();
    expect((await run('demo', 'demo.hoistday')).out).toContain(join(folder, 'demo.hoistday'));
    expect((await run('verify', 'demo.hoistday')).out).toMatch(/^Sound: \d+ entries/);
    const again = await run('demo', 'demo.hoistday');
    expect(again.exit).toBe(2);
    expect(again.error).toContain('is there already');
  });
});

describe('export', () => {
  it('writes a table as CSV beside the command, and not over a file without being told', async () => {
    const { run, folder } = await openWorkbookRoom(true);
    const first = await run('export', 'drover.hoistday', 'parts');
    expect(first).toMatchObject({ exit: 0, out: `Wrote ${join(folder, 'drover parts.csv')}.` });
    expect(readFileSync(join(folder, 'drover parts.csv'), 'utf8')).toContain('rod bolts 7/16 (12)');
    const second = await run('export', 'drover.hoistday', 'parts');
    expect(second.exit).toBe(2);
    expect(second.error).toContain('name another with --out, or say --overwrite');
    expect((await run('export', 'drover.hoistday', 'parts', '--overwrite')).exit).toBe(0);
  });

  it('writes XLSX, which is a ZIP archive', async () => {
    const { run, folder } = await openWorkbookRoom(true);
    const { exit } = await run('export', 'drover.hoistday', 'hoist check', '--format', 'xlsx', '--out', 'check.xlsx');
    expect(exit).toBe(0);
    // ZIP local file header, APPNOTE.TXT 4.3.7: 50 4B 03 04.
    expect(readFileSync(join(folder, 'check.xlsx')).subarray(0, 4).toString('hex')).toBe('504b0304');
  });

  it('writes the whole workbook as JSON, from which new makes the same again', async () => {
    const { run, folder } = await openWorkbookRoom(true);
    const { json } = await run('export', 'drover.hoistday', 'workbook', '--json');
    const { bytes, path } = json() as { bytes: number; path: string };
    const text = readFileSync(path, 'utf8');
    expect(path).toBe(join(folder, 'drover.json'));
    expect(Buffer.byteLength(text)).toBe(bytes);
    expect(Array.isArray(JSON.parse(text))).toBe(true);

    const made = await run('new', 'again.hoistday', '--from', 'drover.json');
    expect(made).toMatchObject({ exit: 0, error: '' });
    const again = (await run('positions', 'again.hoistday', '--json')).json();
    expect(again).toEqual((await run('positions', 'drover.hoistday', '--json')).json());
    expect((await run('new', 'third.hoistday', '--from', 'drover.json', '--currency', 'EUR')).exit).toBe(2);
    expect((await run('new', 'third.hoistday', '--from', 'nothing.json')).exit).toBe(2);
    expect(existsSync(join(folder, 'third.hoistday'))).toBe(false);
  });

  it('names the tables there are', async () => {
    const { run } = await openWorkbookRoom();
    const { exit, error } = await run('export', 'drover.hoistday', 'engines');
    expect(exit).toBe(2);
    expect(error).toContain('TABLE engines: workbook, or one of parts, orders, order lines');
  });
});

describe('backup and restore', () => {
  it('goes back to the backup and keeps what was there', async () => {
    const { run, folder } = await openWorkbookRoom();
    expect((await run('backup', 'drover.hoistday', '--list')).out).toBe('No backups yet.');
    const { file } = (await run('backup', 'drover.hoistday', '--json')).json() as { file: string };
    const listed = (await run('backup', 'drover.hoistday', '--list', '--json')).json();
    expect(listed).toMatchObject([{ file, verified: true }]);
    expect((await run('backup', 'drover.hoistday', '--list')).out).toContain(file);

    writeFileSync(join(folder, 'more.csv'), 'Part,Qty,Each\nhead stud,8,3.25\n');
    expect((await run('import', 'drover.hoistday', 'more.csv')).exit).toBe(0);
    expect((await run('positions', 'drover.hoistday', '--json')).json()).toHaveLength(1);
    const restored = await run('restore', 'drover.hoistday', file);
    expect(restored).toMatchObject({ exit: 0 });
    expect((await run('positions', 'drover.hoistday', '--json')).json()).toHaveLength(0);
    expect(readdirSync(folder, { recursive: true }).length).toBeGreaterThan(2);
    expect((await run('verify', 'drover.hoistday')).exit).toBe(0);
  });

  it('refuses a name that is no backup of this workbook', async () => {
    const { run, folder } = await openWorkbookRoom();
    const { exit, refusal } = await run('restore', 'drover.hoistday', 'other.hoistday', '--json');
    expect(exit).toBe(1);
    expect(refusal().accepted).toBe('the name of a backup in the list');
    expect(existsSync(join(folder, 'drover.hoistday'))).toBe(true);
  });
});

describe('verify', () => {
  it('folds every entry again', async () => {
    const { run } = await openWorkbookRoom(true);
    const { exit, json } = await run('verify', 'drover.hoistday', '--json');
    expect(exit).toBe(0);
    expect(json()).toMatchObject({ ok: true, differences: [], invariants: [], foreignKeys: [] });
  });
});
