/** What several readings of one size say together. */

export const meanOf = (readings: readonly number[]): number =>
  readings.reduce((sum, one) => sum + one, 0) / readings.length;

/** The largest less the smallest. */
export const rangeOf = (readings: readonly number[]): number => Math.max(...readings) - Math.min(...readings);

/** Standard deviation of a sample (n − 1); needs two readings. */
export function deviationOf(readings: readonly number[]): number {
  const mean = meanOf(readings);
  return Math.sqrt(readings.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (readings.length - 1));
}

/**
 * The first reading further than three standard deviations of the others from the mean of the others, or undefined.
 * The others' deviation, since a stray reading widens the common one so far that among five it could never stand out.
 */
export function strayReading(readings: readonly number[]): number | undefined {
  if (readings.length < 5) return undefined;
  return readings.find((one, at) => {
    const others = readings.filter((_, index) => index !== at);
    // Binary rounding of equal decimals is no deviation.
    const noise = 1e-9 * Math.abs(meanOf(others));
    return Math.abs(one - meanOf(others)) > 3 * deviationOf(others) + noise;
  });
}
