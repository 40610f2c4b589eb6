import { existsSync, readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { refusalOf } from './bench.ts';
import { openListBench, sampleFile } from './list-bench.ts';

async function fullBench() {
  const full = await openListBench();
  await full.bring(sampleFile('drover-parts.csv'));
  await full.bring(sampleFile('drover-orders.csv'));
  await full.bench.client.journal.undo({ key: 'undo-the-orders' });
  await full.bench.client.workbook.saveSettings({ ...full.bench.act(), settings: { author: 'Ö. Builder' } });
  return full;
}

describe('a whole workbook as text', () => {
  it('becomes the same workbook again', async () => {
    const { bench, lists } = await fullBench();
    const file = await lists.exportWorkbook();
    expect(file.name).toBe('Bench - 2026-11-25.json');
    expect(Array.isArray(JSON.parse(await file.text()))).toBe(true);
    const text = await file.text();
    const made = await lists.importWorkbook({ file, name: 'Bench again' });
    expect(existsSync(made.path)).toBe(true);
    const before = await bench.client.money.summary({ build: bench.build });
    await bench.client.workbook.open({ path: made.path });
    expect(await bench.client.money.summary({ build: bench.build })).toEqual(before);
    expect(await (await lists.exportWorkbook()).text()).toBe(text);
    await bench.verify();
    // What was undone can be done again there, and new numbers follow the old ones.
    await bench.client.journal.redo({ key: 'redo-the-orders' });
    await bench.verify();
    const { entries } = await bench.client.workbook.verify();
    expect(entries).toBeGreaterThan(made.entries);
  });

  it('refuses a name that is taken, and files that are not whole', async () => {
    const { bench, lists } = await fullBench();
    const file = await lists.exportWorkbook();
    const text = await file.text();
    const lines = text.split('\n');
    const attempt = (content: string, name = 'Other') =>
      lists.importWorkbook({ file: new File([content], 'x.json'), name });
    expect(await refusalOf(attempt(text, 'Bench'))).toMatchObject({ code: 'not-allowed-from-here' });
    expect(await refusalOf(attempt(''))).toMatchObject({ code: 'file-unreadable' });
    expect(await refusalOf(attempt('{"some":"thing"}\n'))).toMatchObject({ code: 'file-unreadable' });
    expect(await refusalOf(attempt('a,b\n1,2\n'))).toMatchObject({ code: 'file-unreadable' });
    expect(await refusalOf(attempt(lines.slice(0, -20).join('\n')))).toMatchObject({ code: 'file-unreadable' });
    const newer = text.replace('"version":1', '"version":2');
    expect(await refusalOf(attempt(newer))).toMatchObject({ code: 'newer-version' });
    const odd = text.replace('{"table":"acts"', '{"table":"acts; DROP TABLE parts"');
    expect(await refusalOf(attempt(odd))).toMatchObject({ code: 'file-unreadable' });
    // One posting less: the text is whole by its count only when the count is changed too, and then it doesn't add up.
    const at = lines.findIndex((line) => line.startsWith('{"table":"postings"'));
    const total = Number((JSON.parse(lines.at(-3) as string) as { rows: number }).rows);
    const forged = [
      ...lines.slice(0, at + 1),
      ...lines.slice(at + 2, -3),
      JSON.stringify({ rows: total - 1 }),
      ']',
      '',
    ];
    expect(await refusalOf(attempt(forged.join('\n')))).toMatchObject({ code: 'damaged' });
    const folder = dirname(bench.context.book().path);
    expect(readdirSync(folder).filter((name) => name.includes('Other'))).toEqual([]);
  });
});
