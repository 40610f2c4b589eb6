import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { backUp, listBackups } from '../../../../core/workbook/file/backup.ts';
import { integrityFindings } from '../../../../core/workbook/file/checks.ts';
import { openWorkbookFile } from '../../../../core/workbook/file/open-file.ts';
import { restoreBackup } from '../../../../core/workbook/file/restore.ts';
import { addOrders, contentOf, folder, pause, seeded, startChild, workbookWith } from './sample.ts';
import { now, schemaOne } from './sample-schema.ts';

const options = { now, migrations: schemaOne };
const HOUR_MS = 3_600_000;
const orders = (path: string): unknown => {
  const workbook = openWorkbookFile(path, { ...options, readOnly: true });
  const count = workbook.db.prepare('SELECT count(*) FROM orders').pluck().get();
  workbook.close();
  return count;
};

describe('backing up', () => {
  it('leaves a workbook that opens and holds what was there', () => {
    const path = workbookWith(20);
    const shelf = join(dirname(path), 'backups', 'drover');
    const workbook = openWorkbookFile(path, options);
    addOrders(workbook.db, 3);
    const backup = backUp(workbook.db, path, shelf, now);
    addOrders(workbook.db, 3);
    workbook.close();
    expect(backup).toMatchObject({ workbook: 'drover', number: 1, madeAt: '2026-03-04T05:06:07Z', verified: true });
    expect(readdirSync(shelf)).toEqual([
      expect.stringMatching(/^drover\.000001\.2026-03-04T05-06-07Z\.[0-9a-f]{16}\.hoistday$/),
    ]);
    expect(listBackups(shelf, path)).toEqual([backup]);
    expect(orders(backup.path)).toBe(23);
  });

  it('keeps the newest ten and the last of each of fourteen days, and nobody else files', () => {
    const path = workbookWith(1);
    const shelf = folder();
    const workbook = openWorkbookFile(path, options);
    writeFileSync(join(shelf, 'drover.hoistday'), 'not ours to remove');
    const other = backUp(workbook.db, join(dirname(path), 'other.hoistday'), shelf, now);
    // 80 backups, one every six hours: four a day for twenty days.
    for (let count = 0; count < 80; count += 1) {
      backUp(workbook.db, path, shelf, new Date(Date.UTC(2026, 0, 1, 1) + count * 6 * HOUR_MS));
    }
    workbook.close();
    const kept = listBackups(shelf, path);
    // Newest ten: 80 to 71, days 20, 19 and the later two of day 18. Then the last of days 17 to 7: 68, 64 … 28.
    // Derived by hand.
    expect(kept.map(({ number }) => number)).toEqual([
      80, 79, 78, 77, 76, 75, 74, 73, 72, 71, 68, 64, 60, 56, 52, 48, 44, 40, 36, 32, 28,
    ]);
    expect(kept.every(({ verified }) => verified)).toBe(true);
    expect(listBackups(shelf).map(({ path: name }) => name)).toContain(other.path);
    expect(readdirSync(shelf)).toContain('drover.hoistday');
  });

  it('counts on when the clock was set back', () => {
    const path = workbookWith(1);
    const shelf = folder();
    const workbook = openWorkbookFile(path, options);
    backUp(workbook.db, path, shelf, now);
    backUp(workbook.db, path, shelf, new Date(now.getTime() - 48 * HOUR_MS));
    workbook.close();
    expect(listBackups(shelf).map(({ number, madeAt }) => [number, madeAt])).toEqual([
      [2, '2026-03-02T05:06:07Z'],
      [1, '2026-03-04T05:06:07Z'],
    ]);
  });

  it('tells a backup that changed since it was proved', () => {
    const path = workbookWith(1);
    const workbook = openWorkbookFile(path, options);
    const { path: name } = backUp(workbook.db, path, folder(), now);
    workbook.close();
    const content = readFileSync(name);
    content[5000] = (content[5000] ?? 0) ^ 1;
    writeFileSync(name, content);
    expect(listBackups(dirname(name))).toEqual([expect.objectContaining({ verified: false })]);
  });

  it.skipIf(process.platform === 'win32')('a full disk leaves no half backup (file size limit)', () => {
    const path = workbookWith(2000);
    const shelf = folder();
    const script = join(import.meta.dirname, 'children', 'back-up.ts');
    // 64 blocks of 1024 bytes: room for the lock and the log's index, not for the copy.
    const run = spawnSync('bash', ['-c', 'ulimit -f 64; exec "$0" "$@"', process.execPath, script, path, shelf]);
    expect(run.stderr.toString()).toMatch(/disk-full/);
    expect(readdirSync(shelf)).toEqual([]);
    expect(orders(path)).toBe(2000);
  });

  it('killed at any point leaves whole backups only', { timeout: 60_000 }, async () => {
    const path = workbookWith(500);
    const shelf = folder();
    const random = seeded(7);
    for (let round = 0; round < 12; round += 1) {
      const { child, ended, firstWord } = startChild('back-up.ts', path, shelf);
      await firstWord;
      await pause(random(80));
      child.kill('SIGKILL');
      await ended;
      expect(listBackups(shelf).every(({ verified }) => verified)).toBe(true);
    }
    expect(listBackups(shelf).length).toBeGreaterThan(0);
    for (const backup of listBackups(shelf)) expect(orders(backup.path)).toBe(500);
  });
});

