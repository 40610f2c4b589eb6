import { Button } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { navigate, useRoute } from '../../../app/route.tsx';
import { useWhy } from '../../../app/why.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { moneyText } from '../../../parts/formats.ts';
import { type Tab, Tabs, Toolbar } from '../../../parts/furniture.tsx';
import { useLocale } from '../../../parts/locale.tsx';
import { Empty, Loading } from '../../../parts/notes.tsx';
import { Answer, Page } from '../../../parts/page.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { isOpen, isOverdue, ordersAnswer } from '../order-words.ts';
import type { Reading } from '../reading.ts';
import { ChaseTexts } from './chase-list.tsx';
import { DueList } from './due-list.tsx';
import { OrderSheet } from './order-sheet.tsx';
import { VendorCards } from './vendor-cards.tsx';

type View = 'open' | 'due' | 'chase' | 'vendors' | 'all';
const views: readonly View[] = ['open', 'due', 'chase', 'vendors', 'all'];

/** All orders of the build: those that are open, what is due, the vendors' records, and every order there was. */
export function OrdersOverview({ reading }: { readonly reading: Reading }) {
  const { build, asOf } = reading;
  const locale = useLocale();
  const why = useWhy();
  const { today } = useWorkspace();
  const { params } = useRoute();
  const orders = useRead(['orders', build, asOf, 'list'], () => api.orders.list(reading));
  const view = views.find((name) => name === params['view']) ?? 'open';
  if (orders.state === 'loading') return <Loading label="Reading the orders" />;
  if (orders.state === 'refused') {
    return (
      <Page title="Orders">
        <RefusalNote refusal={orders.refusal} onRetry={orders.retry} />
      </Page>
    );
  }
  const rows = orders.value;
  const day = asOf ?? today;
  const place = () => navigate('/orders', { order: 'new' });
  const answer = (
    <Answer
      blocks={rows.some((row) => isOverdue(row, day))}
      {...(rows.length === 0 ? {} : { onWhy: () => why({ figure: 'still-to-pay', ...reading }) })}
    >
      {ordersAnswer(rows, day, (minor) => moneyText(minor, locale))}
    </Answer>
  );
  if (rows.length === 0) {
    return (
      <Page title="Orders" answer={answer}>
        <Empty action={{ label: 'Enter the first order', onClick: place }}>
          Orders at vendors belong here, with what each part really costs once shipping, tax and duty are in.
        </Empty>
      </Page>
    );
  }
  const open = rows.filter(isOpen);
  const tabs: readonly Tab<View>[] = [
    { id: 'open', title: 'Open orders', count: open.length },
    { id: 'due', title: 'Due' },
    { id: 'chase', title: 'Whom to ask' },
    { id: 'vendors', title: 'Vendors' },
    { id: 'all', title: 'All orders', count: rows.length },
  ];
  return (
    <Page title="Orders" answer={answer}>
      <Toolbar label="New">
        {asOf === undefined ? (
          <Button variant="filled" leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={place}>
            New order
          </Button>
        ) : (
          <p>A past day is shown: go back to today to place, receive or pay.</p>
        )}
      </Toolbar>
      <Tabs
        label="Orders"
        tabs={tabs}
        shown={view}
        onShow={(id) => navigate('/orders', id === 'open' ? {} : { view: id }, { replace: true })}
      >
        {view === 'open' && <OrderSheet rows={open} label="Open orders" day={day} />}
        {view === 'all' && <OrderSheet rows={rows} label="All orders" day={day} />}
        {view === 'due' && <DueList reading={reading} />}
        {view === 'chase' && <ChaseTexts reading={reading} />}
        {view === 'vendors' && <VendorCards reading={reading} />}
      </Tabs>
    </Page>
  );
}
