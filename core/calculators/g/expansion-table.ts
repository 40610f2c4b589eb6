// Source: handbook values from memory, no text seen.
/** Coefficients of linear expansion near room temperature [1/K]: what the material is, and its coefficient or range. */
export const expansionCoefficients = [
  { material: 'steel', coefficients: [11.5e-6] },
  { material: 'cast iron', coefficients: [10.5e-6] },
  { material: 'aluminium alloy', coefficients: [23e-6] },
  { material: 'piston alloy', coefficients: [19e-6, 21e-6] },
] as const;
