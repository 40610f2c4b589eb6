import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { DateText, Money } from '../../../parts/figures.tsx';
import { useLocale } from '../../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';

type Payment = OrderDetail['payments'][number];

/** Money that went to the vendor and came back. */
export function OrderPayments({ detail }: { readonly detail: OrderDetail }) {
  const base = useLocale().currency;
  const { payments, row } = detail;
  if (payments.length === 0) return null;
  const columns: readonly Column<Payment>[] = [
    {
      id: 'on',
      title: 'Day',
      rowHeader: true,
      cell: ({ on }) => <DateText date={on} />,
      sortBy: ({ on, seq }) => `${on} ${seq}`,
    },
    {
      id: 'amount',
      title: 'Amount',
      figures: true,
      cell: ({ amountMinor, currency }) => <Money amountMinor={amountMinor} currency={currency} />,
      sortBy: ({ baseMinor }) => baseMinor,
    },
    ...(row.currency === base
      ? []
      : [
          {
            id: 'base',
            title: `In ${base}`,
            figures: true,
            cell: ({ baseMinor }: Payment) => <Money amountMinor={baseMinor} />,
          },
        ]),
    {
      id: 'note',
      title: 'Note',
      cell: ({ note, reversed }) => [note, reversed ? 'taken back later' : ''].filter(Boolean).join(', '),
    },
  ];
  return (
    <SimpleTable
      caption="Payments and refunds"
      columns={columns}
      rows={payments}
      rowKey={({ seq, reversed }) => `${seq} ${reversed}`}
    />
  );
}
