/** What the lines of a build need, against its parts list: what is on it, what is free on the shelf, what to add. */
import { addUp, type BillItem } from './bill.ts';
import { metreStepMilli } from './needs.ts';
import { upToStep } from './round.ts';

/** A part line, as far as the lines' needs ask. Quantities in thousandths. */
export interface ListedPart {
  readonly id: number;
  /** Keys of the things that it is: its description, and what somebody said that it is. */
  readonly keys: ReadonlySet<string>;
  readonly unit: BillItem['unit'];
  readonly needMilli: number;
  /** In hand, on the engine or on the way, and ours to keep. */
  readonly coveredMilli: number;
  /** In hand and not on the engine. */
  readonly shelfMilli: number;
}

export interface ListedNeed {
  readonly key: string;
  readonly kind: BillItem['kind'];
  readonly text: string;
  readonly unit: BillItem['unit'];
  readonly neededMilli: number;
  readonly part: number | null;
  /** Of the part lines' needs, what stands for this thing. */
  readonly onListMilli: number;
  readonly inStockMilli: number;
  readonly toAddMilli: number;
  readonly toOrderMilli: number;
  /** Part lines whose need adding would raise, and by how much; without any, the whole is a new part line. */
  readonly raises: readonly { readonly part: number; readonly byMilli: number }[];
}

/**
 * Part lines that count for a thing: those that are this thing alone, then the first that is other things, too. With one
 * shared line at most, what one thing takes of it is never what another one could have had elsewhere.
 */
function partsFor(
  key: string,
  unit: BillItem['unit'],
  parts: readonly ListedPart[],
  items: readonly BillItem[],
): readonly ListedPart[] {
  const candidates = parts.filter((part) => part.unit === unit && part.keys.has(key));
  const isShared = ({ keys }: ListedPart): boolean =>
    items.some((item) => item.key !== key && item.unit === unit && keys.has(item.key));
  return [...candidates.filter((part) => !isShared(part)), ...candidates.filter(isShared).slice(0, 1)];
}

/**
 * Needs less what is on the list. A part line's need covers the things that it stands for one after the other, so that
 * nothing counts twice; what is free of it beyond its need is put on the list before anything is to be ordered. Adding
 * and asking again gives nothing.
 * @param wanted hose to have on the list by key, in mm, where the cut list knows it better than a sum of lengths; the
 * rest comes from lengths at hand.
 */
export function needsOnList(
  bill: readonly BillItem[],
  parts: readonly ListedPart[],
  wanted: ReadonlyMap<string, number>,
): readonly ListedNeed[] {
  const need = new Map(parts.map(({ id, needMilli }) => [id, needMilli]));
  const free = new Map(parts.map((part) => [part.id, Math.max(0, part.coveredMilli - part.needMilli)]));
  /** Takes up to `most` out of what is left of a part line. */
  const take = (left: Map<number, number>, part: number, most: number): number => {
    const taken = Math.min(most, left.get(part) ?? 0);
    left.set(part, (left.get(part) ?? 0) - taken);
    return taken;
  };
  const steps = (milli: number, unit: BillItem['unit']): number =>
    unit === 'm' ? upToStep(milli, metreStepMilli) : milli;
  const items = addUp(bill);
  return items.map(({ key, kind, text, unit, quantityMilli }) => {
    const own = partsFor(key, unit, parts, items);
    const onShelf = own.reduce((sum, { id, shelfMilli }) => sum + Math.min(free.get(id) ?? 0, shelfMilli), 0);
    const neededMilli = steps(quantityMilli, unit);
    const listed = steps(wanted.get(key) ?? quantityMilli, unit);
    let open = listed;
    for (const { id } of own) open -= take(need, id, open);
    const toAddMilli = open;
    const raises = own.flatMap(({ id }) => {
      const byMilli = take(free, id, open);
      open -= byMilli;
      return byMilli === 0 ? [] : [{ part: id, byMilli }];
    });
    const [first] = own;
    if (first !== undefined && open > 0) raises.push({ part: first.id, byMilli: open });
    return {
      key,
      kind,
      text,
      unit,
      neededMilli,
      part: first?.id ?? null,
      onListMilli: listed - toAddMilli,
      inStockMilli: onShelf + Math.max(0, neededMilli - listed),
      toAddMilli,
      toOrderMilli: open,
      raises,
    };
  });
}
