import type { JournalRow } from '../../../../core/contract/journal.ts';

/** What was done at once, with the entries that it made on the order. */
export interface OrderAct {
  readonly act: number;
  readonly label: string;
  readonly on: string;
  readonly rows: readonly JournalRow[];
  /** Sum of the entries; null where none has an amount, or where they are of several kinds: ordered and paid don't add up. */
  readonly amountMinor: number | null;
  readonly currency: string;
  /** Every entry of it was taken back. */
  readonly reversed: boolean;
  /** It takes another back. */
  readonly reverses: boolean;
}

/** The entries of the order by the act that made them, in the order given. */
export function actsOf(rows: readonly JournalRow[]): readonly OrderAct[] {
  return [...Map.groupBy(rows, ({ act }) => act).values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const priced = group.filter(({ amountMinor }) => amountMinor !== null);
    const oneKind = new Set(priced.map(({ kind }) => kind)).size === 1;
    return [
      {
        act: first.act,
        label: first.actLabel,
        on: first.on,
        rows: group,
        amountMinor: oneKind ? priced.reduce((sum, { amountMinor }) => sum + (amountMinor ?? 0), 0) : null,
        currency: first.currency,
        reversed: group.every(({ reversedBy }) => reversedBy !== null),
        reverses: group.every(({ reverses }) => reverses !== null),
      },
    ];
  });
}
