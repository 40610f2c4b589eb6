/** How a part or a gauge grows: its coefficient [1/K], and how far it is above 20 °C [K]. */
interface Growth {
  readonly alpha: number;
  readonly above: number;
}

/**
 * What is to be added to a length read on a part with a gauge, each at a temperature of its own, to have the length at
 * 20 °C: reading · ((1 + gauge)/(1 + part) − 1), in the unit of the reading. The quotient is written so that a correction
 * of micrometres keeps its digits. Source: ISO 1, reference temperature 20 °C (from memory); linear expansion.
 * @param part its alpha · above must lie over −1. @param gauge likewise.
 */
export function correctionTo20(reading: number, part: Growth, gauge: Growth): number {
  const grown = part.alpha * part.above;
  return (reading * (gauge.alpha * gauge.above - grown)) / (1 + grown);
}
