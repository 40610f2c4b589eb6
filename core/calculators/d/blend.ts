/** Petrol, ethanol and what mixing them by volume gives. */

export interface Fuel {
  /** At about 15.6 °C [kg/m³]. */
  readonly density: number;
  /** Lower heating value [J/kg]. */
  readonly heatingValue: number;
  /** Stoichiometric air to fuel, by mass. */
  readonly stoichiometric: number;
}

/**
 * Typical values: property table of the Alternative Fuels Data Center, US Department of Energy. Petrol without ethanol
 * is published from 720 to 780 kg/m³, and textbooks also give 14.6 for its air to fuel.
 */
export const petrol: Fuel = { density: 745, heatingValue: 43.44e6, stoichiometric: 14.7 };
export const ethanol: Fuel = { density: 792, heatingValue: 26.95e6, stoichiometric: 9 };

/** A blend that holds a fraction of `second` by volume, 0 to 1. Ratios weigh by mass: by volume they come out wrong. */
export function blended(first: Fuel, second: Fuel, fraction: number): Fuel & { readonly massFraction: number } {
  const density = second.density * fraction + first.density * (1 - fraction);
  const massFraction = (second.density * fraction) / density;
  const byMass = (one: number, other: number): number => other * massFraction + one * (1 - massFraction);
  return {
    density,
    massFraction,
    heatingValue: byMass(first.heatingValue, second.heatingValue),
    stoichiometric: byMass(first.stoichiometric, second.stoichiometric),
  };
}
