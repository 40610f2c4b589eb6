import { useMemo, useState } from 'react';
import type { OrderRow } from '../../../../core/contract/orders.ts';
import { navigate } from '../../../app/route.tsx';
import { dateText, moneyText } from '../../../parts/formats.ts';
import { type LocaleSettings, useLocale } from '../../../parts/locale.tsx';
import { Sheet } from '../../../parts/sheet/sheet.tsx';
import type { RowId, SheetColumn, SheetView } from '../../../parts/sheet/sheet-types.ts';
import { plainView } from '../../../parts/sheet/sheet-view.ts';
import { State } from '../../../parts/state.tsx';
import { isOverdue } from '../order-words.ts';

export interface OrderSheetProps {
  readonly rows: readonly OrderRow[];
  readonly label: string;
  /** The day that promises are late by. */
  readonly day: string;
}

/** Paid and owed sums are put away at first: the standing says the same, and a desk's width holds the rest. */
const firstView: SheetView = {
  ...plainView,
  columns: { ...plainView.columns, hidden: ['paidBaseMinor', 'claimsMinor'] },
};

/** Orders one a row; Enter opens one. */
export function OrderSheet({ rows, label, day }: OrderSheetProps) {
  const locale = useLocale();
  const columns = useMemo(() => orderColumns(locale, day), [locale, day]);
  const [view, setView] = useState<SheetView>(firstView);
  const [selection, setSelection] = useState<ReadonlySet<RowId>>(new Set());
  return (
    <div className="orders-sheet">
      <Sheet
        label={label}
        noun={['order', 'orders']}
        columns={columns}
        rows={rows}
        rowId={({ id }) => id}
        view={view}
        onViewChange={setView}
        selection={selection}
        onSelectionChange={setSelection}
        onOpenRow={({ id }) => navigate('/orders', { order: id })}
        emptyText="No order is open: all that was ordered is here and paid."
        footer
        bulk={(ticked) => <Ticked rows={rows.filter(({ id }) => ticked.has(id))} />}
      />
    </div>
  );
}

/** What the ticked orders come to: which bills to pay from this month's money. */
function Ticked({ rows }: { readonly rows: readonly OrderRow[] }) {
  const locale = useLocale();
  const sum = (key: 'totalBaseMinor' | 'stillToPayMinor') => rows.reduce((total, row) => total + row[key], 0);
  return (
    <span>
      Together {moneyText(sum('totalBaseMinor'), locale)}, still to pay {moneyText(sum('stillToPayMinor'), locale)}
    </span>
  );
}

const standingWords = ({ standing, backOrderAgeDays }: OrderRow): string =>
  standing === 'back-ordered' && backOrderAgeDays !== null ? `back-ordered ${backOrderAgeDays} days` : standing;

function orderColumns(locale: LocaleSettings, day: string): readonly SheetColumn<OrderRow>[] {
  const date = (value: string | null): string => (value === null ? '' : dateText(value, locale));
  const amount = (
    key: 'totalBaseMinor' | 'paidBaseMinor' | 'stillToPayMinor' | 'claimsMinor',
    title: string,
    blank = false,
  ): SheetColumn<OrderRow> => ({
    key,
    title,
    kind: 'money',
    value: (row) => row[key],
    text: (row) => (blank && row[key] === 0 ? '' : moneyText(row[key], locale)),
    subtotal: (rows) =>
      moneyText(
        rows.reduce((sum, row) => sum + row[key], 0),
        locale,
      ),
    filter: { kind: 'range', digits: 2 },
  });
  return [
    {
      key: 'vendor',
      title: 'Vendor',
      kind: 'text',
      width: 200,
      value: (row) => row.vendorName,
      text: (row) => row.vendorName,
      groupable: true,
      card: 'primary',
    },
    {
      key: 'number',
      title: 'Number',
      kind: 'text',
      width: 110,
      value: (row) => row.number,
      text: (row) => row.number,
      card: 'secondary',
    },
    {
      key: 'ordered',
      title: 'Ordered',
      kind: 'date',
      value: (row) => row.orderedOn,
      text: (row) => date(row.orderedOn),
      filter: { kind: 'range' },
    },
    {
      key: 'standing',
      title: 'Standing',
      kind: 'state',
      width: 180,
      value: (row) => row.standing,
      text: standingWords,
      render: (row) => <State state={row.standing} words={standingWords(row)} />,
      groupable: true,
      filter: { kind: 'choices' },
      card: 'aside',
    },
    {
      key: 'lines',
      title: 'To come',
      kind: 'text',
      width: 100,
      align: 'end',
      value: (row) => row.outstandingLines,
      text: (row) => `${row.outstandingLines} of ${row.lines}`,
      searched: false,
      card: 'secondary',
    },
    {
      key: 'promised',
      title: 'Promised',
      kind: 'date',
      width: 150,
      value: (row) => row.promisedOn,
      text: (row) => (isOverdue(row, day) ? `${date(row.promisedOn)}, past` : date(row.promisedOn)),
      filter: { kind: 'range' },
    },
    amount('stillToPayMinor', 'Still to pay'),
    amount('totalBaseMinor', 'Total'),
    {
      key: 'chased',
      title: 'Asked on',
      kind: 'date',
      value: (row) => row.chasedOn,
      text: (row) => date(row.chasedOn),
      filter: { kind: 'range' },
    },
    amount('paidBaseMinor', 'Paid'),
    amount('claimsMinor', 'They owe', true),
  ];
}
