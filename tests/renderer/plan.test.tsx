import { act, fireEvent, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { PlanJob, PlanView } from '../../core/contract/plan.ts';
import type { Workspace } from '../../renderer/app/workspace.tsx';
import Plan from '../../renderer/screens/plan/index.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  plan: { view: vi.fn(), progress: vi.fn(), finishJob: vi.fn(), reopenJob: vi.fn(), addHours: vi.fn() },
  records: { list: vi.fn(), save: vi.fn(), reorder: vi.fn(), retire: vi.fn() },
  workbook: { settings: vi.fn() },
  journal: { undo: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const job = (id: number, title: string, given: Partial<PlanJob> = {}): PlanJob => ({
  id,
  title,
  phase: 1,
  system: null,
  sort: id * 10,
  done: false,
  doneOn: null,
  signedBy: '',
  needsSignOff: false,
  beforeGate: true,
  minutesLow: null,
  minutesHigh: null,
  lags: [],
  notBefore: null,
  oneSitting: false,
  hands: true,
  person: null,
  place: '',
  consumables: '',
  minutesGuess: 120,
  minutesSpent: 0,
  needs: [],
  tools: [],
  earlier: [],
  waitsFor: [],
  note: '',
  revision: 5,
  ...given,
});
const jobs = [
  job(1, 'Clean the block', { done: true, doneOn: '2026-03-01', signedBy: 'Ada' }),
  job(2, 'Hang the crank', {
    waitsFor: ['2 main bearing (back-ordered)'],
    needs: [{ part: 31, description: 'main bearing', standing: 'back-ordered', missingMilli: 2000, unit: 'each' }],
    tools: [{ id: 8, name: 'bore gauge', atHand: false }],
    earlier: [{ id: 1, title: 'Clean the block', done: true }],
  }),
  job(3, 'Fit the dowels', { needsSignOff: true }),
  job(4, 'Paint the sump'),
];
const share = { share: 0.25, text: '25 %', done: 1, of: 4 };
const three = { byLine: share, byQuantity: share, byValue: share };
const view: PlanView = {
  answer: '3 of 4 jobs are open.',
  phases: [
    {
      id: 1,
      name: 'Assembly',
      gate: 'Crank turns by hand',
      plannedStart: '2026-03-01',
      plannedEnd: null,
      jobsDone: 1,
      jobsTotal: 4,
      minutesLeft: 360,
      jobsWithoutGuess: 0,
      costMinor: 1000,
      forecastMinor: 4000,
      jobs,
    },
  ],
  measures: {
    received: three,
    fitted: three,
    verified: three,
    jobs: { byCount: share, byWeight: { ...share, done: 120, of: 480 } },
    spend: share,
  },
};
const done = { act: 8, label: 'Finishing', entries: 1, parts: [], made: [], notices: [] };

beforeEach(() => {
  vi.clearAllMocks();
  api.plan.view.mockResolvedValue(view);
  api.plan.progress.mockResolvedValue([]);
  api.plan.finishJob.mockResolvedValue(done);
  api.plan.reopenJob.mockResolvedValue(done);
  api.records.reorder.mockResolvedValue(done);
  api.records.save.mockResolvedValue(done);
  api.records.list.mockResolvedValue([]);
  api.workbook.settings.mockResolvedValue({ author: 'Ada' });
});

const openPlan = (workspace: Partial<Workspace> = {}) => shown(<Plan />, workspace);
const titles = () => [...document.querySelectorAll('.job-title')].map((title) => title.textContent);

it('says of each open job what it waits for or that it can be done tonight, and shows just those on asking', async () => {
  openPlan();
  expect(await screen.findByText('waits for 2 main bearing (back-ordered)')).toBeTruthy();
  expect(screen.getAllByText('can be done tonight')).toHaveLength(2);
  expect(screen.getByText('1 of 4 jobs, 6 h left')).toBeTruthy();
  expect(titles()).toEqual(['Hang the crank', 'Fit the dowels', 'Paint the sump']);
  await userEvent.click(screen.getByRole('tab', { name: /^Tonight ?2$/ }));
  expect(titles()).toEqual(['Fit the dowels', 'Paint the sump']);
});

it('shows what a job needs, with links to its parts', async () => {
  openPlan();
  const title = await screen.findByRole('button', { name: 'Hang the crank' });
  await userEvent.click(title);
  expect(title.getAttribute('aria-expanded')).toBe('true');
  expect(screen.getByRole('link', { name: 'main bearing' }).getAttribute('href')).toBe('#/parts?part=31');
  expect(document.querySelector('.job-missing')?.textContent).toBe('2 missing');
  expect(screen.getByText('away')).toBeTruthy();
});

it('finishes a job with the time put together from buttons', async () => {
  openPlan();
  await userEvent.click(await screen.findByRole('button', { name: 'Finish Paint the sump' }));
  await userEvent.click(await screen.findByRole('button', { name: '+ 1 h' }));
  await userEvent.click(screen.getByRole('button', { name: '+ 30 min' }));
  await userEvent.click(screen.getByRole('button', { name: 'Finish the job' }));
  expect(api.plan.finishJob).toHaveBeenCalledWith(
    expect.objectContaining({ jobs: [4], minutesSpent: 90, by: 'Ada', on: '2026-03-12', note: '' }),
  );
});

it('does not sign a job off without a name', async () => {
  api.workbook.settings.mockResolvedValue({ author: '' });
  openPlan();
  await userEvent.click(await screen.findByRole('button', { name: 'Finish Fit the dowels' }));
  await userEvent.click(await screen.findByRole('button', { name: 'Sign off and finish' }));
  expect(screen.getByText('Signed off by is still empty.')).toBeTruthy();
  expect(api.plan.finishJob).not.toHaveBeenCalled();
});

it('moves a job by Alt and the arrows at once, sends the whole plan in order, and keeps the focus', async () => {
  let answer = (): void => undefined;
  api.records.reorder.mockImplementationOnce(() => new Promise((resolve) => (answer = () => resolve(done))));
  openPlan();
  const title = await screen.findByRole('button', { name: 'Hang the crank' });
  title.focus();
  fireEvent.keyDown(title, { key: 'ArrowDown', altKey: true });
  expect(titles()).toEqual(['Fit the dowels', 'Hang the crank', 'Paint the sump']);
  // The second press comes while the first is still on its way.
  fireEvent.keyDown(title, { key: 'ArrowDown', altKey: true });
  expect(titles()).toEqual(['Fit the dowels', 'Paint the sump', 'Hang the crank']);
  expect(api.records.reorder).toHaveBeenCalledTimes(1);
  await act(async () => answer());
  await waitFor(() => expect(api.records.reorder).toHaveBeenCalledTimes(2));
  expect(api.records.reorder.mock.calls.map(([{ ids }]) => ids)).toEqual([
    [1, 3, 2, 4],
    [1, 3, 4, 2],
  ]);
  await waitFor(() => expect(document.activeElement?.textContent).toBe('Hang the crank'));
});

it('says that the first job goes no higher', async () => {
  openPlan();
  fireEvent.keyDown(await screen.findByRole('button', { name: 'Hang the crank' }), { key: 'ArrowUp', altKey: true });
  expect(await screen.findByText(/already the first shown in Assembly/)).toBeTruthy();
  expect(api.records.reorder).not.toHaveBeenCalled();
});

it('follows a link to a job, even to one that is done and not shown', async () => {
  window.location.hash = '#/plan?job=1';
  openPlan();
  await waitFor(() => expect(document.activeElement?.id).toBe('job-1'));
  expect(document.activeElement?.getAttribute('aria-expanded')).toBe('true');
  await userEvent.click(screen.getByRole('button', { name: 'Reopen Clean the block' }));
  const form = within(await screen.findByRole('dialog'));
  await userEvent.type(form.getByLabelText(/Why it is open again/), 'Oil gallery was blocked');
  await userEvent.click(form.getByRole('button', { name: 'Reopen the job' }));
  expect(api.plan.reopenJob).toHaveBeenCalledWith(
    expect.objectContaining({ job: 1, reason: 'Oil gallery was blocked', on: '2026-03-12' }),
  );
});

it('adds a job at the end of its phase, with hours as they were typed', async () => {
  openPlan();
  await userEvent.click(await screen.findByRole('button', { name: 'Add a job to Assembly' }));
  const form = within(await screen.findByRole('dialog'));
  await userEvent.type(form.getByLabelText(/^Job(?!s)/), 'Fit the oil pump');
  await userEvent.type(form.getByLabelText(/Guess of the work/), 'soon');
  await userEvent.click(form.getByRole('button', { name: 'Add the job' }));
  expect(form.getByText(/“soon” is no length of work/)).toBeTruthy();
  await userEvent.clear(form.getByLabelText(/Guess of the work/));
  await userEvent.type(form.getByLabelText(/Guess of the work/), '1:30');
  await userEvent.click(form.getByRole('button', { name: 'Add the job' }));
  expect(api.records.save).toHaveBeenCalledWith(
    expect.objectContaining({
      kind: 'job',
      build: 1,
      values: expect.objectContaining({ title: 'Fit the oil pump', minutesGuess: 90, phase: 1, sort: 41 }),
    }),
  );
});

it('lets nothing be entered while a past day is shown', async () => {
  openPlan({ asOf: '2026-03-02' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(await screen.findByText('Hang the crank')).toBeTruthy();
  expect(screen.queryByRole('button', { name: /^Finish/ })).toBeNull();
  expect(api.plan.view).toHaveBeenCalledWith({ build: 1, asOf: '2026-03-02' });
});
