import { describe, expect, it } from 'vitest';
import { parseInstant } from '../../core/dates/instant.ts';
import type { ForecastTask } from '../../core/forecast/facts.ts';
import { wholeForecast } from '../../core/forecast/view.ts';
import { readWorkingTime } from '../../core/schedule/working-time.ts';
import { forecastWork, type WorkReport } from '../../renderer/screens/forecast/forecast-work.ts';

const nowMinute = parseInstant('2026-03-02T08:00');

const task: ForecastTask = {
  nowMinute,
  facts: {
    people: [
      {
        id: 'builder',
        name: 'the builder',
        time: readWorkingTime({ weekly: [{ weekday: 2, from: '18:30', to: '21:00' }], exceptions: [] }),
      },
    ],
    jobs: [
      {
        id: '1',
        name: 'Hone the bores',
        minutes: { kind: 'pert', low: 60, likely: 120, high: 600 },
        hands: true,
        after: [],
        arrivals: [],
      },
    ],
    arrivals: [],
    gates: [{ id: 'engine-in', name: 'engine-in', jobs: ['1'] }],
    coming: [],
    gaps: [],
    anything: true,
  },
};

/** A worker whose clock goes on by some milliseconds at each look, and whose turns are taken when told to. */
function openRoom(msALook = 15) {
  const reports: WorkReport[] = [];
  const turns: (() => void)[] = [];
  let now = 0;
  const hear = forecastWork({
    report: (report) => reports.push(report),
    later: (work) => turns.push(work),
    clock: () => {
      now += msALook;
      return now;
    },
  });
  const turn = (): boolean => {
    const next = turns.shift();
    next?.();
    return next !== undefined;
  };
  return { hear, reports, turn };
}

describe('the work of the forecast', () => {
  it('shows a first picture, then progress, and ends with what the program itself would say', () => {
    const { hear, reports, turn } = openRoom();
    hear({ kind: 'run', id: 7, task: structuredClone(task), runs: 900, seed: 4 });
    // The first portion already gives a picture.
    expect(reports).toHaveLength(1);
    expect(reports[0]).toMatchObject({ kind: 'running', id: 7 });
    while (turn());
    const last = reports.at(-1);
    expect(last).toMatchObject({ kind: 'done', id: 7, share: 1 });
    expect(reports.filter(({ kind }) => kind === 'done')).toHaveLength(1);
    const shares = reports.flatMap((report) => (report.kind === 'refused' ? [] : [report.share]));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    // Source: regression, the same seed says the same in the worker and in the program.
    expect(last).toMatchObject({ view: wholeForecast(task, { runs: 900, seed: 4 }) });
  });

  it('stops between two portions and keeps what was done', () => {
    const { hear, reports, turn } = openRoom();
    hear({ kind: 'run', id: 1, task, runs: 20_000, seed: 1 });
    hear({ kind: 'stop', id: 1 });
    while (turn());
    const last = reports.at(-1);
    expect(last?.kind).toBe('stopped');
    expect(last?.kind === 'stopped' && last.view.runs).toBeGreaterThan(0);
    expect(last?.kind === 'stopped' && last.view.runs).toBeLessThan(20_000);
  });

  it('leaves a run for the next one', () => {
    const { hear, reports, turn } = openRoom();
    hear({ kind: 'run', id: 1, task, runs: 20_000, seed: 1 });
    hear({ kind: 'run', id: 2, task, runs: 100, seed: 1 });
    while (turn());
    expect(reports.filter(({ id, kind }) => id === 1 && kind !== 'running')).toEqual([]);
    expect(reports.at(-1)).toMatchObject({ kind: 'done', id: 2, view: { runs: 100 } });
  });

  it('says what it refuses', () => {
    const { hear, reports } = openRoom();
    const facts = { ...task.facts, jobs: [{ ...(task.facts.jobs[0] as (typeof task.facts.jobs)[0]) }], gates: [] };
    hear({ kind: 'run', id: 3, task: { ...task, facts }, runs: 100, seed: 1 });
    expect(reports).toMatchObject([{ kind: 'refused', id: 3 }]);
  });
});
