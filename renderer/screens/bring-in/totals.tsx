import type { ImportedOrder, ImportPlan, SectionTotal } from '../../../core/exchange/import-types.ts';
import { Money } from '../../parts/figures.tsx';
import { counted, dateText, moneyText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

/** The file's own totals beside ours, and why they differ. */
export function Totals({ plan, currency }: { readonly plan: ImportPlan; readonly currency: string }) {
  const locale = useLocale();
  if (plan.sectionTotals.length === 0) return null;
  const columns: readonly Column<SectionTotal>[] = [
    { id: 'row', title: 'Row', figures: true, cell: ({ row }) => row },
    {
      id: 'system',
      title: 'Total of',
      rowHeader: true,
      cell: ({ system }) => (system === '' ? 'the whole list' : system),
    },
    {
      id: 'file',
      title: 'In the file',
      figures: true,
      cell: ({ fileTotalMinor }) => <Money amountMinor={fileTotalMinor} currency={currency} />,
    },
    {
      id: 'ours',
      title: 'By its lines',
      figures: true,
      cell: ({ ourTotalMinor }) => <Money amountMinor={ourTotalMinor} currency={currency} />,
    },
    {
      id: 'difference',
      title: 'Lines less file',
      figures: true,
      cell: ({ ourTotalMinor, fileTotalMinor }) => (
        <Money amountMinor={ourTotalMinor - fileTotalMinor} currency={currency} />
      ),
      sortBy: ({ ourTotalMinor, fileTotalMinor }) => Math.abs(ourTotalMinor - fileTotalMinor),
    },
    {
      id: 'why',
      title: 'Why',
      cell: ({ differences }) =>
        differences.length === 0 ? (
          'They agree'
        ) : (
          <ul className="import-reasons">
            {differences.map(({ row, reason, amountMinor }) => (
              <li key={`${row} ${reason}`}>
                Row {row}: {reason}
                {amountMinor === 0 ? '' : ` (${moneyText(amountMinor, locale, currency)})`}
              </li>
            ))}
          </ul>
        ),
    },
  ];
  return (
    <SimpleTable
      caption="Totals in the file, checked against its lines"
      columns={columns}
      rows={plan.sectionTotals}
      rowKey={({ row }) => String(row)}
    />
  );
}

/** A longer list of orders is folded away while all of its totals agree. */
const mostUnfolded = 12;

/** The orders that the lines make up, with their charges and the file's own total. */
export function OrdersFound({ orders }: { readonly orders: readonly ImportedOrder[] }) {
  const locale = useLocale();
  if (orders.length === 0) return null;
  const amount = (amountMinor: number | undefined, currency: string) =>
    amountMinor === undefined || amountMinor === 0 ? '' : <Money amountMinor={amountMinor} currency={currency} />;
  const columns: readonly Column<ImportedOrder>[] = [
    {
      id: 'number',
      title: 'Order',
      rowHeader: true,
      cell: ({ orderNumber }) => orderNumber,
      sortBy: (o) => o.orderNumber,
    },
    { id: 'vendor', title: 'Vendor', cell: ({ vendor }) => vendor, sortBy: ({ vendor }) => vendor },
    {
      id: 'on',
      title: 'Ordered on',
      cell: ({ orderedOn }) => (orderedOn === undefined ? 'not said' : dateText(orderedOn, locale)),
      sortBy: ({ orderedOn }) => orderedOn ?? '',
    },
    { id: 'lines', title: 'Lines', figures: true, cell: ({ rows }) => rows.length },
    { id: 'shipping', title: 'Shipping', figures: true, cell: (order) => amount(order.shippingMinor, order.currency) },
    { id: 'tax', title: 'Tax', figures: true, cell: (order) => amount(order.taxMinor, order.currency) },
    { id: 'duty', title: 'Duty', figures: true, cell: (order) => amount(order.dutyMinor, order.currency) },
    { id: 'discount', title: 'Discount', figures: true, cell: (order) => amount(order.discountMinor, order.currency) },
    {
      id: 'total',
      title: 'Total in the file',
      figures: true,
      cell: (order) => amount(order.fileTotalMinor, order.currency),
    },
    {
      id: 'difference',
      title: 'Lines and charges',
      cell: ({ fileTotalMinor, differenceMinor, currency }) =>
        fileTotalMinor === undefined
          ? 'no total to check'
          : (differenceMinor ?? 0) === 0
            ? 'agree'
            : `differ by ${moneyText(differenceMinor ?? 0, locale, currency)}`,
    },
  ];
  const apart = orders.filter(({ differenceMinor }) => (differenceMinor ?? 0) !== 0).length;
  const agree = apart === 0 ? 'no total differs' : counted(apart, 'total differs', 'totals differ');
  return (
    <details className="import-fold" open={apart > 0 || orders.length <= mostUnfolded}>
      <summary>
        {counted(orders.length, 'order', 'orders')}; {agree} from its lines and charges
      </summary>
      <SimpleTable
        caption="Orders"
        captionHidden
        columns={columns}
        rows={orders}
        rowKey={({ orderNumber, vendor }) => `${vendor} ${orderNumber}`}
      />
    </details>
  );
}
