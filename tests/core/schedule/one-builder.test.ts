import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseInstant } from '../../../core/dates/instant.ts';
import { type BuilderJob, placeJobs } from '../../../core/schedule/one-builder.ts';
import { readWorkingTime } from '../../../core/schedule/working-time.ts';

const dayAndNight = readWorkingTime({
  weekly: [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ weekday, from: '00:00', to: '24:00' })),
  exceptions: [],
});
const zero = parseInstant('2026-03-02T00:00');

function hours(id: string, work: number, notBefore: number, after: string[] = []): BuilderJob {
  return { id, name: id, readyMinute: zero + notBefore * 60, minutes: work * 60, after };
}

function finishHour(jobs: readonly BuilderJob[]): number {
  const placed = placeJobs(jobs, dayAndNight, zero);
  return (Math.max(zero, ...placed.map((job) => job.finishMinute)) - zero) / 60;
}

const worked = [
  hours('a', 3, 0),
  hours('b', 4, 6, ['a']),
  hours('c', 2, 2),
  hours('d', 5, 4, ['c']),
  hours('e', 1, 12, ['d']),
];

test('D42: release dates and links, one pair of hands', () => {
  // Source: Lawler, one machine with release dates and precedence: any no-idle order by release date gives the shortest
  // total; numbers derived by hand, recomputed independently by trying all orders.
  expect(placeJobs(worked, dayAndNight, zero).map((job) => job.id)).toEqual(['a', 'c', 'd', 'b', 'e']);
  expect(finishHour(worked)).toBe(15);
});

test('without releases or links the finish is the total work', () => {
  // By hand.
  expect(finishHour([hours('a', 3, 0), hours('b', 4, 0), hours('c', 2, 0)])).toBe(9);
});

test('work without hands takes nobody and holds nobody up', () => {
  // By hand: the delivery at hour 5 takes no hands, the job after it waits for it, the other does not.
  const jobs = [hours('delivery', 0, 5), hours('fit', 1, 0, ['delivery']), hours('clean', 2, 0)];
  expect(placeJobs(jobs, dayAndNight, zero).map((job) => [job.id, (job.finishMinute - zero) / 60])).toEqual([
    ['clean', 2],
    ['delivery', 5],
    ['fit', 6],
  ]);
});

test('a job named before the one it waits for still comes after it', () => {
  expect(placeJobs([hours('a', 1, 0, ['z']), hours('z', 1, 0)], dayAndNight, zero).map((job) => job.id)).toEqual([
    'z',
    'a',
  ]);
});

test('nothing is placed before now', () => {
  expect(placeJobs([hours('a', 1, -50)], dayAndNight, zero)[0]?.firstMinute).toBe(zero);
});

test('names the ring when jobs wait for each other, and the job that does not exist', () => {
  const ring = [hours('X', 1, 0, ['Z']), hours('Y', 1, 0, ['X']), hours('Z', 1, 0, ['Y'])];
  expect(() => placeJobs(ring, dayAndNight, zero)).toThrow(
    'Jobs wait for each other: X > Z > Y > X. Nothing was changed.',
  );
  expect(() => placeJobs([hours('X', 1, 0, ['X'])], dayAndNight, zero)).toThrow(/X > X/);
  expect(() => placeJobs([hours('X', 1, 0, ['Q'])], dayAndNight, zero)).toThrow(/“X” waits for the job Q/);
  expect(placeJobs([], dayAndNight, zero)).toEqual([]);
});

test('never finishes later than the best of all orders', () => {
  const jobLists = fc.array(
    fc.record({
      work: fc.integer({ min: 1, max: 6 }),
      ready: fc.integer({ min: 0, max: 20 }),
      waits: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
    }),
    { minLength: 1, maxLength: 5 },
  );
  fc.assert(
    fc.property(jobLists, (list) => {
      const after = list.map((job, index) => list.map((_, k) => k).filter((k) => k < index && job.waits[k] === true));
      const jobs = list.map((job, index) =>
        hours(
          `j${index}`,
          job.work,
          job.ready,
          after[index]?.map((k) => `j${k}`),
        ),
      );
      expect(finishHour(jobs)).toBe(bestOfAllOrders(list, after));
    }),
    { numRuns: 200 },
  );
});

function bestOfAllOrders(list: readonly { work: number; ready: number }[], after: readonly number[][]): number {
  let best = Number.POSITIVE_INFINITY;
  const go = (done: readonly number[], clock: number): void => {
    if (done.length === list.length) best = Math.min(best, clock);
    list.forEach((job, index) => {
      if (done.includes(index) || !(after[index] ?? []).every((k) => done.includes(k))) return;
      go([...done, index], Math.max(clock, job.ready) + job.work);
    });
  };
  go([], 0);
  return best;
}
