import { describe, expect, it } from 'vitest';
import { refusalOf } from './bench.ts';
import { openListBench, sampleFile, textFile } from './list-bench.ts';

describe('the builder’s own list', () => {
  it('comes in as one act, every row told', async () => {
    const { bench, bring, parts } = await openListBench();
    const report = await bring(sampleFile('drover-parts.csv'));
    expect(report.label).toBe('Bringing in drover-parts.csv: 111 part lines');
    expect(report.rows).toHaveLength(142);
    expect(report.counts).toEqual({ part: 111, section: 10, total: 10, blank: 10, header: 1 });
    expect(report.rows.every(({ text }) => text !== '')).toBe(true);
    const all = await parts();
    expect(all.size).toBe(111);
    expect(all.get('RBT-716')).toMatchObject({
      standing: 'snug',
      snugMilli: 12000,
      costMinor: 11760,
      needMilli: 12000,
    });
    expect(all.get('BLK-28')).toMatchObject({ standing: 'in hand', shelfMilli: 1000, costMinor: 145000 });
    expect(all.get('MFG')).toMatchObject({
      standing: 'back-ordered',
      commitmentMinor: 3400,
      backOrderedOn: '2026-10-02',
    });
    expect(all.get('CTS')).toMatchObject({ rejectedMilli: 0, uncoveredMilli: 1000 });
    expect(all.get('EM')).toMatchObject({ trialMilli: 2000, borrowedOnMilli: 2000, placedMilli: 2000 });
    expect(all.get('SP-20')).toMatchObject({ inspectionMilli: 1000 });
    expect(all.get('VB-3')).toMatchObject({ standing: 'needed', uncoveredMilli: 2000 });
    expect(all.get('TRB-5862')?.['bin']).not.toBeNull();
    const decisions = await bench.client.records.list({ kind: 'decision', build: bench.build });
    expect(decisions.map(({ values }) => values['title'])).toContain('Keep injectors 1050 cc set of 6?');
    expect(bench.logged).toEqual([]);
    await bench.verify();
  });

  it('comes to the list’s own totals by system, but for the lines without a price', async () => {
    const { bench, bring } = await openListBench();
    await bring(sampleFile('drover-parts.csv'));
    const rows = await bench.client.money.by({ build: bench.build, by: 'system' });
    // The TOTAL rows of the sample, less what its own totals leave for lines without a price (added up by hand). The
    // forecast of Wiring leaves out the wrong sensor that went back: its claim is not part of it.
    const wanted: Record<string, number> = {
      Block: 524590,
      Head: 172240,
      Timing: 48950,
      'Turbo & Exhaust': 407500,
      Fuel: 209120,
      'Oil & Cooling': 138050,
      Intake: 116360,
      'Wiring & Engine Mgmt': 219200,
      'Clutch & Gearbox': 165080,
      Consumables: 21600,
    };
    const forecast = Object.fromEntries(
      rows.filter(({ id }) => id !== null).map(({ name, forecastMinor }) => [name, forecastMinor]),
    );
    expect(forecast).toEqual(wanted);
  });

  it('is taken back by one undo, and may come again after it', async () => {
    const { bench, bring, parts, lists } = await openListBench();
    const report = await bring(sampleFile('drover-parts.csv'));
    await bench.client.journal.undo({ key: 'undo-the-list' });
    expect((await parts()).size).toBe(0);
    expect(await bench.client.orders.list({ build: bench.build })).toEqual([]);
    expect(await bench.client.records.list({ kind: 'system', build: bench.build })).toEqual([]);
    expect((await bench.client.money.summary({ build: bench.build })).forecastMinor).toBe(0);
    await bench.verify();
    expect(await lists.imports({ build: bench.build })).toMatchObject([
      { act: report.act, fileName: 'drover-parts.csv', rows: 142, written: 111, undone: true },
    ]);
    expect((await lists.read({ file: sampleFile('drover-parts.csv') })).known).toBeNull();
    await bench.client.journal.redo({ key: 'redo-the-list' });
    expect((await parts()).size).toBe(111);
    expect((await lists.imports({ build: bench.build }))[0]?.undone).toBe(false);
    await bench.verify();
    await bench.client.journal.undo({ key: 'undo-it-again' });
    await bring(sampleFile('drover-parts.csv'));
    expect((await parts()).size).toBe(111);
    await bench.verify();
  });

  it('is known when the same bytes come again, and as a workbook with the same rows', async () => {
    const { bench, bring, parts, lists } = await openListBench();
    const { act, label } = await bring(sampleFile('drover-parts.csv'));
    expect((await lists.read({ file: sampleFile('drover-parts.csv') })).known).toEqual({
      act,
      label,
      on: '2026-11-25',
    });
    expect(await refusalOf(bring(sampleFile('drover-parts.csv')))).toMatchObject({ code: 'file-known' });
    expect(await refusalOf(bring(sampleFile('drover-parts.csv'), { again: true }))).toMatchObject({
      code: 'file-known',
    });
    expect(await refusalOf(bring(sampleFile('drover-parts.xlsx')))).toMatchObject({ code: 'file-known' });
    expect((await parts()).size).toBe(111);
    await bench.verify();
  });

  it('gives the same figures from the workbook file', async () => {
    const csv = await openListBench();
    await csv.bring(sampleFile('drover-parts.csv'));
    const xlsx = await openListBench();
    await xlsx.bring(sampleFile('drover-parts.xlsx'));
    const figures = async ({ bench }: typeof csv) => bench.client.money.summary({ build: bench.build });
    expect(await figures(xlsx)).toEqual(await figures(csv));
    await xlsx.bench.verify();
  });

  it('counts what was ordered as paid when the list is said to be of paid things', async () => {
    const { bench, bring } = await openListBench();
    const defaults = { currency: 'USD', paid: 'paid', missingQuantityIsOne: false } as const;
    await bring(sampleFile('drover-parts.csv'), { defaults });
    const money = await bench.client.money.summary({ build: bench.build });
    expect(money.stillToPayMinor).toBe(-1800); // only the wrong sensor's 18.00 is owed to us
    await bench.verify();
  });

  it('answers a retried request with the first report', async () => {
    const { bench, lists, choicesFor, parts } = await openListBench();
    const { token } = await lists.read({ file: sampleFile('drover-parts.csv') });
    const input = { ...choicesFor(token), ...bench.act() };
    const first = await lists.bringIn(input);
    expect(await lists.bringIn(input)).toEqual(first);
    expect(await lists.report({ act: first.act })).toEqual(first);
    expect((await parts()).size).toBe(111);
  });
});

