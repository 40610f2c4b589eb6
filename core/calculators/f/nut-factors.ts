/** Shigley, Mechanical Engineering Design, table 8-15 (seen). */
export const nutFactors = {
  black: 0.3,
  'zinc plated': 0.2,
  lubricated: 0.18,
  cadmium: 0.16,
  'anti-seize': 0.12,
} as const;

export type Surface = keyof typeof nutFactors;

/** The surfaces as a choice, and how they read. */
export const surfaces = {
  black: 'black, not plated (0.30)',
  'zinc plated': 'zinc plated (0.20)',
  lubricated: 'lubricated (0.18)',
  cadmium: 'cadmium plated (0.16)',
  'anti-seize': 'anti-seize (about 0.12)',
} as const satisfies Record<Surface, string>;
