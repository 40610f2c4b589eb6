import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate, useRoute } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Tabs } from '../../parts/furniture.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { PastDayNote } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { CashSection } from './cash-section.tsx';
import { Offers } from './offers.tsx';
import { PlanSection } from './plan-section.tsx';
import type { Reading } from './reading.ts';
import './buying.css';

const tabIds = ['plan', 'cash', 'offers'] as const;
type TabId = (typeof tabIds)[number];

/** What to order when: the plan that the money allows, the money ahead, and the offers it goes by. */
export default function Buying() {
  const reading = useReading();
  if (reading === null) {
    return (
      <Page title="Buying">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here stands what to order when, so that the money lasts. It needs a workbook with a build.
        </Empty>
      </Page>
    );
  }
  return <BuyingOf reading={reading} />;
}

function BuyingOf({ reading }: { readonly reading: Reading }) {
  const { params } = useRoute();
  const [safe, setSafe] = useState(false);
  const shown: TabId = tabIds.find((id) => id === params['view']) ?? 'plan';
  const key = ['buying', reading.build, reading.asOf ?? null];
  const plan = useRead([...key, 'plan', safe], () => api.buying.plan({ ...reading, safe }));
  const cash = useRead([...key, 'cash'], () => api.buying.cash(reading));
  const answer =
    shown === 'cash'
      ? cash.state === 'ready' && (
          <Answer blocks={cash.value.likelyBelowOn !== null || cash.value.count === null}>{cash.value.answer}</Answer>
        )
      : plan.state === 'ready' && <Answer blocks={plan.value.status === 'none'}>{plan.value.answer}</Answer>;
  return (
    <Page title="Buying" answer={answer === false ? undefined : answer}>
      <PastDayNote />
      <Tabs
        label="The plan, the money ahead and offers"
        tabs={[
          { id: 'plan', title: 'What to order when' },
          { id: 'cash', title: 'Money ahead' },
          { id: 'offers', title: 'Offers' },
        ]}
        shown={shown}
        onShow={(id) => navigate('/buying', id === 'plan' ? {} : { view: id })}
      >
        {shown === 'plan' && (
          <>
            <Checkbox
              className="not-printed"
              label="Judge carefully"
              description="By waits that four of five orders keep, and by income that comes every month only."
              checked={safe}
              onChange={(event) => setSafe(event.currentTarget.checked)}
            />
            {plan.state === 'loading' ? (
              <Loading label="Working out what to order when" />
            ) : plan.state === 'refused' ? (
              <RefusalNote refusal={plan.refusal} onRetry={plan.retry} />
            ) : (
              <PlanSection plan={plan.value} />
            )}
          </>
        )}
        {shown === 'cash' && (
          <ReadView read={cash} label="Reading the money ahead">
            {(view) => <CashSection cash={view} plan={plan.state === 'ready' ? plan.value : null} reading={reading} />}
          </ReadView>
        )}
        {shown === 'offers' && <Offers reading={reading} />}
      </Tabs>
    </Page>
  );
}
