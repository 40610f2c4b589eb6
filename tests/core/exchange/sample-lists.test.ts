import { describe, expect, it } from 'vitest';
import { matchOrdersToParts } from '../../../core/exchange/match-orders.ts';
import { planOf, sampleBytes } from './samples.ts';

const parts = await planOf(sampleBytes('drover-parts.csv'));
const part = (row: number) => parts.rows[row - 1]?.part;

describe('the builder’s own list', () => {
  it('gives every row of the file one fate', () => {
    expect(parts.kind).toBe('parts');
    expect(parts.ready).toBe(true);
    expect(parts.counts).toEqual({
      part: 111,
      'order-line': 0,
      section: 10,
      total: 10,
      blank: 10,
      header: 1,
      duplicate: 0,
      attention: 0,
      skipped: 0,
      rowsInFile: 142,
    });
    expect(parts.rows.map((row) => row.row)).toEqual(Array.from({ length: 142 }, (_, index) => index + 1));
  });

  it('comes to the list’s own totals, or says which lines without a price make up the rest', () => {
    const found = parts.sectionTotals.map(({ system, fileTotalMinor, ourTotalMinor, differences }) => [
      system,
      fileTotalMinor,
      ourTotalMinor,
      differences.filter((line) => part(line.row) !== undefined).map((line) => line.row),
    ]);
    // The second figure stands in the sample's TOTAL rows; the third was added up by hand from its lines.
    expect(found).toEqual([
      ['Block', 614210, 524590, [4, 18]],
      ['Head', 304240, 172240, [22]],
      ['Timing', 48950, 48950, []],
      ['Turbo & Exhaust', 416400, 407500, [49, 51, 53]],
      ['Fuel', 217880, 209120, [67]],
      ['Oil & Cooling', 145450, 138050, [83]],
      ['Intake', 116360, 116360, []],
      ['Wiring & Engine Mgmt', 229600, 219200, [111, 114]],
      ['Clutch & Gearbox', 165080, 165080, []],
      ['Consumables', 23400, 21600, [133]],
    ]);
    for (const { ourTotalMinor, fileTotalMinor, differences } of parts.sectionTotals) {
      const explained = differences.reduce((sum, line) => sum + line.amountMinor, 0);
      expect(explained).toBe(ourTotalMinor - fileTotalMinor);
    }
    // The one unknown price under HEAD is what the vendor's order says for it: 1320.00 in the order list.
    expect(parts.sectionTotals[1]?.differences).toMatchObject([{ row: 22, amountMinor: -132000 }]);
  });

  it('reads quantities, guesses, dates and places as they were meant', () => {
    expect(part(10)).toMatchObject({ quantityMilli: 12000, unitPriceMinor: 980, priceIsGuess: true, state: 'snug' });
    expect(part(10)?.estimateLineMinor).toBe(11760);
    expect(part(96)).toMatchObject({ description: 'T bolt clamps 2.5', quantityMilli: 14000, state: 'needed' });
    expect(part(47)).toMatchObject({ quantityMilli: 2000, unit: 'each' });
    expect(part(44)).toMatchObject({ bin: 'box 3', state: 'on-shelf', system: 'Turbo & Exhaust' });
    expect(part(3)).toMatchObject({ orderedOn: '2026-02-06', arrivedOn: '2026-02-15', unitPriceMinor: 145000 });
    expect(part(50)).toMatchObject({ vendor: 'Harbour Hose & Fitting', state: 'back-ordered' });
    expect(part(4)?.unitPriceMinor).toBeUndefined();
  });

  it('keeps what it can’t put elsewhere in the note, and says whose the borrowed part is', () => {
    expect(part(128)).toMatchObject({
      description: 'engine mounts',
      state: 'trial-fitted',
      borrowed: true,
      owner: 'the farm truck',
      note: 'from the farm truck, for trial fit only',
    });
    expect(part(65)?.note).toContain('yes, pile by the door');
    expect(part(112)?.state).toBe('sent-back');
  });

  it('asks for each word once', () => {
    const words = parts.questions.filter((question) => question.kind === 'state');
    expect(words).toHaveLength(18);
    expect(words.find((question) => question.id === 'state:yes')?.rowsConcerned).toHaveLength(16);
    expect(words.find((question) => question.id === 'state:arrivedOn:borrowed')?.column).toBe('Arrived');
  });

  it('lets an answer overrule a guess for all rows with that word', async () => {
    const plan = await planOf(sampleBytes('drover-parts.csv'), { answers: { 'state:yes': 'fitted' } });
    expect(
      plan.rows
        .filter((row) => row.part?.stateText.toLowerCase() === 'yes')
        .every((row) => row.part?.state === 'fitted'),
    ).toBe(true);
  });

  it('gives one spelling for each vendor and system', () => {
    expect(parts.vendors).toHaveLength(13);
    expect(parts.systems).toHaveLength(10);
  });
});

