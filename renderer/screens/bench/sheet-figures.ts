/** Decimals worth showing: one more than the instrument's step, from 2 to 6; 4 where the step isn't known. */
export function placesOfStep(step: number | null): number {
  if (step === null || step <= 0) return 4;
  return Math.min(6, Math.max(2, Math.ceil(-Math.log10(step)) + 1));
}

/** A figure with its unit, or that it isn't known. */
export const figure = (value: number | null, digits: number, unit: string): string =>
  value === null ? '–' : `${Number(value.toFixed(digits))} ${unit}`;
