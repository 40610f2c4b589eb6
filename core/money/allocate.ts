/**
 * Sharing one whole amount over several lines without losing a unit: the largest-remainder method.
 * Known weakness, harmless for money: adding a line can lower another line's share by one minor unit.
 */

/**
 * Shares `totalMinor` in proportion to `weights`. Each share is the floor or the ceiling of its exact quota, the shares
 * add up to the total, units left over go to the largest fractional parts, and ties to the earlier line.
 * A weight below 0 (a credit inside an order) counts as 0; when every weight is 0 all lines weigh the same.
 * @param totalMinor any safe integer; a negative total (a discount) is shared by size and given its sign back.
 * @param weights whole numbers; their unit doesn't matter.
 * @returns one share per weight, in the same order; an empty list for no weights.
 * @throws RangeError when there is something to share and nobody to take it.
 * Source: the largest-remainder method of apportionment.
 */
export function allocate(totalMinor: number, weights: readonly (number | bigint)[]): number[] {
  if (weights.length === 0) {
    if (totalMinor === 0) return [];
    throw new RangeError('allocate: an amount other than 0 needs at least one weight');
  }
  const given = weights.map((weight) => (weight > 0 ? BigInt(weight) : 0n));
  const anyWeight = given.some((weight) => weight > 0n);
  const shares = anyWeight ? given : given.map(() => 1n);
  const sum = shares.reduce((before, weight) => before + weight, 0n);
  const total = BigInt(Math.abs(totalMinor));

  const floors = shares.map((weight) => (total * weight) / sum);
  const remainders = shares.map((weight) => (total * weight) % sum);
  let left = Number(total - floors.reduce((before, floor) => before + floor, 0n));
  // A stable sort keeps the earlier line in front when the fractional parts are equal.
  const order = shares.map((_, index) => index).sort((a, b) => compare(remainders[b] ?? 0n, remainders[a] ?? 0n));
  for (const index of order) {
    if (left === 0) break;
    floors[index] = (floors[index] ?? 0n) + 1n;
    left -= 1;
  }
  return floors.map((share) => (totalMinor < 0 && share !== 0n ? -Number(share) : Number(share)));
}

function compare(a: bigint, b: bigint): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