describe('restoring', () => {
  function withBackup() {
    const path = workbookWith(5);
    const workbook = openWorkbookFile(path, options);
    const backup = backUp(workbook.db, path, folder(), now);
    addOrders(workbook.db, 2);
    return { path, backup, workbook };
  }

  it('puts the backup in place and keeps what was there, which can be restored in turn', () => {
    const { path, backup, workbook } = withBackup();
    workbook.close();
    const { kept } = restoreBackup(backup.path, path, now, schemaOne);
    expect(kept).toBe(join(dirname(path), 'drover.before-restore-2026-03-04T05-06-07Z.hoistday'));
    expect([orders(path), orders(kept ?? '')]).toEqual([5, 7]);
    const undone = restoreBackup(kept ?? '', path, now, schemaOne);
    expect([orders(path), orders(undone.kept ?? '')]).toEqual([7, 5]);
    expect(undone.kept).not.toBe(kept);
    expect(listBackups(dirname(backup.path))).toEqual([backup]);
  });

  it('refuses while the workbook is open', () => {
    const { path, backup, workbook } = withBackup();
    const refused = expect.objectContaining({ code: 'open-elsewhere' });
    expect(() => restoreBackup(backup.path, path, now, schemaOne)).toThrow(refused);
    workbook.close();
    expect(orders(path)).toBe(7);
  });

  it('a journal left by a crash is kept with the old workbook and not played into the new one', async () => {
    const path = workbookWith(5);
    const workbook = openWorkbookFile(path, options);
    const backup = backUp(workbook.db, path, folder(), now);
    workbook.close();
    const writer = startChild('writer.ts', path);
    await writer.firstWord;
    writer.child.kill('SIGKILL');
    await writer.ended;
    const acknowledged = writer.said.out.trim().split('\n').length;
    const { kept } = restoreBackup(backup.path, path, now, schemaOne);
    expect(orders(path)).toBe(5);
    expect(orders(kept ?? '')).toBeGreaterThanOrEqual(5 + acknowledged - 1);
  });

  it('a journal that cannot be settled is kept beside the damaged workbook and not played into the new one', () => {
    const source = workbookWith(300);
    const workbook = openWorkbookFile(source, options);
    const backup = backUp(workbook.db, source, folder(), now);
    addOrders(workbook.db, 2);
    const path = join(folder(), 'drover.hoistday');
    for (const ending of ['', '-wal']) copyFileSync(source + ending, path + ending);
    workbook.close();
    writeFileSync(path, readFileSync(path).fill(0xa5, 4096 * 10, 4096 * 11));
    const journal = readFileSync(`${path}-wal`);
    expect(journal.length).toBeGreaterThan(0);
    const { kept } = restoreBackup(backup.path, path, now, schemaOne);
    expect(Object.keys(contentOf(dirname(path))).length).toBe(3);
    expect(orders(path)).toBe(300);
    expect(readFileSync(`${kept}-wal`).equals(journal)).toBe(true);
  });

  it('restores over a damaged workbook and where there is none', () => {
    const { path, backup, workbook } = withBackup();
    workbook.close();
    const place = folder();
    for (const damaged of [join(place, 'a.hoistday'), join(place, 'b.hoistday')]) {
      if (damaged.endsWith('a.hoistday')) writeFileSync(damaged, readFileSync(path).subarray(0, 9000));
      const { kept } = restoreBackup(backup.path, damaged, now, schemaOne);
      expect(orders(damaged)).toBe(5);
      if (kept !== undefined) expect(readFileSync(kept).length).toBe(9000);
    }
    expect(Object.keys(contentOf(place)).length).toBe(3);
  });

  it.each([
    ['damaged', (content: Buffer) => content.fill(0xa5, 8192, 12288)],
    ['not-a-workbook', (content: Buffer) => content.fill(0, 0, 100)],
    ['newer-version', (content: Buffer) => content.fill(9, 63, 64)],
  ])('refuses a backup that is %s and touches nothing', (code, spoil) => {
    const { path, backup, workbook } = withBackup();
    workbook.close();
    const bad = join(folder(), 'bad.hoistday');
    writeFileSync(bad, spoil(readFileSync(backup.path)));
    const before = contentOf(dirname(path));
    expect(() => restoreBackup(bad, path, now, schemaOne)).toThrow(expect.objectContaining({ code }));
    expect(contentOf(dirname(path))).toEqual(before);
    expect(Object.keys(contentOf(dirname(bad)))).toEqual(['bad.hoistday']);
  });

  it('killed at any point leaves a whole workbook under its name', { timeout: 60_000 }, async () => {
    const { path, backup, workbook } = withBackup();
    workbook.close();
    const random = seeded(11);
    mkdirSync(join(dirname(path), 'rounds'));
    for (let round = 0; round < 12; round += 1) {
      const copy = join(dirname(path), 'rounds', `${round}.hoistday`);
      copyFileSync(path, copy);
      const { child, ended, firstWord } = startChild('back-up.ts', copy, dirname(backup.path), 'restore');
      await firstWord;
      await pause(random(60));
      child.kill('SIGKILL');
      await ended;
      expect([5, 7]).toContain(orders(copy));
    }
    for (const name of readdirSync(join(dirname(path), 'rounds')).filter((entry) => entry.endsWith('.hoistday'))) {
      if (name.startsWith('.')) continue;
      const db = new Database(join(dirname(path), 'rounds', name));
      expect(integrityFindings(db)).toEqual([]);
      db.close();
    }
  });
});
