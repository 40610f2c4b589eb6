// Source: ASTM B258 diameter law and annealed copper standard, from memory; agrees with the NBS copper wire table, seen in public reproduction.
import type { NumberInput } from '../calculator.ts';

/** Resistivity of annealed copper at 20 °C [Ω·m]. */
export const copperResistivity = 0.017241e-6;

/** Change of the resistance of copper with temperature, of its value at 20 °C [1/K]. */
const temperatureCoefficient = 0.00393;

export const awgInput = {
  kind: 'integer',
  label: 'Wire gauge, AWG',
  hint: 'write 00 as -1, 000 as -2, 0000 as -3',
  dimension: 'number',
  unit: '-',
  must: { atLeast: -3, atMost: 40 },
} as const satisfies NumberInput;

/** Diameter of a solid wire [m] of gauge `awg`, −3 (0000) to 40. */
export function awgDiameter(awg: number): number {
  return 0.005 * 0.0254 * 92 ** ((36 - awg) / 39);
}

/** Cross-section of a solid wire [m²] of gauge `awg`. */
export function awgArea(awg: number): number {
  return (Math.PI / 4) * awgDiameter(awg) ** 2;
}

/** Resistance of copper at a temperature [K], against that at 20 °C. Linear: not for deep cold, where it falls to 0. */
export function resistanceRise(temperature: number): number {
  return 1 + temperatureCoefficient * (temperature - 293.15);
}
