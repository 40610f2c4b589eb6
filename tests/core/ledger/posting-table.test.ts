/**
 * The table of allowed moves, row by row, with what each row posts.
 * Source: the product's own table of moves and postings (no published source for the buckets); its money columns follow
 * double entry, and the commitment memo follows encumbrance accounting in governmental accounting texts.
 */
import { describe, expect, test } from 'vitest';
import { inShort, postingsOf, said } from './playing.ts';
import { type Case, line, needed, ordered, received } from './posting-cases.ts';
import { orderRows } from './posting-rows-orders.ts';
import { unitRows } from './posting-rows-units.ts';

const rows = [...orderRows, ...unitRows].sort(([a], [b]) => a - b);

describe.each(rows)('row %i', (_, cases) => {
  test.each(cases)('$name', ({ before, draft, posts }) => {
    expect(inShort(postingsOf(before, draft))).toEqual(posts);
  });
});

test('every row has a case', () => {
  expect(rows.map(([row]) => row)).toEqual(Array.from({ length: 24 }, (_, index) => index + 1));
});

/** Money rows of the posting table that aren't moves of units. */
const moneyRows: readonly Case[] = [
  {
    name: 'paid',
    before: [ordered],
    draft: said('paid', { ...line, amountMinor: 8000 }),
    posts: ['vendor 8000', 'cash -8000'],
  },
  {
    name: 'paid at another rate than was booked: the difference is not the part’s',
    before: [ordered],
    draft: said('paid', { ...line, amountMinor: 8000, payload: { cashMinor: 8040 } }),
    posts: ['vendor 8000', 'exchange 40', 'cash -8040'],
  },
  {
    name: 'paid with cash rounding',
    before: [ordered],
    draft: said('paid', { ...line, amountMinor: 8002, payload: { roundingMinor: -2 } }),
    posts: ['vendor 8002', 'rounding -2', 'cash -8000'],
  },
  {
    name: 'price corrected before anything came',
    before: [needed, ordered],
    draft: said('repriced', { ...line, amountMinor: 8800 }),
    posts: ['ordered 800', 'commitment 800'],
  },
  {
    name: 'price corrected with 5 of 8 received',
    before: [needed, ordered, said('received', { ...line, lot: 1, units: 5 })],
    draft: said('repriced', { ...line, amountMinor: 8800 }),
    posts: ['ordered 800', 'commitment 300', 'cost 500', 'vendor -500'],
  },
  {
    name: 'vendor bill differs after all came',
    before: [needed, ordered, received],
    draft: said('repriced', { ...line, amountMinor: 7900 }),
    posts: ['ordered -100', 'cost -100', 'vendor 100'],
  },
  {
    name: 'refund of what was overpaid after a price was lowered',
    before: [
      needed,
      ordered,
      said('paid', { ...line, amountMinor: 8000 }),
      received,
      said('repriced', { ...line, amountMinor: 7900 }),
    ],
    draft: said('refunded', { ...line, amountMinor: 100 }),
    posts: ['vendor -100', 'cash 100'],
  },
];

test.each(moneyRows)('$name', ({ before, draft, posts }) => {
  expect(inShort(postingsOf(before, draft))).toEqual(posts);
});
