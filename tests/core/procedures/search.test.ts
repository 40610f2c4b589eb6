import { describe, expect, it } from 'vitest';
import { searchWorkbook } from '../../../core/workbook/store/search.ts';
import { openListBench, sampleFile } from './list-bench.ts';

describe('search', () => {
  it('finds parts, orders, vendors, bins, systems and decisions by all words, the best first', async () => {
    const { bench, bring, search } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    await bring(sampleFile('drover-orders.csv'));
    const kinds = async (text: string) =>
      (await search.find({ text, build: bench.build })).map(({ kind, title }) => `${kind}: ${title}`);
    expect((await kinds('head stud'))[0]).toBe('part: head studs M11x1.25 kit');
    expect(await kinds('STUD Head')).toContain('part: head studs M11x1.25 kit');
    expect(await kinds('NO-1052')).toEqual(['order: NO-1052']);
    expect((await kinds('northgate'))[0]).toBe('vendor: Northgate Machine');
    expect(await kinds('box 3')).toContain('bin: box 3');
    expect((await kinds('fuel'))[0]).toBe('system: Fuel');
    expect(await kinds('keep injectors')).toEqual(['decision: Keep injectors 1050 cc set of 6?']);
    expect(await kinds('tarnwell')).toEqual(['build: Drover 302']);
    expect(await kinds('  ')).toEqual([]);
    expect(await kinds('100%_')).toEqual([]);
    expect((await search.find({ text: 'e' })).length).toBe(40);
  });

  it('finds names with accents without them', async () => {
    const { bench, search } = await openListBench();
    await bench.client.records.save({ ...bench.act(), kind: 'vendor', values: { name: 'Krümmerbau Öst' } });
    expect(await search.find({ text: 'krummer ost' })).toMatchObject([{ kind: 'vendor', title: 'Krümmerbau Öst' }]);
  });

  it('finds one line among 100 000 (how long it takes is measured by the benchmark)', async () => {
    const { bench } = await openListBench();
    const { connection } = bench.context.book();
    const insert = connection.sqlite.prepare(
      "INSERT INTO parts (build, description, part_number, folded) VALUES (?, ?, ?, ? || ' ' || ?)",
    );
    connection.sqlite.transaction(() => {
      for (let number = 0; number < 100_000; number += 1) {
        const text = `bracket number ${number} for the loom`;
        insert.run(bench.build, text, `BR-${number}`, text, `br-${number}`);
      }
    })();
    const hits = (text: string): string[] => searchWorkbook(connection, text, bench.build).map(({ title }) => title);
    expect(hits('br-99999')).toEqual(['bracket number 99999 for the loom']);
    expect(hits('loom bracket').length).toBeGreaterThan(1);
    expect(hits('nothing at all')).toEqual([]);
  });
});
