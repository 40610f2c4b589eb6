import { describe, expect, it } from 'vitest';
import { refusalOf } from './bench.ts';
import { openListBench, sampleFile, textFile } from './list-bench.ts';

describe('the vendors’ orders after the builder’s list', () => {
  it('complete what the list told of and double nothing', async () => {
    const { bench, bring, parts } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    const before = await parts();
    const ordersBefore = await bench.client.orders.list({ build: bench.build });
    const report = await bring(sampleFile('drover-orders.csv'));
    expect(report.label).toBe('Bringing in drover-orders.csv: 78 order lines');
    expect(report.rows.filter(({ fate }) => fate === 'order-line').every(({ part }) => part !== null)).toBe(true);
    const after = await parts();
    expect(after.size).toBe(before.size);
    // Every quantity stands where it stood, but for the mounts, whose own pair the vendor's order says has come.
    for (const [number, part] of after) {
      const was = before.get(number);
      if (number === 'EM') continue;
      for (const key of [
        'onOrderMilli',
        'shelfMilli',
        'fittedMilli',
        'snugMilli',
        'inspectionMilli',
        'uncoveredMilli',
      ]) {
        expect([number, key, part[key]]).toEqual([number, key, was?.[key]]);
      }
    }
    expect(after.get('EM')).toMatchObject({ shelfMilli: 2000, onOrderMilli: 0, trialMilli: 2000 });
    expect(await bench.client.orders.list({ build: bench.build })).toHaveLength(ordersBefore.length);
    expect(bench.logged).toEqual([]);
    await bench.verify();
  });

  it('carry the charges of each order onto its lines', async () => {
    const { bench, bring, parts } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    await bring(sampleFile('drover-orders.csv'));
    const all = await parts();
    // From the file: 1450.00 + 9.95 + 119.62 = 1579.57.
    expect(all.get('BLK-28')).toMatchObject({ costMinor: 157957 });
    // One order of two lines, by hand: 1753.16 in all, shared by goods 1320.00 and 288.00.
    const head = Number(all.get('HD-P')?.['costMinor']);
    const lifters = Number(all.get('LF-12')?.['costMinor']);
    expect(head + lifters).toBe(175316);
    const orders = await bench.client.orders.list({ build: bench.build });
    // The list dates the two lines two days apart, so the vendor's order stands as two that add up to it.
    const both = orders.filter(({ number }) => number.startsWith('NO-1176'));
    expect(both.map(({ number, standing }) => [number, standing])).toEqual([
      ['NO-1176 / 2', 'received'],
      ['NO-1176', 'received'],
    ]);
    expect(both.reduce((sum, { totalMinor }) => sum + totalMinor, 0)).toBe(175316);
    // All order totals of the file, added up by hand in a spreadsheet, stand in the orders that carry its numbers.
    const text = await sampleFile('drover-orders.csv').text();
    const totals = text
      .trim()
      .split('\n')
      .slice(1)
      .flatMap((line) => /,(\d+\.\d\d),(?:open|complete)\s*$/.exec(line)?.[1] ?? []);
    const inFile = totals.reduce((sum, total) => sum + Math.round(Number(total) * 100), 0);
    const numbered = orders.filter(({ number }) => number !== '');
    // Two orders of the list can carry lines that the file doesn't know; those are the difference.
    const known = new Set(
      (await bench.client.parts.rows({ build: bench.build, from: 0, count: 5000 })).rows.map((row) => row[0]),
    );
    expect(known.size).toBe(111);
    let others = 0;
    for (const { id } of numbered) {
      const { lines } = await bench.client.orders.detail({ order: id });
      for (const line of lines) if (!text.includes(`,${line.partNumber},`)) others += line.landed.landedMinor;
    }
    expect(numbered.reduce((sum, { totalMinor }) => sum + totalMinor, 0) - others).toBe(inFile);
    await bench.verify();
  });

  it('are taken back alone, and then the list stands as it stood', async () => {
    const { bench, bring, parts } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    const before = await parts();
    await bring(sampleFile('drover-orders.csv'));
    await bench.client.journal.undo({ key: 'undo-the-orders' });
    const strip = (map: typeof before) => [...map.values()].map(({ revision: _revision, ...part }) => part);
    expect(strip(await parts())).toEqual(strip(before));
    await bench.verify();
    await bring(sampleFile('drover-orders.csv'));
    await bench.verify();
  });

  it('pay what they say was paid, on top of what the list paid', async () => {
    const { bench, bring } = await openListBench();
    const defaults = { currency: 'USD', paid: 'paid', missingQuantityIsOne: false } as const;
    await bring(sampleFile('drover-parts.csv'), { defaults });
    await bring(sampleFile('drover-orders.csv'), { defaults });
    const cards = await bench.client.orders.list({ build: bench.build });
    expect(cards.reduce((sum, { totalBaseMinor, paidBaseMinor }) => sum + totalBaseMinor - paidBaseMinor, 0)).toBe(0);
    await bench.verify();
  });
});

