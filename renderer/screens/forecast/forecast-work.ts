/** What the Forecast screen and its worker say to each other, and the work itself: in portions, so that it can be stopped. */
import type { ForecastTask } from '../../../core/forecast/facts.ts';
import { type ForecastAnswer, forecastRun } from '../../../core/forecast/view.ts';
import { Refusal } from '../../../core/refusal.ts';

/** Told to the worker. A new run puts an end to the one before; `id` tells the answers of runs apart. */
export type WorkRequest =
  | {
      readonly kind: 'run';
      readonly id: number;
      readonly task: ForecastTask;
      readonly runs: number;
      readonly seed: number;
    }
  | { readonly kind: 'stop'; readonly id: number };

/** Told by the worker. `share` of the whole is done; the view holds what the runs so far say. */
export type WorkReport =
  | {
      readonly kind: 'running' | 'stopped' | 'done';
      readonly id: number;
      readonly share: number;
      readonly view: ForecastAnswer;
    }
  | { readonly kind: 'refused'; readonly id: number; readonly message: string; readonly accepted: string };

export interface WorkRoom {
  readonly report: (report: WorkReport) => void;
  /** Does this once messages that came meanwhile were heard. */
  readonly later: (work: () => void) => void;
  /** Milliseconds, for portions of even length. */
  readonly clock: () => number;
}

/** Trials between two looks at the clock, and milliseconds between two looks at the messages. */
const trialsAtOnce = 20;
const portionMs = 40;
/** Milliseconds until the first picture, and between pictures. */
const firstPictureMs = 40;
const pictureMs = 200;

/** Hears requests and works through them. */
export function forecastWork({ report, later, clock }: WorkRoom): (request: WorkRequest) => void {
  let current: number | null = null;
  let stopping = false;

  const start = ({ id, task, runs, seed }: Extract<WorkRequest, { kind: 'run' }>): void => {
    const began = clock();
    let shown = began - pictureMs + firstPictureMs;
    const run = forecastRun(task, { runs, seed });
    let any = false;
    const portion = (): void => {
      if (current !== id) return;
      if (stopping && any) {
        current = null;
        report({ kind: 'stopped', id, share: run.progress(), view: run.view() });
        return;
      }
      const from = clock();
      let more = true;
      while (more && clock() - from < portionMs) more = run.advance(trialsAtOnce);
      any = true;
      if (!more) {
        current = null;
        report({ kind: 'done', id, share: 1, view: run.view() });
        return;
      }
      if (clock() - shown >= pictureMs) {
        shown = clock();
        report({ kind: 'running', id, share: run.progress(), view: run.view() });
      }
      later(guarded(id, portion));
    };
    portion();
  };

  const guarded = (id: number, work: () => void) => (): void => {
    try {
      work();
    } catch (error) {
      current = null;
      const refusal = error instanceof Refusal ? error : null;
      const message = refusal?.message ?? 'Something went wrong in the forecast. Nothing was changed.';
      report({ kind: 'refused', id, message, accepted: refusal?.accepted ?? '' });
    }
  };

  return (request) => {
    if (request.kind === 'stop') {
      if (current === request.id) stopping = true;
      return;
    }
    current = request.id;
    stopping = false;
    guarded(request.id, () => start(request))();
  };
}
