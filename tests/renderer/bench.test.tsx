import { screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { SheetView, TorqueView } from '../../core/contract/bench.ts';
import Bench from '../../renderer/screens/bench/bench-screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  bench: { view: vi.fn(), sheet: vi.fn(), torque: vi.fn(), turn: vi.fn(), recheck: vi.fn(), read: vi.fn() },
  records: { list: vi.fn(), save: vi.fn() },
  plumbing: { view: vi.fn(() => Promise.resolve({ lines: [] })) },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const done = { act: 7, label: 'Done', notices: [], made: [] };
const noLimits = { least: null, most: null, source: '' };
const place = (name: string): SheetView['places'][number] => ({
  place: name,
  readings: [],
  missing: ['gap'],
  mean: null,
  least: null,
  most: null,
  outOfRound: null,
  taper: null,
  verdict: 'missing',
  clearance: null,
  clearanceUncertainty: null,
  clearanceVerdict: 'no limits',
});
const sheet: SheetView = {
  id: 3,
  revision: 1,
  title: 'Top ring gaps',
  quantity: 'ring gap',
  unit: 'mm',
  part: null,
  partDescription: '',
  job: null,
  jobTitle: '',
  beforeGate: true,
  instrument: 'Feeler gauges',
  resolution: 0.01,
  uncertainty: null,
  expansionPpm: null,
  limits: noLimits,
  clearanceLimits: noLimits,
  less: null,
  lessTitle: '',
  readingNames: ['gap'],
  places: [place('Cylinder 1'), place('Cylinder 2')],
  count: 0,
  mean: null,
  range: null,
  deviation: null,
  standing: 'missing',
  says: 'Not measured: Cylinder 1, Cylinder 2.',
  fit: null,
  note: '',
  caution: 'The maker’s value governs.',
};
const bolts = (stages: number): TorqueView['bolts'] =>
  [1, 2, 3, 4].map((bolt) => ({ bolt, stages, rechecked: false, x: bolt / 5, y: 0.5 }));
const torque: TorqueView = {
  id: 5,
  revision: 1,
  name: 'Flange nuts',
  count: 4,
  thread: '',
  boltClass: '',
  lubricant: '',
  method: 'torque',
  source: '',
  sourceKind: 'unknown',
  pattern: 'star',
  sequence: [1, 3, 2, 4],
  stages: [{ torqueMilliNm: 36_000, angleDeg: null, text: 'to 36 N·m' }],
  bolts: bolts(0),
  next: { bolt: 1, stage: 1, text: 'Bolt 1 to 36 N·m' },
  standing: 'not begun',
  says: 'Not begun.',
  beforeGate: true,
  part: null,
  job: null,
  log: [],
  caution: 'The maker’s manual governs.',
  note: '',
};

beforeEach(() => {
  vi.resetAllMocks();
  api.bench.view.mockResolvedValue({ answer: 'Nothing is open.', sheets: [], groups: [] });
  api.bench.sheet.mockResolvedValue(sheet);
  api.bench.torque.mockResolvedValue(torque);
});

it('goes on to the next place with Enter, and keeps what was typed when it is refused', async () => {
  window.location.hash = '#/bench?sheet=3';
  api.bench.read.mockRejectedValue(new Error('no answer'));
  shown(<Bench />);
  const user = userEvent.setup();
  const first = await screen.findByRole('textbox', { name: 'Cylinder 1, gap' });
  await user.type(first, '0,35{Enter}');
  const second = screen.getByRole('textbox', { name: 'Cylinder 2, gap' });
  expect(document.activeElement).toBe(second);
  await user.type(second, '14 thou{Enter}');
  await waitFor(() => expect(api.bench.read).toHaveBeenCalledOnce());
  expect(api.bench.read.mock.calls[0]?.[0]).toMatchObject({
    readings: [
      { place: 'Cylinder 1', name: 'gap', typed: '0,35' },
      { place: 'Cylinder 2', name: 'gap', typed: '14 thou' },
    ],
  });
  await waitFor(() => expect((second as HTMLInputElement).value).toBe('14 thou'));
  expect((first as HTMLInputElement).value).toBe('0,35');
});

it('names the next bolt on the large button and goes on with it', async () => {
  window.location.hash = '#/bench?torque=5';
  api.bench.turn.mockImplementation(async () => {
    api.bench.torque.mockResolvedValue({ ...torque, next: { bolt: 3, stage: 1, text: 'Bolt 3 to 36 N·m' } });
    return done;
  });
  shown(<Bench />);
  await userEvent.click(await screen.findByRole('button', { name: 'Bolt 1 done to 36 N·m' }));
  await screen.findByRole('button', { name: 'Bolt 3 done to 36 N·m' });
  expect(api.bench.turn.mock.calls[0]?.[0]).toMatchObject({ boltGroup: 5, bolt: 1, stage: 1 });
});

it('goes over the bolts that were tapped, or over all that are still to be gone over', async () => {
  window.location.hash = '#/bench?torque=5';
  api.bench.torque.mockResolvedValue({ ...torque, bolts: bolts(1), next: null, standing: 'final' });
  api.bench.recheck.mockResolvedValue(done);
  shown(<Bench />);
  await screen.findByRole('button', { name: 'All gone over again' });
  await userEvent.click(screen.getByRole('button', { name: 'Bolt 2, final' }));
  await userEvent.click(screen.getByRole('button', { name: 'Bolt 4, final' }));
  expect(screen.getByRole('button', { name: 'Bolt 4, final' }).getAttribute('aria-pressed')).toBe('true');
  await userEvent.click(screen.getByRole('button', { name: '2 chosen bolts gone over again' }));
  await waitFor(() => expect(api.bench.recheck.mock.calls[0]?.[0]).toMatchObject({ boltGroup: 5, bolts: [2, 4] }));
});

it('takes the order of a new sheet from taps, and an emptied count is asked for, not taken for zero', async () => {
  window.location.hash = '#/bench';
  api.records.save.mockResolvedValue({ ...done, made: [9] });
  shown(<Bench />);
  const user = userEvent.setup();
  await user.click(await screen.findByRole('button', { name: 'New torque sheet…' }));
  await user.type(await screen.findByRole('textbox', { name: /^Which bolts/ }), 'Cover');
  const count = screen.getByRole('textbox', { name: /^How many/ }) as HTMLInputElement;
  await user.clear(count);
  expect(count.value).toBe('');
  await user.click(screen.getByRole('button', { name: 'Make the sheet' }));
  expect(api.records.save).not.toHaveBeenCalled();
  await user.type(count, '3');
  await user.click(screen.getByRole('combobox', { name: /^The way round/ }));
  await user.click(await screen.findByRole('option', { name: 'As the manual says' }));
  for (const bolt of [2, 3, 1]) await user.click(screen.getByRole('button', { name: new RegExp(`^Bolt ${bolt},`) }));
  await user.click(screen.getByRole('button', { name: 'Make the sheet' }));
  await waitFor(() =>
    expect(api.records.save.mock.calls[0]?.[0].values).toMatchObject({ count: 3, pattern: 'custom', order: [2, 3, 1] }),
  );
});
