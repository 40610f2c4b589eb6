/** How far each bolt of a group is, folded from what was written down. Pure; the ledger keeps the events. */

export interface BoltMarkEvent {
  readonly kind: 'bolt-turned' | 'bolts-snugged' | 'bolts-final' | 'bolts-loosened' | 'bolts-rechecked';
  /** How many bolts, where the event names none. */
  readonly count: number;
  /** From 1; null where the event is about a number of bolts. */
  readonly bolt: number | null;
  readonly stage: number | null;
  readonly bolts: readonly number[];
  /** Written beside a turned bolt, for the counts. */
  readonly withTurn: boolean;
}

export interface BoltMark {
  readonly bolt: number;
  /** Stages done: 0 to the number of stages. */
  readonly stages: number;
  readonly rechecked: boolean;
}

/**
 * What each bolt has been through. Bolts that were recorded by number, without saying which, are taken in the order of
 * the sequence; loosening some takes those that were turned last.
 * @param sequence bolt numbers from 1, each once.
 * @param stages how many stages the group is tightened in, 1 or more.
 */
export function boltMarks(sequence: readonly number[], stages: number, events: readonly BoltMarkEvent[]): BoltMark[] {
  const done = new Map<number, number>(sequence.map((bolt) => [bolt, 0]));
  const final = new Set<number>();
  const rechecked = new Set<number>();
  /** Latest last. */
  const turned: number[] = [];
  const touch = (bolt: number): void => {
    const at = turned.indexOf(bolt);
    if (at >= 0) turned.splice(at, 1);
    turned.push(bolt);
    rechecked.delete(bolt);
  };
  for (const event of events) {
    switch (event.kind) {
      case 'bolt-turned':
        if (event.bolt === null || event.stage === null || !done.has(event.bolt)) break;
        done.set(event.bolt, event.stage);
        touch(event.bolt);
        break;
      case 'bolts-snugged':
        if (event.withTurn || stages < 2) break;
        for (const bolt of sequence.filter((one) => done.get(one) === 0 && !final.has(one)).slice(0, event.count)) {
          done.set(bolt, 1);
          touch(bolt);
        }
        break;
      case 'bolts-final': {
        const which = event.withTurn
          ? [event.bolt].filter((bolt) => bolt !== null)
          : sequence.filter((one) => !final.has(one)).slice(0, event.count);
        for (const bolt of which) {
          final.add(bolt);
          touch(bolt);
        }
        break;
      }
      case 'bolts-loosened':
        for (const bolt of turned.splice(Math.max(0, turned.length - event.count))) {
          done.set(bolt, 0);
          final.delete(bolt);
          rechecked.delete(bolt);
        }
        break;
      case 'bolts-rechecked':
        for (const bolt of event.bolts.length === 0 ? sequence : event.bolts) {
          if (final.has(bolt)) rechecked.add(bolt);
        }
        break;
    }
  }
  return [...done]
    .map(([bolt, stage]) => ({
      bolt,
      // The number of stages may have been changed since: what was final then is final, and nothing else is.
      stages: final.has(bolt) ? stages : Math.min(stage, stages - 1),
      rechecked: rechecked.has(bolt),
    }))
    .sort((a, b) => a.bolt - b.bolt);
}

/** The bolt to turn next and the stage to bring it to: stage by stage, in the order of the sequence. Null = all done. */
export function nextTurn(
  sequence: readonly number[],
  stages: number,
  marks: readonly BoltMark[],
): { readonly bolt: number; readonly stage: number } | null {
  const done = new Map(marks.map((mark) => [mark.bolt, mark.stages]));
  for (let stage = 1; stage <= stages; stage += 1) {
    const bolt = sequence.find((one) => (done.get(one) ?? 0) < stage);
    if (bolt !== undefined) return { bolt, stage };
  }
  return null;
}

export type GroupStanding = 'not begun' | 'under way' | 'snug' | 'final' | 'rechecked';

/** Where a group stands: snug once every bolt is through the first stage, final once through the last. */
export function groupStanding(stages: number, marks: readonly BoltMark[]): GroupStanding {
  if (marks.length > 0 && marks.every((mark) => mark.stages >= stages)) {
    return marks.every((mark) => mark.rechecked) ? 'rechecked' : 'final';
  }
  if (marks.every((mark) => mark.stages === 0)) return 'not begun';
  return stages > 1 && marks.every((mark) => mark.stages >= 1) ? 'snug' : 'under way';
}
