/**
 * How far a build is: parts by line, quantity and value, and jobs by count and by work. Lines that were dropped or are
 * optional must not be handed in with the rest; optional ones are measured by a call of their own. A measure can fall,
 * when a need is added or a part is rejected.
 */
import { valueOfFirst } from '../money/line-value.ts';
import { type Unit, unitFamily } from '../units/quantity.ts';
import type { Share } from './share.ts';

export interface PartState {
  readonly unit: Unit;
  readonly needMilli: number;
  /** Received and not rejected, returned or lost. */
  readonly receivedMilli: number;
  /** Fitted or better. */
  readonly fittedMilli: number;
  readonly verifiedMilli: number;
  /** Current landed estimate of the whole line. */
  readonly valueMinor: number;
}

export const partStages = ['received', 'fitted', 'verified'] as const;
export type PartStage = (typeof partStages)[number];

export interface StageShares {
  /** Lines whose whole need has come this far. */
  readonly byLine: Share;
  /** In thousandths; null when the lines don't share one kind of unit and can't be added up. */
  readonly byQuantity: Share | null;
  /** In minor units. */
  readonly byValue: Share;
}

export type PartsProgress = Readonly<Record<PartStage, StageShares>>;

/** Progress of part lines at every stage. Units above need never count: eight bolts against six are six. */
export function partsProgress(lines: readonly PartState[]): PartsProgress {
  const needed = lines.filter((line) => line.needMilli > 0);
  const addable = new Set(needed.map((line) => unitFamily(line.unit))).size <= 1;
  const stage = (name: PartStage): StageShares => {
    const counted = needed.map((line) => countLine(line, name));
    return {
      byLine: { done: counted.filter((line) => line.complete).length, of: needed.length },
      byQuantity: addable
        ? { done: sum(counted.map((line) => line.milli)), of: sum(needed.map((line) => line.needMilli)) }
        : null,
      byValue: { done: sum(counted.map((line) => line.valueMinor)), of: sum(needed.map((line) => line.valueMinor)) },
    };
  };
  return { received: stage('received'), fitted: stage('fitted'), verified: stage('verified') };
}

/** How much of one line counts at a stage, in thousandths and in minor units. */
export function countLine(line: PartState, stage: PartStage): { milli: number; valueMinor: number; complete: boolean } {
  const reached = { received: line.receivedMilli, fitted: line.fittedMilli, verified: line.verifiedMilli }[stage];
  const milli = Math.max(0, Math.min(reached, line.needMilli));
  const complete = line.needMilli > 0 && milli === line.needMilli;
  return { milli, valueMinor: line.needMilli > 0 ? valueOfFirst(line.valueMinor, line.needMilli, milli) : 0, complete };
}

export interface JobState {
  readonly done: boolean;
  /** Current estimate of the whole job's work; 0 when nobody has guessed. */
  readonly workMinutes: number;
  /** Work earned on a job still open, by its rule of credit: 0 to `workMinutes`. */
  readonly earnedMinutes?: number;
}

/** Jobs done by count, and by weight of their work. */
export function jobsProgress(jobs: readonly JobState[]): { byCount: Share; byWork: Share } {
  const earned = jobs.map((job) =>
    job.done ? job.workMinutes : Math.max(0, Math.min(job.earnedMinutes ?? 0, job.workMinutes)),
  );
  return {
    byCount: { done: jobs.filter((job) => job.done).length, of: jobs.length },
    byWork: { done: sum(earned), of: sum(jobs.map((job) => job.workMinutes)) },
  };
}

/** Share of the forecast cost that has been recognised so far. */
export function spendShare(costMinor: number, forecastMinor: number): Share {
  return { done: costMinor, of: forecastMinor };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((before, number) => before + number, 0);
}
