import { exceeds } from '../limits.ts';

/**
 * The multiple of a step nearest to a thickness, both in one unit; a tie goes to the thinner, whatever binary rounding
 * made of the decimals. Source: rule of calculator G5.
 * @param step above 0.
 */
export function nearestStep(thickness: number, step: number): number {
  const steps = thickness / step;
  const below = Math.floor(steps + 1e-9);
  return (exceeds(steps - below, 0.5 + 1e-9) ? below + 1 : below) * step;
}
