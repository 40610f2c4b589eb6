/** Progress over time, folded from what changed on each day. */
import { compareDates } from '../dates/calendar-date.ts';
import type { Unit } from '../units/quantity.ts';
import { countLine, type PartStage, type PartState, partStages } from './progress.ts';
import type { Share } from './share.ts';

/** What changed on one part line on one day; quantities and value by how much they rose (or fell, below 0). */
export interface PartDelta {
  readonly on: string;
  readonly lineId: number;
  readonly unit: Unit;
  readonly needMilli?: number;
  readonly receivedMilli?: number;
  readonly fittedMilli?: number;
  readonly verifiedMilli?: number;
  readonly valueMinor?: number;
}

export type ProgressPoint = { readonly on: string } & Readonly<Record<PartStage, Share>>;

/** What a series measures: complete lines, thousandths of a unit, or minor units of value. */
export type ProgressMeasure = 'line' | 'quantity' | 'value';

/**
 * One point for each day on which anything changed, in order, holding the state at the end of that day. The deltas may
 * come in any order. Falls are kept: a rejected part or an added need lowers the curve.
 */
export function progressSeries(deltas: readonly PartDelta[], measure: ProgressMeasure): ProgressPoint[] {
  const lines = new Map<number, PartState>();
  const done = { received: 0, fitted: 0, verified: 0 };
  let of = 0;
  const points: ProgressPoint[] = [];

  const count = (line: PartState, sign: 1 | -1): void => {
    if (line.needMilli <= 0) return;
    of += sign * { line: 1, quantity: line.needMilli, value: line.valueMinor }[measure];
    for (const stage of partStages) {
      const { milli, valueMinor, complete } = countLine(line, stage);
      done[stage] += sign * { line: complete ? 1 : 0, quantity: milli, value: valueMinor }[measure];
    }
  };

  for (const delta of [...deltas].sort((a, b) => compareDates(a.on, b.on))) {
    const before = lines.get(delta.lineId) ?? emptyLine(delta.unit);
    const after = applied(before, delta);
    count(before, -1);
    count(after, 1);
    lines.set(delta.lineId, after);
    const point = {
      on: delta.on,
      received: { done: done.received, of },
      fitted: { done: done.fitted, of },
      verified: { done: done.verified, of },
    };
    if (points.at(-1)?.on === delta.on) points.pop();
    points.push(point);
  }
  return points;
}

function emptyLine(unit: Unit): PartState {
  return { unit, needMilli: 0, receivedMilli: 0, fittedMilli: 0, verifiedMilli: 0, valueMinor: 0 };
}

function applied(line: PartState, delta: PartDelta): PartState {
  return {
    unit: line.unit,
    needMilli: line.needMilli + (delta.needMilli ?? 0),
    receivedMilli: line.receivedMilli + (delta.receivedMilli ?? 0),
    fittedMilli: line.fittedMilli + (delta.fittedMilli ?? 0),
    verifiedMilli: line.verifiedMilli + (delta.verifiedMilli ?? 0),
    valueMinor: line.valueMinor + (delta.valueMinor ?? 0),
  };
}

/** What changed on one job on one day: 1 or -1 where it was planned or dropped, done or reopened, and its minutes. */
export interface JobDelta {
  readonly on: string;
  readonly jobId: number;
  readonly planned?: number;
  readonly done?: number;
  readonly workMinutes?: number;
}

export interface JobPoint {
  readonly on: string;
  readonly byCount: Share;
  readonly byWork: Share;
}

/** Jobs over time: one point for each day on which anything changed, holding the state at the end of that day. */
export function jobSeries(deltas: readonly JobDelta[]): JobPoint[] {
  const jobs = new Map<number, { planned: number; done: number; workMinutes: number }>();
  const points: JobPoint[] = [];
  const count = { done: 0, of: 0 };
  const work = { done: 0, of: 0 };
  for (const delta of [...deltas].sort((a, b) => compareDates(a.on, b.on))) {
    const before = jobs.get(delta.jobId) ?? { planned: 0, done: 0, workMinutes: 0 };
    const after = {
      planned: before.planned + (delta.planned ?? 0),
      done: before.done + (delta.done ?? 0),
      workMinutes: before.workMinutes + (delta.workMinutes ?? 0),
    };
    for (const [job, sign] of [
      [before, -1],
      [after, 1],
    ] as const) {
      if (job.planned <= 0) continue;
      count.of += sign;
      work.of += sign * job.workMinutes;
      if (job.done <= 0) continue;
      count.done += sign;
      work.done += sign * job.workMinutes;
    }
    jobs.set(delta.jobId, after);
    if (points.at(-1)?.on === delta.on) points.pop();
    points.push({ on: delta.on, byCount: { ...count }, byWork: { ...work } });
  }
  return points;
}
