/** When each item of a gate is cleared at best by one builder, and how much earlier the gate comes without it. */
import { dateOfMinute, minutesPerDay } from '../dates/instant.ts';
import { type BuilderJob, type PlacedJob, placeJobs } from '../schedule/one-builder.ts';
import { type WorkingTime, workEnds, workingMinutes } from '../schedule/working-time.ts';

export interface ClearItem {
  readonly key: string;
  readonly name: string;
  /** Minute of wall time from which work on it may begin. */
  readonly readyMinute: number;
  readonly minutes: number;
  readonly after?: readonly string[];
  /** As those of a builder's job. */
  readonly hands?: boolean;
  readonly oneSitting?: boolean;
  readonly lags?: BuilderJob['lags'];
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
  const gateMinute = items.length === 0 ? null : latestEnd(placed, now);
  const holding = holdingKeys(items, placed, time, now);
  const daysGained = new Map(items.map(({ key }) => [key, 0]));
  const gain = (key: string, without: number): void => {
    daysGained.set(key, Math.max(0, endDay(gateMinute ?? now, now) - endDay(without, now)));
  };
  if (holding.size > mostTried) {
    for (const [key, without] of endsWithout(items, placed, holding, time, now)) gain(key, without);
  } else {
    for (const key of holding)
      gain(
        key,
        latestEnd(
          place(
            items.filter((item) => item.key !== key),
            time,
            now,
          ),
          now,
        ),
      );
  }
  return { clearMinutes, gateMinute, daysGained };
}

/** Up to so many items are each left out in turn and the rest placed anew; more are reckoned in one pass. */
const mostTried = 120;

function latestEnd(placed: readonly PlacedJob[], now: number): number {
  let latest = now;
  for (const { finishMinute } of placed) latest = Math.max(latest, finishMinute);
  return latest;
}

/**
 * When everything ends without each item, in one pass: in minutes of work counted from now, item j forces the end to be
 * at least its beginning plus all work from j on, and leaving out an earlier item doesn't change that while leaving out
 * a later one takes its minutes off. Exact for items that nothing waits for; for others it says at most the gain.
 */
function endsWithout(
  items: readonly ClearItem[],
  placed: readonly PlacedJob[],
  holding: ReadonlySet<string>,
  time: WorkingTime,
  now: number,
): Map<string, number> {
  const byKey = new Map(items.map((item) => [item.key, item]));
  const minutesOf = (id: string): number => workOf(byKey.get(id));
  const work = placed.filter(({ id }) => minutesOf(id) > 0);
  const waits = placed.filter(({ id }) => minutesOf(id) === 0);
  // Work of the last unbroken stretch only: what came before ended before the stretch began.
  const stretch = work.slice(work.findIndex(({ id }) => holding.has(id)));
  const start = stretch[0]?.firstMinute ?? now;
  let rest = stretch.reduce((sum, { id }) => sum + minutesOf(id), 0);
  const counted = new Map<number, number>();
  const untilReady = (ready: number): number => {
    const known = counted.get(ready) ?? workingMinutes(time, start, ready);
    counted.set(ready, known);
    return known;
  };
  const forced = stretch.map(({ id }) => {
    const ready = byKey.get(id)?.readyMinute ?? now;
    const end = (ready <= start ? 0 : untilReady(ready)) + rest;
    rest -= minutesOf(id);
    return end;
  });
  const later: number[] = [];
  for (let index = forced.length - 1, most = 0; index >= 0; index -= 1) {
    later[index] = most;
    most = Math.max(most, forced[index] ?? 0);
  }
  const ends = new Map<string, number>();
  let earlier = 0;
  const lastWait = latestEnd(waits, now);
  const lastWaitOf = waits.find(({ finishMinute }) => finishMinute === lastWait)?.id;
  const secondWait = latestEnd(
    waits.filter(({ id }) => id !== lastWaitOf),
    now,
  );
  const lengths = stretch.map(({ id }, index) => {
    const length = Math.max(earlier - minutesOf(id), later[index] ?? 0, 0);
    earlier = Math.max(earlier, forced[index] ?? 0);
    return length;
  });
  const finishes = workEnds(time, start, lengths);
  stretch.forEach(({ id }, index) => {
    const length = lengths[index] ?? 0;
    const end = length === 0 ? now : (finishes.get(length) ?? now);
    if (holding.has(id)) ends.set(id, Math.max(end, lastWait, now));
  });
  const workEnd = latestEnd(work, now);
  for (const { id } of waits) {
    if (holding.has(id)) ends.set(id, Math.max(workEnd, id === lastWaitOf ? secondWait : lastWait));
  }
  return ends;
}

/** Minutes that an item takes of the builder's hands. */
const workOf = (item: ClearItem | undefined): number => (item === undefined || item.hands === false ? 0 : item.minutes);

/**
 * The only items that can move the gate: the last stretch of work without a pause, and whatever it waits for. All of
 * that stretch is ready no earlier than the stretch begins, so it ends when it does whichever other item is cleared.
 */
function holdingKeys(
  items: readonly ClearItem[],
  placed: readonly PlacedJob[],
  time: WorkingTime,
  now: number,
): Set<string> {
  const byKey = new Map(items.map((item) => [item.key, item]));
  const holding = new Set<string>();
  const add = (key: string): void => {
    const item = byKey.get(key);
    if (item === undefined || holding.has(key)) return;
    holding.add(key);
    for (const earlier of item.after ?? []) add(earlier);
  };
  const gateMinute = latestEnd(placed, now);
  const work = placed.filter((one) => workOf(byKey.get(one.id)) > 0);
  const last = placed.find((one) => one.finishMinute === gateMinute);
  if (last !== undefined) add(last.id);
  if (items.some(({ hands, lags }) => hands === false || (lags !== undefined && lags.length > 0))) {
    // Behind a wait, the stretch of work before it moves the gate as well.
    const placeOf = new Map(work.map(({ id }, at) => [id, at]));
    for (const key of holding) {
      const at = placeOf.get(key) ?? 0;
      const [before, current] = [work[at - 1], work[at]];
      if (before === undefined || current === undefined) continue;
      if (workingMinutes(time, before.finishMinute, current.firstMinute) === 0) add(before.id);
    }
    return holding;
  }
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
  const jobs = items.map(({ key, after, lags, ...own }) => ({
    ...own,
    id: key,
    ...(lags === undefined ? {} : { lags: lags.filter((lag) => keys.has(lag.after)) }),
    after: (after ?? []).filter((earlier) => keys.has(earlier)),
  }));
  return placeJobs(jobs, time, now);
}

/** Day number of an end; one at midnight belongs to the day before, but none to a day before now. */
function endDay(minute: number, now: number): number {
  return Math.floor(Math.max(now, minute - 1) / minutesPerDay);
}
