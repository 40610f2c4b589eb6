import { describe, expect, it } from 'vitest';
import { changeMapping, guessMapping } from '../../../core/exchange/guess-mapping.ts';
import { planImport } from '../../../core/exchange/plan-import.ts';
import { defaults, list, planOf, tableOf } from './samples.ts';

const errors = (plan: Awaited<ReturnType<typeof planOf>>, row: number) =>
  plan.rows[row - 1]?.findings.filter((finding) => finding.severity === 'error') ?? [];

describe('D86 all or nothing', () => {
  // Source: derived by hand, recomputed independently. The list has a heading, so its five rows are rows 2 to 6.
  const file = (third: string) =>
    list(
      'order,line,vendor,part no,item,ordered,unit price,shipping',
      'Q-1,1,Quarry Lane Engines,BLT-1,bolt,4,1.50,',
      'Q-1,2,Quarry Lane Engines,NUT-1,nut,4,0.50,',
      `Q-1,3,Quarry Lane Engines,STD-1,stud,${third},2.00,`,
      'Q-1,4,Quarry Lane Engines,WSH-1,washer,8,0.10,',
      'Q-1,2,Quarry Lane Engines,NUT-1,nut,4,0.50,',
    );
  const fates = (plan: Awaited<ReturnType<typeof planOf>>) => plan.rows.slice(1).map((row) => row.fate);

  it('is not ready while one row is bad, and says which column and why', async () => {
    const plan = await planOf(file('some'));
    expect(plan.ready).toBe(false);
    expect(fates(plan)).toEqual(['order-line', 'order-line', 'attention', 'order-line', 'duplicate']);
    expect(errors(plan, 4)).toMatchObject([{ column: 'ordered', text: 'some' }]);
    expect(plan.rows[5]?.duplicateOf).toBe('row 3');
  });

  it('is ready once the row is mended or skipped, the duplicate still in the report', async () => {
    const mended = await planOf(file('4'));
    expect(mended.ready).toBe(true);
    expect(mended.counts).toMatchObject({ 'order-line': 4, duplicate: 1, header: 1, rowsInFile: 6 });
    const skipped = await planOf(file('some'), { answers: { 'row:4': 'skip' } });
    expect(skipped.ready).toBe(true);
    expect(fates(skipped)).toEqual(['order-line', 'order-line', 'skipped', 'order-line', 'duplicate']);
  });

  it('finds every row known the second time, and a changed one in conflict', async () => {
    const first = await planOf(file('4'));
    const known = first.rows.flatMap(({ fate, key, content, row }) =>
      fate === 'order-line' && key !== undefined && content !== undefined ? [{ key, content, id: `line ${row}` }] : [],
    );
    const again = await planOf(file('4'), { known });
    expect(fates(again)).toEqual(['duplicate', 'duplicate', 'duplicate', 'duplicate', 'duplicate']);
    const changed = await planOf(file('6'), { known });
    expect(changed.ready).toBe(false);
    expect(errors(changed, 4)[0]?.message).toContain('line 4');
    const own = await planOf(file('6'), { known, answers: { 'row:4': 'import' } });
    expect(own.rows[3]).toMatchObject({ fate: 'order-line' });
    expect(known.map((row) => row.key)).not.toContain(own.rows[3]?.key);
  });
});

describe('rows without an order number', () => {
  it('live twice when they stand there twice, and are known again', async () => {
    const file = list('part,qty,price,ordered', 'clip,2,1.00,2026-01-05', 'clip,2,1.00,2026-01-05');
    const plan = await planOf(file);
    expect(plan.counts.part).toBe(2);
    expect(plan.rows[1]?.key).not.toBe(plan.rows[2]?.key);
    const known = plan.rows.flatMap(({ key, content }) => (key && content ? [{ key, content, id: 'x' }] : []));
    expect((await planOf(file, { known })).counts.duplicate).toBe(2);
  });
});

