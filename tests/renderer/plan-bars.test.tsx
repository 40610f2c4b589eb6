import { fireEvent, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { BarsView, PlanBar } from '../../core/contract/plan.ts';
import { Bars } from '../../renderer/screens/plan/bars.tsx';
import { draggedMinutes } from '../../renderer/screens/plan/bars-drawing.tsx';
import { marksOf, placeOf, scaleOf } from '../../renderer/screens/plan/bars-scale.ts';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  plan: { bars: vi.fn() },
  records: { save: vi.fn() },
  journal: { undo: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const bar = (id: number, title: string, given: Partial<PlanBar> = {}): PlanBar => ({
  id,
  title,
  phase: 1,
  state: 'free',
  startOn: '2026-03-17',
  startAt: '18:30',
  finishOn: '2026-03-19',
  finishAt: '21:00',
  earlyStartOn: '2026-03-17',
  earlyFinishOn: '2026-03-19',
  lateStartOn: '2026-03-17',
  lateFinishOn: '2026-03-19',
  floatMinutes: 0,
  floatDays: 0,
  slackMinutes: 0,
  critical: true,
  beforeGate: true,
  who: 'Bo',
  person: null,
  hands: true,
  oneSitting: false,
  minutesLeft: 300,
  minutesGuess: 300,
  minutesLow: null,
  minutesHigh: null,
  notBefore: null,
  after: [],
  waitsFor: [],
  heldBy: '',
  revision: 3,
  ...given,
});
const view: BarsView = {
  answer: 'engine-in on 21 Mar 2026 if every guess holds.',
  rule: 'Of the jobs whose earlier jobs are placed …',
  assumes: ['There is one of each tool.'],
  today: '2026-03-12',
  gate: { name: 'engine-in', on: '2026-03-21', networkOn: '2026-03-19' },
  chain: [{ job: 2, says: '“Glue the pan”' }],
  people: ['Bo'],
  overAllocated: [],
  phases: [
    { id: 1, name: 'Assembly' },
    { id: null, name: 'No phase' },
  ],
  bars: [
    bar(1, 'Clean the block', { state: 'done', startOn: '2026-03-01', finishOn: '2026-03-02', critical: false }),
    bar(2, 'Glue the pan'),
    bar(3, 'Fit the pan', {
      state: 'waiting for another job',
      startOn: '2026-03-21',
      finishOn: '2026-03-21',
      after: [{ job: 2, minutes: 1440, on: 'clock' }],
      heldBy: 'the job “Glue the pan” and 24 h after it',
      critical: false,
      floatMinutes: 150,
      floatDays: 3,
    }),
  ],
};

beforeEach(() => {
  vi.clearAllMocks();
  api.plan.bars.mockResolvedValue(view);
  api.records.save.mockResolvedValue({ act: 8, label: 'Change', entries: 1, parts: [], made: [], notices: [] });
});

const open = (asOf: string | null = null) => shown(<Bars reading={{ build: 1 }} />, { asOf });
const job = (name: RegExp) => screen.findByRole('button', { name });

it('shows open jobs as bars and the same in a table, done ones on asking', async () => {
  open();
  const table = await screen.findByRole('table', { name: 'The plan over the calendar' });
  expect(within(table).getAllByRole('row')).toHaveLength(3);
  expect(within(table).getByText('the job “Glue the pan” and 24 h after it')).toBeTruthy();
  expect(within(table).getByText('3 days')).toBeTruthy();
  expect(document.querySelectorAll('.bars-bar')).toHaveLength(2);
  expect(document.querySelectorAll('.bars-arrow')).toHaveLength(1);
  expect(screen.getByText('today')).toBeTruthy();
  await userEvent.click(screen.getByRole('button', { name: 'Done jobs too' }));
  expect(document.querySelectorAll('.bars-bar')).toHaveLength(3);
});

it('goes from job to job with the arrows, and Alt with an arrow moves the first day', async () => {
  open();
  const glue = await job(/^Glue the pan: free/);
  glue.focus();
  await userEvent.keyboard('{ArrowDown}');
  expect(document.activeElement?.getAttribute('aria-label')).toMatch(/^Fit the pan: waits for a job/);
  await userEvent.keyboard('{ArrowUp}');
  fireEvent.keyDown(glue, { key: 'ArrowRight', altKey: true });
  await vi.waitFor(() => expect(api.records.save).toHaveBeenCalledTimes(1));
  // By hand: the bar begins on 17 March, a day on is the 18th.
  expect(api.records.save.mock.calls[0]?.[0]).toMatchObject({
    kind: 'job',
    id: 2,
    values: { notBefore: '2026-03-18' },
  });
});

it('types the first day and the hours', async () => {
  open();
  await userEvent.click(await job(/^Glue the pan: free/));
  const guess = await screen.findByRole('textbox', { name: /Guess of the hours/ });
  await userEvent.clear(guess);
  await userEvent.type(guess, '6');
  await userEvent.click(screen.getByRole('button', { name: 'Keep the changes' }));
  await vi.waitFor(() => expect(api.records.save).toHaveBeenCalledTimes(1));
  expect(api.records.save.mock.calls[0]?.[0]).toMatchObject({
    id: 2,
    revision: 3,
    values: { minutesGuess: 360, notBefore: null },
  });
});

it('moves nothing while a past day is shown', async () => {
  open('2026-03-01');
  fireEvent.keyDown(await job(/^Glue the pan: free/), { key: 'ArrowRight', altKey: true });
  expect(api.records.save).not.toHaveBeenCalled();
});

it('lays days out evenly and marks Mondays or months', () => {
  const scale = scaleOf(view, view.bars, 'weeks');
  expect(placeOf(scale, '2026-03-13') - placeOf(scale, '2026-03-12')).toBe(scale.perDay);
  expect(marksOf(scale, 'weeks').map(({ label }) => label)).toContain('16 Mar');
  expect(marksOf(scaleOf(view, view.bars, 'months'), 'months').map(({ label }) => label)).toContain('Mar 26');
  // By hand: half as wide again is half as long again, to a quarter of an hour.
  expect(draggedMinutes(300, 60, 30)).toBe(450);
  expect(draggedMinutes(60, 60, -60)).toBe(15);
});
