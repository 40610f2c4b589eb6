import { Button } from '@mantine/core';
import { IconRefresh } from '@tabler/icons-react';
import { memo, useMemo, useState } from 'react';
import type { ForecastTask } from '../../../core/forecast/facts.ts';
import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate, useRoute } from '../../app/route.tsx';
import { useWhy } from '../../app/why.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { Choice } from '../../parts/fields.tsx';
import { Progress, Tabs } from '../../parts/furniture.tsx';
import { Caution, Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { PastDayNote } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { AllGates } from './all-gates.tsx';
import { Coming } from './coming.tsx';
import { forecastDerivation } from './forecast-words.ts';
import { Gaps } from './gaps.tsx';
import { GateDays } from './gate-days.tsx';
import { HeldBy } from './held-by.tsx';
import { History } from './history.tsx';
import { LeadTimes } from './lead-times.tsx';
import { RunFields } from './run-fields.tsx';
import { useForecast } from './use-forecast.ts';
import './forecast.css';

/** When the engine goes in, as a day with its chances, and what holds it. */
export default function ForecastScreen() {
  const reading = useReading();
  const task = useRead(
    ['forecast', reading?.build ?? null, reading?.asOf ?? null, 'facts'],
    reading === null ? null : () => api.forecast.facts(reading),
  );
  if (reading !== null && task.state === 'ready') return <Forecasted task={task.value} reading={reading} />;
  return (
    <Page title="Forecast">
      {reading === null ? (
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here stands when the engine goes in, by the work left and the vendors' records. It needs a workbook with a
          build.
        </Empty>
      ) : task.state === 'refused' ? (
        <RefusalNote refusal={task.refusal} onRetry={task.retry} />
      ) : (
        <Loading label="Gathering what the forecast stands on" />
      )}
    </Page>
  );
}

const usual = { runs: 2000, seed: 1 };
const tabs = [
  { id: 'days', title: 'Days' },
  { id: 'leads', title: 'Lead times' },
  { id: 'history', title: 'What it said' },
] as const;
type TabId = (typeof tabs)[number]['id'];

interface ForecastedProps {
  readonly task: ForecastTask;
  readonly reading: NonNullable<ReturnType<typeof useReading>>;
}

function Forecasted({ task, reading }: ForecastedProps) {
  const why = useWhy();
  const { today, asOf } = useWorkspace();
  const { params } = useRoute();
  const [asked, setAsked] = useState(usual);
  const { state, run, stop } = useForecast(task, asked.runs, asked.seed);
  const { view, ended } = state;
  const gate = view?.gates.find(({ name }) => name === params['gate']) ?? view?.gates[0];
  const shown: TabId = tabs.find(({ id }) => id === params['view'])?.id ?? 'days';
  const running = state.kind === 'running' || state.kind === 'waiting';
  const go = (change: Readonly<Record<string, string>>) => navigate('/forecast', { ...params, ...change });
  const nothingToRun = view !== null && view.gates.length === 0;
  const names = useMemo(() => (view?.gates ?? []).map(({ name }) => ({ value: name, label: name })), [view]);
  return (
    <Page
      title="Forecast"
      answer={
        view === null ? undefined : (
          <Answer {...(gate === undefined ? {} : { onWhy: () => why({ derivation: forecastDerivation(view, gate) }) })}>
            {gate?.says ?? view.answer}
          </Answer>
        )
      }
    >
      <PastDayNote />
      {state.kind === 'refused' && <RefusalNote refusal={{ message: state.refused }} onRetry={run} />}
      <Tabs label="What is shown" tabs={tabs} shown={shown} onShow={(id) => go({ view: id === 'days' ? '' : id })}>
        {shown === 'leads' && <LeadTimes />}
        {shown === 'history' && (
          <History reading={reading} asked={asked} gate={gate?.name ?? null} canKeep={(view?.gates.length ?? 0) > 0} />
        )}
        {shown === 'days' && nothingToRun && <NothingToRun task={task} />}
        {shown === 'days' && !nothingToRun && (
          <div className="forecast-days">
            <div className="forecast-choices not-printed">
              {names.length > 1 && (
                <Choice
                  name="gate"
                  label="Gate"
                  required
                  value={gate?.name ?? null}
                  onChange={(name) => go({ gate: name ?? '' })}
                  options={names}
                />
              )}
              <RunFields asked={asked} onAsk={setAsked} />
              <Button leftSection={<IconRefresh aria-hidden size="1.1em" />} onClick={run} disabled={running}>
                Run again
              </Button>
            </div>
            <div className="forecast-progress" aria-live="off">
              {running ? (
                <Progress
                  label={view !== null && state.share > 0 && view.runs >= asked.runs ? 'Days won' : 'Runs'}
                  done={Math.min(state.share === 0 ? 0 : (view?.runs ?? 0), asked.runs)}
                  of={asked.runs}
                  onStop={stop}
                />
              ) : (
                view !== null && (
                  <p className="forecast-soft">
                    {state.kind === 'stopped'
                      ? `Stopped after ${view.runs} of ${asked.runs} runs: the days stand on these.`
                      : `${view.runs} runs with seed ${view.seed}; the same again says the same.`}
                    {view.beyondShare > 0 &&
                      ` In ${Math.max(1, Math.round(view.beyondShare * 100))} of 100 runs something lay beyond the ten years that are looked ahead.`}
                  </p>
                )
              )}
            </div>
            {view === null ? (
              <Loading label="The first runs are being made" />
            ) : (
              gate !== undefined && (
                <>
                  <div className="forecast-top">
                    <GateDays gate={gate} today={asOf ?? today} />
                    <AllGates gates={view.gates} shown={gate.name} onShow={(name) => go({ gate: name })} />
                  </div>
                  {ended !== null && <Behind view={ended} gate={gate.name} />}
                </>
              )
            )}
          </div>
        )}
      </Tabs>
    </Page>
  );
}

/** No runs to choose where none can be made: what belongs here, and where it begins. */
function NothingToRun({ task: { facts } }: { readonly task: ForecastTask }) {
  return (
    <>
      {facts.anything ? (
        <Empty action={{ label: 'Set the free hours', onClick: () => navigate('/settings', { section: 'hours' }) }}>
          The days on which the engine may go in stand here, each with its chance, once there are hours to work in.
        </Empty>
      ) : (
        <Empty action={{ label: 'Write down the jobs', onClick: () => navigate('/plan') }}>
          The days on which the engine may go in stand here, each with its chance, and what holds them. It begins with
          the jobs and a guess of their hours.
        </Empty>
      )}
      <Gaps gaps={facts.gaps} />
    </>
  );
}

/** What stands behind the days: drawn when a run has ended, so that a run under way has the window to itself. */
const Behind = memo(function Behind({ view, gate: name }: { readonly view: ForecastAnswer; readonly gate: string }) {
  const gate = view.gates.find((each) => each.name === name);
  return (
    <>
      {gate !== undefined && <HeldBy gate={gate} />}
      <Coming coming={view.coming} />
      <Gaps gaps={view.gaps} />
      {view.assumes.length > 0 && (
        <section className="forecast-section">
          <h2>What it assumes</h2>
          <ul className="forecast-assumes">
            {view.assumes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <Caution>
            A day is no reason to hurry: torque, lifting, brakes and fuel follow the makers' manuals, whatever the
            forecast says.
          </Caution>
        </section>
      )}
    </>
  );
});