describe('a list in another language and code page', () => {
  it('waits for the encoding, then comes in with its own currency', async () => {
    const { bench, bring, parts } = await openListBench({ currency: 'EUR' });
    const asked = await refusalOf(bring(sampleFile('garage-eu.csv')));
    expect(asked).toMatchObject({ code: 'bad-input', field: 'encoding' });
    const report = await bring(sampleFile('garage-eu.csv'), { encoding: 'windows-1252' });
    expect(report.counts['part']).toBe(8);
    const all = await parts();
    expect(all.get('PS-9350')).toMatchObject({ fittedMilli: 1000, costMinor: 104000 });
    expect(all.get('INJ')).toMatchObject({ placedMilli: 6000, commitmentMinor: 84150 });
    expect(all.get('FR-6')).toMatchObject({ standing: 'back-ordered' });
    // Added up by hand from the file: 1040,00 + 128,40 + 189,00 + 6 × 140,25 + 285,00 + 3 × 26,40 + 2 × 12,50 + 1420,90.
    expect((await bench.client.money.summary({ build: bench.build })).forecastMinor).toBe(400900);
    await bench.verify();
  });

  it('needs a rate when the workbook is in another currency', async () => {
    const { bench, bring, parts } = await openListBench();
    const refused = await refusalOf(bring(sampleFile('garage-eu.csv'), { encoding: 'windows-1252' }));
    expect(refused).toMatchObject({ code: 'no-rate', field: 'rate' });
    expect((await parts()).size).toBe(0);
    await bench.client.records.save({
      ...bench.act(),
      kind: 'rate',
      values: { currency: 'EUR', on: '2026-01-01', rate: '1.1' },
    });
    await bring(sampleFile('garage-eu.csv'), { encoding: 'windows-1252' });
    // 1040.00 EUR at 1.1 is 1144.00 USD.
    expect((await parts()).get('PS-9350')).toMatchObject({ costMinor: 114400 });
    await bench.verify();
  });
});

