import { screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { BuyingView, CashView } from '../../core/contract/buying.ts';
import Buying from '../../renderer/screens/buying/screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  buying: { plan: vi.fn(), cash: vi.fn() },
  records: { list: vi.fn(), save: vi.fn(), retire: vi.fn() },
  parts: { rows: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const plan: BuyingView = {
  answer: 'Order 1 part in the first week: engine-in can then be reached in the week of 13 Apr 2026.',
  currency: 'USD',
  gateName: 'engine-in',
  status: 'plan',
  method: 'exact',
  safe: false,
  startOn: '2026-03-12',
  lastOn: '2027-03-11',
  gateOn: '2026-04-13',
  spendMinor: 60_000,
  shippingMinor: 0,
  shippingSavedMinor: 0,
  shortMinor: null,
  weeks: [
    {
      week: 0,
      on: '2026-03-12',
      spendMinor: 60_000,
      cashAfterMinor: 10_000,
      orders: [{ vendor: 4, vendorName: 'Harrowick Machine Works', goodsMinor: 60_000, shippingMinor: 0, parts: [9] }],
    },
  ],
  lines: [
    {
      part: 9,
      description: 'Crank',
      must: true,
      week: 0,
      on: '2026-03-12',
      vendor: 4,
      vendorName: 'Harrowick Machine Works',
      orderMilli: 1000,
      unit: 'each',
      priceMinor: 60_000,
      priceFrom: 'estimate',
      priceSays: 'From the estimate on the part line',
      leadDays: 42,
      leadSays: 'From 9 arrivals of this vendor.',
      tailDays: 0,
      reason: 'holds-gate',
      slackWeeks: 0,
      sentence: 'Order “Crank” in the first week: 42 days’ lead; it holds the date.',
    },
  ],
  cash: [{ on: '2026-03-12', cashMinor: 10_000 }],
  lacking: [{ part: 11, description: 'Dipstick', must: true, why: 'no vendor is chosen' }],
  asMoneyComes: { gateOn: '2026-05-11', spendMinor: 60_000, daysWon: 28, says: '28 days later.' },
  assumes: ['A part is paid for when it is ordered.'],
};
const cash: CashView = {
  answer: 'Nobody has counted the cash yet.',
  currency: 'USD',
  count: null,
  floorMinor: 0,
  nowMinor: null,
  points: [],
  lowestLikelyMinor: null,
  lowestSafeMinor: null,
  likelyBelowOn: null,
  safeBelowOn: null,
  committed: [],
  assumes: [],
};

beforeEach(() => {
  window.location.hash = '#/buying';
  api.buying.plan.mockResolvedValue(plan);
  api.buying.cash.mockResolvedValue(cash);
  api.records.list.mockResolvedValue([]);
  api.parts.rows.mockResolvedValue({ total: 0, columns: ['id', 'description'], rows: [] });
});

it('says the answer, each line’s reason and sources, and leads to the order form', async () => {
  shown(<Buying />);
  expect(await screen.findByText(plan.answer)).toBeTruthy();
  expect(screen.getByText('Order “Crank” in the first week: 42 days’ lead; it holds the date.')).toBeTruthy();
  expect(screen.getByText(/From 9 arrivals of this vendor. From the estimate/)).toBeTruthy();
  expect(screen.getByRole('link', { name: /Fill in this order/ }).getAttribute('href')).toBe(
    '#/orders?order=new&vendor=4&parts=9',
  );
  expect(screen.getByText('no vendor is chosen')).toBeTruthy();
});

it('asks for a careful plan, and offers no order on a past day', async () => {
  shown(<Buying />, { asOf: '2026-03-01' });
  await screen.findByText(plan.answer);
  expect(screen.queryByRole('link', { name: /Fill in this order/ })).toBeNull();
  await userEvent.click(screen.getByRole('checkbox', { name: /Judge carefully/ }));
  expect(api.buying.plan).toHaveBeenLastCalledWith({ build: 1, asOf: '2026-03-01', safe: true });
});

it('begins with a count of cash, kept with its floor', async () => {
  window.location.hash = '#/buying?view=cash';
  api.records.save.mockResolvedValue({ act: 1, label: 'Count', entries: 1, parts: [], made: [1], notices: [] });
  shown(<Buying />);
  await userEvent.click(await screen.findByRole('button', { name: 'Count the cash' }));
  await userEvent.type(await screen.findByRole('textbox', { name: /In hand/ }), '700');
  await userEvent.click(screen.getByRole('button', { name: 'Keep the count' }));
  expect(api.records.save).toHaveBeenCalledWith(
    expect.objectContaining({
      kind: 'cashCount',
      build: 1,
      values: { on: '2026-03-12', cashMinor: 70_000, floorMinor: 0, note: '' },
    }),
  );
});
