import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWhy } from '../../app/why.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { PastDayNote } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { Budget } from './budget.tsx';
import { Earned } from './earned.tsx';
import { MoneyBy } from './money-by.tsx';
import { MoneyCharts } from './money-charts.tsx';
import { BuildFigures } from './money-figures.tsx';
import { WithoutEstimate } from './without-estimate.tsx';
import './money.css';

/** What the build costs: paid, owed, still to order, against the budget. */
export default function MoneyScreen() {
  const reading = useReading();
  if (reading === null) {
    return (
      <Page title="Money">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          What a build costs stands here once the workbook has a build; one is made at the start.
        </Empty>
      </Page>
    );
  }
  return <MoneyOfBuild reading={reading} />;
}

function MoneyOfBuild({ reading }: { readonly reading: NonNullable<ReturnType<typeof useReading>> }) {
  const why = useWhy();
  const summary = useRead(['money', reading.build, reading.asOf ?? null, 'summary'], () => api.money.summary(reading));
  const answer = summary.state === 'ready' && (
    <Answer onWhy={() => why({ ...reading, figure: 'forecast' })} blocks={summary.value.varianceMinor < 0}>
      {summary.value.answer}
    </Answer>
  );
  return (
    <Page title="Money" answer={answer}>
      <PastDayNote />
      <ReadView read={summary} label="Reading the money">
        {(figures) => (
          <>
            <BuildFigures figures={figures} reading={reading} />
            {figures.withoutEstimate > 0 && <WithoutEstimate count={figures.withoutEstimate} reading={reading} />}
            <MoneyBy total={figures} reading={reading} />
            <Budget figures={figures} reading={reading} />
            <Earned reading={reading} />
            <MoneyCharts figures={figures} reading={reading} />
          </>
        )}
      </ReadView>
    </Page>
  );
}
