/** What is still to be ordered: the bill less what is on the list and what lies free on the shelf. */
import { addUp, type BillItem, itemKey } from './bill.ts';
import { upToStep } from './round.ts';

/** What there is of a thing already. */
export interface Held {
  /** Text of the thing, as on a bill. */
  readonly item: string;
  /** On the list for these lines, ordered or not. In thousandths. */
  readonly onListMilli: number;
  /** Free on the shelf: not covering a need on the list. In thousandths. */
  readonly inStockMilli: number;
}

export interface LineNeed {
  readonly key: string;
  readonly kind: BillItem['kind'];
  readonly text: string;
  readonly unit: BillItem['unit'];
  readonly neededMilli: number;
  readonly onListMilli: number;
  /** Taken from the shelf: no more than is needed. */
  readonly fromStockMilli: number;
  readonly toOrderMilli: number;
}

/** Hose and sleeve are sold by the tenth of a metre [thousandths of a metre]. */
export const metreStepMilli = 100;

/**
 * Needs less what is held. What is on the list counts first, then the shelf; the same thing in several lines is counted
 * once, so that adding the result to the list and asking again gives nothing to order.
 * @param cut hose to buy by key, in mm, where a cut list knows it better than a sum of lengths does (a shelf full of
 * short lengths makes no long hose).
 */
export function needsOf(
  bill: readonly BillItem[],
  held: readonly Held[],
  cut: ReadonlyMap<string, number> = new Map(),
): readonly LineNeed[] {
  const heldOf = (key: string, of: (one: Held) => number): number =>
    held.filter(({ item }) => itemKey(item) === key).reduce((sum, one) => sum + of(one), 0);
  return addUp(bill).map(({ key, kind, text, unit, quantityMilli }) => {
    const listed = heldOf(key, ({ onListMilli }) => onListMilli);
    const bought = cut.get(key);
    const step = (milli: number): number => (unit === 'm' ? upToStep(milli, metreStepMilli) : milli);
    const open = Math.max(0, quantityMilli - listed);
    const shelf =
      bought === undefined ? heldOf(key, ({ inStockMilli }) => inStockMilli) : Math.max(0, quantityMilli - bought);
    const fromStockMilli = Math.min(open, shelf);
    return {
      key,
      kind,
      text,
      unit,
      neededMilli: quantityMilli,
      onListMilli: listed,
      fromStockMilli,
      toOrderMilli: step(bought === undefined ? open - fromStockMilli : Math.max(0, bought - listed)),
    };
  });
}