describe('rows that say unusual things', () => {
  const heading = 'Part,Part no,Qty,Price,Vendor,Ordered,Arrived,Status,Note';
  it('keeps them, with what needs an eye', async () => {
    const { bench, bring, parts, gate } = await openListBench();
    const report = await bring(
      textFile(
        'odd.csv',
        heading,
        'owned plate,A1,2,10.00,Keld Supply,,,got it,',
        'donor gear,A2,1,,,,,from the donor,',
        'odd word,A3,1,5.00,Keld Supply,2026-03-01,,zebra,',
        'checked bolt,A4,4,1.00,Keld Supply,2026-03-01,2026-03-05,torqued,',
        'wrong seal,A5,1,7.00,Keld Supply,2026-03-01,2026-03-05,wrong one,',
        'dropped line,A6,3,2.00,Keld Supply,,,not needed,',
        'arrived first,A7,1,3.00,Keld Supply,2026-03-09,2026-03-05,yes,',
        '"=HYPERLINK(""http://example.org"")",A8,1,1.00,Keld Supply,,,need,',
      ),
    );
    expect(report.counts).toMatchObject({ part: 8, header: 1 });
    const all = await parts();
    expect(all.get('A1')).toMatchObject({ shelfMilli: 2000, costMinor: 2000, paidMinor: 2000 });
    expect(all.get('A2')).toMatchObject({ shelfMilli: 1000 });
    expect(String(all.get('A3')?.['attention'])).toContain('zebra');
    expect(all.get('A3')).toMatchObject({ placedMilli: 1000 });
    expect(all.get('A4')).toMatchObject({ verifiedMilli: 4000, standing: 'final' });
    expect(all.get('A5')).toMatchObject({ rejectedMilli: 1000, standing: 'wrong' });
    expect(all.get('A6')).toMatchObject({ needMilli: 0, standing: 'not needed' });
    expect(all.get('A7')).toMatchObject({ shelfMilli: 1000 });
    expect(String(all.get('A7')?.['attention'])).toContain('before it was ordered');
    const review = await gate.review({ build: bench.build });
    expect(review.blockers.map(({ title }) => title)).toContain('wrong seal');
    await bench.verify();
  });

  it('names the row and the column that stand in the way', async () => {
    const { bring, parts } = await openListBench();
    const refused = await refusalOf(
      bring(textFile('bad.csv', heading, 'plate,A1,2,10.00,Keld Supply,,,,', 'gear,A2,many,1.00,Keld Supply,,,,')),
    );
    expect(refused).toMatchObject({ code: 'bad-input', field: 'Qty', detail: { rows: [3] } });
    expect(refused.message).toMatch(/^Row 3, column “Qty”: .* Nothing was changed\.$/);
    expect((await parts()).size).toBe(0);
  });

  it('keeps a confirmed mapping for the next file with the same headings', async () => {
    const { lists, choicesFor, bench } = await openListBench();
    const one = await lists.read({ file: textFile('one.csv', 'What,Code,Qty,Extra', 'plate,A1,2,left bank') });
    const [guess] = one.mappings;
    if (guess === undefined) throw new Error('no mapping');
    const mapping = {
      ...guess,
      columns: guess.columns.map((column) =>
        column.title === 'Extra' ? { ...column, field: 'note' as const, because: 'user' as const } : column,
      ),
    };
    await lists.bringIn({ ...choicesFor(one.token, { mapping }), ...bench.act() });
    const two = await lists.read({ file: textFile('two.csv', 'What,Code,Qty,Extra', 'gear,A2,1,right bank') });
    expect(two.mappings[0]?.columns.find(({ title }) => title === 'Extra')).toMatchObject({
      field: 'note',
      because: 'user',
    });
    const twice = { ...mapping, columns: mapping.columns.map((column) => ({ ...column, field: 'note' as const })) };
    expect(await refusalOf(lists.plan(choicesFor(two.token, { mapping: twice })))).toMatchObject({ code: 'bad-input' });
  });
});
