import { ORPCError } from '@orpc/client';
import { act, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import fc from 'fast-check';
import { beforeEach, expect, it, vi } from 'vitest';
import type { RecordRow } from '../../core/contract/records.ts';
import { standardLocale } from '../../renderer/parts/locale.tsx';
import { milliNmOfMilliPoundFeet, parseTorque, torqueText } from '../../renderer/parts/torque.ts';
import ListsScreen from '../../renderer/screens/lists/lists-screen.tsx';
import { moved } from '../../renderer/screens/lists/reorder-form.tsx';
import { shown } from './shown.tsx';

const client = vi.hoisted(() => ({
  list: vi.fn(),
  save: vi.fn(),
  retire: vi.fn(),
  reorder: vi.fn(),
  toolStanding: vi.fn(),
  decide: vi.fn(),
  bolts: vi.fn(),
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<object>()),
  api: {
    records: client,
    journal: { list: async () => ({ rows: [], next: null, total: 0 }) },
    workbook: { settings: async () => ({ author: 'Marit' }) },
    parts: { rows: async () => ({ total: 0, lastAct: 0, columns: ['id', 'description'], rows: [] }) },
  },
}));

const row = (
  kind: RecordRow['kind'],
  id: number,
  values: Record<string, unknown>,
  more: Partial<RecordRow> = {},
): RecordRow => ({
  kind,
  id,
  build: 1,
  retiredOn: null,
  revision: 1,
  uses: 0,
  standing: {},
  values,
  ...more,
});
const vendor = (revision: number, contact: string) =>
  row(
    'vendor',
    4,
    { name: 'Keld Fasteners', contact, site: '', account: '', currency: null, leadDays: 7, note: '' },
    { revision, uses: 3 },
  );
const bolts = row(
  'boltGroup',
  2,
  {
    name: 'Clutch cover bolts',
    count: 9,
    method: 'torque',
    torqueMilliNm: 25_000,
    source: 'Clutch maker’s sheet, page 1',
    sequence: '',
  },
  { standing: { bolts: 9, snug: 3, final: 0 } },
);
const done = { act: 5, label: 'Change', entries: 1, parts: [], made: [], notices: [] };

const typedIn = (field: HTMLElement): string => (field as HTMLInputElement).value;

let rows: Partial<Record<string, readonly RecordRow[]>> = {};
beforeEach(() => {
  rows = {};
  for (const mock of Object.values(client)) mock.mockReset();
  client.list.mockImplementation(async ({ kind }: { kind: string }) => rows[kind] ?? []);
});

it('turns pound-force feet into newton metres', () => {
  // NIST Special Publication 811 (2008), appendix B.8: foot pound-force (torque) to newton meter, 1.355 818.
  expect(milliNmOfMilliPoundFeet(1000)).toBe(1356);
  expect(milliNmOfMilliPoundFeet(1_000_000)).toBe(1_355_818);
  expect(torqueText(25_000, 'metric')).toBe('25 N·m');
  expect(torqueText(12_500, 'metric')).toBe('12.5 N·m');
});

it('gives back the pound-force feet that were typed, to the hundredth', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 360_000 }), (hundredths) => {
      const typed = String(hundredths / 100);
      expect(torqueText(parseTorque(typed, 'inch'), 'inch')).toBe(`${typed} lb·ft`);
    }),
  );
});

it('opens the record of the address with its uses, and a new one by its button', async () => {
  rows = { vendor: [vendor(1, 'Ask for Pim')] };
  window.location.hash = '#/lists?vendor=4';
  shown(<ListsScreen />);
  const drawer = await screen.findByRole('dialog', { name: 'Keld Fasteners' });
  expect(within(drawer).getByText('Used by 3 part lines and orders.')).toBeTruthy();
  expect(typedIn(within(drawer).getByRole('textbox', { name: 'Contact' }))).toBe('Ask for Pim');
});

