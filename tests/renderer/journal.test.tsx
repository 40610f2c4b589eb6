import { ORPCError } from '@orpc/client';
import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { JournalRow } from '../../core/contract/journal.ts';
import { entryKinds } from '../../core/ledger/entry.ts';
import { askedIn, filterOf, paramsOf } from '../../renderer/screens/journal/journal-filter.ts';
import { kindGroupNames, kindGroups } from '../../renderer/screens/journal/kind-groups.ts';
import Journal from '../../renderer/screens/journal/screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  journal: { list: vi.fn(), reverse: vi.fn(), undo: vi.fn() },
  records: { list: vi.fn() },
  search: { find: vi.fn() },
  exchange: { exportTable: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const row = (seq: number, change: Partial<JournalRow> = {}): JournalRow => ({
  seq,
  act: 3,
  actLabel: 'Receipt of 2 lines',
  on: '2026-03-02',
  recordedAt: '2026-03-02T18:20:00.000Z',
  author: 'Ada',
  kind: 'received',
  text: `8 received of stud kit ${seq}`,
  build: 1,
  part: 5,
  description: 'stud kit',
  order: 2,
  orderNumber: 'A-17',
  vendorName: 'Ninth Street Fasteners',
  quantityMilli: 8000,
  unit: 'each',
  amountMinor: 12_050,
  currency: 'USD',
  note: '',
  reverses: null,
  reversedBy: null,
  ...change,
});

beforeEach(() => {
  vi.clearAllMocks();
  api.records.list.mockResolvedValue([]);
  api.journal.list.mockImplementation(async ({ before }: { before?: number }) =>
    before === undefined
      ? { rows: [row(9), row(8, { reversedBy: 9 })], next: 8, total: 3 }
      : { rows: [row(7)], next: null, total: 3 },
  );
});

it('lists entries newest first and reads on to the oldest', async () => {
  shown(<Journal />);
  expect(await screen.findByText(/^3 entries; the latest is of 2 Mar 2026/)).toBeTruthy();
  await userEvent.click(screen.getByRole('button', { name: 'Show older entries' }));
  expect(await screen.findByText('8 received of stud kit 7')).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Show older entries' })).toBeNull();
  expect(api.journal.list.mock.calls.at(-1)?.[0]).toMatchObject({ before: 8 });
});

it('strikes what was taken back, says by which entry, and offers no second time', async () => {
  shown(<Journal />);
  const struck = await screen.findByText('8 received of stud kit 8');
  expect(struck.tagName).toBe('S');
  const line = within(struck.closest('tr') as HTMLElement);
  expect(line.getByText(/taken back by/).textContent).toContain('9');
  expect(line.queryByRole('button', { name: /Take back/ })).toBeNull();
});

it('takes an entry back with a reason, and links to the later entries that stand on it', async () => {
  api.journal.reverse.mockRejectedValue(
    new ORPCError('REFUSED', {
      defined: true,
      data: { code: 'floor', message: 'It is used by entry 12. Nothing was changed.', detail: { laterEntries: [12] } },
    }),
  );
  shown(<Journal />);
  await userEvent.click(await screen.findByRole('button', { name: /Take back… entry 9/ }));
  await userEvent.click(await screen.findByRole('button', { name: 'Take the entry back' }));
  expect(api.journal.reverse).not.toHaveBeenCalled();
  await userEvent.type(screen.getByRole('textbox', { name: /Reason/ }), 'counted twice');
  await userEvent.click(screen.getByRole('button', { name: 'Take the entry back' }));
  await waitFor(() => expect(api.journal.reverse).toHaveBeenCalledOnce());
  expect(api.journal.reverse.mock.calls[0]?.[0]).toMatchObject({ entry: 9, reason: 'counted twice', on: '2026-03-12' });
  expect((await screen.findByRole('link', { name: 'entry 12' })).getAttribute('href')).toBe('#/journal?entry=12');
});

it('shows the entry that a link names', async () => {
  window.location.hash = '#/journal?entry=7';
  shown(<Journal />);
  const one = within(await screen.findByRole('region', { name: 'Entry 7' }));
  expect(one.getByRole('link', { name: 'stud kit' }).getAttribute('href')).toBe('#/parts?part=5');
  expect(api.journal.list).toHaveBeenCalledWith({ before: 8, limit: 1 });
});

it('reads the same question back out of the address', () => {
  const params = { text: 'stud', kinds: 'orders,bolts', part: '5', from: '2026-01-01', standing: 'yes' };
  const asked = askedIn(params);
  expect(askedIn(JSON.parse(JSON.stringify(paramsOf(asked))) as Record<string, string>)).toEqual({ ...asked, part: 5 });
  expect(filterOf({ ...asked, to: '2026-05-01' }, 1, '2026-03-01')).toMatchObject({ part: 5, to: '2026-03-01' });
  expect(askedIn({ kinds: 'nonsense', part: 'x', from: 'soon' })).toMatchObject({ groups: [], part: null, from: null });
});

it('offers every kind of entry in exactly one group', () => {
  const grouped = kindGroupNames.flatMap((name): readonly string[] => kindGroups[name].kinds);
  expect(grouped.toSorted()).toEqual(entryKinds.toSorted());
});
