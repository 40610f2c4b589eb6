import { screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { StartView } from '../../core/contract/plan.ts';
import type { WorkbookStatus } from '../../core/contract/workbook.ts';
import { api } from '../../renderer/app/client.ts';
import { budgetSentence } from '../../renderer/screens/start/money-lines.tsx';
import StartScreen from '../../renderer/screens/start/start-screen.tsx';
import { shown } from './shown.tsx';

vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<object>()),
  api: {
    workbook: { status: vi.fn(), create: vi.fn(), open: vi.fn(), demo: vi.fn() },
    builds: { create: vi.fn() },
    start: { view: vi.fn() },
    forecast: { gateDays: vi.fn(() => Promise.resolve(null)) },
    money: { summary: vi.fn(() => new Promise(() => undefined)) },
    orders: { chase: vi.fn() },
  },
}));

const status: WorkbookStatus = {
  open: null,
  folder: '/books',
  found: [],
  appVersion: '0.1.0',
  today: '2026-03-12',
};
const done = { act: 9, label: 'Chasing of order K-204', entries: 1, parts: [], made: [1], notices: [] };
const none = { share: null, text: 'no parts yet', done: 0, of: 0 };
const half = { share: 0.5, text: '50 %', done: 4, of: 8 };
const threefold = (share: typeof none | typeof half) => ({ byLine: share, byQuantity: share, byValue: share });
const viewOf = (share: typeof none | typeof half, part: Partial<StartView> = {}): StartView => ({
  answer: '14 things stand before engine-in.',
  holds: [],
  came: [],
  due: [],
  chase: [],
  measures: {
    received: threefold(share),
    fitted: threefold(share),
    verified: threefold(share),
    jobs: { byCount: share, byWeight: share },
    spend: share,
  },
  ...part,
});

beforeEach(() => {
  vi.mocked(api.workbook.status).mockResolvedValue(status);
  vi.mocked(api.workbook.create).mockResolvedValue(status);
  vi.mocked(api.builds.create).mockResolvedValue(done);
  vi.mocked(api.orders.chase).mockResolvedValue(done);
});

it('makes a new workbook with its first build, then goes to bring the list in', async () => {
  const user = userEvent.setup();
  shown(<StartScreen />, { isOpen: false, buildId: null });
  await user.click(await screen.findByRole('button', { name: 'Bring in a list' }));
  await user.click(await screen.findByRole('textbox', { name: /Name of the workbook/ }));
  await user.paste('Drover');
  await user.click(screen.getByRole('textbox', { name: /First build/ }));
  await user.paste('1978 pickup');
  await user.click(screen.getByRole('button', { name: /Make the workbook/ }));
  await waitFor(() => expect(window.location.hash).toBe('#/bring-in'));
  expect(api.workbook.create).toHaveBeenCalledWith({ name: 'Drover', currency: 'USD' });
  expect(vi.mocked(api.builds.create).mock.calls[0]?.[0]).toMatchObject({
    on: '2026-03-12',
    values: { name: '1978 pickup' },
  });
});

it('opens a workbook of the folder by its name', async () => {
  const user = userEvent.setup();
  const found = [
    { name: 'Drover', path: '/books/Drover.hoistday', changedAt: '2026-03-01T10:00:00Z', bytes: 1_700_000 },
  ];
  vi.mocked(api.workbook.status).mockResolvedValue({ ...status, found });
  vi.mocked(api.workbook.open).mockResolvedValue(status);
  shown(<StartScreen />, { isOpen: false, buildId: null });
  await user.click(await screen.findByRole('button', { name: 'Drover' }));
  expect(api.workbook.open).toHaveBeenCalledWith({ path: '/books/Drover.hoistday' });
});

it('offers first steps instead of an answer while the build is empty', async () => {
  vi.mocked(api.start.view).mockResolvedValue(viewOf(none, { answer: 'Nothing stands before engine-in.' }));
  shown(<StartScreen />);
  expect(await screen.findByRole('heading', { name: 'First steps' })).toBeTruthy();
  expect(screen.queryByText('Nothing stands before engine-in.')).toBeNull();
});

it('notes right there that a vendor was chased, on a day that can be seen', async () => {
  const user = userEvent.setup();
  const chase = [{ order: 12, text: 'Keld Fasteners: stud kit, 9 days past its promise, never asked', ageDays: 9 }];
  vi.mocked(api.start.view).mockResolvedValue(viewOf(half, { chase }));
  shown(<StartScreen />);
  await user.click(await screen.findByRole('button', { name: /^Chased: Keld/ }));
  await user.type(await screen.findByRole('textbox', { name: 'What they said' }), 'Friday');
  await user.click(screen.getByRole('button', { name: 'Note it' }));
  await waitFor(() => expect(api.orders.chase).toHaveBeenCalledOnce());
  expect(vi.mocked(api.orders.chase).mock.calls[0]?.[0]).toMatchObject({ order: 12, on: '2026-03-12', note: 'Friday' });
});

it('says the forecast’s days below the hoist check’s sentence, and leads to the texts for the vendors', async () => {
  const chase = [{ order: 12, text: 'Keld Fasteners: stud kit', ageDays: 9 }];
  vi.mocked(api.start.view).mockResolvedValue(viewOf(half, { chase }));
  const days = { name: 'engine-in', p50On: '2026-05-02', p80On: '2026-06-13', runs: 2000, seed: 1 };
  vi.mocked(api.forecast.gateDays).mockResolvedValueOnce(days);
  shown(<StartScreen />);
  expect((await screen.findByText(/as likely as not by/)).textContent).toMatch(
    /2 May 2026.*four times of five by.*13 Jun/,
  );
  expect(screen.getByRole('link', { name: 'Forecast' }).getAttribute('href')).toBe('#/forecast');
  const all = screen.getByRole('link', { name: /All vendors to ask/ });
  expect(all.getAttribute('href')).toBe('#/orders?view=chase');
});

it('has no acts while a past day is looked at', async () => {
  const chase = [{ order: 12, text: 'Keld Fasteners: stud kit', ageDays: 9 }];
  vi.mocked(api.start.view).mockResolvedValue(viewOf(half, { chase }));
  shown(<StartScreen />, { asOf: '2026-02-01' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: /Chased/ })).toBeNull();
});

it('says what the budget leaves, and that an estimate is missing', () => {
  const say = (minor: number) => `$${minor / 100}`;
  const figures = { budgetMinor: 50_000, varianceMinor: -1000, forecastMinor: 51_000, withoutEstimate: 2 };
  expect(budgetSentence(figures, say)).toBe(
    'In all $510, which is $10 over the budget of $500. It will be more: 2 part lines count as nothing, for want of an estimate.',
  );
  expect(budgetSentence({ ...figures, budgetMinor: 0, varianceMinor: 0, withoutEstimate: 0 }, say)).toBe(
    'In all $510; no budget is set.',
  );
});
