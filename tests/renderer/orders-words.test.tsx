import { expect, it } from 'vitest';
import { suggestedMinor } from '../../renderer/screens/orders/acts/pay-window.tsx';
import { chargesOf, draftOfCharges, plainCharges } from '../../renderer/screens/orders/charges-draft.ts';
import { orderAnswer } from '../../renderer/screens/orders/detail/order-answer.ts';
import { emptyDraft, orderOf, withNeeds, withSpare } from '../../renderer/screens/orders/new/new-draft.ts';
import { lineQuantities, ordersAnswer, toldPromises } from '../../renderer/screens/orders/order-words.ts';
import { bandsSentence } from '../../renderer/screens/orders/overview/due-list.tsx';
import { line, orderWith, row } from './orders-sample.ts';

// Rules of this product; no published source.
const say = (minor: number): string => `$${minor / 100}`;
const settings = {
  currency: 'USD',
  dateForm: 'd Mon yyyy' as const,
  units: 'metric' as const,
  weekStart: 'monday' as const,
  taxRate: '8.25',
  taxBase: 'goods' as const,
  taxIncluded: false,
  author: '',
  weekWindows: [],
};

it('says in one sentence what is open, late, on back-order and owed', () => {
  const rows = [
    row({ promisedOn: '2026-03-01' }),
    row({ id: 13, backOrderedOn: '2026-02-01', stillToPayMinor: 0 }),
    row({ id: 14, outstandingLines: 0, stillToPayMinor: 0, standing: 'received' }),
  ];
  expect(ordersAnswer(rows, '2026-03-12', say)).toBe(
    '2 orders are open: 2 have parts to come, 1 is past a promise, 1 waits on a back-order. $120 is still to pay.',
  );
  expect(ordersAnswer([], '2026-03-12', say)).toBe('No order is entered yet.');
  expect(ordersAnswer([row({ claimsMinor: 20_000, stillToPayMinor: -8000 })], '2026-03-12', say)).toContain(
    'Vendors owe $80 more than is still to pay them.',
  );
});

it('counts days past a promise from the day that is looked at', () => {
  const late = orderWith([{ description: 'Clutch kit', outstandingMilli: 1000 }], { promisedOn: '2026-03-02' });
  expect(orderAnswer(late, '2026-03-12', say)).toBe(
    'Still to come from Keld Fasteners: Clutch kit, 10 days past the promise.',
  );
  expect(orderAnswer(late, '2026-03-02', say)).toContain('promised for today');
});

it('lists only the places that hold something, and a promise said twice once', () => {
  const part = line(0, {
    description: 'Bolt',
    outstandingMilli: 3000,
    placedMilli: 0,
    backOrderedMilli: 3000,
    receivedMilli: 5000,
    promises: [
      { givenOn: '2026-01-02', promisedOn: '2026-02-01' },
      { givenOn: '2026-01-05', promisedOn: '2026-02-01' },
      { givenOn: '2026-02-01', promisedOn: null },
    ],
  });
  expect(lineQuantities(part)).toEqual([
    { state: 'back-ordered', quantityMilli: 3000 },
    { state: 'received', quantityMilli: 5000 },
  ]);
  expect(toldPromises(part)).toEqual([
    { givenOn: '2026-02-01', promisedOn: null },
    { givenOn: '2026-01-02', promisedOn: '2026-02-01' },
  ]);
});

it('counts back-orders by their age', () => {
  expect(bandsSentence([{ band: '0-14' }, { band: 'over 60' }, { band: null }, { band: '0-14' }])).toBe(
    '3 lines are on back-order: 2 for 0–14 days, 1 for over 60 days.',
  );
  expect(bandsSentence([{ band: null }])).toBe('1 line is to come, none on back-order.');
});

it('suggests what is left to pay, and nothing where only the bill knows it', () => {
  const whole = orderWith([], { stillToPayMinor: 4000, claimsMinor: 1000 });
  expect(suggestedMinor(whole)).toBe(5000);
  const foreign = orderWith([], { currency: 'EUR', totalMinor: 11_000, stillToPayMinor: 12_000 });
  expect(suggestedMinor(foreign)).toBe(11_000);
  expect(suggestedMinor({ ...foreign, row: { ...foreign.row, stillToPayMinor: 6000 } })).toBeNull();
});

it('takes the charges of an order apart and puts them together again', () => {
  const charges = {
    discountMinor: 500,
    shippingMinor: 0,
    dutyMinor: 20,
    tax: { kind: 'rate' as const, percent: '8.25', included: true, base: 'all' as const },
  };
  expect(chargesOf(draftOfCharges(charges))).toEqual(charges);
  expect(chargesOf(plainCharges(settings)).tax).toEqual({
    kind: 'rate',
    percent: '8.25',
    included: false,
    base: 'goods',
  });
  expect(chargesOf(plainCharges({ ...settings, taxRate: '0' })).tax).toEqual({ kind: 'amount', minor: 0 });
});

it('sends an order only once the vendor and every line are whole', () => {
  const need = {
    part: 7,
    description: 'Fuel rail',
    partNumber: 'R-1',
    unit: 'each',
    vendor: 3,
    uncoveredMilli: 2000,
    estimateEachE4: 450_000,
  };
  const ticked = withNeeds(withNeeds(emptyDraft(settings, '2026-03-12', 3), [need], 'USD'), [need], 'USD');
  expect(ticked.lines).toHaveLength(1);
  expect(orderOf(ticked, 1, 'USD')?.lines).toEqual([{ part: 7, quantityMilli: 2000, eachE4: 450_000 }]);
  expect(orderOf(withSpare(ticked), 1, 'USD')).toBeNull();
  expect(orderOf({ ...ticked, vendor: null }, 1, 'USD')).toBeNull();
  // An estimate is in the workbook's currency, so it is no price of a foreign order.
  const foreign = withNeeds({ ...emptyDraft(settings, '2026-03-12', 3), currency: 'EUR' }, [need], 'USD');
  expect(foreign.lines[0]?.eachE4).toBeNull();
});
