import { ORPCError } from '@orpc/client';
import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, test, vi } from 'vitest';
import type { PartRow } from '../../core/contract/parts.ts';
import { Refusal } from '../../core/refusal.ts';
import { BulkBar } from '../../renderer/screens/parts/acts/bulk-bar.tsx';
import { answerWords, countParts } from '../../renderer/screens/parts/answer.tsx';
import { cellActs } from '../../renderer/screens/parts/columns/cell-acts.ts';
import { readTypedPrice } from '../../renderer/screens/parts/columns/typed-text.ts';
import { actsForLot } from '../../renderer/screens/parts/detail/lots.tsx';
import PartsScreen from '../../renderer/screens/parts/parts-screen.tsx';
import { builtInViews } from '../../renderer/screens/parts/views/built-in-views.ts';
import { readView } from '../../renderer/screens/parts/views/read-view.ts';
import { partRow } from './parts-sample.ts';
import { shown } from './shown.tsx';

const { parts, records } = vi.hoisted(() => ({
  parts: { rows: vi.fn(), byIds: vi.fn(), add: vi.fn(), edit: vi.fn(), act: vi.fn(), readQuickAdd: vi.fn() },
  records: { list: vi.fn(), save: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api: { parts, records },
  listenForChanges: () => () => undefined,
}));

const lines: PartRow[] = [
  partRow({ id: 1, description: 'Head studs', needMilli: 8000, uncoveredMilli: 8000 }),
  partRow({
    id: 2,
    description: 'Clutch kit',
    standing: 'back-ordered',
    backOrderedMilli: 1000,
    onOrderMilli: 1000,
    uncoveredMilli: 0,
  }),
  partRow({ id: 3, description: 'Core plug', standing: 'fitted', fittedMilli: 1000, uncoveredMilli: 0 }),
];
const done = { act: 9, label: 'Adding of hose', entries: 1, parts: [4], made: [4], notices: [] };

beforeEach(() => {
  vi.resetAllMocks();
  localStorage.clear();
  const columns = Object.keys(lines[0] as PartRow);
  parts.rows.mockResolvedValue({
    total: lines.length,
    lastAct: 3,
    columns,
    rows: lines.map((line) => columns.map((column) => line[column as keyof PartRow])),
  });
  records.list.mockResolvedValue([]);
});

test('the first sentence counts what is still to get, late and wrong', () => {
  expect(answerWords(countParts(lines), false)).toBe(
    'Of 3 lines, 1 is still to get and 1 is on back-order; 1 is on the engine.',
  );
  expect(answerWords(countParts(lines.slice(2)), true)).toBe('The one line was on the engine.');
});

test('the screen says its answer and shows the lines', async () => {
  shown(<PartsScreen />);
  expect(await screen.findByText(/Of 3 lines, 1 is still to get/)).toBeTruthy();
  expect(screen.getByRole('grid', { name: 'Parts' })).toBeTruthy();
});

test('an empty list says what belongs there and offers the first steps', async () => {
  parts.rows.mockResolvedValue({ total: 0, lastAct: 0, columns: [], rows: [] });
  shown(<PartsScreen />);
  await userEvent.click(await screen.findByRole('button', { name: 'Type the first line' }));
  expect(document.activeElement).toBe(screen.getByLabelText('Add a line'));
  expect(screen.getByRole('button', { name: 'Paste from a spreadsheet…' })).toBeTruthy();
});

test('a typed line is shown as understood, and Enter adds what the whole text says', async () => {
  const values = { description: 'hose', needMilli: 2000 };
  parts.readQuickAdd.mockResolvedValue({
    values,
    understood: [{ text: '2', as: 'quantity: 2' }],
    findings: ['No price.'],
  });
  parts.add.mockResolvedValue(done);
  shown(<PartsScreen />);
  const field = await screen.findByLabelText('Add a line');
  await userEvent.type(field, '2 hose');
  expect(await screen.findByText('quantity: 2', { exact: false })).toBeTruthy();
  expect(await screen.findByText('No price.')).toBeTruthy();
  await userEvent.type(field, '{Enter}');
  await waitFor(() => expect((field as HTMLInputElement).value).toBe(''));
  expect(parts.add).toHaveBeenCalledWith(expect.objectContaining({ build: 1, on: '2026-03-12', parts: [values] }));
});

test('when adding is refused, the typed line stays', async () => {
  parts.readQuickAdd.mockResolvedValue({ values: { description: 'hose' }, understood: [], findings: [] });
  parts.add.mockRejectedValue(new Refusal('read-only', 'The workbook is open for reading only. Nothing was changed.'));
  shown(<PartsScreen />);
  const field = await screen.findByLabelText('Add a line');
  await userEvent.type(field, 'hose{Enter}');
  expect((await screen.findByRole('alert')).textContent).toContain('open for reading only');
  expect((field as HTMLInputElement).value).toBe('hose');
});

test('rows pasted into the line open the window that reads them', async () => {
  shown(<PartsScreen />);
  const field = await screen.findByLabelText('Add a line');
  fireEvent.paste(field, { clipboardData: { getData: () => 'Hose\t2\nClamp\t4' } });
  expect(await screen.findByRole('dialog', { name: 'Paste lines from a spreadsheet' })).toBeTruthy();
});

test('while a past day is shown nothing can be added', async () => {
  shown(<PartsScreen />, { asOf: '2026-02-01' });
  expect((await screen.findByLabelText<HTMLInputElement>('Add a line')).disabled).toBe(true);
  expect(parts.rows).toHaveBeenCalledWith(expect.objectContaining({ asOf: '2026-02-01' }));
});

test('an act that fits none of the lines says why; one that fits some takes just those', async () => {
  const open = vi.fn();
  shown(<BulkBar rows={lines} closed={null} onOpen={open} />);
  await userEvent.click(screen.getByRole('button', { name: 'On the engine' }));
  const menu = await screen.findByRole('menu');
  const fit = within(menu).getByRole('menuitem', { name: /^Fit…/ });
  expect(fit.getAttribute('aria-disabled')).toBe('true');
  expect(fit.textContent).toContain('Nothing of it is in hand');
  await userEvent.click(fit);
  expect(open).not.toHaveBeenCalled();
  await userEvent.click(within(menu).getByRole('menuitem', { name: /^Snug…/ }));
  expect(open).toHaveBeenCalledWith(expect.objectContaining({ target: { rows: [lines[2]] } }));
});

test('ordering hands the lines that are still to get to the orders page', async () => {
  shown(<BulkBar rows={lines} closed={null} onOpen={vi.fn()} />);
  await userEvent.click(screen.getByRole('button', { name: 'Order and receive' }));
  await userEvent.click(await screen.findByRole('menuitem', { name: /^Order these…/ }));
  expect(window.location.hash).toBe('#/orders?order=new&parts=1');
});

test('a cell changed by somebody else meanwhile shows both values and stores nothing', async () => {
  const theirs = partRow({ id: 1, revision: 2, description: 'Theirs' });
  const store = {
    subscribe: () => () => undefined,
    loaded: () => ({ rows: [theirs], total: 1, complete: true, error: null }),
    reload: vi.fn(),
    refresh: vi.fn(async () => undefined),
    hear: vi.fn(),
  };
  const data = { code: 'conflict', message: 'Changed since. Nothing was changed.', detail: {} };
  parts.edit.mockRejectedValue(new ORPCError('REFUSED', { defined: true, status: 409, data }));
  const acts = cellActs(() => ({ build: 1, asOf: null, today: '2026-03-12', store }));
  const attempt = acts.save(lines[0] as PartRow, { description: 'Mine' }, 'Mine', (row) => row.description);
  await expect(attempt).rejects.toThrow(/“Theirs”; you typed “Mine”/);
  expect(store.refresh).toHaveBeenCalledWith([1]);
});

test('a price is read to a fraction of a cent, emptied to none, and never below nothing', () => {
  // By the definition in the contract: 1/10 000 of a minor unit, so 0.0345 USD is 3.45 cents, 34 500.
  expect(readTypedPrice('0.0345', 'USD')).toBe(34_500);
  expect(readTypedPrice(' ', 'USD')).toBeNull();
  expect(() => readTypedPrice('-2', 'USD')).toThrow(Refusal);
  expect(() => readTypedPrice('dear', 'USD')).toThrow(Refusal);
});

test('only what a lot holds and whose it is can be done with it', () => {
  const lot = {
    id: 1,
    line: null,
    owner: '',
    dueOn: null,
    bin: null,
    cameInOn: '2026-03-01',
    cameInMilli: 2000,
    costMinor: 0,
  };
  const acts = (source: 'owned' | 'borrowed', places: Record<string, number>) =>
    actsForLot({ ...lot, source, places }).map(({ spec }) => spec.act);
  expect(acts('owned', { shelf: 2000 })).toContain('scrap');
  expect(acts('owned', { shelf: 2000 })).not.toContain('give back');
  expect(acts('borrowed', { shelf: 2000 })).toContain('give back');
  expect(acts('borrowed', { shelf: 2000 })).not.toContain('scrap');
  expect(acts('owned', { rejected: 1000 })).not.toContain('send back');
});

test('a stored view is read back as it was; a damaged one is no view', () => {
  const view = builtInViews[1]?.view;
  const columns = [{ key: 'toGet' }, { key: 'neededBy' }] as never;
  expect(readView(JSON.stringify(view), columns)).toEqual(view);
  expect(readView(JSON.stringify(view), [] as never)?.filters).toEqual([]);
  expect(readView('{"columns":7}', columns)).toBeNull();
  expect(readView('not json', columns)).toBeNull();
});
