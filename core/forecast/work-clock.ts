/**
 * One person's working time laid out as a count of working minutes from now, both ways, in a few steps: a forecast asks
 * for it millions of times. The windows themselves come from the working calendar.
 */
import { minutesPerDay } from '../dates/instant.ts';
import { type WorkingTime, windowsFrom } from '../schedule/working-time.ts';

export interface WorkClock {
  /** Working minutes between now and an instant. */
  workAt(minute: number): number;
  /** The instant at which work that begins after `work` minutes begins: in the next window when one has just ended. */
  startOf(work: number): number;
  /** The instant at which `work` minutes are done: at the end of a window when they fill it. */
  finishOf(work: number): number;
  /**
   * The end of `work[at]` minutes and the next start after it, as `finishOf` and `startOf` say, written into `finish[at]`
   * and `start[at]`: in lists, so that a trial hands no numbers over that would be boxed.
   */
  settle(at: number, work: Float64Array, finish: Float64Array, start: Float64Array): void;
  /** Where a sitting of this length fits, in working minutes, from `work` on; longer than every window: it is split. */
  sittingFrom(work: number, length: number): number;
  /** A week's working minutes, averaged over the next year. */
  readonly perWeek: number;
  /** No working time is known at or after this instant; whatever would end later is given this instant. */
  readonly endMinute: number;
}

const workCell = 32;

/** Lays out the calendar from `now` for as far ahead as work is looked for. */
export function workClock(time: WorkingTime, now: number): WorkClock {
  const starts: number[] = [];
  const sums: number[] = [0];
  for (const window of windowsFrom(time, now)) {
    const from = Math.max(window.from, now);
    starts.push(from);
    sums.push((sums.at(-1) as number) + window.to - from);
  }
  const windows = starts.length;
  const total = sums[windows] as number;
  const start = Float64Array.from(starts);
  const sum = Float64Array.from(sums);
  const endMinute = windows === 0 ? now : (start[windows - 1] as number) + total - (sum[windows - 1] as number);
  const longest = Float64Array.from(starts, (_, index) => (sum[index + 1] as number) - (sum[index] as number)).reduce(
    (most, length) => Math.max(most, length),
    0,
  );

  // The window in which each 32nd working minute, and each day, begins.
  const byWork = new Int32Array(Math.floor(total / workCell) + 2);
  for (let cell = 0, window = 0; cell < byWork.length; cell += 1) {
    while (window < windows - 1 && (sum[window + 1] as number) <= cell * workCell) window += 1;
    byWork[cell] = window;
  }
  const firstDay = Math.floor(now / minutesPerDay);
  const byDay = new Int32Array(Math.max(1, Math.floor(endMinute / minutesPerDay) - firstDay + 2));
  for (let day = 0, window = 0; day < byDay.length; day += 1) {
    while (window < windows - 1 && (start[window + 1] as number) <= (firstDay + day) * minutesPerDay) window += 1;
    byDay[day] = window;
  }

  return {
    endMinute,
    perWeek: weekOf(start, sum, now),
    workAt(minute) {
      if (minute <= now || windows === 0) return 0;
      if (minute >= endMinute) return total;
      let window = byDay[Math.floor(minute / minutesPerDay) - firstDay] as number;
      while (window < windows - 1 && (start[window + 1] as number) <= minute) window += 1;
      const inside = (sum[window] as number) + minute - (start[window] as number);
      return Math.max(sum[window] as number, Math.min(inside, sum[window + 1] as number));
    },
    startOf(work) {
      if (work >= total) return endMinute;
      let window = byWork[Math.floor(work / workCell)] as number;
      while ((sum[window + 1] as number) <= work) window += 1;
      return (start[window] as number) + work - (sum[window] as number);
    },
    finishOf(work) {
      if (work >= total) return endMinute;
      let window = byWork[Math.floor(work / workCell)] as number;
      while ((sum[window + 1] as number) < work) window += 1;
      // The table may already point past a window that this work exactly fills.
      if (window > 0 && work <= (sum[window] as number)) window -= 1;
      return (start[window] as number) + work - (sum[window] as number);
    },
    settle(at, work, finish, starts) {
      const done = work[at] as number;
      if (done >= total) {
        finish[at] = endMinute;
        starts[at] = endMinute;
        return;
      }
      let window = byWork[Math.floor(done / workCell)] as number;
      while ((sum[window + 1] as number) <= done) window += 1;
      const inside = done - (sum[window] as number);
      const next = (start[window] as number) + inside;
      starts[at] = next;
      // Work that just fills a window ends there, and goes on in the next.
      finish[at] =
        inside > 0 || window === 0
          ? next
          : (start[window - 1] as number) + (sum[window] as number) - (sum[window - 1] as number);
    },
    sittingFrom(work, length) {
      if (length > longest || work >= total) return work;
      let window = byWork[Math.floor(work / workCell)] as number;
      while ((sum[window + 1] as number) <= work) window += 1;
      if ((sum[window + 1] as number) - work >= length) return work;
      for (window += 1; window < windows; window += 1) {
        if ((sum[window + 1] as number) - (sum[window] as number) >= length) return sum[window] as number;
      }
      return total;
    },
  };
}

function weekOf(start: Float64Array, sum: Float64Array, now: number): number {
  const year = now + 364 * minutesPerDay;
  let window = 0;
  while (window < start.length && (start[window] as number) < year) window += 1;
  return (sum[window] as number) / 52;
}
