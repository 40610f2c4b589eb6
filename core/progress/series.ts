/** Progress over time, folded from what changed on each day. */
import { compareDates } from '../dates/calendar-date.ts';
import type { Unit } from '../units/quantity.ts';
import { countLine, type PartStage, type PartState, partStages } from './progress.ts';
import type { Share } from './share.ts';

/** What changed on one part line on one day; quantities and value by how much they rose (or fell, below 0). */
export interface PartDelta {
  readonly on: string;
  readonly lineId: string;
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
  const lines = new Map<string, PartState>();
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
