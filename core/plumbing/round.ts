/**
 * To a tenth, as lengths are written on a cut list. A figure exactly between two tenths goes to the even one, which
 * ISO 80000-1 prefers (from memory).
 */
export function toTenth(value: number): number {
  // Only odd quarters lie exactly between two tenths in binary.
  const quarters = value * 4;
  if (Number.isInteger(quarters) && quarters % 2 !== 0) {
    const below = Math.floor(value * 10);
    return (below % 2 === 0 ? below : below + 1) / 10;
  }
  return Number(value.toFixed(1));
}

/** Up to the next full step; binary dust above a step doesn't count. Adding 0 makes the zero that it leaves a plain one. */
export function upToStep(value: number, step: number): number {
  return Math.ceil(value / step - 1e-9) * step + 0;
}