it('shows both values when the record was changed elsewhere, and saves over it only when told to', async () => {
  rows = { vendor: [vendor(1, 'Ask for Pim')] };
  window.location.hash = '#/lists?vendor=4';
  const user = userEvent.setup();
  shown(<ListsScreen />);
  const contact = await screen.findByRole('textbox', { name: 'Contact' });
  await user.clear(contact);
  await user.type(contact, 'Ask for Ruud');
  client.save.mockImplementationOnce(async () => {
    rows = { vendor: [vendor(2, 'Ask for Sanne')] };
    throw new ORPCError('REFUSED', {
      defined: true,
      data: { code: 'conflict', field: 'revision', message: 'The vendor was changed since you opened it.', detail: {} },
    });
  });
  await user.click(screen.getByRole('button', { name: 'Save the changes' }));
  const both = await screen.findByRole('table', { name: 'Both values' });
  for (const text of ['Ask for Pim', 'Ask for Sanne', 'Ask for Ruud'])
    expect(within(both).getByText(text)).toBeTruthy();

  client.save.mockResolvedValueOnce(done);
  await user.click(screen.getByRole('button', { name: 'Keep what I changed, take the rest' }));
  await user.click(screen.getByRole('button', { name: 'Save the changes' }));
  expect(client.save.mock.lastCall?.[0]).toMatchObject({ id: 4, revision: 2, values: { contact: 'Ask for Ruud' } });
});

it('records bolts with the torque used, beside the caution', async () => {
  rows = { boltGroup: [bolts] };
  client.bolts.mockResolvedValue(done);
  window.location.hash = '#/lists?boltGroup=2';
  const user = userEvent.setup();
  shown(<ListsScreen />, { locale: { ...standardLocale, units: 'inch' } });
  await user.click(await screen.findByRole('button', { name: 'Tighten or loosen bolts' }));
  const window2 = (await screen.findAllByRole('dialog', { name: 'Clutch cover bolts' })).at(-1) as HTMLElement;
  const form = within(window2);
  expect(form.getByText(/maker’s manual gives the torque/)).toBeTruthy();
  expect(typedIn(form.getByRole('textbox', { name: 'How many bolts' }))).toBe('6');
  // 18.44 lb·ft × 1.3558179483 = 25.0012829…, recomputed by hand.
  await user.type(form.getByRole('textbox', { name: 'Torque used' }), '18.44');
  await act(async () => undefined);
  await user.click(form.getByRole('button', { name: 'Record 6 as snug' }));
  expect(client.bolts.mock.lastCall?.[0]).toMatchObject({
    boltGroup: 2,
    to: 'snug',
    count: 6,
    torqueMilliNm: 25_001,
    by: 'Marit',
    on: '2026-03-12',
  });
});

it('refuses more bolts than there are, and sends nothing', async () => {
  rows = { boltGroup: [bolts] };
  window.location.hash = '#/lists?boltGroup=2';
  const user = userEvent.setup();
  shown(<ListsScreen />);
  await user.click(await screen.findByRole('button', { name: 'Tighten or loosen bolts' }));
  const form = within((await screen.findAllByRole('dialog', { name: 'Clutch cover bolts' })).at(-1) as HTMLElement);
  await user.clear(form.getByRole('textbox', { name: 'How many bolts' }));
  await user.type(form.getByRole('textbox', { name: 'How many bolts' }), '7');
  await user.click(form.getByRole('button', { name: /^Record/ }));
  expect(form.getByText(/Accepted: a whole number from 1 to 6/)).toBeTruthy();
  expect(client.bolts).not.toHaveBeenCalled();
});

it('moves a line of an order by one place and stops at the ends', () => {
  expect(moved(['a', 'b', 'c'], 1, -1)).toEqual(['b', 'a', 'c']);
  expect(moved(['a', 'b', 'c'], 2, 1)).toEqual(['a', 'b', 'c']);
});
