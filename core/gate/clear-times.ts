/** When each item of a gate is cleared at best by one builder, and how much earlier the gate comes without it. */
import { dateOfMinute, minutesPerDay } from '../dates/instant.ts';
import { type PlacedJob, placeJobs } from '../schedule/one-builder.ts';
import { type WorkingTime, workingMinutes } from '../schedule/working-time.ts';

export interface ClearItem {
  readonly key: string;
  readonly name: string;
  /** Minute of wall time from which work on it may begin. */
  readonly readyMinute: number;
  readonly minutes: number;
  readonly after?: readonly string[];
}

export interface ClearTimes {
  readonly clearMinutes: ReadonlyMap<string, number>;
  /** The latest of them; null when there are no items. */
  readonly gateMinute: number | null;
  /** Whole calendar days by which the gate comes earlier if this item alone were cleared now. */
  readonly daysGained: ReadonlyMap<string, number>;
}

/**
 * Clears the items one after another by ready time, then name. Links to items that aren't listed are ignored, because
 * what isn't listed is cleared.
 * @throws Refusal `bad-input` when items wait for each other or there is no working time.
 */
export function clearTimes(items: readonly ClearItem[], time: WorkingTime, now: number): ClearTimes {
  const placed = place(items, time, now);
  const clearMinutes = new Map(placed.map((one) => [one.id, one.finishMinute]));
  const gateMinute = items.length === 0 ? null : Math.max(...clearMinutes.values());
  const holding = holdingKeys(items, placed, time);
  const daysGained = new Map(items.map(({ key }) => [key, 0]));
  for (const key of holding) {
    const others = items.filter((item) => item.key !== key);
    const without = Math.max(now, ...place(others, time, now).map((one) => one.finishMinute));
    daysGained.set(key, Math.max(0, endDay(gateMinute ?? now, now) - endDay(without, now)));
  }
  return { clearMinutes, gateMinute, daysGained };
}

/**
 * The only items that can move the gate: the last stretch of work without a pause, and whatever it waits for. All of
 * that stretch is ready no earlier than the stretch begins, so it ends when it does whichever other item is cleared.
 */
function holdingKeys(items: readonly ClearItem[], placed: readonly PlacedJob[], time: WorkingTime): Set<string> {
  const byKey = new Map(items.map((item) => [item.key, item]));
  const holding = new Set<string>();
  const add = (key: string): void => {
    const item = byKey.get(key);
    if (item === undefined || holding.has(key)) return;
    holding.add(key);
    for (const earlier of item.after ?? []) add(earlier);
  };
  const gateMinute = Math.max(...placed.map((one) => one.finishMinute));
  const work = placed.filter((one) => (byKey.get(one.id)?.minutes ?? 0) > 0);
  const last = placed.find((one) => one.finishMinute === gateMinute);
  if (last !== undefined) add(last.id);
  // An item that takes no work may end with the work it waits for; then that work holds the gate.
  let index = work.findIndex((one) => holding.has(one.id) && one.finishMinute === gateMinute);
  for (; index >= 0; index -= 1) {
    const [before, current] = [work[index - 1], work[index]];
    if (current !== undefined) add(current.id);
    if (before === undefined || current === undefined) break;
    if (workingMinutes(time, before.finishMinute, current.firstMinute) > 0) break;
  }
  return holding;
}

/** The day a piece of work ends on; work that ends at midnight belongs to the day before. */
export function clearDay(minute: number, worked: boolean): string {
  return dateOfMinute(worked ? minute - 1 : minute);
}

function place(items: readonly ClearItem[], time: WorkingTime, now: number): PlacedJob[] {
  const keys = new Set(items.map((item) => item.key));
  const jobs = items.map(({ key, name, readyMinute, minutes, after }) => ({
    id: key,
    name,
    readyMinute,
    minutes,
    after: (after ?? []).filter((earlier) => keys.has(earlier)),
  }));
  return placeJobs(jobs, time, now);
}

/** Day number of an end; one at midnight belongs to the day before, but none to a day before now. */
function endDay(minute: number, now: number): number {
  return Math.floor(Math.max(now, minute - 1) / minutesPerDay);
}
