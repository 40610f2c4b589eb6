/** How far a line is made: the steps ticked off at the bench, copy by copy. */
import type { MakingStep } from './making.ts';

/** One tick, or a tick taken away again, as it was written down. */
export interface StepEntry {
  readonly step: string;
  /** From 1. */
  readonly copy: number;
  readonly done: boolean;
  readonly by: string;
  readonly note: string;
  readonly on: string;
  /** Cut length and hose that the line asked for then. */
  readonly cutMm: number | null;
  readonly hose: string;
  /** Keys of the things that went into the copy with this step and stood on no parts list then. */
  readonly offList: readonly string[];
}

export interface Ticked {
  readonly on: string;
  readonly by: string;
  readonly note: string;
}

export interface UsedUp {
  readonly copy: number;
  readonly offList: ReadonlySet<string>;
}

export interface Made {
  /** Each step with its copies in order; null = open. */
  readonly making: readonly (MakingStep & { readonly done: readonly (Ticked | null)[] })[];
  readonly stepsDone: number;
  readonly stepsTotal: number;
  /** Copies with an open step. */
  readonly copiesOpen: number;
  /** Work that doesn't count any more, one sentence each. */
  readonly outdated: readonly string[];
  /** Copies that are cut already, and those that are finished, with what went into them from outside the list. */
  readonly cut: readonly UsedUp[];
  readonly finished: readonly UsedUp[];
  /** The first step that is open, of the first copy that isn't finished. */
  readonly next: MakingStep | undefined;
}

export interface MakingAsked {
  readonly steps: readonly MakingStep[];
  readonly copies: number;
  readonly cutMm: number;
  readonly toleranceMm: number;
  readonly hose: string;
}

/** Whether a line stands to be made at the bench: it can be taken off, and a step of a copy is open. */
export const isToMake = ({ stepsDone, stepsTotal }: Pick<Made, 'stepsDone' | 'stepsTotal'>): boolean =>
  stepsDone < stepsTotal;

/** Steps that the pressure check waits for: those that put the ends on. */
export const endStepsOf = (steps: readonly MakingStep[]): readonly MakingStep[] =>
  steps.filter(({ id }) => /^(?:socket|nipple)/.test(id));

/** Why work on a hose doesn't count any more; undefined when it does. */
function outdatedBy(entry: StepEntry, { cutMm, toleranceMm, hose }: MakingAsked): string | undefined {
  if (entry.hose !== '' && entry.hose !== hose) {
    return `Copy ${entry.copy} was made of ${entry.hose}, and ${hose} is asked for now: make it anew.`;
  }
  if (entry.cutMm !== null && Math.abs(entry.cutMm - cutMm) > toleranceMm) {
    return `Copy ${entry.copy} was made for a cut of ${entry.cutMm} mm, and ${cutMm} mm is asked for now: cut it anew.`;
  }
  return undefined;
}

/**
 * Folds ticks in the order in which they were written. Work on a hose that was cut to another length than the line asks
 * for now, beyond the tolerance, or out of another hose, counts as open. A step opened again opens the pressure check
 * too: what was tested was taken apart. Steps that the line doesn't have any more don't count.
 */
export function madeOf(asked: MakingAsked, entries: readonly StepEntry[]): Made {
  const { steps, copies } = asked;
  const standing = new Map<string, StepEntry>();
  const outdated = new Set<string>();
  for (const entry of entries) {
    if (entry.copy > copies || !steps.some(({ id }) => id === entry.step)) continue;
    const key = `${entry.copy} ${entry.step}`;
    if (entry.done) standing.set(key, entry);
    else {
      standing.delete(key);
      if (entry.step !== 'label') standing.delete(`${entry.copy} pressure`);
    }
  }
  for (const [key, entry] of standing) {
    const why = outdatedBy(entry, asked);
    if (why === undefined) continue;
    standing.delete(key);
    outdated.add(why);
  }
  const numbers = Array.from({ length: copies }, (_, at) => at + 1);
  const isOpen = (copy: number, { id }: MakingStep): boolean => !standing.has(`${copy} ${id}`);
  const unfinished = numbers.filter((copy) => steps.some((step) => isOpen(copy, step)));
  const [first] = unfinished;
  const usedUp = (some: readonly number[]): UsedUp[] =>
    some.map((copy) => ({
      copy,
      offList: new Set(steps.flatMap(({ id }) => standing.get(`${copy} ${id}`)?.offList ?? [])),
    }));
  return {
    making: steps.map((step) => ({
      ...step,
      done: numbers.map((copy) => {
        const entry = standing.get(`${copy} ${step.id}`);
        return entry === undefined ? null : { on: entry.on, by: entry.by, note: entry.note };
      }),
    })),
    stepsDone: standing.size,
    stepsTotal: steps.length * copies,
    copiesOpen: unfinished.length,
    outdated: [...outdated],
    cut: usedUp(numbers.filter((copy) => standing.has(`${copy} cut`))),
    finished: usedUp(numbers.filter((copy) => !unfinished.includes(copy))),
    next: first === undefined ? undefined : steps.find((step) => isOpen(first, step)),
  };
}
