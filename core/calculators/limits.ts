/**
 * Comparing with limits. A value equal to a limit is inside it; the slack of 1e-9 of the limit keeps the binary
 * rounding of decimal entries (0.1 + 0.2) from flipping the answer.
 */
const slack = 1e-9;

/** Whether `value` lies above `limit` for certain. */
export function exceeds(value: number, limit: number): boolean {
  return value - limit > slack * Math.abs(limit);
}

/** Whether `value` lies below `limit` for certain. */
export function fallsShort(value: number, limit: number): boolean {
  return limit - value > slack * Math.abs(limit);
}
