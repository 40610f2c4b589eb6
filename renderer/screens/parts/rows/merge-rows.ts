import type { PartRow } from '../../../../core/contract/parts.ts';

/**
 * The list with the lines named replaced by what was read of them; a line that was dropped or not found leaves, a new
 * one stands at the end of its system and phase, where a full read would put it.
 */
export function mergeRows(
  rows: readonly PartRow[],
  ids: readonly number[],
  read: readonly PartRow[],
): readonly PartRow[] {
  const asked = new Set(ids);
  const found = new Map(read.filter(({ dropped }) => !dropped).map((row) => [row.id, row]));
  const merged: PartRow[] = [];
  for (const row of rows) {
    const next = asked.has(row.id) ? found.get(row.id) : row;
    found.delete(row.id);
    if (next !== undefined) merged.push(next);
  }
  if (found.size === 0) return merged;
  // Many new lines at once come from a list brought in: they are placed in one pass.
  const placed = Map.groupBy(found.values(), ({ system, phase }) => `${system} ${phase}`);
  const lastOf = new Map<string, number>();
  merged.forEach(({ system, phase }, at) => {
    lastOf.set(`${system} ${phase}`, at);
    lastOf.set(`${system}`, at);
  });
  const after = new Map<number, PartRow[]>();
  for (const [key, lines] of placed) {
    const at = lastOf.get(key) ?? lastOf.get(key.split(' ')[0] ?? '') ?? merged.length - 1;
    after.set(at, [...(after.get(at) ?? []), ...lines]);
  }
  return [...(after.get(-1) ?? []), ...merged.flatMap((row, at) => [row, ...(after.get(at) ?? [])])];
}
