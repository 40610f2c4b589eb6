import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWhy } from '../../app/why.tsx';
import { Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { ChaseList } from './chase-list.tsx';
import { Came, Due } from './coming.tsx';
import { FirstSteps } from './first-steps.tsx';
import { ForecastLine } from './forecast-line.tsx';
import { Holds } from './holds.tsx';
import { Measures } from './measures.tsx';
import { MoneyLines } from './money-lines.tsx';

export type Reading = { readonly build: number; readonly asOf?: string };

/** What matters today in one build: the answer, what holds the day, what came and is due, money, whom to chase. */
export function BuildStart({ reading }: { readonly reading: Reading }) {
  const why = useWhy();
  const { build, asOf } = reading;
  const view = useRead(['start', build, asOf, 'view'], () => api.start.view(reading));
  if (view.state === 'loading') return <Loading label="Working out what stands before the day" />;
  if (view.state === 'refused') {
    return (
      <Page title="Start">
        <RefusalNote refusal={view.refusal} onRetry={view.retry} />
      </Page>
    );
  }
  const { answer, holds, came, due, chase, measures } = view.value;
  if (measures.received.byLine.of === 0 && measures.jobs.byCount.of === 0) {
    return (
      <Page
        title="Start"
        answer={<Answer>Nothing is in this build yet: what it needs is the first thing to write down.</Answer>}
      >
        <FirstSteps />
      </Page>
    );
  }
  return (
    <Page
      title="Start"
      answer={
        <>
          <Answer blocks={holds.length > 0} onWhy={() => why({ figure: 'blocker-count', ...reading })}>
            {answer}
          </Answer>
          <ForecastLine reading={reading} />
        </>
      }
    >
      <div className="start-columns">
        <div className="start-column">
          <Holds holds={holds} />
          <ChaseList chase={chase} />
          <Due due={due} />
        </div>
        <div className="start-column">
          <MoneyLines reading={reading} />
          <Came came={came} />
          <Measures measures={measures} reading={reading} />
        </div>
      </div>
    </Page>
  );
}
