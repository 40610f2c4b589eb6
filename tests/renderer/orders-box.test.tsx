import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { OrderDetail } from '../../core/contract/orders.ts';
import { api } from '../../renderer/app/client.ts';
import OrdersScreen from '../../renderer/screens/orders/orders-screen.tsx';
import { orderWith } from './orders-sample.ts';
import { shown } from './shown.tsx';

vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<object>()),
  api: {
    orders: { detail: vi.fn(), receiveBox: vi.fn() },
    records: { list: vi.fn(async () => []) },
    journal: { list: vi.fn(async () => ({ rows: [], next: null, total: 0 })) },
  },
}));

const detail = vi.mocked(api.orders.detail);
const receiveBox = vi.mocked(api.orders.receiveBox);
const order: OrderDetail = orderWith([
  { description: 'Head stud kit', outstandingMilli: 8000 },
  { description: 'Intake gasket', outstandingMilli: 1000 },
]);

beforeEach(() => {
  detail.mockResolvedValue(order);
  receiveBox.mockReset();
  receiveBox.mockResolvedValue({ act: 5, label: 'Receipt of 1 line', entries: 3, parts: [], made: [], notices: [] });
  window.location.hash = '#/orders?order=12&do=receive';
});

it('sends what was counted: good ones, a bad one with its reason, and the rest on back-order', async () => {
  const user = userEvent.setup();
  shown(<OrdersScreen />);
  const good = await screen.findByRole('textbox', { name: 'Good, Head stud kit' });
  await user.clear(good);
  await user.type(good, '5');
  await user.click(screen.getByRole('button', { name: 'Wrong, damaged, too many: Head stud kit' }));
  await user.click(screen.getByRole('button', { name: 'One more: Not usable, Head stud kit' }));
  await user.type(screen.getByRole('textbox', { name: 'What is wrong' }), 'thread cut short');
  await user.click(screen.getByRole('checkbox', { name: 'The other 2 said to be on back-order' }));
  await user.click(screen.getByRole('button', { name: 'Receive 1 line' }));
  await waitFor(() => expect(receiveBox).toHaveBeenCalledOnce());
  expect(receiveBox.mock.calls[0]?.[0]).toMatchObject({
    order: 12,
    on: '2026-03-12',
    bin: null,
    leaveForInspection: false,
    lines: [
      {
        line: 100,
        goodMilli: 5000,
        bad: [{ quantityMilli: 1000, reason: 'wrong part', note: 'thread cut short' }],
        extraMilli: 0,
        restBackOrdered: true,
        restPromisedOn: null,
      },
    ],
  });
});

it('takes bad units from those counted as good, never above what is to come', async () => {
  const user = userEvent.setup();
  shown(<OrdersScreen />);
  await user.click(await screen.findByRole('button', { name: 'All 8: Head stud kit' }));
  await user.click(screen.getByRole('button', { name: 'Wrong, damaged, too many: Head stud kit' }));
  await user.click(screen.getByRole('button', { name: 'One more: Not usable, Head stud kit' }));
  expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Good, Head stud kit' }).value).toBe('7');
  expect(screen.queryByRole('checkbox', { name: /Head stud kit.*back-order/ })).toBeNull();
});

it('keeps the count when the workbook refuses the box', async () => {
  const user = userEvent.setup();
  receiveBox.mockRejectedValue(new TypeError('no answer'));
  shown(<OrdersScreen />);
  await user.click(await screen.findByRole('button', { name: 'Everything to come is here and good' }));
  await user.click(screen.getByRole('button', { name: 'Receive 2 lines' }));
  expect(within(await screen.findByRole('alert')).getByText(/Nothing was changed|does not answer/)).toBeTruthy();
  expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Good, Head stud kit' }).value).toBe('8');
});

it('receives nothing while a past day is looked at', async () => {
  shown(<OrdersScreen />, { asOf: '2026-02-01' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: /Receive/ })).toBeNull();
});
