import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { LineDetail } from '../../core/contract/plumbing.ts';
import Bench from '../../renderer/screens/bench/bench-screen.tsx';
import { done, lineDetail, lineRow, plumbingView } from './plumbing-sample.ts';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  bench: { view: vi.fn() },
  tonight: { view: vi.fn() },
  workbook: { settings: vi.fn() },
  plumbing: { view: vi.fn(), line: vi.fn(), step: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const ticked = { on: '2026-03-11', by: 'Ada', note: '' };
const making = (...ticks: readonly (readonly LineDetail['making'][number]['done'][number][])[]) =>
  lineDetail().making.map((step, at) => ({ ...step, done: [...(ticks[at] ?? [null])] }));

beforeEach(() => {
  vi.clearAllMocks();
  window.location.hash = '#/bench?line=1';
  api.bench.view.mockResolvedValue({ answer: 'Nothing is out.', sheets: [], groups: [] });
  api.tonight.view.mockRejectedValue(new Error('not asked here'));
  api.workbook.settings.mockResolvedValue({ author: 'Ada' });
  api.plumbing.view.mockResolvedValue(plumbingView());
  api.plumbing.step.mockResolvedValue(done);
  api.plumbing.line.mockResolvedValue(lineDetail({ making: making([ticked]) }));
});

it('lists lines with open steps on the bench', async () => {
  window.location.hash = '#/bench';
  shown(<Bench />);
  const table = within(await screen.findByRole('table', { name: 'Lines to make' }));
  expect(table.getByRole('link', { name: 'Turbo drain' }).getAttribute('href')).toBe('#/bench?line=1');
});

it('shows one step large with its caution beside, and goes on to the next when it is ticked', async () => {
  const user = userEvent.setup();
  shown(<Bench />);
  const step = within(await screen.findByRole('region', { name: 'Next: Cut square' }));
  expect(step.getByText(/Eye protection on\./)).toBeTruthy();
  api.plumbing.line.mockResolvedValue(lineDetail({ making: making([ticked], [ticked]) }));
  await waitFor(() => expect((screen.getByRole('textbox', { name: 'Who' }) as HTMLInputElement).value).toBe('Ada'));
  await user.click(step.getByRole('button', { name: 'Done: Cut square' }));
  expect(api.plumbing.step).toHaveBeenCalledWith(
    expect.objectContaining({ line: 1, copy: 1, step: 'cut', done: true, by: 'Ada', on: '2026-03-12' }),
  );
  const next = await screen.findByRole('button', { name: 'Done: Debris out' });
  await waitFor(() => expect(document.activeElement).toBe(next), { timeout: 2000 });
});

it('opens a ticked step again with a reason', async () => {
  const user = userEvent.setup();
  shown(<Bench />);
  await user.click(await screen.findByRole('button', { name: /Open again… Tape the cut/ }));
  const form = within(await screen.findByRole('dialog', { name: 'Open again: Tape the cut' }));
  await user.click(form.getByRole('button', { name: 'Open the step again' }));
  expect(api.plumbing.step).not.toHaveBeenCalled();
  await user.type(form.getByRole('textbox', { name: 'Why' }), 'Cut crooked');
  await user.click(form.getByRole('button', { name: 'Open the step again' }));
  await waitFor(() =>
    expect(api.plumbing.step).toHaveBeenCalledWith(
      expect.objectContaining({ step: 'tape', done: false, note: 'Cut crooked' }),
    ),
  );
});

it('walks the copies one by one', async () => {
  api.plumbing.line.mockResolvedValue(
    lineDetail({
      row: lineRow({ quantity: 2 }),
      making: making([ticked, null], [ticked, null], [ticked, null]),
    }),
  );
  const user = userEvent.setup();
  shown(<Bench />);
  expect(await screen.findByText(/copy 2 of 2: 3 of 3 steps still open/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Copy 1: 3 of 3' }));
  expect(screen.getByText(/every step is done/)).toBeTruthy();
});

it('says what is lacking where the take-off cannot be made', async () => {
  const problem = { message: 'The length is missing. Nothing was changed.', field: 'length', accepted: 'mm' };
  api.plumbing.line.mockResolvedValue(lineDetail({ row: lineRow({ problem }), making: [] }));
  shown(<Bench />);
  expect(await screen.findByText('Turbo drain: The length is missing.')).toBeTruthy();
  expect(screen.getByRole('link', { name: 'Fill in the line' }).getAttribute('href')).toBe('#/plumbing?edit=1');
});
