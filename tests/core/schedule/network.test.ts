import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../../core/refusal.ts';
import type { NetworkJob } from '../../../core/schedule/job-order.ts';
import { networkTimes } from '../../../core/schedule/network.ts';

function jobsOf(durations: Record<string, number>, earlier: Record<string, string>): NetworkJob[] {
  return Object.entries(durations).map(([id, duration]) => ({ id, duration, after: [...(earlier[id] ?? '')] }));
}

function figures(jobs: readonly NetworkJob[], target?: number) {
  const { finish, jobs: times, criticalPath } = networkTimes(jobs, target);
  const by = (figure: 'earlyStart' | 'earlyFinish' | 'lateStart' | 'totalFloat' | 'freeFloat') =>
    Object.fromEntries(times.map((time) => [time.id, time[figure]]));
  const held = Object.fromEntries(times.map(({ id, heldBy }) => [id, heldBy]));
  return { finish, by, held, criticalPath, critical: times.filter(({ critical }) => critical).map(({ id }) => id) };
}

const nonzero = (all: Record<string, number>) => Object.fromEntries(Object.entries(all).filter(([, one]) => one !== 0));

const refusal = (jobs: readonly NetworkJob[]): Refusal => {
  try {
    networkTimes(jobs);
  } catch (error) {
    if (error instanceof Refusal) return error;
  }
  throw new Error('Nothing was refused.');
};

test('D31: fourteen jobs', () => {
  // Source: Hillier & Lieberman, Introduction to Operations Research, PERT/CPM chapter (durations and most earlier jobs
  // seen in public copies of the case, the rest from memory; 44 weeks and the critical path agree with the book).
  const durations = { A: 2, B: 4, C: 10, D: 6, E: 4, F: 5, G: 7, H: 9, I: 7, J: 8, K: 4, L: 5, M: 2, N: 6 };
  const found = figures(
    jobsOf(durations, {
      B: 'A',
      C: 'B',
      D: 'C',
      E: 'C',
      F: 'E',
      G: 'D',
      H: 'EG',
      I: 'C',
      J: 'FI',
      K: 'J',
      L: 'J',
      M: 'H',
      N: 'KL',
    }),
  );
  const longest = ['A', 'B', 'C', 'E', 'F', 'J', 'L', 'N'];
  expect(found.finish).toBe(44);
  expect([...found.critical].sort()).toEqual(longest);
  expect(found.criticalPath).toEqual(longest);
  expect(nonzero(found.by('totalFloat'))).toEqual({ D: 4, G: 4, H: 4, I: 2, K: 1, M: 4 });
  expect(nonzero(found.by('freeFloat'))).toEqual({ I: 2, K: 1, M: 4 });
  expect(found.by('earlyStart')).toEqual({
    A: 0,
    B: 2,
    C: 6,
    D: 16,
    E: 16,
    F: 20,
    G: 22,
    H: 29,
    I: 16,
    J: 25,
    K: 33,
    L: 33,
    M: 38,
    N: 38,
  });
  expect(found.by('lateStart')).toEqual({
    A: 0,
    B: 2,
    C: 6,
    D: 20,
    E: 16,
    F: 20,
    G: 26,
    H: 33,
    I: 18,
    J: 25,
    K: 34,
    L: 33,
    M: 42,
    N: 38,
  });
});

test('D32: seven jobs named by arrow', () => {
  // Source: Taylor, Introduction to Management Science, project management chapter, problem 5, published solution.
  const durations = { '1-2': 7, '1-3': 10, '2-4': 6, '3-4': 5, '3-5': 4, '4-5': 3, '5-6': 2 };
  const jobs = Object.entries(durations).map(([id, duration]) => ({
    id,
    duration,
    after: Object.keys(durations).filter((other) => other[2] === id[0]),
  }));
  const found = figures(jobs);
  expect(found.finish).toBe(20);
  expect(found.by('earlyStart')).toEqual({
    '1-2': 0,
    '1-3': 0,
    '2-4': 7,
    '3-4': 10,
    '3-5': 10,
    '4-5': 15,
    '5-6': 18,
  });
  expect(found.by('lateStart')).toEqual({
    '1-2': 2,
    '1-3': 0,
    '2-4': 9,
    '3-4': 10,
    '3-5': 14,
    '4-5': 15,
    '5-6': 18,
  });
  expect(nonzero(found.by('totalFloat'))).toEqual({ '1-2': 2, '2-4': 2, '3-5': 4 });
  expect(found.criticalPath).toEqual(['1-3', '3-4', '4-5', '5-6']);
});

// Source: derived by hand, recomputed independently.
const lagged: NetworkJob[] = [
  { id: 'P', duration: 3 },
  { id: 'Q', duration: 2, after: ['P'], notBefore: 4 },
  { id: 'S', duration: 4, after: [{ id: 'P', lag: 2 }] },
  { id: 'U', duration: 1, after: [{ id: 'Q', lag: 5 }, 'S'] },
];

