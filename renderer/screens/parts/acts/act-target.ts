import type { PartRow } from '../../../../core/contract/parts.ts';

/** What an act is about: some lines, or one line and perhaps one lot of it. */
export interface ActTarget {
  readonly rows: readonly PartRow[];
  /** Only this lot's units. */
  readonly lot?: number;
  /** Most units that can be moved, where it is known; offered as the quantity. */
  readonly mostMilli?: number;
}

/** "head studs", "12 lines". */
export const targetWords = ({ rows }: ActTarget): string =>
  rows.length === 1 ? (rows[0]?.description ?? '') : `${rows.length.toLocaleString()} lines`;
