import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { Blocker, GateReview } from '../../core/contract/gate.ts';
import type { PartDetail } from '../../core/contract/parts.ts';
import { groupedByKind, kindHeadings } from '../../renderer/screens/hoist-check/blocker-words.ts';
import { clearingItems } from '../../renderer/screens/hoist-check/part-items.ts';
import HoistCheck from '../../renderer/screens/hoist-check/screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  gate: { review: vi.fn(), history: vi.fn(), compare: vi.fn(), waive: vi.fn(), endWaiver: vi.fn(), pass: vi.fn() },
  workbook: { settings: vi.fn() },
  records: { list: vi.fn(), bolts: vi.fn() },
  plan: { finishJob: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const blocker = (change: Partial<Blocker>): Blocker => ({
  kind: 'part not in hand',
  subject: { kind: 'part', id: 7 },
  title: 'clutch kit',
  why: '1 of 1 back-ordered 34 days.',
  clears: 'The vendor delivers it; then fit it.',
  standing: 'back-ordered 34 days',
  readyOn: null,
  readyLateOn: null,
  readySays: '',
  clearOn: null,
  noDate: 'No date: the vendor has promised none.',
  daysGained: 3,
  costMinor: null,
  minutes: 90,
  ...change,
});
const job = blocker({
  kind: 'job open',
  subject: { kind: 'job', id: 4 },
  title: 'Fill the cooling',
  clears: 'Do the job and record it as done.',
  readyOn: '2026-03-12',
  clearOn: '2026-03-14',
  noDate: '',
  costMinor: 0,
});
const review: GateReview = {
  gateName: 'engine-in',
  listed: 2,
  asOf: '2026-03-12',
  answer: '2 things stand before engine-in.',
  gateOn: null,
  noDate: 'No date, at least 14 Mar 2026: 1 item has no date, such as “clutch kit”.',
  atLeastOn: '2026-03-14',
  assumed: 1,
  blockers: [job, blocker({})],
  waived: [],
  costMinor: 0,
  costUnknown: 1,
  minutes: 180,
  counts: [],
  caution: 'The makers’ manuals govern.',
};
const done = { act: 9, label: 'Done', entries: 1, parts: [], made: [], notices: [] };

beforeEach(() => {
  vi.clearAllMocks();
  api.gate.review.mockResolvedValue(review);
  api.gate.history.mockResolvedValue([]);
  api.gate.compare.mockResolvedValue({ gone: [], came: [], still: 2 });
  api.workbook.settings.mockResolvedValue({ author: 'Ada' });
});

it('answers first, says what is not known, and groups what blocks under plain headings', async () => {
  shown(<HoistCheck />);
  expect(await screen.findByText('2 things stand before engine-in.')).toBeTruthy();
  expect(screen.getByText('No date')).toBeTruthy();
  expect(screen.getByText(/1 thing whose cost isn't known/)).toBeTruthy();
  expect(screen.getByText(/a usual time is assumed/)).toBeTruthy();
  expect(screen.getByText(/The makers’ manuals govern/)).toBeTruthy();
  const jobs = within(screen.getByRole('table', { name: /Jobs open/ }));
  expect(jobs.getByRole('link', { name: 'Fill the cooling' }).getAttribute('href')).toBe('#/plan?job=4');
  expect(screen.getByRole('link', { name: 'clutch kit' }).getAttribute('href')).toBe('#/parts?part=7');
  expect(screen.queryByRole('button', { name: /engine is in/i })).toBeNull();
});

it('keeps every kind in exactly one group', () => {
  const kinds = Object.keys(kindHeadings) as Blocker['kind'][];
  const rows = kinds.map((kind, id) => blocker({ kind, subject: { kind: 'part', id: id + 1 } }));
  expect(groupedByKind(rows).flatMap((group) => group.rows)).toHaveLength(kinds.length);
});

it('records a job as done from its row', async () => {
  api.plan.finishJob.mockResolvedValue(done);
  shown(<HoistCheck />);
  await userEvent.click(await screen.findByRole('button', { name: /Job done.*Fill the cooling/ }));
  await userEvent.type(await screen.findByRole('textbox', { name: /Hours spent/ }), '1:30');
  await userEvent.click(screen.getByRole('button', { name: 'Record as done' }));
  await waitFor(() => expect(api.plan.finishJob).toHaveBeenCalledOnce());
  expect(api.plan.finishJob.mock.calls[0]?.[0]).toMatchObject({
    jobs: [4],
    on: '2026-03-12',
    by: 'Ada',
    minutesSpent: 90,
  });
});

it('asks for a reason before anything is waived', async () => {
  api.gate.waive.mockResolvedValue(done);
  shown(<HoistCheck />);
  await userEvent.click(await screen.findByRole('button', { name: /Waive.*clutch kit/ }));
  await userEvent.click(await screen.findByRole('button', { name: 'Waive it' }));
  expect(api.gate.waive).not.toHaveBeenCalled();
  await userEvent.type(screen.getByRole('textbox', { name: /Reason/ }), 'drives in on the old one');
  await userEvent.click(screen.getByRole('button', { name: 'Waive it' }));
  await waitFor(() => expect(api.gate.waive).toHaveBeenCalledOnce());
  expect(api.gate.waive.mock.calls[0]?.[0]).toMatchObject({ kind: 'part not in hand', by: 'Ada', until: null });
});

it('offers the day itself once nothing blocks, and nothing to do on a past day', async () => {
  api.gate.review.mockResolvedValue({ ...review, blockers: [], answer: 'Nothing stands before engine-in.' });
  const { unmount } = shown(<HoistCheck />);
  expect(await screen.findByRole('button', { name: 'The engine is in…' })).toBeTruthy();
  unmount();
  api.gate.review.mockResolvedValue(review);
  shown(<HoistCheck />, { asOf: '2026-03-01' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: /Waive/ })).toBeNull();
});

it('takes only trial units off, and only those of somebody else back', () => {
  const lot = (id: number, source: string, places: Record<string, number>) => ({ id, source, places });
  const detail = {
    lots: [lot(1, 'bought', { fitted: 2000 }), lot(2, 'borrowed', { 'trial-fitted': 1000, fitted: 3000 })],
    possible: [
      { act: 'take off', mostMilli: 6000 },
      { act: 'fit', mostMilli: 1000 },
    ],
  } as unknown as PartDetail;
  expect(clearingItems(detail, 'trial part on', ['fit', 'take off'])).toEqual([
    { act: 'fit', mostMilli: 1000, lots: [{ lot: 2, quantityMilli: 1000 }] },
    { act: 'take off', mostMilli: 1000, lots: [{ lot: 2, quantityMilli: 1000 }] },
  ]);
  expect(clearingItems(detail, 'borrowed part on', ['take off', 'give back'])).toEqual([
    { act: 'take off', mostMilli: 4000, lots: [{ lot: 2, quantityMilli: 4000 }] },
  ]);
});

it('leads from a line not made to the bench, where its steps are ticked off', async () => {
  const line = blocker({ kind: 'line not made', subject: { kind: 'hose-line', id: 12 }, title: 'oil feed' });
  api.gate.review.mockResolvedValue({ ...review, blockers: [line, blocker({})] });
  shown(<HoistCheck />);
  const links = await screen.findAllByRole('link', { name: /^Make it/ });
  expect(links.map((link) => link.getAttribute('href'))).toEqual(['#/bench?line=12']);
});
