/**
 * How the volume flow through an injector changes from one pressure across it to another, √(to/from): the orifice
 * equation (Bernoulli). Both above 0, in one unit.
 */
export function flowFactor(from: number, to: number): number {
  return Math.sqrt(to / from);
}
