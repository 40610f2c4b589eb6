/**
 * When is a row the same as one that is known? By vendor, order number, order line and part number where there is an
 * order number; else by vendor, part, date, quantity and price, counted inside the file so that two genuine equal rows
 * both live. Capitals and outer blanks don't matter.
 */
import { plainWords } from './clean-text.ts';
import type { ImportedOrderLine, ImportedPart, KnownRow } from './import-types.ts';

type Row = ImportedPart | ImportedOrderLine;

const join = (parts: readonly (string | number | null | undefined)[]) =>
  parts.map((part) => plainWords(String(part ?? '')).replaceAll('|', '/')).join('|');

function baseKey(row: Row): { readonly key: string; readonly counted: boolean } {
  const part = row.partNumber ?? row.description;
  const line = 'orderLine' in row ? row.orderLine : undefined;
  if (row.orderNumber !== undefined && row.orderNumber !== '') {
    return { key: `order|${join([row.vendor, row.orderNumber, line, part])}`, counted: false };
  }
  const { orderedOn, quantityMilli, unitPriceE4 } = row;
  return {
    key: `row|${join([row.vendor, part, row.description, orderedOn, quantityMilli, unitPriceE4])}`,
    counted: true,
  };
}

/** Everything on a row but its place in the file and its key. */
function contentOf(row: Row): string {
  const { row: _place, ...content } = row;
  return JSON.stringify(Object.entries(content).sort(([a], [b]) => (a < b ? -1 : 1)));
}

export type Sameness =
  | { readonly kind: 'new'; readonly key: string; readonly content: string }
  | { readonly kind: 'duplicate' | 'conflict'; readonly key: string; readonly content: string; readonly of: string };

/** Tells rows apart as they come; one for each file. */
export class DuplicateFinder {
  readonly #known: ReadonlyMap<string, KnownRow>;
  readonly #seen = new Map<string, { row: number; content: string }>();
  readonly #counts = new Map<string, number>();

  constructor(known: readonly KnownRow[]) {
    this.#known = new Map(known.map((row) => [row.key, row]));
  }

  /** @param forced the user says that the row is one of its own: it gets a key of its own. */
  place(row: Row, forced: boolean): Sameness {
    const { key: base, counted } = baseKey(row);
    const content = contentOf(row);
    const count = (this.#counts.get(base) ?? 0) + 1;
    this.#counts.set(base, count);
    const key = (counted || forced) && count > 1 ? `${base}|#${count}` : base;
    if (forced) {
      let own = key;
      for (let number = count + 1; this.#known.has(own) || this.#seen.has(own); number += 1) own = `${base}|#${number}`;
      this.#seen.set(own, { row: row.row, content });
      return { kind: 'new', key: own, content };
    }
    const earlier = this.#seen.get(key);
    if (earlier !== undefined) {
      return { kind: earlier.content === content ? 'duplicate' : 'conflict', key, content, of: `row ${earlier.row}` };
    }
    this.#seen.set(key, { row: row.row, content });
    const known = this.#known.get(key);
    if (known === undefined) return { kind: 'new', key, content };
    return { kind: known.content === content ? 'duplicate' : 'conflict', key, content, of: known.id };
  }
}
