import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { moneyText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { Loading } from '../../../parts/notes.tsx';
import { Answer, Page } from '../../../parts/page.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { orderName } from '../order-words.ts';
import type { Reading } from '../reading.ts';
import { type ActName, OrderActs } from './order-acts.tsx';
import { orderAnswer } from './order-answer.ts';
import { OrderFacts } from './order-facts.tsx';
import { OrderJournal } from './order-journal.tsx';
import { OrderLines } from './order-lines.tsx';
import { OrderPayments } from './order-payments.tsx';
import { OrderWindow } from './order-window.tsx';

export interface OrderPageProps {
  readonly order: number;
  readonly reading: Reading;
}

/** One order: how it stands, its lines with every promise, its money, its journal, and what can be done. */
export function OrderPage({ order, reading }: OrderPageProps) {
  const { build, asOf } = reading;
  const { today } = useWorkspace();
  const locale = useLocale();
  const [act, setAct] = useState<ActName | null>(null);
  const detail = useRead(['orders', build, asOf, 'detail', order], () =>
    api.orders.detail({ order, ...(asOf === undefined ? {} : { asOf }) }),
  );
  if (detail.state === 'loading') return <Loading label="Reading the order" />;
  if (detail.state === 'refused') {
    return (
      <Page title="Order">
        <RefusalNote refusal={detail.refusal} onRetry={detail.retry} />
        <Back />
      </Page>
    );
  }
  const found = detail.value;
  const { row } = found;
  return (
    <Page
      title={orderName(row)}
      answer={
        <Answer blocks={row.backOrderedOn !== null}>
          {orderAnswer(found, asOf ?? today, (minor) => moneyText(minor, locale))}
        </Answer>
      }
    >
      <Back />
      {asOf === undefined ? (
        <OrderActs detail={found} onAct={setAct} />
      ) : (
        <p>A past day is shown: go back to today to receive, pay or correct.</p>
      )}
      <OrderFacts detail={found} reading={reading} />
      <OrderLines detail={found} />
      <OrderPayments detail={found} />
      <OrderJournal order={order} reading={reading} />
      {act !== null && <OrderWindow act={act} detail={found} onClose={() => setAct(null)} />}
    </Page>
  );
}

function Back() {
  return (
    <p className="back not-printed">
      <Link to="/orders">All orders</Link>
    </p>
  );
}
