import { Button } from '@mantine/core';
import { IconHistory, IconPrinter } from '@tabler/icons-react';
import { useState } from 'react';
import type { GateReview } from '../../../core/contract/gate.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWhy } from '../../app/why.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { dateText } from '../../parts/formats.ts';
import { Tabs, Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution, Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { BlockerTable } from './blocker-table.tsx';
import { groupedByKind } from './blocker-words.ts';
import { Comparing } from './comparing.tsx';
import type { Doing } from './doing.ts';
import { DoingWindow } from './doing-window.tsx';
import { GateFigures } from './figures.tsx';
import { Shrinking } from './shrinking.tsx';
import { WaivedTable } from './waived-table.tsx';
import './hoist-check.css';

/** What still stands before the engine goes in, what clears it, and by when. */
export default function HoistCheck() {
  const reading = useReading();
  const review = useRead(
    ['gate', reading?.build ?? null, reading?.asOf ?? null, 'review'],
    reading === null ? null : () => api.gate.review(reading),
  );
  if (reading === null) {
    return (
      <Page title="Hoist check">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here stands what still blocks the day the engine goes in. It needs a workbook with a build.
        </Empty>
      </Page>
    );
  }
  if (review.state === 'ready') return <Checked review={review.value} reading={reading} />;
  return (
    <Page title="Hoist check">
      {review.state === 'loading' && <Loading label="Looking for what still blocks" />}
      {review.state === 'refused' && <RefusalNote refusal={review.refusal} onRetry={review.retry} />}
    </Page>
  );
}

type Order = 'kind' | 'date';
type Reading = NonNullable<ReturnType<typeof useReading>>;

function Checked({ review, reading }: { readonly review: GateReview; readonly reading: Reading }) {
  const why = useWhy();
  const locale = useLocale();
  const { asOf } = useWorkspace();
  const [order, setOrder] = useState<Order>('kind');
  const [doing, setDoing] = useState<Doing | null>(null);
  const past = asOf !== null;
  const clear = review.blockers.length === 0;
  const nothingListed = review.listed === 0;
  const acts = past ? {} : { onDo: setDoing };
  return (
    <Page
      title="Hoist check"
      answer={
        <Answer blocks={!clear} onWhy={() => why({ ...reading, figure: 'blocker-count' })}>
          {review.answer}
        </Answer>
      }
    >
      <p className={past ? 'gate-as-of' : 'gate-as-of only-printed'}>
        {past ? 'As it stood at the end of' : 'As it stands on'} {dateText(review.asOf, locale)}.
      </p>
      <div className="gate-top">
        <GateFigures review={review} />
        <Caution>{review.caution}</Caution>
      </div>
      {past && (
        <p className="note">
          <IconHistory aria-hidden className="note-icon" />
          <span>A past day is shown, so nothing can be done from here. Go back to today to clear or waive.</span>
        </p>
      )}
      {review.blockers.some(({ readyLateOn }) => readyLateOn !== null) && (
        <p className="gate-note">
          Days of deliveries are forecast from the vendors' records and promises: as likely as not by the first, four
          times of five by the second.
        </p>
      )}
      <Toolbar label="The check">
        {clear && !nothingListed && !past && (
          <Button variant="filled" onClick={() => setDoing({ what: 'pass' })}>
            The engine is in…
          </Button>
        )}
        {!nothingListed && (
          <Button leftSection={<IconPrinter aria-hidden size="1.1em" />} onClick={() => window.print()}>
            Print the list
          </Button>
        )}
      </Toolbar>
      {nothingListed && (
        <Empty action={{ label: 'Write down the first part', onClick: () => navigate('/parts') }}>
          Parts, jobs, tools, decisions and bolt groups stand here until they are cleared. Begin with the parts: type
          them, or bring in the list that you keep.
        </Empty>
      )}
      {clear && !nothingListed && (
        <p>{`Nothing blocks${review.waived.length > 0 ? '; what was waived is listed below' : ''}.`}</p>
      )}
      {!clear && (
        <Tabs
          label="Order of the list"
          tabs={[
            { id: 'kind', title: 'By kind' },
            { id: 'date', title: 'By what holds the date' },
          ]}
          shown={order}
          onShow={setOrder}
        >
          <div className="gate-lists">
            {order === 'kind' ? (
              groupedByKind(review.blockers).map(({ kind, heading, rows }) => (
                <BlockerTable key={kind} caption={heading} rows={rows} {...acts} />
              ))
            ) : (
              <BlockerTable caption="What holds the date longest comes first" rows={review.blockers} {...acts} />
            )}
          </div>
        </Tabs>
      )}
      {review.waived.length > 0 && <WaivedTable rows={review.waived} {...acts} />}
      <section className="gate-section not-printed">
        <h2>How the list shrank</h2>
        <Shrinking
          key={`${reading.build} ${reading.asOf ?? ''}`}
          reading={reading}
          stamp={`${review.asOf} ${review.blockers.length} ${review.costMinor}`}
        />
      </section>
      <section className="gate-section not-printed">
        <h2>What left and what came</h2>
        <Comparing key={reading.asOf ?? 'today'} reading={reading} />
      </section>
      {doing !== null && !past && (
        <DoingWindow doing={doing} review={review} build={reading.build} onClose={() => setDoing(null)} />
      )}
    </Page>
  );
}