test('D33: lags and the day of a part’s arrival', () => {
  const found = figures(lagged);
  expect(found.finish).toBe(12);
  expect(found.by('earlyStart')).toEqual({ P: 0, Q: 4, S: 5, U: 11 });
  expect(found.by('earlyFinish')).toEqual({ P: 3, Q: 6, S: 9, U: 12 });
  expect(found.by('lateStart')).toEqual({ P: 1, Q: 4, S: 7, U: 11 });
  expect(found.by('totalFloat')).toEqual({ P: 1, Q: 0, S: 2, U: 0 });
  expect(found.by('freeFloat')).toEqual({ P: 0, Q: 0, S: 2, U: 0 });
  expect(found.held['Q']).toEqual([{ by: 'notBefore' }]);
  expect(found.held['U']).toEqual([{ by: 'job', id: 'Q', lag: 5 }]);
  expect(found.criticalPath).toEqual(['Q', 'U']);
});

test('counts back from a target, which may be too soon', () => {
  // By hand: every late date of the case above moves by the same two.
  expect(figures(lagged, 10).by('totalFloat')).toEqual({ P: -1, Q: -2, S: 0, U: -2 });
  expect(figures(lagged, 14).critical).toEqual([]);
});

test('D34: bad networks are refused, naming the field and the ring', () => {
  // Source: derived by hand.
  const ring = refusal([
    { id: 'X', duration: 1, after: ['Z'] },
    { id: 'Y', duration: 1, after: ['X'] },
    { id: 'Z', duration: 1, after: ['Y'] },
  ]);
  expect(ring).toMatchObject({ field: 'after', detail: { path: ['X', 'Y', 'Z', 'X'] } });
  expect(ring.message).toBe('Jobs wait for each other: X > Y > Z > X. Nothing was changed.');
  expect(refusal([{ id: 'X', duration: 1, after: ['0'] }])).toMatchObject({
    field: 'after',
    message: 'Job “X” waits for job “0”, which is not in the list. Nothing was changed.',
  });
  expect(refusal([{ id: 'X', duration: 1, after: ['X'] }]).message).toBe(
    'Job “X” waits for itself. Nothing was changed.',
  );
  const twice = networkTimes([
    { id: 'X', duration: 1 },
    { id: 'Y', duration: 1, after: [{ id: 'X', lag: 3 }, 'X'] },
  ]);
  expect(twice.finish).toBe(5);
});

test('refuses durations, lags and ids that can’t be', () => {
  for (const duration of [-1, 1.5, Number.NaN, 1e300]) {
    expect(refusal([{ id: 'X', duration }]).field).toBe('duration');
  }
  expect(
    refusal([
      { id: 'X', duration: 1 },
      { id: 'X', duration: 2 },
    ]).field,
  ).toBe('id');
  expect(refusal([{ id: '', duration: 1 }]).field).toBe('id');
  expect(
    refusal([
      { id: 'X', duration: 1 },
      { id: 'Y', duration: 2, after: [{ id: 'X', lag: -1 }] },
    ]).field,
  ).toBe('lag');
});

test('no jobs end at once; a long chain is no trouble', () => {
  expect(networkTimes([])).toEqual({ finish: 0, jobs: [], criticalPath: [] });
  const chain = Array.from({ length: 20_000 }, (_, at) => ({
    id: String(at),
    duration: 1,
    after: at === 19_999 ? [] : [String(at + 1)],
  }));
  expect(networkTimes(chain).finish).toBe(20_000);
});

test('no job begins before its earlier ones, and float never lets one end after the finish', () => {
  const anyJobs = fc.array(fc.record({ duration: fc.nat(9), lag: fc.nat(3), back: fc.nat(6) }), { maxLength: 30 });
  fc.assert(
    fc.property(anyJobs, (rows) => {
      const jobs = rows.map(({ duration, lag, back }, at) => ({
        id: String(at),
        duration,
        after: back === 0 || back > at ? [] : [{ id: String(at - back), lag }],
      }));
      const { finish, jobs: times } = networkTimes(jobs);
      const byId = new Map(times.map((time) => [time.id, time]));
      for (const { id, after } of jobs) {
        const time = byId.get(id);
        for (const link of after) {
          expect(time?.earlyStart).toBeGreaterThanOrEqual((byId.get(link.id)?.earlyFinish ?? 0) + link.lag);
        }
        expect(time?.lateFinish).toBeLessThanOrEqual(finish);
        expect(time?.totalFloat).toBeGreaterThanOrEqual(time?.freeFloat ?? 0);
        expect(time?.freeFloat).toBeGreaterThanOrEqual(0);
      }
    }),
  );
});