describe('an orders file by itself', () => {
  it('makes the part lines, the orders and what came', async () => {
    const { bench, bring, parts } = await openListBench();
    await bring(sampleFile('drover-orders.csv'));
    const all = await parts();
    expect(all.size).toBe(78);
    const orders = await bench.client.orders.list({ build: bench.build });
    expect(orders).toHaveLength(68);
    expect(all.get('BLK-28')).toMatchObject({ standing: 'in hand', costMinor: 157957 });
    expect(all.get('MFG')).toMatchObject({ standing: 'back-ordered' });
    expect(all.get('SP-20')).toMatchObject({ standing: 'in transit' });
    expect(all.get('HE-8-0')).toMatchObject({ standing: 'ordered', placedMilli: 2000 });
    await bench.undoAndRedo();
  });

  it('is proposed part by part, and overruled by hand', async () => {
    const { bench, lists, choicesFor, bring, parts } = await openListBench();
    await bring(textFile('parts.csv', 'Part,Part no,Qty,Price', 'front seal,FS-1,1,5.00', 'rear seal,RS-1,1,6.00'));
    const all = await parts();
    const [front, rear] = [Number(all.get('FS-1')?.['id']), Number(all.get('RS-1')?.['id'])];
    const file = textFile(
      'orders.csv',
      'order,date,vendor,sku,item,ordered,unit price,shipping,tax,status',
      'K-1,2026-05-05,Keld Supply,FS-1,front seal,1,5.50,1.00,0.50,open',
    );
    const { token } = await lists.read({ file });
    const plan = await lists.plan(choicesFor(token));
    expect(plan.matches).toMatchObject([{ row: 2, part: front, how: 'part number', description: 'front seal' }]);
    const byHand = await lists.plan(choicesFor(token, { matches: { '2': rear } }));
    expect(byHand.matches).toMatchObject([{ row: 2, part: rear, how: 'by hand' }]);
    expect(await refusalOf(lists.plan(choicesFor(token, { matches: { '2': 9999 } })))).toMatchObject({
      code: 'not-found',
    });
    await lists.bringIn({ ...choicesFor(token, { matches: { '2': rear } }), ...bench.act() });
    const after = await parts();
    expect(after.get('RS-1')).toMatchObject({ placedMilli: 1000, commitmentMinor: 700 });
    expect(after.get('FS-1')).toMatchObject({ placedMilli: 0, uncoveredMilli: 1000 });
    await bench.verify();
  });

  it('places a second order where the days lie too far apart or the quantity differs', async () => {
    const { bench, bring, parts } = await openListBench();
    await bring(
      textFile('parts.csv', 'Part,Part no,Qty,Price,Vendor,Ordered', 'hose,H-1,2,5.00,Keld Supply,2026-01-05'),
    );
    await bring(
      textFile(
        'orders.csv',
        'order,date,vendor,sku,item,ordered,unit price,shipping,tax,status',
        'K-9,2026-05-05,Keld Supply,H-1,hose,2,5.00,0.00,0.00,open',
      ),
    );
    expect((await parts()).get('H-1')).toMatchObject({ placedMilli: 4000 });
    await bench.verify();
  });
});

describe('all or nothing', () => {
  // Case D86: derived by hand, recomputed independently.
  const heading = 'order,date,vendor,sku,item,ordered,unit price,shipping,tax,status';
  const line = (order: string, sku: string, quantity: string) =>
    `${order},2026-05-05,Keld Supply,${sku},${sku} thing,${quantity},5.00,0.00,0.00,open`;
  const rows = (third: string) => [
    heading,
    line('K-1', 'A1', '1'),
    line('K-2', 'A2', '2'),
    line('K-3', 'A3', third),
    line('K-4', 'A4', '4'),
    line('K-2', 'A2', '2'),
  ];

  it('writes none of five rows while one is bad, then four and a duplicate, then nothing (D86)', async () => {
    const { bench, bring, lists, choicesFor, parts } = await openListBench();
    const bad = textFile('five.csv', ...rows('some'));
    const { token } = await lists.read({ file: bad });
    const { plan } = await lists.plan(choicesFor(token));
    expect(plan.rows.slice(1).map(({ fate }) => fate)).toEqual([
      'order-line',
      'order-line',
      'attention',
      'order-line',
      'duplicate',
    ]);
    const refused = await refusalOf(bring(bad));
    expect(refused).toMatchObject({ code: 'bad-input', field: 'ordered', detail: { rows: [4] } });
    expect((await parts()).size).toBe(0);
    expect(await lists.imports({ build: bench.build })).toEqual([]);
    const report = await bring(textFile('five.csv', ...rows('3')));
    expect(report.counts).toEqual({ header: 1, 'order-line': 4, duplicate: 1 });
    expect(report.rows.at(-1)?.text).toContain('row 3');
    expect(await refusalOf(bring(textFile('five.csv', ...rows('3'))))).toMatchObject({ code: 'file-known' });
    expect((await parts()).size).toBe(4);
    await bench.verify();
  });

  it('knows a row with the same key and other content as a conflict, and overwrites nothing', async () => {
    const { bench, bring, parts } = await openListBench();
    await bring(textFile('one.csv', heading, line('K-1', 'A1', '1')));
    const refused = await refusalOf(bring(textFile('two.csv', heading, line('K-1', 'A1', '2'))));
    expect(refused.message).toContain('Nothing is overwritten');
    expect((await parts()).get('A1')).toMatchObject({ placedMilli: 1000 });
    await bench.verify();
  });
});
