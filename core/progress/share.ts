/** A share kept as two whole numbers, so that "all" and "almost all" never look alike. */

export interface Share {
  readonly done: number;
  readonly of: number;
}

/** The share as a number, or null when there is nothing to have a share of. */
export function ratioOf(share: Share): number | null {
  return share.of === 0 ? null : share.done / share.of;
}

/**
 * A share as people read it: whole percent, a half up. 100 % means all and 0 % means nothing: what is nearly all prints
 * as "99 %", and what is hardly anything as "<1 %".
 * @param whenEmpty what to say when there is nothing to have a share of, such as "no parts yet".
 */
export function showShare(share: Share, whenEmpty: string): string {
  if (share.of <= 0) return whenEmpty;
  const done = BigInt(share.done);
  const whole = BigInt(share.of);
  const percent = Number((done * 200n + whole) / (whole * 2n));
  if (done > 0n && percent === 0) return '<1 %';
  if (done < whole && percent === 100) return '99 %';
  if (done > whole && percent === 100) return '101 %';
  return done < 0n ? '0 %' : `${percent} %`;
}

/** What stands in place of a number when there is nothing to measure yet. */
export const nothingYet = {
  parts: 'no parts yet',
  jobs: 'no jobs yet',
  deliveries: 'no deliveries yet',
  spend: 'no costs yet',
  mixedUnits: 'units differ',
} as const;
