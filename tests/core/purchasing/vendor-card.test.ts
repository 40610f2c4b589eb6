import { expect, test } from 'vitest';
import { type VendorLine, vendorCard } from '../../../core/purchasing/vendor-card.ts';

function line(
  orderedOn: string,
  firstPromiseOn: string | null,
  arrivedOn: string | null,
  units: number,
  wrong: number,
): VendorLine {
  return {
    orderedOn,
    firstPromiseOn,
    arrivedOn,
    receivedMilli: arrivedOn === null ? 0 : units * 1000,
    wrongMilli: wrong * 1000,
  };
}

const worked = [
  line('2026-01-02', '2026-01-10', '2026-01-09', 4, 0),
  line('2026-01-12', '2026-01-20', '2026-01-24', 10, 1),
  line('2026-02-01', null, '2026-02-15', 2, 0),
  line('2026-02-20', '2026-03-01', null, 6, 0),
];

test('D70: a vendor card as of 2026-03-10', () => {
  // Source: derived by hand, recomputed independently. One early, one late, one open past its promise counts as late;
  // the line with no promise is not judged.
  const card = vendorCard(worked, '2026-03-10');
  expect(card).toMatchObject({
    onTimeLines: 1,
    judgedLines: 3,
    openLines: 1,
    arrivedLines: 3,
    medianLeadDays: 12,
    comparable: false,
  });
  expect(card.onTimeShare?.toFixed(4)).toBe('0.3333');
  expect([card.wrongMilli, card.receivedMilli, card.wrongShare]).toEqual([1000, 16000, 0.0625]);
});

test('D68: gives no shares for a vendor with no deliveries', () => {
  // Source: a rule of this product.
  expect(vendorCard([], '2026-03-10')).toMatchObject({
    lines: 0,
    onTimeShare: null,
    wrongShare: null,
    medianLeadDays: null,
  });
});

test('does not judge an open line on the very day it is promised for', () => {
  expect(vendorCard([line('2026-02-20', '2026-03-01', null, 6, 0)], '2026-03-01').judgedLines).toBe(0);
  expect(vendorCard([line('2026-02-20', '2026-03-01', null, 6, 0)], '2026-03-02').judgedLines).toBe(1);
  expect(vendorCard([line('2026-02-20', '2026-03-01', '2026-03-01', 6, 0)], '2026-03-02').onTimeShare).toBe(1);
});

test('counts only lines ordered within the window', () => {
  expect(vendorCard(worked, '2026-03-10', '2026-02-01')).toMatchObject({
    lines: 2,
    judgedLines: 1,
    medianLeadDays: 14,
  });
});

test('takes the middle of two leads, and compares from five judged lines', () => {
  // By hand: leads of 7 and 12 days.
  expect(vendorCard(worked.slice(0, 2), '2026-03-10').medianLeadDays).toBe(9.5);
  const five = Array.from({ length: 5 }, () => line('2026-01-02', '2026-01-10', '2026-01-09', 1, 0));
  expect(vendorCard(five, '2026-03-10').comparable).toBe(true);
});
