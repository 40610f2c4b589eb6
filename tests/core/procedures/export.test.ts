import { readSheet } from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { exportTables } from '../../../core/contract/exchange.ts';
import { openListBench, sampleFile, textFile } from './list-bench.ts';

describe('tables on their way out', () => {
  it('has every table as text and as a workbook', async () => {
    const { bench, bring, lists } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    await bring(sampleFile('drover-orders.csv'));
    for (const table of exportTables) {
      const csv = await lists.exportTable({ build: bench.build, table, format: 'csv' });
      expect(csv.name).toBe(`Bench - ${table} - 2026-11-25.csv`);
      expect((await csv.text()).split('\r\n').length).toBeGreaterThan(1);
      const xlsx = await lists.exportTable({ build: bench.build, table, format: 'xlsx' });
      expect(new Uint8Array(await xlsx.arrayBuffer()).slice(0, 2)).toEqual(new Uint8Array([0x50, 0x4b]));
    }
    expect(bench.logged).toEqual([]);
  });

  it('writes the figures that the screens show, as plain numbers', async () => {
    const { bench, bring, lists } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    const money = await (
      await lists.exportTable({ build: bench.build, table: 'money by system', format: 'csv' })
    ).text();
    const block = money.split('\r\n').find((line) => line.startsWith('Block,'));
    const [, , , , , , , forecast] = (block ?? '').split(',');
    // 5245.90: the TOTAL BLOCK row of the sample less what it leaves for two lines without a price.
    expect(forecast).toBe('5245.90');
    const parts = await lists.exportTable({ build: bench.build, table: 'parts', format: 'csv' });
    const lines = (await parts.text()).trim().split('\r\n');
    expect(lines).toHaveLength(112);
    expect(lines.find((line) => line.includes('RBT-716'))).toContain(',9.80,117.60,');
  });

  it('shows a past day', async () => {
    const { bench, bring, lists } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    const past = await lists.exportTable({ build: bench.build, table: 'parts', format: 'csv', asOf: '2026-02-20' });
    expect(past.name).toContain('2026-02-20');
    const text = await past.text();
    expect(text).toContain('BLK-28');
    expect(text).not.toContain('TRB-5862');
  });

  it('writes kind and facts of part lines, and reads the list again', async () => {
    const { bench, lists } = await openListBench();
    const facts = [
      { key: 'injector flow', value: '1050', unit: 'cc/min' },
      { key: 'colour', value: '=red', unit: '' },
    ];
    const parts = [
      { description: 'Injector set', partNumber: 'VI-1050', needMilli: 6000, kind: 'injector', facts },
      { description: 'Bracket', partNumber: 'BR-2', needMilli: 1000 },
    ];
    await bench.client.parts.add({ ...bench.act(), build: bench.build, parts });
    const csv = await (await lists.exportTable({ build: bench.build, table: 'parts', format: 'csv' })).text();
    const [heads, first] = csv.split('\r\n');
    expect(heads).toMatch(/,Note,Kind,Facts$/);
    expect(first).toMatch(/,injector,injector flow: 1050 cc\/min; colour: =red$/);
    const other = await openListBench();
    await other.bring(textFile('again.csv', ...csv.trim().split('\r\n')));
    const again = await other.parts();
    expect([...again.keys()]).toEqual(['VI-1050', 'BR-2']);
    expect(again.get('VI-1050')).toMatchObject({ description: 'Injector set', needMilli: 6000 });
  });

  it('writes text that a spreadsheet could run as text', async () => {
    const { bench, bring, lists } = await openListBench();
    await bring(textFile('list.csv', 'Part,Part no,Qty,Note', '"=1+1",A1,1,@cmd', '+49 bracket,A2,1,-x'));
    const csv = await (await lists.exportTable({ build: bench.build, table: 'parts', format: 'csv' })).text();
    expect(csv).not.toMatch(/(^|,)"?[=+@]/m);
    const xlsx = await lists.exportTable({ build: bench.build, table: 'parts', format: 'xlsx' });
    const rows = await readSheet(Buffer.from(await xlsx.arrayBuffer()));
    expect(rows.flat()).toContain('=1+1');
  });
});
