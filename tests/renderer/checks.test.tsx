import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { CheckRow, ChecksView } from '../../core/contract/checks.ts';
import { calculatorParams, roomText } from '../../renderer/screens/checks/check-words.ts';
import Checks from '../../renderer/screens/checks/screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  checks: { view: vi.fn(), setTargets: vi.fn(), addShipped: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const row = (change: Partial<CheckRow>): CheckRow => ({
  id: 1,
  revision: 1,
  title: 'Intercooler outlet',
  calculator: 'D6',
  calculatorTitle: '',
  output: 'none',
  outputLabel: 'Result',
  limit: { least: null, most: 55, unit: '%', closeMilli: 50, source: '' },
  system: null,
  shipped: '',
  beforeGate: true,
  note: '',
  verdict: 'holds',
  says: 'It holds.',
  value: 50,
  unit: '%',
  margin: 5,
  inputs: [],
  outputs: [],
  warnings: [],
  formula: '',
  source: '',
  caution: '',
  waived: '',
  ...change,
});
const view: ChecksView = {
  answer: '1 of 3 checks fails and 1 lacks a figure.',
  counts: { holds: 1, close: 0, fails: 1, lacks: 1 },
  checks: [
    row({}),
    row({ id: 2, title: 'Fuse', verdict: 'lacks data', value: null, margin: null }),
    row({ id: 3, title: 'Pump', verdict: 'fails', margin: -4 }),
  ],
  targets: [
    {
      id: null,
      revision: null,
      name: 'boost',
      label: 'Boost',
      hint: '',
      value: '',
      unit: 'bar',
      units: ['bar', 'kPa'],
      source: '',
      note: '',
      uses: 2,
    },
  ],
  offered: [{ shipped: 'fan-fuse', title: 'Fan fuse', about: 'The fuse against the wire.' }],
};
const done = { act: 9, label: 'Done', entries: 1, parts: [], made: [], notices: [] };

beforeEach(() => {
  vi.clearAllMocks();
  window.location.hash = '#/checks';
  api.checks.view.mockResolvedValue(view);
  api.checks.setTargets.mockResolvedValue(done);
  api.checks.addShipped.mockResolvedValue(done);
});

it('answers first and lists what fails before what lacks a figure and what holds', async () => {
  shown(<Checks />);
  expect(await screen.findByText(view.answer)).toBeTruthy();
  const table = within(screen.getByRole('table', { name: /Checks/ }));
  expect(table.getAllByRole('rowheader').map((cell) => within(cell).getByRole('link').textContent)).toEqual([
    'Pump',
    'Fuse',
    'Intercooler outlet',
  ]);
});

it('says how far a failing figure is beyond its limit, and hands its inputs to the calculator', () => {
  expect(roomText(row({ verdict: 'fails', margin: -4 }), 'en')).toBe('4 % beyond');
  const input = { label: '', source: { from: 'target', target: 'boost' }, from: '', lacks: '', part: null } as const;
  const inputs = [
    { ...input, name: 'boost', value: '1.4', unit: 'bar', assumed: false },
    { ...input, name: 'speed', value: '6,200 rpm', unit: 'rpm', assumed: false },
    { ...input, name: 'air', value: null, unit: 'kPa', assumed: false },
  ];
  expect(calculatorParams(row({ inputs }))).toEqual({
    id: 'D6',
    'i.boost': '1.4',
    'u.boost': 'bar',
    'i.speed': '6200 rpm',
    'u.speed': 'rpm',
  });
});

it('keeps the lines of the target sheet that were changed in one act', async () => {
  window.location.hash = '#/checks?view=targets';
  const user = userEvent.setup();
  shown(<Checks />);
  await user.type(await screen.findByRole('textbox', { name: 'Boost: value' }), '1.4');
  await user.click(screen.getByRole('button', { name: 'Save 1 line' }));
  await waitFor(() =>
    expect(api.checks.setTargets).toHaveBeenCalledWith(
      expect.objectContaining({ build: 1, targets: [{ name: 'boost', value: '1.4', unit: 'bar', source: '' }] }),
    ),
  );
});

it('lets nothing be entered on a past day and says why', async () => {
  window.location.hash = '#/checks?view=add';
  shown(<Checks />, { asOf: '2026-02-01' });
  const add = await screen.findByRole('button', { name: /^Add Fan fuse/ });
  expect((add as HTMLButtonElement).disabled).toBe(true);
  expect(screen.getByText(/A past day is shown/)).toBeTruthy();
});