describe('questions', () => {
  it('D83: asks for the order of day and month once for a column and reads nothing until it is answered', async () => {
    // Source: derived by hand, recomputed independently.
    const file = list('part,qty,ordered', 'bolt,1,03/04/2026', 'nut,1,11/12/2025');
    const plan = await planOf(file, { defaults: { dateOrder: 'day-first' } });
    expect(plan.ready).toBe(false);
    expect(plan.questions).toMatchObject([
      {
        id: 'date-order:2',
        kind: 'date-order',
        guess: 'day-first',
        rowsConcerned: [2, 3],
        blocking: true,
        answer: null,
      },
    ]);
    expect(plan.rows[1]?.part?.orderedOn).toBeUndefined();
    const answered = await planOf(file, { answers: { 'date-order:2': 'month-first' } });
    expect(answered.ready).toBe(true);
    expect(answered.rows.flatMap((row) => row.part?.orderedOn ?? [])).toEqual(['2026-03-04', '2025-11-12']);
    expect(answered.questions[0]?.answer).toBe('month-first');
  });

  it('D84: reports both rows of a column that contradicts itself, and guesses nothing', async () => {
    // Source: derived by hand, recomputed independently.
    const plan = await planOf(list('part,qty,ordered', 'bolt,1,25/03/2026', 'nut,1,03/25/2026'));
    expect(plan.ready).toBe(false);
    expect(plan.rows.map((row) => row.fate)).toEqual(['header', 'attention', 'attention']);
    expect(plan.questions[0]?.guess).toBeNull();
    for (const row of [2, 3]) expect(errors(plan, row)[0]?.message).toMatch(/Row 2 .* row 3/);
  });

  it('asks what 1,234 is when no row of the column shows it', async () => {
    const file = list('part;qty;price', 'block;1;1,234', 'head;1;99');
    const plan = await planOf(file);
    expect(plan.ready).toBe(false);
    expect(plan.questions[0]).toMatchObject({ id: 'decimal-mark:2', rowsConcerned: [2], guess: null });
    expect(plan.rows[1]?.part?.unitPriceMinor).toBeUndefined();
    const point = await planOf(file, { answers: { 'decimal-mark:2': '.' } });
    expect(point.rows[1]?.part?.unitPriceMinor).toBe(123400);
    const comma = await planOf(file, { answers: { 'decimal-mark:2': ',' } });
    expect(comma.rows[1]?.part).toMatchObject({ unitPriceMinor: 123, unitPriceE4: 1234000 });
    expect(comma.ready).toBe(true);
    expect((await planOf(file, { defaults: { decimalMark: '.' } })).ready).toBe(true);
  });

  it('takes a blank quantity as one only when it is told to', async () => {
    const file = list('part,qty,price', 'bolt,,1.00', 'nut,4,1.00');
    const asked = await planOf(file);
    expect(asked.ready).toBe(false);
    expect(asked.questions[0]).toMatchObject({ id: 'missing-quantity', rowsConcerned: [2] });
    const told = await planOf(file, { answers: { 'missing-quantity': 'one' } });
    expect(told.rows[1]?.part?.quantityMilli).toBe(1000);
    expect(told.ready).toBe(true);
    expect((await planOf(file, { defaults: { missingQuantityIsOne: true } })).ready).toBe(true);
    const left = await planOf(file, { answers: { 'missing-quantity': 'leave' } });
    expect(left.rows[1]?.fate).toBe('attention');
  });

  it('asks which holds when quantity times price is not the line total', async () => {
    const file = list('order,vendor,item,ordered,unit price,line total,shipping', 'Q-1,Quarry,bolt,4,1.50,6.50,1.00');
    const plan = await planOf(file);
    expect(plan.ready).toBe(false);
    expect(plan.questions.map((question) => question.id)).toContain('line-total');
    expect(errors(plan, 2)[0]?.message).toMatch(/600.*650/);
    const total = await planOf(file, { answers: { 'line-total': 'line-total' } });
    expect(total.rows[1]?.orderLine?.lineTotalMinor).toBe(650);
    const product = await planOf(file, { answers: { 'line-total': 'quantity-times-price' } });
    expect(product.rows[1]?.orderLine?.lineTotalMinor).toBe(600);
    // One minor unit apart is rounding.
    const near = list('order,vendor,item,ordered,unit price,line total,shipping', 'Q-1,Quarry,bolt,3,1.3333,3.99,1.00');
    expect((await planOf(near)).ready).toBe(true);
  });
});

describe('quantities', () => {
  it.each([
    ['x14', 14000, 'each'],
    ['14x', 14000, 'each'],
    ['2 off', 2000, 'each'],
    ['1pcs', 1000, 'each'],
    ['5 L', 5000, 'L'],
    ['"4,5 m"', 4500, 'm'],
    ['2.5 ft', 2500, 'ft'],
    ['pair', 1000, 'pair'],
    ['3 Stk.', 3000, 'each'],
  ])('reads %s', async (text, quantityMilli, unit) => {
    const plan = await planOf(list('part,qty', `hose,${text}`));
    expect(plan.rows[1]?.part).toMatchObject({ quantityMilli, unit });
  });

  it.each(['0', '-2', '1.5', 'some', '"1,000"', '?', '1e3', '99999999'])('blocks the row for %s', async (text) => {
    const plan = await planOf(list('part,qty', `bolt,${text}`));
    expect(plan.rows[1]?.fate).toBe('attention');
    expect(errors(plan, 2)[0]).toMatchObject({ column: 'qty' });
    expect(errors(plan, 2)[0]?.accepted).not.toBe('');
  });
});

