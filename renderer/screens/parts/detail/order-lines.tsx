import type { PartDetail } from '../../../../core/contract/parts.ts';
import { Link } from '../../../app/route.tsx';
import { DateText } from '../../../parts/figures.tsx';
import { moneyText, quantityText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';

type Line = PartDetail['lines'][number];

/** The orders that the part is on. */
export function OrderLines({ detail }: { readonly detail: PartDetail }) {
  const { row, lines } = detail;
  const locale = useLocale();
  if (lines.length === 0) return null;
  const quantity = (milli: number) => (milli === 0 ? '' : quantityText(milli, locale, row.unit));
  const columns: Column<Line>[] = [
    {
      id: 'order',
      title: 'Order',
      rowHeader: true,
      cell: ({ order, orderNumber, vendor, orderedOn }) => (
        <>
          <Link to="/orders" params={{ order }}>
            {vendor} {orderNumber}
          </Link>
          <span className="parts-under">
            <DateText date={orderedOn} />
          </span>
        </>
      ),
    },
    { id: 'ordered', title: 'Ordered', figures: true, cell: ({ orderedMilli }) => quantity(orderedMilli) },
    { id: 'came', title: 'Came in', figures: true, cell: ({ receivedMilli }) => quantity(receivedMilli) },
    {
      id: 'open',
      title: 'Still to come',
      figures: true,
      cell: ({ outstandingMilli, backOrderedMilli, promisedOn }) => (
        <>
          {quantity(outstandingMilli)}
          {backOrderedMilli > 0 && <span className="parts-under">{quantity(backOrderedMilli)} on back-order</span>}
          {outstandingMilli > 0 && promisedOn !== null && (
            <span className="parts-under">
              by <DateText date={promisedOn} />
            </span>
          )}
        </>
      ),
    },
    { id: 'landed', title: 'Landed', figures: true, cell: ({ landedMinor }) => moneyText(landedMinor, locale) },
  ];
  return (
    <section aria-label="Orders">
      <h3>Orders</h3>
      <SimpleTable caption="Orders" captionHidden columns={columns} rows={lines} rowKey={({ line }) => String(line)} />
    </section>
  );
}
