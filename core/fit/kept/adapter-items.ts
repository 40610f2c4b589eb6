/** What an adapter puts on the parts list: each thing once, with how many. */
import { itemKey } from '../../plumbing/bill.ts';

/** A thing to have for an adapter. */
interface AdapterItem {
  readonly text: string;
  readonly count: number;
}

/** Whether one text says all that the other says, and perhaps a size more. */
function saysAllOf(one: string, other: string): boolean {
  const words = itemKey(one).split(' ');
  let at = 0;
  for (const word of itemKey(other).split(' ')) {
    const found = words.indexOf(word, at);
    if (found < 0) return false;
    at = found + 1;
  }
  return true;
}

/**
 * Pieces and loose items of an adapter. Two joints that ask for the same thing, one naming its size and one not, ask for
 * two of the one that is named in full.
 */
export function adapterItems(adapter: {
  readonly pieces: readonly string[];
  readonly needs: readonly string[];
}): AdapterItem[] {
  const items: { text: string; count: number; loose: boolean }[] = [];
  const add = (text: string, loose: boolean): void => {
    const same = items.find((item) =>
      item.loose && loose
        ? saysAllOf(item.text, text) || saysAllOf(text, item.text)
        : itemKey(item.text) === itemKey(text),
    );
    if (same === undefined) items.push({ text, count: 1, loose });
    else {
      same.count += 1;
      if (text.length > same.text.length) same.text = text;
    }
  };
  for (const text of adapter.pieces) add(text, false);
  for (const text of adapter.needs) add(text, true);
  return items.map(({ text, count }) => ({ text, count }));
}
