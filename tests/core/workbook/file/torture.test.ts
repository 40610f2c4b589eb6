import { copyFileSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../../core/refusal.ts';
import { integrityFindings } from '../../../../core/workbook/file/checks.ts';
import { refusalFor } from '../../../../core/workbook/file/file-refusals.ts';
import { type OpenWorkbook, openWorkbookFile } from '../../../../core/workbook/file/open-file.ts';
import { salvage } from '../../../../core/workbook/file/salvage.ts';
import { addOrders, contentOf, folder, pause, seeded, startChild, workbookWith } from './sample.ts';
import { now, schemaOne } from './sample-schema.ts';

const options = { now, migrations: schemaOne };
const ids = (db: Database): number[] => db.prepare<[], number>('SELECT id FROM orders ORDER BY id').pluck().all();

it('[D1] a killed writer loses nothing it has acknowledged', { timeout: 120_000 }, async () => {
  const path = workbookWith(0);
  const random = seeded(1);
  const acknowledged = new Set<number>();
  let unprinted = 0;
  for (let round = 0; round < 40; round += 1) {
    const writer = startChild('writer.ts', path);
    await writer.firstWord;
    await pause(random(60));
    writer.child.kill('SIGKILL');
    await writer.ended;
    const whole = writer.said.out.slice(0, writer.said.out.lastIndexOf('\n'));
    for (const line of whole.split('\n')) acknowledged.add(Number(line));
    const { db, close } = openWorkbookFile(path, options);
    expect(integrityFindings(db)).toEqual([]);
    const kept = new Set(ids(db));
    expect([...acknowledged].filter((id) => !kept.has(id))).toEqual([]);
    // At most the one commit that was made but not yet printed when the process died, per kill.
    expect(kept.size - acknowledged.size).toBeLessThanOrEqual(unprinted + 1);
    unprinted = kept.size - acknowledged.size;
    expect(db.prepare('SELECT count(*) FROM lines').pluck().get()).toBe(kept.size);
    close();
  }
  expect(acknowledged.size).toBeGreaterThan(40);
});

describe('[D2] a journal cut short or altered gives back a beginning of the history, without gaps', () => {
  function brokenOff(): { path: string; before: number; file: Buffer; log: Buffer } {
    const path = workbookWith(10);
    const workbook = openWorkbookFile(path, options);
    for (let count = 0; count < 60; count += 1) addOrders(workbook.db, 1);
    const copy = join(folder(), 'a.hoistday');
    for (const ending of ['', '-wal']) copyFileSync(path + ending, copy + ending);
    workbook.close();
    return { path: copy, before: 10, file: readFileSync(copy), log: readFileSync(`${copy}-wal`) };
  }

  it.each([
    ['cut', (log: Buffer, at: number) => log.subarray(0, at)],
    [
      'altered',
      (log: Buffer, at: number, bit: number) => Buffer.from(log).fill((log[at] ?? 0) ^ (1 << bit), at, at + 1),
    ],
  ])('%s', (_, spoil) => {
    const { path, before, file, log } = brokenOff();
    const random = seeded(2);
    const lengths = new Set<number>();
    for (let round = 0; round < 100; round += 1) {
      writeFileSync(path, file);
      writeFileSync(`${path}-wal`, spoil(log, random(log.length), random(8)));
      const { db, close } = openWorkbookFile(path, options);
      const found = ids(db);
      expect(found).toEqual(Array.from({ length: found.length }, (_unused, index) => index + 1));
      expect(found.length).toBeGreaterThanOrEqual(before);
      expect(db.prepare('SELECT count(*) FROM lines').pluck().get()).toBe(found.length * 2);
      expect(integrityFindings(db, 'quick')).toEqual([]);
      lengths.add(found.length);
      close();
    }
    expect(lengths.size).toBeGreaterThan(10);
  });
});

describe('[D4] a full disk', () => {
  it('undoes the transaction it meets, keeps what was saved and works again when there is room', () => {
    const path = workbookWith(20);
    const { db, close } = openWorkbookFile(path, options);
    db.pragma(`max_page_count = ${Number(db.pragma('page_count', { simple: true })) + 1}`);
    let refused: unknown;
    try {
      addOrders(db, 5000);
    } catch (error) {
      refused = refusalFor(error, path);
    }
    expect(refused).toMatchObject({ code: 'disk-full', message: expect.stringContaining('Free some space') });
    expect(db.inTransaction).toBe(false);
    expect(ids(db).length).toBe(20);
    expect(integrityFindings(db)).toEqual([]);
    db.pragma('max_page_count = 1000000');
    addOrders(db, 5000);
    expect(ids(db).length).toBe(5020);
    close();
  });
});

describe('[D6] 500 mutated workbooks', () => {
  const random = seeded(6);
  const mutations: [string, (content: Buffer) => Buffer][] = [
    [
      'a few bytes',
      (content) => {
        for (let count = 0; count <= random(8); count += 1) content[random(content.length)] = random(256);
        return content;
      },
    ],
    [
      'a byte of the header',
      (content) => {
        content[random(100)] = random(256);
        return content;
      },
    ],
    ['a cut', (content) => content.subarray(0, random(content.length))],
    [
      'a run of noise',
      (content) => {
        const at = random(content.length);
        return content.fill(random(256), at, Math.min(content.length, at + random(3000)));
      },
    ],
    [
      'a page in the wrong place',
      (content) => {
        const pages = content.length / 4096;
        content.copy(content, random(pages) * 4096, (random(pages) * 4096) % content.length, content.length);
        return content;
      },
    ],
  ];

  it.each(mutations)('%s: opened whole, or refused and left alone', (_, mutate) => {
    const path = workbookWith(60);
    const healthy = readFileSync(path);
    const codes = new Map<string, number>();
    for (let round = 0; round < 100; round += 1) {
      const content = mutate(Buffer.from(healthy));
      writeFileSync(path, content);
      let workbook: OpenWorkbook | undefined;
      try {
        workbook = openWorkbookFile(path, options);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        expect(error.message).toMatch(/Nothing was changed\.$/);
        codes.set(error.code, (codes.get(error.code) ?? 0) + 1);
        expect(readFileSync(path).equals(content)).toBe(true);
        expect(Object.keys(contentOf(dirname(path)))).toEqual(['drover.hoistday']);
      }
      workbook?.db.prepare('SELECT count(*) FROM orders').get();
      workbook?.close();
    }
    expect([...codes.keys()].filter((code) => !['damaged', 'not-a-workbook', 'newer-version'].includes(code))).toEqual(
      [],
    );
  });

  it('salvaging mutated workbooks ends in a whole new one or in a refusal', () => {
    const path = workbookWith(200);
    const place = folder();
    const healthy = readFileSync(path);
    for (let round = 0; round < 40; round += 1) {
      const [, mutate] = mutations[round % mutations.length] ?? [];
      writeFileSync(path, mutate?.(Buffer.from(healthy)) ?? healthy);
      const target = join(place, `${round}.hoistday`);
      try {
        salvage(path, target, options);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        expect(statSync(target, { throwIfNoEntry: false })).toBeUndefined();
        continue;
      }
      const { close, db } = openWorkbookFile(target, options);
      expect(integrityFindings(db)).toEqual([]);
      close();
    }
  });
});
