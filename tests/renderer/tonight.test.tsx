import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { PlanJob } from '../../core/contract/plan.ts';
import type { TonightView } from '../../core/contract/tonight.ts';
import { Tonight } from '../../renderer/screens/bench/tonight.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  tonight: { view: vi.fn() },
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
    },
  ],
  unlocks: [
    {
      wants: [{ kind: 'tool', id: 2, name: 'cam tool', does: 'borrow the cam tool', standing: 'Uncle’s garage' }],
      jobs: [{ id: 8, title: 'Degree the cam' }],
      says: 'Borrow the cam tool: brings “Degree the cam”.',
    },
  ],
  begin: '',
  caution: 'The makers’ manuals govern.',
};
const done = { act: 8, label: 'Finishing', entries: 1, parts: [], made: [], notices: [] };

beforeEach(() => {
  vi.clearAllMocks();
  api.tonight.view.mockResolvedValue(view);
  api.plan.finishJob.mockResolvedValue(done);
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
