/**
 * Least-cost assignment of rows to columns, each column used once at most (the Hungarian method with potentials; Kuhn
 * 1955, Munkres 1957). O(rows² · columns).
 * @param costs one array a row, all equally long and at least as long as there are rows; Infinity = not allowed. Every
 * row must have a column that is allowed and that no other row needs.
 * @returns the column of each row.
 */
export function assignLeastCost(costs: readonly (readonly number[])[]): number[] {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  // A number larger than any sum of allowed costs stands for “not allowed”, so that sums stay finite.
  const finite = costs.flat().filter(Number.isFinite);
  const barred = 1 + rows * finite.reduce((most, cost) => Math.max(most, cost), 1);
  const cost = (row: number, column: number): number => {
    const value = costs[row - 1]?.[column - 1] ?? Number.POSITIVE_INFINITY;
    return Number.isFinite(value) ? value : barred;
  };
  const rowPotential = new Float64Array(rows + 1);
  const columnPotential = new Float64Array(columns + 1);
  const rowOf = new Int32Array(columns + 1);
  const way = new Int32Array(columns + 1);
  const at = (list: Float64Array | Int32Array, index: number): number => list[index] ?? 0;
  for (let row = 1; row <= rows; row += 1) {
    rowOf[0] = row;
    let column = 0;
    const least = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY);
    const used = new Uint8Array(columns + 1);
    do {
      used[column] = 1;
      const current = at(rowOf, column);
      let delta = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let other = 1; other <= columns; other += 1) {
        if (used[other] === 1) continue;
        const reduced = cost(current, other) - at(rowPotential, current) - at(columnPotential, other);
        if (reduced < at(least, other)) {
          least[other] = reduced;
          way[other] = column;
        }
        if (at(least, other) < delta) [delta, next] = [at(least, other), other];
      }
      for (let other = 0; other <= columns; other += 1) {
        if (used[other] === 1) {
          rowPotential[at(rowOf, other)] = at(rowPotential, at(rowOf, other)) + delta;
          columnPotential[other] = at(columnPotential, other) - delta;
        } else least[other] = at(least, other) - delta;
      }
      column = next;
    } while (at(rowOf, column) !== 0);
    do {
      const before = at(way, column);
      rowOf[column] = at(rowOf, before);
      column = before;
    } while (column !== 0);
  }
  const chosen = Array.from({ length: rows }, () => -1);
  for (let column = 1; column <= columns; column += 1) {
    const row = at(rowOf, column);
    if (row > 0) chosen[row - 1] = column - 1;
  }
  return chosen;
}
