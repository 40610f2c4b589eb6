import { screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { Derivation, WhyQuestion } from '../../core/contract/journal.ts';
import type { MoneyFigures, MoneyRow } from '../../core/contract/money.ts';
import { WhyProvider } from '../../renderer/app/why.tsx';
import type { Workspace } from '../../renderer/app/workspace.tsx';
import { amountOfLine, type BudgetChange, contingencyEntries } from '../../renderer/screens/money/budget-kinds.ts';
import Money from '../../renderer/screens/money/index.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  money: {
    summary: vi.fn(),
    by: vi.fn(),
    overTime: vi.fn(),
    perMonth: vi.fn(),
    budgetChanges: vi.fn(),
    changeBudget: vi.fn(),
  },
  records: { list: vi.fn(), save: vi.fn() },
  parts: { rows: vi.fn() },
  journal: { reverse: vi.fn(), undo: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

// Invented figures that agree with each other: 60 000 paid + 5 000 still to pay + 12 000 to order = 77 000.
const figures: MoneyFigures = {
  budgetMinor: 70_000,
  contingencyLeftMinor: 3_000,
  costMinor: 60_000,
  commitmentMinor: 5_000,
  remainingMinor: 12_000,
  paidMinor: 60_000,
  stillToPayMinor: 5_000,
  forecastMinor: 77_000,
  varianceMinor: -7_000,
  depositsMinor: 0,
  claimsMinor: 0,
  lossMinor: 0,
  exchangeMinor: 0,
  withoutEstimate: 1,
};
const fuel: MoneyRow = { ...figures, id: 4, name: 'Fuel', withoutEstimate: 0 };
const change = (seq: number, given: Partial<BudgetChange>): BudgetChange => ({
  seq,
  on: '2026-02-01',
  line: 9,
  lineName: 'Fuel system',
  system: 4,
  phase: null,
  kind: 'change',
  amountMinor: 50_000,
  reason: 'First guess',
  by: '',
  reversed: false,
  ...given,
});
const changes = [
  change(1, {}),
  change(2, { line: null, lineName: 'Contingency', kind: 'contingency', amountMinor: 5_000, reason: 'Kept back' }),
  change(3, { kind: 'contingency drawn', amountMinor: 2_000, reason: 'Second pump' }),
  change(4, { amountMinor: 900, reason: 'Typed twice', reversed: true }),
];
const budgetLine = {
  kind: 'budgetLine',
  id: 9,
  build: 1,
  retiredOn: null,
  revision: 3,
  values: { name: 'Fuel system', system: 4, phase: null },
  uses: 0,
  standing: {},
};
const done = { act: 8, label: 'Budget change', entries: 1, parts: [], made: [], notices: [] };
const derivation: Derivation = {
  title: 'Paid: Fuel',
  quantityMilli: null,
  amountMinor: 60_000,
  text: '',
  formula: '',
  source: '',
  terms: [],
  entries: [],
  more: 0,
};
const ask = vi.fn(async (_question: WhyQuestion) => derivation);

beforeEach(() => {
  vi.clearAllMocks();
  api.money.summary.mockResolvedValue({ ...figures, currency: 'USD', answer: '$600.00 is paid.' });
  api.money.by.mockResolvedValue([fuel]);
  api.money.overTime.mockResolvedValue([]);
  api.money.perMonth.mockResolvedValue([]);
  api.money.budgetChanges.mockResolvedValue(changes);
  api.money.changeBudget.mockResolvedValue(done);
  api.journal.reverse.mockResolvedValue(done);
  api.records.list.mockImplementation(async ({ kind }: { kind: string }) =>
    kind === 'budgetLine' ? [budgetLine] : [],
  );
  api.parts.rows.mockResolvedValue({
    total: 3,
    lastAct: 1,
    columns: ['id', 'description', 'estimateEachE4', 'uncoveredMilli'],
    rows: [
      [5, 'Fuel rail', 1200, 1000],
      [6, 'Return regulator', null, 1000],
      [7, 'Old pump', null, 0],
    ],
  });
});

const openMoney = (workspace: Partial<Workspace> = {}) =>
  shown(
    <WhyProvider ask={ask}>
      <Money />
    </WhyProvider>,
    workspace,
  );

it('says over in words, and asks why with the tag of the row', async () => {
  openMoney();
  expect(await screen.findByText('$600.00 is paid.')).toBeTruthy();
  const table = await screen.findByRole('table', { name: 'Money by system' });
  expect(within(table).getByRole('button', { name: /\$70\.00 over.*variance, Fuel/ })).toBeTruthy();
  await userEvent.click(within(table).getByRole('button', { name: /paid, Fuel: why/ }));
  expect(ask).toHaveBeenCalledWith({ build: 1, figure: 'paid', system: 4 });
  expect(await screen.findByText('Paid: Fuel')).toBeTruthy();
});

it('has no budget by vendor, for a budget belongs to systems and phases', async () => {
  openMoney();
  await userEvent.click(await screen.findByRole('tab', { name: 'By vendor' }));
  const table = await screen.findByRole('table', { name: 'Money by vendor' });
  expect(within(table).queryByText('Variance')).toBeNull();
  await userEvent.click(within(table).getByRole('button', { name: /still to pay, Fuel: why/ }));
  expect(ask).toHaveBeenCalledWith({ build: 1, figure: 'still-to-pay', vendor: 4 });
});

it('names the lines that count as nothing, and only those', async () => {
  openMoney();
  const link = await screen.findByRole('link', { name: 'Return regulator' });
  expect(link.getAttribute('href')).toBe('#/parts?part=6');
  expect(screen.queryByRole('link', { name: 'Fuel rail' })).toBeNull();
  expect(screen.queryByRole('link', { name: 'Old pump' })).toBeNull();
});

it('adds up a line without what was taken back, and the contingency less what was drawn', () => {
  expect(amountOfLine(changes, 9)).toBe(52_000);
  expect(contingencyEntries(changes).reduce((sum, { countsMinor }) => sum + countsMinor, 0)).toBe(
    figures.contingencyLeftMinor,
  );
});

it('asks for a reason before the budget is changed, and makes a new line', async () => {
  openMoney();
  await userEvent.click(await screen.findByRole('button', { name: 'Add or change a line' }));
  const form = within(await screen.findByRole('dialog'));
  await userEvent.click(form.getByRole('combobox', { name: /Budget line/ }));
  await userEvent.click(await screen.findByRole('option', { name: 'A new line' }));
  await userEvent.type(form.getByLabelText(/Name of the new line/), 'Cooling');
  await userEvent.type(form.getByLabelText(/^Amount/), '120.50');
  await userEvent.click(form.getByRole('button', { name: 'Enter the budget change' }));
  expect(form.getByText('Reason is still empty.')).toBeTruthy();
  expect(api.money.changeBudget).not.toHaveBeenCalled();
  await userEvent.type(form.getByLabelText(/^Reason/), 'Larger radiator');
  await userEvent.click(form.getByRole('button', { name: 'Enter the budget change' }));
  expect(api.money.changeBudget).toHaveBeenCalledWith(
    expect.objectContaining({
      build: 1,
      on: '2026-03-12',
      kind: 'change',
      line: null,
      newLine: { name: 'Cooling', system: null, phase: null },
      amountMinor: 12_050,
      reason: 'Larger radiator',
    }),
  );
});

it('takes an entry back through the journal, and offers that once', async () => {
  openMoney();
  const table = await screen.findByRole('table', { name: 'Entries behind the budget' });
  expect(within(table).getByText('taken back')).toBeTruthy();
  await userEvent.click(within(table).getByRole('button', { name: /Take back Second pump/ }));
  await userEvent.click(await screen.findByRole('button', { name: 'Take back this contingency entry' }));
  expect(api.journal.reverse).toHaveBeenCalledWith(expect.objectContaining({ entry: 3, on: '2026-03-12' }));
});

it('reads a past day as of that day, and lets nothing be entered', async () => {
  openMoney({ asOf: '2026-02-10' });
  expect(await screen.findByText(/A past day is shown/)).toBeTruthy();
  expect(api.money.summary).toHaveBeenCalledWith({ build: 1, asOf: '2026-02-10' });
  const add = await screen.findByRole('button', { name: 'Add or change a line' });
  expect((add as HTMLButtonElement).disabled).toBe(true);
  expect(screen.queryByRole('button', { name: /^Take back/ })).toBeNull();
});
