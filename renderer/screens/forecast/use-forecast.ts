import { useCallback, useEffect, useRef, useState } from 'react';
import type { ForecastTask } from '../../../core/forecast/facts.ts';
import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import type { WorkReport, WorkRequest } from './forecast-work.ts';

export interface ForecastState {
  readonly kind: 'waiting' | WorkReport['kind'];
  /** What the runs so far say; while a new run is beginning, what the one before said. */
  readonly view: ForecastAnswer | null;
  /** What the last run that ended said: long tables are drawn from this, not anew with every picture. */
  readonly ended: ForecastAnswer | null;
  /** Share of the whole done, days won included. */
  readonly share: number;
  readonly refused: string;
}

const nothing: ForecastState = { kind: 'waiting', view: null, ended: null, share: 0, refused: '' };

/** Runs the forecast of a task in a worker, anew whenever the task, the runs or the seed change. */
export function useForecast(task: ForecastTask | null, runs: number, seed: number) {
  const worker = useRef<Worker | null>(null);
  const id = useRef(0);
  const [state, setState] = useState(nothing);

  useEffect(() => {
    const made = new Worker(new URL('./forecast-worker.ts', import.meta.url), { type: 'module' });
    const failed = () =>
      setState((now) => ({ ...now, kind: 'refused', refused: 'The forecast could not be started in this window.' }));
    made.addEventListener('message', ({ data }: MessageEvent<WorkReport>) => {
      if (data.id !== id.current) return;
      if (data.kind === 'refused') setState((now) => ({ ...now, kind: 'refused', refused: data.message }));
      else {
        const { kind, view, share } = data;
        setState((now) => ({ kind, view, ended: kind === 'running' ? now.ended : view, share, refused: '' }));
      }
    });
    made.addEventListener('error', failed);
    worker.current = made;
    return () => {
      made.terminate();
      worker.current = null;
    };
  }, []);

  const send = useCallback((request: WorkRequest) => worker.current?.postMessage(request), []);
  const run = useCallback(() => {
    if (task === null) return;
    id.current += 1;
    setState((now) => ({ ...now, kind: 'running', share: 0, refused: '' }));
    send({ kind: 'run', id: id.current, task, runs, seed });
  }, [task, runs, seed, send]);
  useEffect(run, [run]);
  const stop = useCallback(() => send({ kind: 'stop', id: id.current }), [send]);
  return { state, run, stop };
}