describe('prices', () => {
  it.each([
    ['~9.8', { unitPriceMinor: 980, priceIsGuess: true }],
    ['ca. 9.80', { unitPriceMinor: 980, priceIsGuess: true }],
    ['"9,80 €"', { unitPriceMinor: 980, currency: 'EUR' }],
    ['0.0125', { unitPriceMinor: 1, unitPriceE4: 12500, estimateLineMinor: 4 }],
    ['0.0135', { unitPriceMinor: 1, unitPriceE4: 13500, estimateLineMinor: 4 }],
    ['(5.00)', {}],
  ])('reads %s', async (text, expected) => {
    // 3 × 1.25 = 3.75 and 3 × 1.35 = 4.05 minor units: both are 4, half away from zero.
    const plan = await planOf(list('part,qty,price', `bolt,3,${text}`));
    expect(plan.rows[1]?.part).toMatchObject(expected);
  });

  it.each(['?', 'TBD', 'n/a', '-'])('takes %s as not known', async (text) => {
    const plan = await planOf(list('part,qty,price', `bolt,3,${text}`, 'nut,1,2.00'));
    expect(plan.rows[1]?.part?.unitPriceMinor).toBeUndefined();
    expect(plan.rows[1]?.findings).toMatchObject([{ severity: 'attention', column: 'price', text }]);
    expect(plan.ready).toBe(true);
  });

  it('keeps words about a price in the note of a part, and lets them block an order line', async () => {
    const part = await planOf(list('part,qty,price', 'bolt,3,ask the shop', 'nut,1,2.00'));
    expect(part.rows[1]?.part?.note).toBe('price: ask the shop');
    const line = await planOf(
      list('order,vendor,item,ordered,unit price,tax', 'Q-1,Quarry,bolt,3,ask the shop,1', 'Q-1,Quarry,nut,1,2.00,'),
    );
    expect(line.rows[1]?.fate).toBe('attention');
    const wanted = await planOf(
      list('order,vendor,item,ordered,unit price,tax', 'Q-1,Quarry,bolt,3,ask the shop,1', 'Q-1,Quarry,nut,1,2.00,'),
      { answers: { 'row:2': 'import' } },
    );
    expect(wanted.rows[1]).toMatchObject({ fate: 'order-line', orderLine: { note: 'unit price: ask the shop' } });
  });
});

describe('states', () => {
  it.each([
    ['got it', 'on-shelf'],
    ['back order', 'back-ordered'],
    ['on (mock up only)', 'trial-fitted'],
    ['wrong one - sent back', 'sent-back'],
    ['wrong one', 'wrong-part'],
    ['not ordered', 'needed'],
    ['shipped', 'in-transit'],
    ['eingebaut', 'fitted'],
    ['torqued', 'verified'],
    ['had it already', 'already-owned'],
    ['off the donor', 'donor'],
    ['no longer needed', 'not-needed'],
    ['no longer needed?', 'not-needed'],
    ['not needed', 'not-needed'],
    ['purple', 'unknown'],
  ])('takes “%s” as %s', async (word, state) => {
    const plan = await planOf(list('part,qty,status', `bolt,1,${word}`));
    expect(plan.rows[1]?.part?.state).toBe(state);
  });

  it('keeps a word that nobody explained, and remarks on it', async () => {
    const plan = await planOf(list('part,qty,status', 'bolt,1,purple'));
    expect(plan.rows[1]?.part?.note).toBe('status: purple');
    expect(plan.rows[1]?.findings[0]?.severity).toBe('attention');
    const answered = await planOf(list('part,qty,status', 'bolt,1,purple'), { answers: { 'state:purple': 'ordered' } });
    expect(answered.rows[1]?.part).toMatchObject({ state: 'ordered', note: '' });
  });

  it('reads words under dates by the heading they stand under', async () => {
    const plan = await planOf(
      list('part,qty,ordered,arrived', 'bolt,1,yes,', 'nut,1,2026-01-02,no', 'stud,1,yes,"yes, box 7"'),
    );
    expect(plan.rows.flatMap((row) => row.part?.state ?? [])).toEqual(['ordered', 'ordered', 'on-shelf']);
    expect(plan.rows[3]?.part?.bin).toBe('box 7');
  });

  it('follows the dates where no word stands', async () => {
    const plan = await planOf(
      list('part,qty,ordered,arrived', 'a1,1,2026-01-02,2026-01-09', 'b1,1,2026-01-02,', 'c1,1,,'),
    );
    expect(plan.rows.flatMap((row) => row.part?.state ?? [])).toEqual(['on-shelf', 'ordered', 'needed']);
  });
});

