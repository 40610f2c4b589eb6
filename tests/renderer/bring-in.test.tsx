import { ORPCError } from '@orpc/client';
import { screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { ImportChoices } from '../../core/contract/exchange.ts';
import { guessMapping } from '../../core/exchange/guess-mapping.ts';
import { type RowFate, rowFates } from '../../core/exchange/import-types.ts';
import { planImport } from '../../core/exchange/plan-import.ts';
import { readTables } from '../../core/exchange/read-tables.ts';
import BringInScreen from '../../renderer/screens/bring-in/bring-in-screen.tsx';
import { withField } from '../../renderer/screens/bring-in/columns.tsx';
import { planSentence } from '../../renderer/screens/bring-in/words.ts';
import { shown } from './shown.tsx';

const client = vi.hoisted(() => ({
  read: vi.fn(),
  plan: vi.fn(),
  bringIn: vi.fn(),
  imports: vi.fn(async () => []),
  undoState: vi.fn(async () => ({ undo: { act: 9, label: 'Undo' }, redo: null })),
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<object>()),
  api: { exchange: client, journal: { undoState: client.undoState } },
}));

const list = `What,Part no.,Qty,Each,Got it?
head stud kit,HS-11,14,14.20,ordered
sump gasket,SG-2,1,22.00,flummoxed
oil filter,OF-3,four,9.50,yes
`;
const refused = (message: string) =>
  new ORPCError('REFUSED', { defined: true, data: { code: 'bad-input', message, detail: {} } });

const typedIn = (field: HTMLElement): string => (field as HTMLInputElement).value;

let place = 0;
/** The screen over the real importer, without a workbook behind it. */
async function openWithList() {
  const read = await readTables(new TextEncoder().encode(list), 'drover.csv');
  const [table] = read.tables;
  if (table === undefined) throw new Error('the list has no table');
  client.read.mockResolvedValue({ token: 'token-of-list', read, mappings: [guessMapping(table)], known: null });
  client.plan.mockImplementation(async ({ mapping, answers, defaults }: ImportChoices) => ({
    plan: planImport({
      table,
      mapping: mapping ?? guessMapping(table),
      answers,
      defaults: { currency: defaults.currency, paid: defaults.paid, missingQuantityIsOne: false, today: '2026-03-12' },
    }),
    mapping,
    matches: [],
  }));
  place += 1;
  shown(<BringInScreen />, { workbookName: `Drover ${place}` });
  const user = userEvent.setup();
  await user.upload(screen.getByLabelText('Choose a file, or drop it here'), new File([list], 'drover.csv'));
  await screen.findByText(/4 rows and 5 columns parted by commas/);
  return user;
}

beforeEach(() => {
  client.bringIn.mockReset();
});

it('says where every row goes, and the counts add up to the rows of the file', () => {
  const counts = Object.fromEntries(rowFates.map((fate, index) => [fate, index + 1])) as Record<RowFate, number>;
  const all = rowFates.reduce((sum, fate) => sum + counts[fate], 0);
  const sentence = planSentence({ counts: { ...counts, rowsInFile: all } });
  const [first = 0, ...others] = [...sentence.matchAll(/\d+/g)].map(([text]) => Number(text));
  expect(first).toBe(others.reduce((sum, count) => sum + count, 0));
  expect(sentence).toContain('8 rows need you');
});

it('gives a field to one column only', () => {
  const column = (index: number, field: 'description' | null) =>
    ({ index, title: `Column ${index}`, field, because: 'heading' }) as const;
  const mapping = { kind: 'parts', fingerprint: 'f', columns: [column(0, 'description'), column(1, null)] } as const;
  expect(withField(mapping, 1, 'description').columns.map(({ field }) => field)).toEqual([null, 'description']);
});

it('walks from the file to the report, asks for the unclear row, and keeps every answer over a refusal', async () => {
  const user = await openWithList();
  await user.click(screen.getByRole('button', { name: 'On to the columns' }));
  expect(typedIn(screen.getByRole('combobox', { name: 'What “Got it?” is' }))).toBe('state');
  await user.click(screen.getByRole('button', { name: 'On to the words' }));

  const unknown = await screen.findByRole('combobox', { name: 'What “flummoxed” under “Got it?” means' });
  expect(typedIn(unknown)).toBe('unknown');
  expect(screen.getByText('not understood')).toBeTruthy();
  await user.selectOptions(unknown, 'needed');
  await user.selectOptions(screen.getByRole('combobox', { name: /^What was ordered/ }), 'not-paid');
  await user.click(screen.getByRole('button', { name: 'On to every row' }));

  const unclear = await screen.findByRole('table', { name: 'Rows that need you' });
  expect(within(unclear).getByText(/Qty:.*four/)).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'On to bringing in' }));
  expect(screen.getByText('Not yet.')).toBeTruthy();
  await user.click(screen.getByRole('button', { name: /^Go there: 1 row needs you/ }));
  await user.selectOptions(await screen.findByRole('combobox', { name: 'What to do with row 4' }), 'skip');

  await user.click(screen.getByRole('button', { name: 'On to bringing in' }));
  client.bringIn.mockRejectedValueOnce(refused('The workbook is open for reading only. Nothing was changed.'));
  await user.click(await screen.findByRole('button', { name: /^Bring in 2 lines/ }));
  expect((await screen.findByRole('alert')).textContent).toContain('open for reading only');

  client.bringIn.mockResolvedValueOnce({
    act: 9,
    label: 'Bringing in drover.csv: 2 part lines',
    entries: 3,
    parts: [1, 2],
    made: [1, 2],
    notices: [],
    rows: [{ row: 2, fate: 'part', text: 'part line “head stud kit”', part: 1 }],
    counts: { part: 2 },
    summary: '4 rows: 2 part lines; 1 skipped.',
  });
  await user.click(screen.getByRole('button', { name: /^Bring in 2 lines/ }));
  expect(await screen.findByText('4 rows: 2 part lines; 1 skipped.')).toBeTruthy();
  expect(await screen.findByRole('button', { name: /^Undo Bringing in/ })).toBeTruthy();
  const sent = client.bringIn.mock.lastCall?.[0] as ImportChoices & { on: string };
  expect(sent.on).toBe('2026-03-12');
  expect(sent.answers).toEqual({ 'state:flummoxed': 'needed', 'row:4': 'skip' });
  expect(sent.defaults.paid).toBe('not-paid');
});

it('sends a file again that the program has let go of', async () => {
  const user = await openWithList();
  const reads = client.read.mock.calls.length;
  client.plan.mockRejectedValueOnce(
    new ORPCError('REFUSED', {
      defined: true,
      data: { code: 'not-found', field: 'token', message: 'The file is no longer at hand.', detail: {} },
    }),
  );
  await user.click(screen.getByRole('button', { name: 'On to the columns' }));
  await user.click(screen.getByRole('button', { name: 'On to the words' }));
  expect(await screen.findByRole('table', { name: 'What the words mean' })).toBeTruthy();
  expect(client.read.mock.calls.length).toBe(reads + 1);
});

it('asks for a workbook first when none is open', () => {
  shown(<BringInScreen />, { isOpen: false, buildId: null });
  expect(screen.getByRole('button', { name: 'Open or make a workbook' })).toBeTruthy();
});
