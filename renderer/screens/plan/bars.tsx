import { Button } from '@mantine/core';
import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import type { BarsView, PlanBar } from '../../../core/contract/plan.ts';
import { addDays } from '../../../core/dates/calendar-date.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { usePreferences } from '../../app/preferences.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { KeyHints, Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { BarForm } from './bar-form.tsx';
import { BarsDrawing, DrawingKey, draggedMinutes, headHeight } from './bars-drawing.tsx';
import { type BarsShown, rowsOf } from './bars-rows.ts';
import { placeOf, scaleOf, spanOf, type Zoom } from './bars-scale.ts';
import { BarsTable } from './bars-table.tsx';
import { barSentence } from './bars-words.ts';
import type { Reading } from './reading.ts';
import type { Drag } from './use-bar-drag.ts';
import './bars.css';

/** The plan as bars over the calendar, with the same in a table. */
export function Bars({ reading }: { readonly reading: Reading }) {
  const bars = useRead(['plan', reading.build, reading.asOf ?? null, 'bars'], () => api.plan.bars(reading));
  return (
    <ReadView read={bars} label="Working the plan out over the calendar">
      {(view) =>
        view.bars.length === 0 ? (
          <Empty>The jobs of the build stand here over the days, once there are some.</Empty>
        ) : (
          <BarsOfPlan view={view} build={reading.build} />
        )
      }
    </ReadView>
  );
}

/** What an arrow does to a bar: the day that it is not to begin before, a day on or back. Today or sooner means no such day. */
function movedDay(bar: PlanBar, days: number, today: string): string | null {
  const from = bar.startOn === null || bar.startOn < today ? today : bar.startOn;
  const day = addDays(from, days);
  return day <= today ? null : day;
}

function BarsOfPlan({ view, build }: { readonly view: BarsView; readonly build: number }) {
  const canAct = useCanAct();
  const locale = useLocale();
  const { today } = useWorkspace();
  const bench = usePreferences().density === 'bench';
  const [zoom, setZoom] = useState<Zoom>('weeks');
  const [shown, setShown] = useState<BarsShown>('open');
  const [chosen, setChosen] = useState<number | null>(null);
  const [typing, setTyping] = useState<PlanBar | null>(null);
  const list = useRef<HTMLDivElement>(null);
  const scroller = useRef<HTMLElement>(null);
  const rows = useMemo(() => rowsOf(view, shown), [view, shown]);
  const bars = useMemo(() => rows.flatMap((row) => (row.kind === 'bar' ? [row.bar] : [])), [rows]);
  const scale = useMemo(() => scaleOf(view, bars, zoom), [view, bars, zoom]);
  const todayAt = placeOf(scale, view.today);
  // What is to come is in view first; what is done lies to the left.
  useEffect(() => {
    scroller.current?.scrollTo?.({ left: Math.max(0, todayAt - 120) });
  }, [todayAt]);
  const rowHeight = bench ? 60 : 32;
  const change = useAct((key, { bar, values }: { readonly bar: PlanBar; readonly values: Record<string, unknown> }) =>
    api.records.save({ key, on: today, kind: 'job', build, id: bar.id, revision: bar.revision, values }),
  );
  const move = (bar: PlanBar, days: number) => {
    const notBefore = movedDay(bar, days, today);
    if (notBefore !== bar.notBefore) void change.run({ bar, values: { notBefore } });
  };
  const drop = ({ bar, part, by }: Drag) => {
    setChosen(bar.id);
    const span = spanOf(scale, bar);
    if (part === 'bar') move(bar, Math.round(by / scale.perDay));
    else if (span !== null && bar.minutesGuess !== null) {
      const minutesGuess = draggedMinutes(bar.minutesGuess, span.width, by);
      const { minutesLow, minutesHigh } = bar;
      // The guess stays between its bounds: a bound that it passes moves with it.
      const bounds = {
        ...(minutesLow !== null && minutesLow > minutesGuess ? { minutesLow: minutesGuess } : {}),
        ...(minutesHigh !== null && minutesHigh < minutesGuess ? { minutesHigh: minutesGuess } : {}),
      };
      if (minutesGuess !== bar.minutesGuess) void change.run({ bar, values: { minutesGuess, ...bounds } });
    }
  };
  const open = (bar: PlanBar) => {
    setChosen(bar.id);
    if (canAct && bar.state !== 'done') setTyping(bar);
  };
  const at = Math.max(
    0,
    bars.findIndex(({ id }) => id === chosen),
  );
  const pressed = (event: KeyboardEvent, bar: PlanBar) => {
    const step = { ArrowDown: 1, ArrowUp: -1, Home: -bars.length, End: bars.length }[event.key];
    if (event.altKey && (event.key === 'ArrowRight' || event.key === 'ArrowLeft')) {
      event.preventDefault();
      if (canAct && bar.state !== 'done' && !change.busy) move(bar, event.key === 'ArrowRight' ? 1 : -1);
    } else if (step !== undefined && !event.altKey) {
      event.preventDefault();
      const next = Math.min(bars.length - 1, Math.max(0, bars.indexOf(bar) + step));
      list.current?.querySelectorAll<HTMLElement>('button')[next]?.focus();
    }
  };
  return (
    <div className="bars">
      <p className="bars-answer">{view.answer}</p>
      <Toolbar label="Bars">
        <Button aria-pressed={zoom === 'weeks'} onClick={() => setZoom('weeks')}>
          Weeks
        </Button>
        <Button aria-pressed={zoom === 'months'} onClick={() => setZoom('months')}>
          Months
        </Button>
        <Button aria-pressed={shown === 'all'} onClick={() => setShown(shown === 'all' ? 'open' : 'all')}>
          Done jobs too
        </Button>
      </Toolbar>
      {change.refusal !== null && <RefusalNote refusal={change.refusal} />}
      {bars.length === 0 ? (
        <p>Every job is done.</p>
      ) : (
        <>
          <DrawingKey />
          {canAct && (
            <KeyHints
              hints={[
                { keys: '↑ ↓', does: 'goes from job to job' },
                { keys: 'Enter', does: 'types its first day and hours' },
                { keys: 'Alt+← Alt+→', does: 'moves it by a day' },
              ]}
            />
          )}
          <div
            className="bars-frame"
            style={{ '--bars-row': `${rowHeight}px`, '--bars-head': `${headHeight}px` } as object}
          >
            <div className="bars-names" ref={list}>
              {rows.map((row) =>
                row.kind === 'phase' ? (
                  <h2 key={row.key} className="bars-phase">
                    {row.name}
                  </h2>
                ) : (
                  <button
                    key={row.key}
                    type="button"
                    className="bars-name"
                    title={row.bar.title}
                    data-critical={row.bar.critical || undefined}
                    tabIndex={bars[at]?.id === row.bar.id ? 0 : -1}
                    aria-label={`${row.bar.title}: ${barSentence(row.bar, locale)}`}
                    onFocus={() => setChosen(row.bar.id)}
                    onKeyDown={(event) => pressed(event, row.bar)}
                    onClick={() => open(row.bar)}
                  >
                    {row.bar.title}
                  </button>
                ),
              )}
            </div>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a place that scrolls must be reachable by keyboard */}
            <section className="bars-scroll" aria-label="Bars over the days" tabIndex={0} ref={scroller}>
              <BarsDrawing
                view={view}
                rows={rows}
                scale={scale}
                zoom={zoom}
                rowHeight={rowHeight}
                chosen={chosen}
                canAct={canAct && !change.busy}
                onDrop={drop}
                onOpen={open}
              />
            </section>
          </div>
        </>
      )}
      {view.chain.length > 0 && (
        <section aria-label={`What holds ${view.gate.name}`}>
          <h2>What holds {view.gate.name}</h2>
          <ol className="bars-chain">
            {view.chain.map(({ job, says }) => (
              <li key={`${job} ${says}`}>{says}</li>
            ))}
          </ol>
        </section>
      )}
      {bars.length > 0 && <BarsTable bars={bars} {...(canAct ? { onOpen: open } : {})} />}
      <section aria-label="How the plan is made">
        <h2>How the plan is made</h2>
        <p className="bars-rule">{view.rule}</p>
        {view.assumes.map((text) => (
          <p key={text} className="bars-rule">
            {text}
          </p>
        ))}
      </section>
      {typing !== null && <BarForm bar={typing} build={build} onClose={() => setTyping(null)} />}
    </div>
  );
}
