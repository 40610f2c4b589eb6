import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { navigate } from '../../../app/route.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { Empty, Loading } from '../../../parts/notes.tsx';
import { Answer, Page } from '../../../parts/page.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import type { Reading } from '../reading.ts';
import { emptyDraft, withNeeds } from './new-draft.ts';
import { OrderForm } from './order-form.tsx';

export interface NewOrderPageProps {
  readonly reading: Reading;
  /** Vendor to start with. */
  readonly vendor: number | null;
  /** Part lines to start with. */
  readonly parts: readonly number[];
}

/** A new order, from the needs of the build. */
export function NewOrderPage({ reading, vendor, parts }: NewOrderPageProps) {
  const { build, asOf } = reading;
  const { today } = useWorkspace();
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  const needs = useRead(['orders', build, asOf, 'needsOf', null], () => api.orders.needsOf({ build, vendor: null }));
  if (asOf !== undefined) {
    return (
      <Page title="New order">
        <Empty action={{ label: 'To the orders', onClick: () => navigate('/orders') }}>
          A past day is shown: go back to today to place an order.
        </Empty>
      </Page>
    );
  }
  if (settings.state === 'refused') return <RefusalNote refusal={settings.refusal} onRetry={settings.retry} />;
  if (needs.state === 'refused') return <RefusalNote refusal={needs.refusal} onRetry={needs.retry} />;
  if (settings.state === 'loading' || needs.state === 'loading') return <Loading label="Reading what is needed" />;

  const wanted = needs.value.filter(({ part }) => parts.includes(part));
  const vendors = new Set(wanted.map((need) => need.vendor));
  const only = vendors.size === 1 ? ([...vendors][0] ?? null) : null;
  const start = withNeeds(emptyDraft(settings.value, today, vendor ?? only), wanted, settings.value.currency);
  const covered = parts.length - wanted.length;
  return (
    <Page
      title="New order"
      answer={<Answer>Choose the vendor, tick what goes on the order, and see what each part really costs.</Answer>}
    >
      {covered > 0 && (
        <p>
          {covered === 1 ? '1 of the parts chosen is' : `${covered} of the parts chosen are`} in hand or on order
          already and left out here.
        </p>
      )}
      <OrderForm build={build} start={start} settings={settings.value} needs={needs.value} />
    </Page>
  );
}
