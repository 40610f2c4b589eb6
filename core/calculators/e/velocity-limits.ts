/** Concurring hydraulic engineering guides (seen), oil of at most 315 SUS at 38 °C; trade practice rather than cited tests. */
interface VelocityLimit {
  readonly name: string;
  /** Warn above this [m/s]. */
  readonly limit: number;
  readonly guidance: string;
}

export const velocityLimits = {
  suction: { name: 'Suction or pump inlet', limit: 1.2, guidance: '2 to 4 ft/s' },
  return: { name: 'Return', limit: 4.5, guidance: '10 to 15 ft/s' },
  pressure: { name: 'Pressure', limit: 6, guidance: '15 to 20 ft/s, up to 25 ft/s at high pressure' },
} as const satisfies Readonly<Record<string, VelocityLimit>>;
