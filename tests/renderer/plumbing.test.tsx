import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import Plumbing from '../../renderer/screens/plumbing/screen.tsx';
import { done, lineDetail, lineNeed, plumbingView } from './plumbing-sample.ts';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  plumbing: { view: vi.fn(), line: vi.fn(), addNeeds: vi.fn() },
  records: { list: vi.fn(), save: vi.fn(), retire: vi.fn() },
  parts: { rows: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

beforeEach(() => {
  vi.clearAllMocks();
  window.location.hash = '#/plumbing';
  api.plumbing.view.mockResolvedValue(plumbingView());
  api.plumbing.line.mockResolvedValue(lineDetail());
  api.plumbing.addNeeds.mockResolvedValue(done);
  api.records.list.mockResolvedValue([]);
  api.records.save.mockResolvedValue(done);
  api.parts.rows.mockResolvedValue({ columns: ['id', 'description'], rows: [[4, 'Straight end -10']] });
});

it('answers first and lists what fails before what holds', async () => {
  shown(<Plumbing />);
  expect(await screen.findByText('2 lines: 1 fails a check.')).toBeTruthy();
  const table = within(screen.getByRole('table', { name: /Lines/ }));
  const [failing, holding] = table.getAllByRole('rowheader');
  expect(failing?.textContent).toContain('Fuel feed');
  expect(failing?.textContent).toContain('nitrile is not sufficient');
  expect(holding?.textContent).toContain('Turbo drain');
  expect(table.getByRole('row', { name: /Turbo drain/ }).textContent).toContain('270 mm ± 3.2 mm');
});

it('shows an empty build what a line is, and the first step', async () => {
  api.plumbing.view.mockResolvedValue(plumbingView({ lines: [], needs: [], cutList: [] }));
  shown(<Plumbing />);
  await userEvent.click(await screen.findByRole('button', { name: 'Plan the first line' }));
  expect(window.location.hash).toContain('edit=new');
});

it('shows a line with how its lengths were worked out, its failing check first, and the way to the bench', async () => {
  window.location.hash = '#/plumbing?line=1';
  shown(<Plumbing />);
  const detail = within(await screen.findByRole('dialog', { name: 'Turbo drain' }));
  expect(await detail.findByText('next 5 mm up')).toBeTruthy();
  const [worst] = within(detail.getByRole('region', { name: 'Checks' })).getAllByRole('listitem');
  expect(worst?.textContent).toContain('A piece rises.');
  expect(detail.getByText('1 check doesn’t apply')).toBeTruthy();
  expect(detail.getByRole('link', { name: 'Make it at the bench' }).getAttribute('href')).toBe('#/bench?line=1');
  expect(detail.getByText(/A planning figure/)).toBeTruthy();
});

it('puts all or only what is ticked on the parts list', async () => {
  api.plumbing.view.mockResolvedValue(
    plumbingView({ needs: [lineNeed(), lineNeed({ key: 'clamp', text: 'Hose clamp', kind: 'clamp' })] }),
  );
  window.location.hash = '#/plumbing?view=needs';
  const user = userEvent.setup();
  shown(<Plumbing />);
  await screen.findByRole('button', { name: 'Put all 2 on the parts list' });
  await user.click(screen.getByRole('checkbox', { name: 'Tick Hose clamp' }));
  await user.click(screen.getByRole('button', { name: 'Put 1 ticked on the parts list' }));
  await waitFor(() =>
    expect(api.plumbing.addNeeds).toHaveBeenCalledWith(
      expect.objectContaining({ build: 1, on: '2026-03-12', keys: ['clamp'] }),
    ),
  );
});

it('says which part line a thing on the bill is, changing what was said before', async () => {
  api.records.list.mockImplementation(({ kind }: { kind: string }) =>
    Promise.resolve(
      kind === 'billPart' ? [{ id: 3, revision: 2, values: { item: 'Hose end, straight', part: 9 } }] : [],
    ),
  );
  window.location.hash = '#/plumbing?view=needs';
  const user = userEvent.setup();
  shown(<Plumbing />);
  await user.click(await screen.findByRole('button', { name: /This is that part… Hose end straight/ }));
  const form = within(await screen.findByRole('dialog', { name: 'This is that part' }));
  await user.click(form.getByRole('combobox', { name: /Part line/ }));
  await user.click(await screen.findByRole('option', { name: 'Straight end -10' }));
  await user.click(form.getByRole('button', { name: 'It is this part' }));
  await waitFor(() =>
    expect(api.records.save).toHaveBeenCalledWith(
      expect.objectContaining({
        kind: 'billPart',
        id: 3,
        revision: 2,
        values: { item: 'Hose end straight', part: 4 },
      }),
    ),
  );
});

it('draws the cut list with words that say the same, and keeps a length at hand typed in inches', async () => {
  window.location.hash = '#/plumbing?view=cuts';
  const user = userEvent.setup();
  shown(<Plumbing />);
  const hose = within(await screen.findByRole('region', { name: 'Cuts from 100R5 -10' }));
  expect(hose.getByText(/Turbo drain 270 mm, Return 525 mm; rest 405 mm\./)).toBeTruthy();
  expect(hose.getByText(/nothing is bought\. No other way of cutting buys less\./)).toBeTruthy();
  expect(screen.getByText(/Lengths at hand are kept here and are not on the parts list/)).toBeTruthy();
  await user.click(await screen.findByRole('button', { name: 'Write down a length…' }));
  const form = within(await screen.findByRole('dialog', { name: 'Hose at hand' }));
  await user.type(form.getByRole('combobox', { name: /Hose type/ }), '100R5 -8');
  // 47 in × 25.4 = 1193.8 mm (definition of the inch); what is at hand is never rounded up.
  await user.type(form.getByRole('textbox', { name: /Length/ }), '47 in');
  await user.click(form.getByRole('button', { name: 'Keep the length' }));
  await waitFor(() =>
    expect(api.records.save).toHaveBeenCalledWith(
      expect.objectContaining({
        kind: 'hoseLength',
        values: { hose: '100R5 -8', boreMm: null, lengthMm: 1193, count: 1, note: '' },
      }),
    ),
  );
});

it('lets nothing be entered on a past day and says why', async () => {
  shown(<Plumbing />, { asOf: '2026-02-01' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'New line' })).toBeNull();
});
