import { navigate, useRoute } from '../../app/route.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Page } from '../../parts/page.tsx';
import { ReceivePage } from './box/receive-page.tsx';
import { OrderPage } from './detail/order-page.tsx';
import { NewOrderPage } from './new/new-order-page.tsx';
import { OrdersOverview } from './overview/orders-overview.tsx';
import './orders.css';

/** What is out at the vendors: all orders, one order, a box that came, or a new order, as the address says. */
export default function OrdersScreen() {
  const { isOpen } = useWorkspace();
  const reading = useReading();
  const { params } = useRoute();
  const { order, vendor, parts } = params as { readonly [name in 'order' | 'vendor' | 'parts' | 'do']?: string };
  if (reading === null) {
    return (
      <Page title="Orders">
        <Empty action={{ label: 'Go to the start page', onClick: () => navigate('/') }}>
          {isOpen ? 'Orders belong to a build; this workbook has none yet.' : 'No workbook is open.'}
        </Empty>
      </Page>
    );
  }
  if (order === 'new') {
    return <NewOrderPage key={`${vendor} ${parts}`} reading={reading} vendor={idOf(vendor)} parts={idsOf(parts)} />;
  }
  const id = idOf(order);
  if (id === null) return <OrdersOverview reading={reading} />;
  return params['do'] === 'receive' ? (
    <ReceivePage key={`box ${id}`} order={id} reading={reading} />
  ) : (
    <OrderPage key={id} order={id} reading={reading} />
  );
}

const idOf = (text: string | undefined): number | null =>
  text !== undefined && /^[1-9]\d{0,14}$/.test(text) ? Number(text) : null;

const idsOf = (text: string | undefined): readonly number[] => [
  ...new Set((text ?? '').split(',').flatMap((item) => idOf(item.trim()) ?? [])),
];
