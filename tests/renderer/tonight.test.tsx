import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { PlanJob } from '../../core/contract/plan.ts';
import type { TonightView } from '../../core/contract/tonight.ts';
import { Tonight } from '../../renderer/screens/bench/tonight.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  tonight: { view: vi.fn(), start: vi.fn(), stop: vi.fn(), done: vi.fn(), left: vi.fn() },
  plan: { finishJob: vi.fn(), addHours: vi.fn() },
  workbook: { settings: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const job: PlanJob = {
  id: 7,
  title: 'Hang the crank',
  phase: null,
  system: null,
  sort: 1,
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
  revision: 1,
};
const view: TonightView = {
  answer: 'First “Hang the crank”: 1 job for 2 h of 3 h.',
  minutes: 180,
  minutesFrom: 'what is left of today’s hours',
  minutesOver: 60,
  rule: 'Best first.',
  jobs: [
    {
      job,
      minutesLeft: 120,
      daysGained: 2,
      waiting: 3,
      fits: 'whole',
      minutesTonight: 120,
      says: '2 h left: can be finished.',
      fetch: [
        {
          bin: 4,
          binName: 'Rack A1',
          place: 'left wall',
          parts: [{ part: 31, description: 'main bearing', partNumber: 'MB-1', milli: 5000, unit: 'each' }],
        },
      ],
      torque: [{ id: 9, name: 'Main cap bolts', standing: 'not begun', says: 'Not begun.', lubricant: 'engine oil' }],
      sheets: [{ id: 3, title: 'Main journals', standing: 'missing', says: '5 places are missing.' }],
      lines: [{ id: 5, name: 'Turbo drain', says: 'Cut 430 mm.' }],
      consumables: ['rags', '5 L break-in oil'],
      who: 'Ann',
      running: null,
    },
  ],
  unlocks: [
    {
      wants: [{ kind: 'tool', id: 2, name: 'cam tool', does: 'borrow the cam tool', standing: 'Uncle’s garage' }],
      jobs: [{ id: 8, title: 'Degree the cam' }],
      says: 'Borrow the cam tool: brings “Degree the cam”.',
    },
  ],
  place: '',
  places: ['garage', 'kitchen table'],
  others: [{ id: 12, title: 'Fit covers', says: 'not before 4 Mar 2026' }],
  begin: '',
  caution: 'The makers’ manuals govern.',
};
const [planned] = view.jobs as [TonightView['jobs'][number]];
/** The same job, with somebody at it since `ago` minutes. */
const atWork = (ago: number, unsure = false): TonightView => ({
  ...view,
  answer: 'At work: “Hang the crank”.',
  jobs: [
    {
      ...planned,
      running: { by: 'Ray', at: new Date(Date.now() - ago * 60_000).toISOString(), minutes: ago, unsure },
    },
  ],
});
const done = { act: 8, label: 'Finishing', entries: 1, parts: [], made: [], notices: [] };

beforeEach(() => {
  vi.clearAllMocks();
  api.tonight.view.mockResolvedValue(view);
  api.plan.finishJob.mockResolvedValue(done);
  for (const act of [api.tonight.start, api.tonight.stop, api.tonight.done, api.tonight.left]) {
    act.mockResolvedValue(done);
  }
  localStorage.clear();
  api.plan.addHours.mockResolvedValue(done);
  api.workbook.settings.mockResolvedValue({ author: 'Ada' });
});

it('says first what to do, what to fetch from which bin, and which sheets to open', async () => {
  const user = userEvent.setup();
  shown(<Tonight build={1} />);
  expect(await screen.findByText(view.answer)).toBeDefined();
  expect(api.tonight.view).toHaveBeenLastCalledWith({ build: 1 });
  const entry = within(screen.getByRole('heading', { name: 'Hang the crank' }).closest('li') as HTMLElement);
  expect(entry.getByText(/The date gains 2 days\. 3 jobs wait for it\./)).toBeDefined();
  expect(entry.getByText('Rack A1').textContent).toBe('Rack A1 left wall');
  expect(entry.getByText(/main bearing/).textContent).toMatch(/^5\D* main bearing$/);
  expect(entry.getByRole('link', { name: 'Main cap bolts' }).getAttribute('href')).toContain('torque=9');
  expect(entry.getByRole('link', { name: 'Main journals' }).getAttribute('href')).toContain('sheet=3');
  expect(screen.getByText('Borrow the cam tool: brings “Degree the cam”.', { exact: false })).toBeDefined();

  await user.type(screen.getByLabelText(/Hours at the bench/), '1:30');
  await waitFor(() => expect(api.tonight.view).toHaveBeenLastCalledWith({ build: 1, minutes: 90 }));
});

it('finishes a job with its hours, and logs hours without finishing it', async () => {
  const user = userEvent.setup();
  shown(<Tonight build={1} />);
  await user.click(await screen.findByRole('button', { name: 'Done: Hang the crank' }));
  await user.type(await screen.findByRole('textbox', { name: /Time spent/ }), '1.5');
  await user.click(screen.getByRole('button', { name: 'Finish the job' }));
  await waitFor(() =>
    expect(api.plan.finishJob).toHaveBeenCalledWith(expect.objectContaining({ jobs: [7], minutesSpent: 90 })),
  );
  await user.click(await screen.findByRole('button', { name: 'Log hours: Hang the crank' }));
  await user.type(await screen.findByRole('textbox', { name: /Time spent/ }), '45 min');
  await user.click(screen.getByRole('button', { name: 'Add the time' }));
  await waitFor(() => expect(api.plan.addHours).toHaveBeenCalledWith(expect.objectContaining({ job: 7, minutes: 45 })));
});

it('says how to begin on a build without jobs', async () => {
  const begin = 'Write the first job down on the Plan.';
  api.tonight.view.mockResolvedValue({
    ...view,
    answer: 'No jobs are written down yet.',
    begin,
    jobs: [],
    unlocks: [],
  });
  shown(<Tonight build={1} />);
  expect(await screen.findByText(begin)).toBeDefined();
  expect(screen.getByRole('button', { name: 'Open the Plan' })).toBeDefined();
});

it('says what a job uses up, its place, for whom it is and which line to make', async () => {
  shown(<Tonight build={1} />);
  const entry = within((await screen.findByRole('heading', { name: 'Hang the crank' })).closest('li') as HTMLElement);
  expect(entry.getByText('Uses up: rags, 5 L break-in oil.')).toBeDefined();
  expect(entry.getByText(/^For Ann\. /)).toBeDefined();
  expect(entry.getByRole('link', { name: 'Turbo drain' }).getAttribute('href')).toContain('line=5');
  expect(screen.getByText('Fit covers: not before 4 Mar 2026.')).toBeDefined();
});

it('begins a job by one tap', async () => {
  const user = userEvent.setup();
  shown(<Tonight build={1} />);
  await user.click(await screen.findByRole('button', { name: 'Start: Hang the crank' }));
  await waitFor(() => expect(api.tonight.start).toHaveBeenCalledWith(expect.objectContaining({ job: 7, by: '' })));
});

it('shows what somebody is at with its time, stops it by one tap, and takes what is left as the new guess', async () => {
  api.tonight.view.mockResolvedValue(atWork(45));
  const user = userEvent.setup();
  shown(<Tonight build={1} />);
  const card = within(await screen.findByRole('region', { name: 'At work: Hang the crank' }));
  expect(card.getByRole('timer').textContent).toBe('45 min');
  expect(screen.queryByRole('button', { name: /^Start/ })).toBeNull();
  api.tonight.view.mockResolvedValue(view);
  await user.click(card.getByRole('button', { name: 'Stop: Hang the crank' }));
  expect(api.tonight.stop).toHaveBeenCalledWith(
    expect.objectContaining({ job: 7, by: 'Ray', minutes: null, leftMinutes: null }),
  );
  const form = within(await screen.findByRole('form', { name: 'What is left of Hang the crank' }));
  expect(form.getByText(/By the guess 1 h 15 min are left/)).toBeDefined();
  await user.click(form.getByRole('button', { name: '+ 30 min' }));
  await user.click(form.getByRole('button', { name: 'Keep as the new guess' }));
  expect(api.tonight.left).toHaveBeenCalledWith(expect.objectContaining({ job: 7, leftMinutes: 105 }));
  await waitFor(() => expect(screen.queryByRole('form', { name: /What is left/ })).toBeNull());
});

it('asks how long it really was after a night, and says so when it is still not said', async () => {
  api.tonight.view.mockResolvedValue(atWork(800, true));
  api.tonight.done.mockRejectedValueOnce(new Error('no answer'));
  const user = userEvent.setup();
  shown(<Tonight build={1} />);
  const card = within(await screen.findByRole('region', { name: 'At work: Hang the crank' }));
  expect(card.queryByRole('timer')).toBeNull();
  await user.click(card.getByRole('button', { name: 'Done: Hang the crank' }));
  expect(await card.findByRole('alert')).toBeDefined();
  await user.type(card.getByRole('textbox', { name: /Really worked/ }), '2');
  await user.click(card.getByRole('button', { name: 'Done: Hang the crank' }));
  expect(api.tonight.done).toHaveBeenLastCalledWith(expect.objectContaining({ job: 7, minutes: 120, by: 'Ray' }));
});

it('keeps the place for the next time, and forgets one that no job names any more', async () => {
  localStorage.setItem('hoistday.place', 'Garage');
  const first = shown(<Tonight build={1} />);
  await waitFor(() => expect(api.tonight.view).toHaveBeenLastCalledWith({ build: 1, place: 'Garage' }));
  expect((await screen.findByRole('combobox', { name: /Place/ })).getAttribute('value')).toBe('garage');
  first.unmount();
  localStorage.setItem('hoistday.place', 'sold barn');
  shown(<Tonight build={1} />);
  await waitFor(() => expect(localStorage.getItem('hoistday.place')).toBe(''));
  await waitFor(() => expect(api.tonight.view).toHaveBeenLastCalledWith({ build: 1 }));
});
