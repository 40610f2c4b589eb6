/** Sales tax or value-added tax on one base. Local rules decide rates and bases; a tax adviser settles doubts. */
import { type RoundingMode, roundRatio, safeMinor } from './currency.ts';
import type { Rate } from './rate.ts';

/**
 * Tax in minor units on a net base: round(base x rate).
 * Source: Streamlined Sales and Use Tax Agreement s.324 for the half that goes up.
 */
export function taxOnNet(netMinor: number, rate: Rate, rounding: RoundingMode = 'half up'): number {
  return safeMinor(roundRatio(BigInt(netMinor) * rate.numerator, rate.denominator, rounding), 'tax');
}

/**
 * Tax in minor units inside a gross amount: round(gross x rate / (1 + rate)). The net is gross minus tax; it is never
 * rounded by itself, or the two might not add up.
 */
export function taxInGross(grossMinor: number, rate: Rate, rounding: RoundingMode = 'half up'): number {
  const exact = BigInt(grossMinor) * rate.numerator;
  return safeMinor(roundRatio(exact, rate.denominator + rate.numerator, rounding), 'tax');
}
