import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import { Refusal } from '../../core/refusal.ts';
import { draftOf, emptyDraft, fieldName, valuesOf } from '../../renderer/screens/plumbing/draft.ts';
import { forgetDraft } from '../../renderer/screens/plumbing/left-draft.ts';
import Plumbing from '../../renderer/screens/plumbing/screen.tsx';
import { done, lineDetail, lineRow, plumbingView } from './plumbing-sample.ts';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  plumbing: { view: vi.fn(), tryOut: vi.fn(), line: vi.fn() },
  records: { list: vi.fn(), save: vi.fn() },
  parts: { rows: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const problem = {
  message: 'The cut-off dimension of end 1 is missing.',
  field: 'definition.c1',
  accepted: 'a number from 0 in mm',
};

const fill = (field: HTMLElement, value: string) => fireEvent.change(field, { target: { value } });
/** The take-off waits until nobody types any more. */
const rested = { timeout: 5000 };

beforeEach(() => {
  vi.clearAllMocks();
  for (const line of ['new', 5]) forgetDraft(`Drover 1 ${line}`);
  window.location.hash = '#/plumbing?edit=new';
  api.plumbing.view.mockResolvedValue(plumbingView());
  api.plumbing.tryOut.mockResolvedValue(lineDetail());
  api.plumbing.line.mockResolvedValue(lineDetail());
  api.records.list.mockResolvedValue([]);
  api.records.save.mockResolvedValue(done);
  api.parts.rows.mockResolvedValue({ columns: ['id', 'description'], rows: [] });
});

const record = (definition: Readonly<Record<string, unknown>>) => ({
  kind: 'hoseLine' as const,
  id: 5,
  build: 1,
  retiredOn: null,
  revision: 3,
  values: { name: 'Drain', from: null, to: 8, system: null, job: null, definition, beforeGate: true, note: '' },
  uses: 0,
  standing: {},
});

it('keeps figures as numbers, texts with a unit as typed, and leaves out what the line does not show', () => {
  const texts = {
    route: 'u',
    spacing: '12 in',
    length: '400',
    'end1.cutoff_mm': '36',
    'end1.visible_mm': '50',
    'end2.way': 'seen',
    'end2.visible_mm': '70',
    'end2.insert_mm': '18',
    'end1.swivel': 'yes',
    dash: '-10',
    'drain.min_slope_deg': '20',
    quantity: '2',
  };
  expect(valuesOf({ ...emptyDraft, name: ' Drain ', texts }).definition).toEqual({
    route: 'u',
    spacing: '12 in',
    end1: { cutoff_mm: 36, swivel: true },
    end2: { visible_mm: 70, insert_mm: 18 },
    dash: 10,
    quantity: 2,
  });
});

it('reads a kept line whatever spelling it has, and gives back what it has no field for', () => {
  const definition = { length_mm: 620, c1: 32, end2: { cutoff: 30 }, k: 0.04, adapters: [{ text: 'AN -6 union' }] };
  const kept = {
    ...record(definition),
    values: { ...record(definition).values, definition: { ...definition, route: 'straight' } },
  };
  const draft = draftOf(kept);
  expect(draft.to).toBe(8);
  expect(valuesOf(draft).definition).toEqual({
    route: 'straight',
    length: 620,
    end1: { cutoff_mm: 32 },
    end2: { cutoff_mm: 30 },
    k: 0.04,
    adapters: [{ text: 'AN -6 union' }],
    quantity: 1,
    length_basis: 'measured',
  });
});

it('knows the field of a refusal by any of its names', () => {
  expect(['definition.c2', 'end1.cutoff', 'definition.end1.angle_deg', 'radius_mm', 'name'].map(fieldName)).toEqual([
    'end2.cutoff_mm',
    'end1.cutoff_mm',
    'end1.angle',
    'r',
    'name',
  ]);
});

it('says beside the form what is lacking and goes to that field', async () => {
  api.plumbing.tryOut.mockResolvedValue(
    lineDetail({
      row: lineRow({ problem, cutMm: null, says: problem.message, verdict: 'unknown' }),
      checks: [],
      bill: [],
    }),
  );
  const user = userEvent.setup();
  shown(<Plumbing />);
  fill(await screen.findByRole('combobox', { name: 'Fluid' }), 'oil');
  const beside = within(await screen.findByRole('complementary', { name: 'Take-off as it stands' }));
  await user.click(await beside.findByRole('button', { name: 'Go to that field' }, rested));
  expect(document.activeElement?.getAttribute('name')).toBe('end1.cutoff_mm');
});

it('works out the take-off while typing and keeps the line with its day', async () => {
  const user = userEvent.setup();
  shown(<Plumbing />);
  fill(await screen.findByRole('textbox', { name: /^Name/ }), 'Drain');
  expect(api.plumbing.tryOut).not.toHaveBeenCalled();
  fill(screen.getByRole('combobox', { name: 'Fluid' }), 'oil');
  fill(screen.getByRole('textbox', { name: /^Length from seat to seat/ }), '14 in');
  await waitFor(
    () =>
      expect(api.plumbing.tryOut).toHaveBeenLastCalledWith({
        build: 1,
        values: expect.objectContaining({
          name: 'Drain',
          definition: expect.objectContaining({ route: 'measured', length: '14 in' }),
        }),
      }),
    rested,
  );
  expect(await screen.findByText('A piece rises.')).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Keep the line' }));
  await waitFor(() =>
    expect(api.records.save).toHaveBeenCalledWith(
      expect.objectContaining({ kind: 'hoseLine', build: 1, on: '2026-03-12' }),
    ),
  );
  await waitFor(() => expect(window.location.hash).toContain('line=7'));
});

it('shows what is wrong with a figure at its field, and keeps what was typed', async () => {
  api.plumbing.tryOut.mockRejectedValue(
    new Refusal('bad-input', 'The length can’t be read. Nothing was changed.', {
      field: 'definition.length',
      accepted: 'a number in mm',
    }),
  );
  shown(<Plumbing />);
  const length = await screen.findByRole('textbox', { name: /^Length from seat to seat/ });
  fill(screen.getByRole('combobox', { name: 'Fluid' }), 'oil');
  fill(length, 'long');
  await waitFor(() => expect(length.getAttribute('aria-invalid')).toBe('true'), rested);
  expect((length as HTMLInputElement).value).toBe('long');
  expect(screen.getAllByText(/The length can’t be read\. Accepted: a number in mm\./).length).toBeGreaterThan(0);
});

it('asks for drain facts of a drain only, and for the share of ethanol of fuel only', async () => {
  const user = userEvent.setup();
  shown(<Plumbing />);
  await screen.findByRole('textbox', { name: /^Name/ });
  expect(screen.queryByRole('group', { name: 'Drain' })).toBeNull();
  expect(screen.queryByRole('textbox', { name: /Share of ethanol/ })).toBeNull();
  fill(screen.getByRole('combobox', { name: 'Fluid' }), 'petrol');
  expect(screen.getByRole('textbox', { name: /Share of ethanol/ })).toBeTruthy();
  await user.click(screen.getByRole('combobox', { name: 'What the line does' }));
  await user.click(await screen.findByRole('option', { name: 'Drain, by its own weight' }));
  expect(screen.getByRole('group', { name: 'Drain' })).toBeTruthy();
});

it('keeps what was typed while another page is looked at, until it is stored, given up or begun anew', async () => {
  const user = userEvent.setup();
  const first = shown(<Plumbing />);
  fill(await screen.findByRole('textbox', { name: /^Name/ }), 'Drain');
  first.unmount();
  const again = shown(<Plumbing />);
  expect(await screen.findByDisplayValue('Drain')).toBeTruthy();
  expect(screen.getByText(/What you had typed is here again/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Begin anew' }));
  expect(screen.queryByDisplayValue('Drain')).toBeNull();
  fill(screen.getByRole('textbox', { name: /^Name/ }), 'Return');
  await user.click(screen.getByRole('button', { name: 'Cancel' }));
  again.unmount();
  window.location.hash = '#/plumbing?edit=new';
  shown(<Plumbing />);
  expect(await screen.findByRole('textbox', { name: /^Name/ })).toHaveProperty('value', '');
});
