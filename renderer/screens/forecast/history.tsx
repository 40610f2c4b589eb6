import { Button } from '@mantine/core';
import { lazy, useState } from 'react';
import type { KeptForecast } from '../../../core/contract/forecast.ts';
import { dayWords } from '../../../core/dates/day-words.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { ChartFrame } from '../../parts/chart.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { DateText } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { Loading } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

const HistoryDrawing = lazy(() => import('./history-drawing.tsx'));

interface HistoryProps {
  readonly reading: { readonly build: number; readonly asOf?: string };
  readonly asked: { readonly runs: number; readonly seed: number };
  /** The gate whose history is shown. */
  readonly gate: string | null;
  /** There is a forecast that could be kept. */
  readonly canKeep: boolean;
}

/** What the forecast said on the days that it was kept, and the way to keep today's. */
export function History({ reading, asked, gate, canKeep }: HistoryProps) {
  const kept = useRead(['forecast', reading.build, reading.asOf ?? null, 'history'], () =>
    api.forecast.history(reading),
  );
  return (
    <div className="forecast-days">
      {useCanAct() && <Keep build={reading.build} asked={asked} canKeep={canKeep} />}
      {kept.state === 'loading' && <Loading label="Looking for what it said" />}
      {kept.state === 'refused' && <RefusalNote refusal={kept.refusal} onRetry={kept.retry} />}
      {kept.state === 'ready' && <Said kept={kept.value} gate={gate} />}
    </div>
  );
}

interface KeepProps {
  readonly build: number;
  readonly asked: HistoryProps['asked'];
  readonly canKeep: boolean;
}

function Keep({ build, asked, canKeep }: KeepProps) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const keep = useAct((key, day: string) => api.forecast.keep({ key, on: day, build, ...asked }));
  return (
    <>
      <div className="forecast-choices not-printed">
        <DateField
          name="on"
          label="As it stands at the end of"
          value={on}
          onChange={setOn}
          today={today}
          max={today}
          required
        />
        <Button
          variant="filled"
          disabled={on === null || !canKeep || keep.busy}
          onClick={() => void keep.run(on ?? today)}
        >
          Keep this forecast
        </Button>
      </div>
      {!canKeep && <p className="forecast-soft">There is no forecast to keep yet.</p>}
      {keep.refusal !== null && <RefusalNote refusal={keep.refusal} />}
    </>
  );
}

export interface SaidRow {
  readonly seq: number;
  readonly on: string;
  readonly p10On: string;
  readonly p50On: string;
  readonly p80On: string;
  readonly p90On: string;
  readonly runs: number;
  readonly since: KeptForecast['since'];
}

/** The rows of one gate: the one asked for, or the first that was ever kept. */
function rowsOf(
  kept: readonly KeptForecast[],
  gate: string | null,
): { readonly name: string; readonly rows: readonly SaidRow[] } {
  const names = new Set(kept.flatMap(({ gates }) => gates.map(({ name }) => name)));
  const name = gate !== null && names.has(gate) ? gate : ([...names][0] ?? '');
  const rows = kept.flatMap(({ seq, on, runs, since, gates }) => {
    const found = gates.find((each) => each.name === name);
    return found === undefined ? [] : [{ ...found, seq, on, runs, since }];
  });
  return { name, rows };
}

const sinceWords = ({ since }: SaidRow): string =>
  since === null
    ? ''
    : `${counted(since.jobsDone, 'job', 'jobs')} done, ${counted(since.partsReceived, 'part', 'parts')} received`;

function Said({ kept, gate }: { readonly kept: readonly KeptForecast[]; readonly gate: string | null }) {
  const { name, rows } = rowsOf(kept, gate);
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) {
    return (
      <p>Nothing is kept yet. A forecast that is kept now and then shows whether the day comes nearer or runs away.</p>
    );
  }
  const title =
    rows.length === 1
      ? `On ${dayWords(first.on)} it said ${dayWords(first.p50On)} for ${name}`
      : `On ${dayWords(first.on)} it said ${dayWords(first.p50On)} for ${name}, on ${dayWords(last.on)} ${dayWords(last.p50On)}`;
  const columns: readonly Column<SaidRow>[] = [
    {
      id: 'on',
      title: 'Said on',
      rowHeader: true,
      cell: ({ on, seq }) => (
        <Link to="/journal" params={{ entry: seq }}>
          <DateText date={on} />
        </Link>
      ),
      sortBy: ({ on }) => on,
    },
    { id: 'p10', title: 'P10', figures: true, cell: ({ p10On }) => <DateText date={p10On} /> },
    { id: 'p50', title: 'P50', figures: true, cell: ({ p50On }) => <DateText date={p50On} /> },
    { id: 'p80', title: 'P80', figures: true, cell: ({ p80On }) => <DateText date={p80On} /> },
    { id: 'p90', title: 'P90', figures: true, cell: ({ p90On }) => <DateText date={p90On} /> },
    { id: 'since', title: 'Since the one before', cell: sinceWords },
    { id: 'runs', title: 'Runs', figures: true, cell: ({ runs }) => runs },
  ];
  return (
    <>
      {rows.length > 1 && (
        <ChartFrame
          title={title}
          unit={{ kind: 'count', name: 'day said' }}
          drawing={<HistoryDrawing rows={rows} label={title} />}
          table={
            <SimpleTable
              caption={title}
              captionHidden
              columns={columns.slice(0, 5)}
              rows={rows}
              rowKey={({ seq }) => String(seq)}
            />
          }
        />
      )}
      <SimpleTable
        caption={rows.length > 1 ? `What was kept of ${name}` : title}
        columns={columns}
        rows={rows.toReversed()}
        rowKey={({ seq }) => String(seq)}
      />
    </>
  );
}
