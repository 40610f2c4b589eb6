import { z } from 'zod';
import type { SheetView } from '../../../parts/sheet/sheet-types.ts';
import type { PartColumn } from '../columns/column-tools.ts';

const bound = z.union([z.string(), z.number()]).nullable();
const filter = z.discriminatedUnion('op', [
  z.object({ key: z.string(), op: z.literal('any-of'), value: z.array(z.string()) }),
  z.object({
    key: z.string(),
    op: z.literal('between'),
    value: z.object({ from: bound, to: bound, fromText: z.string(), toText: z.string() }),
  }),
  z.object({ key: z.string(), op: z.literal('words'), value: z.string() }),
  z.object({ key: z.string(), op: z.literal('blank'), value: z.boolean() }),
]);
const sheetView = z.object({
  columns: z.object({
    order: z.array(z.string()),
    hidden: z.array(z.string()),
    width: z.record(z.string(), z.number()),
  }),
  sort: z.array(z.object({ key: z.string(), dir: z.enum(['ascending', 'descending']) })),
  filters: z.array(filter),
  search: z.string(),
  group: z.string().nullable(),
  collapsed: z.array(z.string()),
});

/** A stored view as a sheet can show it; null when the text holds none. Columns that are gone are left out. */
export function readView(text: string, columns: readonly PartColumn[]): SheetView | null {
  let stored: unknown;
  try {
    stored = JSON.parse(text);
  } catch {
    return null;
  }
  const read = sheetView.safeParse(stored);
  if (!read.success) return null;
  const known = new Set(columns.map(({ key }) => key));
  const { data } = read;
  return {
    ...data,
    sort: data.sort.filter(({ key }) => known.has(key)),
    filters: data.filters.filter(({ key }) => known.has(key)),
    group: data.group !== null && known.has(data.group) ? data.group : null,
  };
}
