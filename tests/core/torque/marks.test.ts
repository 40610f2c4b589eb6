import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoltMarkEvent, boltMarks, groupStanding, nextTurn } from '../../../core/torque/marks.ts';
import { starSequence } from '../../../core/torque/sequence.ts';

const event = (kind: BoltMarkEvent['kind'], more: Partial<BoltMarkEvent> = {}): BoltMarkEvent => ({
  kind,
  count: 0,
  bolt: null,
  stage: null,
  bolts: [],
  withTurn: false,
  ...more,
});

/** What turning one bolt writes, as the ledger has it. */
const turn = (bolt: number, stage: number, stages: number): BoltMarkEvent[] => [
  event('bolt-turned', { bolt, stage }),
  ...(stage === stages ? [event('bolts-final', { bolt, count: 1, withTurn: true })] : []),
];

describe('walking a group', () => {
  it('leads every bolt through every stage, one stage after the other, and ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 24 }), fc.integer({ min: 1, max: 4 }), (count, stages) => {
        const sequence = starSequence(count);
        const events: BoltMarkEvent[] = [];
        const walked: string[] = [];
        for (;;) {
          const next = nextTurn(sequence, stages, boltMarks(sequence, stages, events));
          if (next === null) break;
          walked.push(`${next.stage}:${next.bolt}`);
          events.push(...turn(next.bolt, next.stage, stages));
          if (walked.length > count * stages) break;
        }
        const expected = Array.from({ length: stages }, (_, stage) => sequence.map((bolt) => `${stage + 1}:${bolt}`));
        expect(walked).toEqual(expected.flat());
        expect(groupStanding(stages, boltMarks(sequence, stages, events))).toBe('final');
      }),
      { numRuns: 50 },
    );
  });

  it('says snug when all are through the first stage, and rechecked when all were gone over', () => {
    const sequence = [1, 2];
    const first = [...turn(1, 1, 2), ...turn(2, 1, 2)];
    expect(groupStanding(2, boltMarks(sequence, 2, []))).toBe('not begun');
    expect(groupStanding(2, boltMarks(sequence, 2, turn(1, 1, 2)))).toBe('under way');
    expect(groupStanding(2, boltMarks(sequence, 2, first))).toBe('snug');
    const all = [...first, ...turn(1, 2, 2), ...turn(2, 2, 2)];
    expect(groupStanding(2, boltMarks(sequence, 2, all))).toBe('final');
    expect(groupStanding(2, boltMarks(sequence, 2, [...all, event('bolts-rechecked')]))).toBe('rechecked');
    const again = [...all, event('bolts-rechecked'), event('bolts-loosened', { count: 1 })];
    expect(groupStanding(2, boltMarks(sequence, 2, again))).toBe('under way');
  });

  it('takes bolts that were recorded by number in the order of the sequence', () => {
    const marks = boltMarks([1, 3, 2, 4], 2, [
      event('bolts-final', { count: 2 }),
      event('bolts-snugged', { count: 1 }),
    ]);
    expect(marks.map(({ stages }) => stages)).toEqual([2, 1, 2, 0]);
  });

  it('keeps what was final final when stages are added later, and nothing else', () => {
    const events = [...turn(1, 1, 1), event('bolt-turned', { bolt: 2, stage: 1 })];
    expect(boltMarks([1, 2], 3, events).map(({ stages }) => stages)).toEqual([3, 1]);
    expect(boltMarks([1, 2], 1, events).map(({ stages }) => stages)).toEqual([1, 0]);
  });

  it('loosens those that were turned last', () => {
    const events = [...turn(1, 1, 1), ...turn(2, 1, 1), ...turn(3, 1, 1), event('bolts-loosened', { count: 2 })];
    expect(boltMarks([1, 2, 3], 1, events).map(({ stages }) => stages)).toEqual([1, 0, 0]);
  });
});
