import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BenchJob, planTonight } from '../../../core/schedule/tonight.ts';

const job = (id: number, given: Partial<BenchJob> = {}): BenchJob => ({
  id,
  minutesLeft: 60,
  earlier: [],
  wants: [],
  hold: null,
  priority: 9,
  sort: id,
  allowed: true,
  waitAfter: [],
  oneSitting: false,
  hands: true,
  running: false,
  ...given,
});

// All expected values here are worked by hand from the rule that the module states.
describe('a session at the bench', () => {
  it('puts days gained before standing on the hoist check, before jobs that wait, before place, priority and order', () => {
    const jobs = [
      job(1),
      job(2, { priority: 1 }),
      job(3, { hold: { place: 0, daysGained: 0 } }),
      job(4, { hold: { place: 9, daysGained: 0 } }),
      job(5, { hold: { place: 5, daysGained: 2 } }),
      job(6, { earlier: [4] }),
      job(7, { hold: { place: 1, daysGained: 0 } }),
    ];
    expect(planTonight(jobs, 0).ready).toEqual([5, 4, 3, 7, 2, 1]);
  });

  it('counts jobs that wait through others, once each, and stands a ring', () => {
    const diamond = [job(1), job(2, { earlier: [1] }), job(3, { earlier: [1] }), job(4, { earlier: [2, 3] })];
    expect(Object.fromEntries(planTonight(diamond, 0).waiting)).toEqual({ 1: 3, 2: 1, 3: 1, 4: 0 });
    const ring = [job(1, { earlier: [2] }), job(2, { earlier: [1] })];
    expect(planTonight(ring, 300)).toMatchObject({ turns: [], ready: [], minutesOver: 300 });
  });

  it('takes what fits, passes over what does not, and begins the best of the others with the rest', () => {
    const jobs = [job(1, { minutesLeft: 90 }), job(2, { minutesLeft: 120 }), job(3, { minutesLeft: 60 })];
    expect(planTonight(jobs, 180).turns).toEqual([
      { id: 1, from: 0, minutes: 90, whole: true },
      { id: 3, from: 90, minutes: 60, whole: true },
      { id: 2, from: 150, minutes: 30, whole: false },
    ]);
  });

  it('goes on to a job that only waited for one taken before', () => {
    const jobs = [job(1), job(2, { earlier: [1] }), job(3, { earlier: [1], wants: [{ kind: 'tool', id: 8 }] })];
    expect(planTonight(jobs, 150)).toMatchObject({ turns: [{ id: 1 }, { id: 2 }], minutesOver: 30, ready: [1] });
  });

  it('neither fits nor begins a job that nobody has guessed', () => {
    expect(planTonight([job(1, { minutesLeft: null })], 60)).toMatchObject({ turns: [], ready: [1], minutesOver: 60 });
  });

  it('puts jobs together that lack the same things, fewest things first, and leaves out those behind other jobs', () => {
    const cam = { kind: 'tool', id: 8 } as const;
    const gasket = { kind: 'part', id: 5 } as const;
    const jobs = [
      job(1, { wants: [cam, gasket], hold: { place: 0, daysGained: 3 } }),
      job(2, { wants: [cam] }),
      job(3, { wants: [gasket, cam] }),
      job(4, { wants: [cam], earlier: [2] }),
      job(5, { wants: [cam] }),
    ];
    expect(planTonight(jobs, 60).unlocks).toEqual([
      { wants: [cam], jobs: [2, 5] },
      { wants: [cam, gasket], jobs: [1, 3] },
    ]);
  });

  it('leaves alone what the place or the day forbids, also as something to unlock', () => {
    const jobs = [job(1, { allowed: false }), job(2, { allowed: false, wants: [{ kind: 'tool', id: 8 }] }), job(3)];
    expect(planTonight(jobs, 240)).toMatchObject({ turns: [{ id: 3, minutes: 60 }], ready: [3], unlocks: [] });
  });

  it('does not go on to what must wait after a job of the same session', () => {
    const jobs = [job(1), job(2, { earlier: [1], waitAfter: [1] }), job(3, { earlier: [1] })];
    expect(planTonight(jobs, 240).turns.map(({ id }) => id)).toEqual([1, 3]);
  });

  it('takes what needs one sitting whole or not at all', () => {
    const jobs = [job(1, { minutesLeft: 200, oneSitting: true }), job(2, { minutesLeft: 300 })];
    expect(planTonight(jobs, 180).turns).toEqual([{ id: 2, from: 0, minutes: 180, whole: false }]);
    expect(planTonight(jobs, 200).turns).toEqual([{ id: 1, from: 0, minutes: 200, whole: true }]);
  });

  it('sets going what needs no hands, without hours and without letting in what waits for it', () => {
    const jobs = [job(1, { hands: false, minutesLeft: 2880 }), job(2), job(3, { earlier: [1] })];
    expect(planTonight(jobs, 90)).toMatchObject({
      turns: [
        { id: 1, from: 0, minutes: 0, whole: false },
        { id: 2, from: 0, minutes: 60, whole: true },
      ],
      minutesOver: 30,
    });
  });

  it('never works longer than the session, a job twice, or before what it waits for', () => {
    const some = fc.array(
      fc.record({
        minutesLeft: fc.option(fc.integer({ min: 0, max: 300 })),
        before: fc.array(fc.nat(11), { maxLength: 3 }),
        tool: fc.boolean(),
      }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 600 }), (given, minutes) => {
        const jobs = given.map(({ minutesLeft, before, tool }, at) =>
          job(at, {
            minutesLeft,
            earlier: before.filter((id) => id < at),
            wants: tool ? [{ kind: 'tool', id: 1 }] : [],
          }),
        );
        const { turns, minutesOver } = planTonight(jobs, minutes);
        const seen = new Set<number>();
        let end = 0;
        for (const turn of turns) {
          expect(turn.from).toBe(end);
          expect(seen.has(turn.id)).toBe(false);
          expect(jobs[turn.id]?.earlier.every((id) => seen.has(id))).toBe(true);
          if (turn.whole) seen.add(turn.id);
          end += turn.minutes;
        }
        expect(end + minutesOver).toBe(minutes);
      }),
    );
  });
});
