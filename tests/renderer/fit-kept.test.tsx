import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { ConnectionRow, DeclaredRow, FitsView, JudgedFit, PortRow } from '../../core/contract/fits.ts';
import FitScreen from '../../renderer/screens/fit/fit-screen.tsx';
import { wrongFits } from '../../renderer/screens/fit/wrong-fits.ts';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  fits: {
    view: vi.fn(),
    tryOut: vi.fn(),
    tryDeclared: vi.fn(),
    useAdapter: vi.fn(),
    dropAdapter: vi.fn(),
    listNeeds: vi.fn(),
    unlistNeeds: vi.fn(),
    accept: vi.fn(),
    endAcceptance: vi.fn(),
    addShipped: vi.fn(),
  },
  records: { list: vi.fn(), save: vi.fn(), retire: vi.fn() },
  parts: { rows: vi.fn() },
  workbook: { settings: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const judged = (change: Partial<JudgedFit> = {}): JudgedFit => ({
  verdict: 'lookalike',
  reason: 'M10x1.25 into M10x1.5: same diameter, pitch 1.25 against 1.5 mm',
  needs: [],
  adapters: [],
  severity: 'danger',
  consequence: 'It starts and jams.',
  howToTell: 'pitch gauge',
  missing: [],
  notes: [],
  caution: 'A thread that is forced lets go: follow the maker’s manual.',
  source: 'ISO 261',
  ...change,
});
const side = (change: Partial<ConnectionRow['one']>): ConnectionRow['one'] => ({
  port: 1,
  part: 11,
  text: 'M10x1.25 male',
  whose: 'thread of Head bolt',
  standing: 'needed',
  ...change,
});
const connection = (change: Partial<ConnectionRow>): ConnectionRow => ({
  id: 1,
  revision: 1,
  title: 'Head bolts',
  one: side({}),
  other: side({ port: 2, part: null, text: 'M10x1.5 female', whose: 'head bolt hole of Block', standing: '' }),
  role: 'fastener',
  medium: '',
  fit: judged(),
  says: 'Look-alike.',
  stands: 'wrong',
  adapter: null,
  needsListed: null,
  accepted: null,
  beforeGate: true,
  note: '',
  ...change,
});
const port = (change: Partial<PortRow>): PortRow => ({
  id: 1,
  revision: 3,
  name: 'thread',
  part: 11,
  owner: 'Head bolt',
  place: '',
  role: 'fastener',
  medium: '',
  designation: 'M10x1.25 male',
  canonical: 'M10x1.25 male',
  problem: '',
  measures: '',
  connections: [1],
  note: '',
  ...change,
});
const declared = (change: Partial<DeclaredRow>): DeclaredRow => ({
  id: 7,
  revision: 1,
  title: 'Count of head bolt holes',
  shipped: 'head_bolt_holes',
  outcome: 'unknown',
  severity: 'danger',
  says: 'Enter the count of bolt holes of the head.',
  left: '',
  right: '',
  margin: '',
  missing: [{ path: 'head.bolt_holes', label: 'the count of bolt holes of the head' }],
  notes: [],
  source: '',
  caution: '',
  asks: [
    { path: 'head.bolt_holes', label: 'the count of bolt holes of the head', sort: 'count', value: '', from: '' },
    {
      path: 'block.bolt_holes',
      label: 'the count of head bolt holes of the block',
      sort: 'count',
      value: '14',
      from: 'fact “bolt holes” of Block',
    },
  ],
  things: [
    { name: 'head', part: null, description: '' },
    { name: 'block', part: null, description: '' },
  ],
  stands: 'unknown',
  accepted: null,
  beforeGate: true,
  note: '',
  ...change,
});
const adapters = [
  { pieces: ['female swivel 37° flare -10 to male 1/2 NPT'], needs: ['thread sealant'], source: 'SAE J514' },
];
const view: FitsView = {
  answer: '2 of 4 fits are wrong and 1 lacks something.',
  counts: { fits: 4, wrong: 2, unknown: 1 },
  ports: [port({}), port({ id: 2, name: 'head bolt hole', part: null, owner: 'Block', place: 'Block' })],
  connections: [
    connection({}),
    connection({ id: 2, title: 'Fuel rail', fit: judged({ severity: 'stop' }) }),
    connection({
      id: 3,
      title: 'Drain',
      fit: judged({ verdict: 'adapter', severity: 'info', adapters }),
      stands: 'wrong',
    }),
    connection({
      id: 4,
      title: 'Vent',
      accepted: { reason: 'Helicoil goes in.', by: 'Ada', on: '2026-03-01', lapsed: false },
      stands: 'fits',
    }),
    connection({ id: 5, title: 'Feed', fit: judged({ verdict: 'mates', severity: 'info' }), stands: 'fits' }),
  ],
  declared: [declared({})],
  offered: [{ shipped: 'flywheel_bolts', title: 'Count of flywheel bolts', things: ['flywheel'], asks: ['the count'] }],
  caution: 'Fits are judged by what was entered.',
};
const done = { act: 9, label: 'Done', entries: 1, parts: [], made: [], notices: [] };

beforeEach(() => {
  vi.clearAllMocks();
  window.location.hash = '#/fit';
  api.fits.view.mockResolvedValue(view);
  api.fits.tryOut.mockResolvedValue({
    one: side({}),
    other: side({}),
    fit: judged({ verdict: 'mates', reason: 'same thread' }),
  });
  api.parts.rows.mockResolvedValue({ columns: ['id', 'description'], rows: [[11, 'Head bolt']], total: 1 });
  api.workbook.settings.mockResolvedValue({ author: 'Ada' });
  api.records.list.mockResolvedValue([]);
  for (const act of [api.fits.useAdapter, api.fits.accept, api.fits.addShipped, api.records.save])
    act.mockResolvedValue(done);
});

it('answers first and lists what is wrong or lacks something by severity, what a reason settled last', async () => {
  shown(<FitScreen />);
  expect(await screen.findByText(view.answer)).toBeTruthy();
  expect(wrongFits(view).map(({ title }) => title)).toEqual([
    'Fuel rail',
    'Head bolts',
    'Count of head bolt holes',
    'Drain',
    'Vent',
  ]);
  const list = screen.getByRole('tabpanel', { name: /^Wrong or lacking/ });
  expect(within(list).getByText('Stop: it can hurt someone')).toBeTruthy();
  expect(within(list).getByText(/Helicoil goes in\./)).toBeTruthy();
  expect(within(list).queryByText('Feed')).toBeNull();
});

it('opens what the hoist check links to, takes an adapter, and accepts with a reason', async () => {
  window.location.hash = '#/fit?connection=3';
  const user = userEvent.setup();
  shown(<FitScreen />);
  const detail = within(await screen.findByRole('dialog', { name: 'Drain' }));
  expect(detail.getByText('Only with an adapter')).toBeTruthy();
  expect(detail.getByText('Source: ISO 261')).toBeTruthy();
  await user.click(detail.getByRole('button', { name: /^Use this adapter/ }));
  expect(api.fits.useAdapter).toHaveBeenCalledWith(expect.objectContaining({ connection: 3, adapter: 0 }));
  await user.click(detail.getByRole('button', { name: /^Accept with a reason/ }));
  const form = within(await screen.findByRole('dialog', { name: 'Accept: Drain' }));
  await user.click(form.getByRole('button', { name: 'Accept it all the same' }));
  expect(api.fits.accept).not.toHaveBeenCalled();
  await user.type(form.getByRole('textbox', { name: /^Reason/ }), 'Trial fit only.');
  await user.click(form.getByRole('button', { name: 'Accept it all the same' }));
  await waitFor(() =>
    expect(api.fits.accept).toHaveBeenCalledWith(
      expect.objectContaining({ subject: { kind: 'connection', id: 3 }, reason: 'Trial fit only.', by: 'Ada' }),
    ),
  );
});

it('says that an acceptance has lapsed', async () => {
  const lapsed = { reason: 'Helicoil goes in.', by: '', on: '2026-03-01', lapsed: true };
  api.fits.view.mockResolvedValue({ ...view, connections: [connection({ accepted: lapsed })] });
  window.location.hash = '#/fit?connection=1';
  shown(<FitScreen />);
  const detail = within(await screen.findByRole('dialog', { name: 'Head bolts' }));
  expect(detail.getByText('The acceptance has lapsed.')).toBeTruthy();
  expect(detail.getByText('Look-alike: do not join')).toBeTruthy();
});

it('keeps a port whose size was picked, and none that can’t be read', async () => {
  window.location.hash = '#/fit?part=11';
  const user = userEvent.setup();
  shown(<FitScreen />);
  const whose = (await screen.findByText('Show all ports')).closest('p');
  await waitFor(() => expect(whose?.textContent).toContain('Head bolt'));
  await user.click(screen.getByRole('button', { name: 'Add a port…' }));
  const form = within(await screen.findByRole('dialog', { name: 'Add a port' }));
  await user.type(form.getByRole('textbox', { name: /^Name of the port/ }), 'oil feed');
  await user.type(form.getByRole('textbox', { name: /^Thread or end/ }), '-6');
  expect(form.getByText('Can’t be read:')).toBeTruthy();
  await user.click(form.getByRole('button', { name: 'Keep the port' }));
  expect(api.records.save).not.toHaveBeenCalled();
  await user.click(form.getByRole('button', { name: /^I don’t know how to write it/ }));
  await user.click(form.getByRole('combobox', { name: 'What is it?' }));
  await user.click(await screen.findByRole('option', { name: 'Flare' }));
  await user.click(form.getByRole('combobox', { name: 'Which size?' }));
  await user.click(await screen.findByRole('option', { name: /^JIC -6, / }));
  await user.click(form.getByRole('button', { name: 'Male, outside' }));
  // SAE J514: 37° flare -6 carries 9/16-18, 14.29 mm and 1.411 mm pitch.
  expect(form.getByText(/14\.29 mm diameter, 1\.411 mm pitch, 18 threads per inch/)).toBeTruthy();
  await user.click(form.getByRole('button', { name: 'Keep the port' }));
  await waitFor(() =>
    expect(api.records.save).toHaveBeenCalledWith(
      expect.objectContaining({
        kind: 'port',
        build: 1,
        values: expect.objectContaining({ name: 'oil feed', part: 11, designation: 'JIC -6 (9/16-18) male' }),
      }),
    ),
  );
});

it('tries a typed side against a kept port before the connection is kept', async () => {
  window.location.hash = '#/fit?port=2';
  const user = userEvent.setup();
  shown(<FitScreen />);
  const detail = within(await screen.findByRole('dialog', { name: 'head bolt hole, Block' }));
  await user.click(detail.getByRole('button', { name: 'Connect it…' }));
  const form = within(await screen.findByRole('dialog', { name: 'Connect two ports' }));
  await user.type(form.getByRole('textbox', { name: /^Other side: thread or end/ }), 'M10x1.5 male');
  expect(await form.findByText('They mate')).toBeTruthy();
  expect(api.fits.tryOut).toHaveBeenLastCalledWith(
    expect.objectContaining({ one: { port: 2, typed: '' }, other: { port: null, typed: 'M10x1.5 male' } }),
  );
  await user.click(form.getByRole('button', { name: 'Keep the connection' }));
  await waitFor(() =>
    expect(api.records.save).toHaveBeenCalledWith(
      expect.objectContaining({
        kind: 'connection',
        values: expect.objectContaining({ title: 'Block head bolt hole to M10x1.5 male', role: 'fastener' }),
      }),
    ),
  );
});

it('adds the shipped fits that are ticked', async () => {
  window.location.hash = '#/fit?view=declared';
  const user = userEvent.setup();
  shown(<FitScreen />);
  await user.click(await screen.findByRole('checkbox', { name: 'Count of flywheel bolts' }));
  await user.click(screen.getByRole('button', { name: 'Add 1 fit' }));
  expect(api.fits.addShipped).toHaveBeenCalledWith(expect.objectContaining({ build: 1, shipped: ['flywheel_bolts'] }));
});

it('lets nothing be entered on a past day and says why', async () => {
  window.location.hash = '#/fit?view=connections';
  shown(<FitScreen />, { asOf: '2026-01-01' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Connect two ports…' })).toBeNull();
});

it('puts what a connection that mates needs on the list by one click, and takes it off again', async () => {
  window.location.hash = '#/fit?connection=5';
  for (const act of [api.fits.listNeeds, api.fits.unlistNeeds]) act.mockResolvedValue(done);
  const mates = judged({ verdict: 'mates', severity: 'info', needs: ['sealing washer 14x18 mm'] });
  const feed = connection({ id: 5, title: 'Feed', fit: mates, stands: 'fits' });
  api.fits.view.mockResolvedValueOnce({ ...view, connections: [feed] });
  api.fits.view.mockResolvedValue({
    ...view,
    connections: [{ ...feed, needsListed: { parts: [11], missing: false } }],
  });
  const user = userEvent.setup();
  shown(<FitScreen />);
  await user.click(await screen.findByRole('button', { name: 'Put what it needs on the list' }));
  expect(api.fits.listNeeds).toHaveBeenCalledWith(expect.objectContaining({ connection: 5 }));
  const listed = within(await screen.findByRole('region', { name: 'What it needs, on the list' }));
  expect((await listed.findByRole('link', { name: 'Head bolt' })).getAttribute('href')).toBe('#/parts?part=11');
  expect(listed.queryByRole('button', { name: 'Put what it needs on the list' })).toBeNull();
  await user.click(listed.getByRole('button', { name: 'Take it off the list' }));
  expect(api.fits.unlistNeeds).toHaveBeenCalledWith(expect.objectContaining({ connection: 5 }));
});
