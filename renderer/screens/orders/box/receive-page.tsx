import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Link, navigate } from '../../../app/route.tsx';
import { counted } from '../../../parts/formats.ts';
import { Empty, Loading } from '../../../parts/notes.tsx';
import { Answer, Page } from '../../../parts/page.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { openLines, orderName } from '../order-words.ts';
import type { Reading } from '../reading.ts';
import { BoxForm } from './box-form.tsx';

export interface ReceivePageProps {
  readonly order: number;
  readonly reading: Reading;
}

/** A box on the bench, counted against its order. */
export function ReceivePage({ order, reading }: ReceivePageProps) {
  const { build, asOf } = reading;
  const detail = useRead(['orders', build, asOf, 'detail', order], () =>
    api.orders.detail({ order, ...(asOf === undefined ? {} : { asOf }) }),
  );
  const back = () => navigate('/orders', { order });
  if (detail.state === 'loading') return <Loading label="Reading the order" />;
  if (detail.state === 'refused') {
    return (
      <Page title="Receive a box">
        <RefusalNote refusal={detail.refusal} onRetry={detail.retry} />
      </Page>
    );
  }
  const { row } = detail.value;
  const open = openLines(detail.value);
  const title = `Receive a box: ${orderName(row)}`;
  if (asOf !== undefined || open.length === 0) {
    return (
      <Page title={title}>
        <Empty action={{ label: 'To the order', onClick: back }}>
          {asOf === undefined
            ? 'Nothing is to come on this order: all of it is here.'
            : 'A past day is shown: go back to today to receive a box.'}
        </Empty>
      </Page>
    );
  }
  return (
    <Page
      title={title}
      answer={
        <Answer>
          {counted(open.length, 'line', 'lines')} to come from {row.vendorName}. Count what is in the box.
        </Answer>
      }
    >
      <p className="back not-printed">
        <Link to="/orders" params={{ order }}>
          Back to the order
        </Link>
      </p>
      <BoxForm order={order} lines={open} onDone={back} />
    </Page>
  );
}