describe('the same list as a workbook', () => {
  it('gives the same plan as the text file', async () => {
    const book = await planOf(sampleBytes('drover-parts.xlsx'));
    // The workbook doesn't keep the last blank row.
    expect(book.counts).toEqual({ ...parts.counts, blank: 9, rowsInFile: 141 });
    const values = (plan: typeof parts) => plan.rows.flatMap((row) => row.part ?? []);
    expect(values(book)).toEqual(values(parts));
    expect(book.sectionTotals).toEqual(parts.sectionTotals);
    expect(book.questions).toEqual(parts.questions);
  });
});

describe('the vendors’ orders', () => {
  it('come in with their charges once and their totals right', async () => {
    const plan = await planOf(sampleBytes('drover-orders.csv'));
    expect(plan.kind).toBe('orders');
    expect(plan.ready).toBe(true);
    expect(plan.counts).toMatchObject({ 'order-line': 78, header: 1, rowsInFile: 79 });
    expect(plan.orders).toHaveLength(68);
    expect(plan.orders.filter((order) => order.differenceMinor !== 0)).toEqual([]);
    // The figures stand in the sample: NO-1176 has two lines, its charges on the first.
    expect(plan.orders.find((order) => order.orderNumber === 'NO-1176')).toMatchObject({
      vendor: 'Northgate Machine',
      orderedOn: '2026-03-17',
      shippingMinor: 1250,
      taxMinor: 13266,
      fileTotalMinor: 175316,
      rows: [10, 11],
      state: 'complete',
    });
    const backOrdered = plan.rows.filter((row) => row.orderLine?.state === 'back-ordered');
    expect(backOrdered.map((row) => row.orderLine?.partNumber)).toEqual(['OF-4', 'MFG', 'IC-76']);
  });

  it('find their parts by part number', async () => {
    const plan = await planOf(sampleBytes('drover-orders.csv'));
    const lines = plan.rows.flatMap((row) => row.orderLine ?? []);
    const known = parts.rows.flatMap((row) => (row.part === undefined ? [] : [{ ...row.part, id: `p${row.row}` }]));
    const matches = matchOrdersToParts(lines, known);
    expect(matches.filter((match) => match.how === 'part number')).toHaveLength(78);
    const ids = matches.map((match) => match.partId);
    expect(new Set(ids).size).toBe(78);
    lines.forEach((line, index) => {
      expect(known.find((entry) => entry.id === ids[index])?.partNumber).toBe(line.partNumber);
    });
  });
});

describe('a list with semicolons and decimal commas', () => {
  it('is read once somebody has said which letters it uses', async () => {
    const asked = await planOf(sampleBytes('garage-eu.csv'));
    expect(asked.ready).toBe(false);
    expect(asked.questions[0]).toMatchObject({ id: 'encoding', guess: 'windows-1252', rowsConcerned: [1] });

    const plan = await planOf(sampleBytes('garage-eu.csv'), { choices: { encoding: 'windows-1252' } });
    expect(plan.ready).toBe(true);
    expect(plan.counts).toMatchObject({ part: 8, header: 1, rowsInFile: 9 });
    expect(plan.findings[0]?.message).toContain('EUR');
    const first = plan.rows[1]?.part;
    expect(first).toMatchObject({ unitPriceMinor: 104000, currency: 'EUR', orderedOn: '2026-02-15', state: 'fitted' });
    expect(plan.rows.flatMap((row) => row.part?.state ?? [])).toEqual([
      'fitted',
      'on-shelf',
      'on-shelf',
      'ordered',
      'back-ordered',
      'on-shelf',
      'needed',
      'needed',
    ]);
    // Added up by hand from the file: 1040,00 + 128,40 + 189,00 + 6 × 140,25 + 285,00 + 3 × 26,40 + 2 × 12,50 + 1420,90.
    const total = plan.rows.reduce((sum, row) => sum + (row.part?.estimateLineMinor ?? 0), 0);
    expect(total).toBe(400900);
  });
});
