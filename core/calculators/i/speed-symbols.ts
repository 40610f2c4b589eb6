// Source: speed symbols of tyres, ISO 4000-1 and UN Regulation 30, from memory, text not seen.
/** The highest speed of each tyre speed symbol [km/h]. */
export const speedSymbols = {
  L: 120,
  M: 130,
  N: 140,
  P: 150,
  Q: 160,
  R: 170,
  S: 180,
  T: 190,
  H: 210,
  V: 240,
  W: 270,
  Y: 300,
} as const;

/** What may be chosen, and how it reads: `H` is “H, up to 210 km/h”. */
export const speedSymbolChoices = Object.fromEntries(
  Object.entries(speedSymbols).map(([symbol, speed]) => [symbol, `${symbol}, up to ${speed} km/h`]),
) as Record<keyof typeof speedSymbols, string>;