describe('rows that are no parts', () => {
  it('are named for what they are, and may be overruled', async () => {
    const file = list(
      'System,Part,Part no,Qty,Price',
      '== Cooling ==,,,,',
      ',radiator,R-1,1,100.00',
      ',fan,F-1,2,20.00',
      ',Subtotal,,,140.00',
      'Fuel,,,,',
      ',total seal ring,TS-1,1,5.00',
      ',pump,P-1,1,50.00',
      ',Grand total,,,195.00',
      'System,Part,Part no,Qty,Price',
    );
    const plan = await planOf(file);
    expect(plan.rows.map((row) => row.fate)).toEqual([
      'header',
      'section',
      'part',
      'part',
      'total',
      'section',
      'part',
      'part',
      'total',
      'header',
    ]);
    expect(plan.rows.flatMap((row) => row.part?.system ?? [])).toEqual(['Cooling', 'Cooling', 'Fuel', 'Fuel']);
    expect(plan.sectionTotals).toMatchObject([
      { system: 'Cooling', fileTotalMinor: 14000, ourTotalMinor: 14000, differences: [] },
      { system: '', fileTotalMinor: 19500, ourTotalMinor: 19500, differences: [] },
    ]);
    const overruled = await planOf(file, { answers: { 'row:5': 'import', 'missing-quantity': 'one' } });
    expect(overruled.rows[4]?.part?.description).toBe('Subtotal');
  });

  it('explain a total by the rows that were left out', async () => {
    const file = list('Part,Part no,Qty,Price', 'radiator,R-1,1,100.00', 'fan,F-1,2,20.00', 'TOTAL,,,140.00');
    const plan = await planOf(file, { answers: { 'row:3': 'skip' } });
    expect(plan.sectionTotals[0]).toMatchObject({
      ourTotalMinor: 10000,
      differences: [{ row: 3, amountMinor: -4000 }],
    });
  });
});

describe('columns', () => {
  it('that fit nothing are kept as facts of the part', async () => {
    const plan = await planOf(list('part,qty,Thread pitch,Weight', 'bolt,1,1.25 mm,30 g'));
    expect(plan.rows[1]?.part?.facts).toEqual([
      { key: 'Thread pitch', value: '1.25 mm' },
      { key: 'Weight', value: '30 g' },
    ]);
  });

  it('are found by content when the heading says nothing', async () => {
    const table = await tableOf(
      list('Foo,Bar,Baz', 'oil pump gasket,$4.00,https://example.org/a', 'water pump,$12.50,https://example.org/b'),
    );
    expect(guessMapping(table).columns.map((column) => column.field)).toEqual(['description', 'unitPrice', 'link']);
  });

  it('follow the user’s mapping, one field for one column', async () => {
    const table = await tableOf(list('part,qty,price,old price', 'bolt,1,1.00,2.00'));
    const mapping = changeMapping(guessMapping(table), 3, 'unitPrice');
    expect(mapping.columns.map((column) => column.field)).toEqual(['description', 'quantity', null, 'unitPrice']);
    const plan = planImport({ table, mapping, answers: {}, defaults });
    expect(plan.rows[1]?.part).toMatchObject({ unitPriceMinor: 200, facts: [{ key: 'price', value: '1.00' }] });
  });

  it('with the same headings have the same fingerprint, whatever the capitals', async () => {
    const [a, b, c] = [
      await tableOf('Part,Qty\nx,1\n'),
      await tableOf('PART, qty.\ny,2\n'),
      await tableOf('Qty,Part\n1,x\n'),
    ];
    expect(a.fingerprint).toBe(b.fingerprint);
    expect(a.fingerprint).not.toBe(c.fingerprint);
  });
});

describe('remarks', () => {
  it('name dates in the future, arrivals before orders, and marks that can’t be seen', async () => {
    const plan = await planOf(list('part,qty,ordered,arrived', 'bolt\u202e,1,2026-12-24,2026-01-01'));
    const messages = plan.rows[1]?.findings.map((finding) => finding.message).join(' ');
    expect(messages).toContain('future');
    expect(messages).toContain('before it was ordered');
    expect(messages).toContain('can’t be seen');
    expect(plan.rows[1]?.part?.description).toBe('bolt');
  });

  it('block a row for a day that does not exist, until it is wanted all the same', async () => {
    const file = list('part,qty,ordered', 'bolt,1,2026-02-30', 'nut,1,2026-02-03');
    const plan = await planOf(file);
    expect(errors(plan, 2)[0]).toMatchObject({ column: 'ordered', text: '2026-02-30' });
    const wanted = await planOf(file, { answers: { 'row:2': 'import' } });
    expect(wanted.rows[1]).toMatchObject({ fate: 'part', part: { note: 'ordered: 2026-02-30' } });
  });

  it('name a list without anything that says what the parts are', async () => {
    const plan = await planOf(list('qty,price', '1,2.00', '2,3.00'));
    expect(plan.ready).toBe(false);
    expect(plan.findings[0]?.message).toContain('No column says what the parts are');
  });
});
