import type { z } from 'zod';
import type { boxLine, OrderDetail } from '../../../../core/contract/orders.ts';
import type { RejectReason } from '../../../../core/ledger/entry.ts';

export type BoxLine = z.infer<typeof boxLine>;
type Line = OrderDetail['lines'][number];

export interface BadUnits {
  readonly quantityMilli: number;
  readonly reason: RejectReason;
  readonly note: string;
}

/** What was counted of one line so far. */
export interface LineCount {
  readonly line: number;
  readonly goodMilli: number;
  readonly bad: readonly BadUnits[];
  readonly extraMilli: number;
  readonly restBackOrdered: boolean;
  readonly restPromisedOn: string | null;
}

/** Nothing counted yet: a box is counted out, not assumed to be whole. */
export const uncounted = (lines: readonly Pick<Line, 'id'>[]): readonly LineCount[] =>
  lines.map(({ id }) => ({
    line: id,
    goodMilli: 0,
    bad: [],
    extraMilli: 0,
    restBackOrdered: false,
    restPromisedOn: null,
  }));

export const badMilli = ({ bad }: LineCount): number => bad.reduce((sum, { quantityMilli }) => sum + quantityMilli, 0);

/** Units of the line that were in the box and were on the order. */
export const cameMilli = (count: LineCount): number => count.goodMilli + badMilli(count);

/** Units still to come once this box is in. */
export const restMilli = (count: LineCount, line: Pick<Line, 'outstandingMilli'>): number =>
  Math.max(0, line.outstandingMilli - cameMilli(count));

/** The line with all that is to come counted as good. */
export const allCame = (count: LineCount, line: Pick<Line, 'outstandingMilli'>): LineCount => ({
  ...count,
  goodMilli: Math.max(0, line.outstandingMilli - badMilli(count)),
});

const isInBox = (count: LineCount): boolean => cameMilli(count) + count.extraMilli > 0;

/** How many lines have something in the box. */
export const linesInBox = (counts: readonly LineCount[]): number => counts.filter(isInBox).length;

/** What is sent: the lines that came, and those that the delivery note puts on back-order. */
export function boxOf(
  counts: readonly LineCount[],
  lines: readonly Pick<Line, 'id' | 'outstandingMilli'>[],
): BoxLine[] {
  return counts.flatMap((count) => {
    const line = lines.find(({ id }) => id === count.line);
    if (line === undefined) return [];
    const rest = restMilli(count, line) > 0 && count.restBackOrdered;
    if (!isInBox(count) && !rest) return [];
    return [
      {
        line: count.line,
        goodMilli: count.goodMilli,
        bad: count.bad
          .filter(({ quantityMilli }) => quantityMilli > 0)
          .map((units) => ({ ...units, note: units.note.trim() })),
        extraMilli: count.extraMilli,
        restBackOrdered: rest,
        restPromisedOn: rest ? count.restPromisedOn : null,
      },
    ];
  });
}
