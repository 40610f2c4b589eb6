import { type FluidFamily, readFluid } from '../../../core/plumbing/fluid.ts';

/** How the lines of one fluid are drawn. Dashes and weight tell them apart without the colour. */
export interface LineStyle {
  readonly id: FluidFamily | 'other';
  readonly label: string;
  /** Width of the stroke, px. */
  readonly weight: number;
  /** Drawn and left out in turn, px; empty = unbroken. */
  readonly dashes: readonly number[];
}

const styles: Readonly<Record<LineStyle['id'], LineStyle>> = {
  fuel: { id: 'fuel', label: 'Fuel', weight: 2.4, dashes: [11, 4] },
  oil: { id: 'oil', label: 'Oil', weight: 3.6, dashes: [] },
  coolant: { id: 'coolant', label: 'Coolant', weight: 2.8, dashes: [14, 4, 3, 4] },
  boost: { id: 'boost', label: 'Boost air', weight: 5, dashes: [20, 5] },
  vacuum: { id: 'vacuum', label: 'Vacuum', weight: 1.6, dashes: [] },
  vapour: { id: 'vapour', label: 'Crankcase vapour', weight: 2.4, dashes: [3, 4] },
  brake: { id: 'brake', label: 'Brake fluid', weight: 1.8, dashes: [9, 3, 2, 3, 2, 3] },
  transmission: { id: 'transmission', label: 'Transmission oil', weight: 3.6, dashes: [24, 5, 6, 5] },
  mix: { id: 'mix', label: 'Water and methanol', weight: 1.8, dashes: [6, 4] },
  other: { id: 'other', label: 'Fluid not known', weight: 1.6, dashes: [2, 6] },
};

/** The style of a line by the fluid that somebody wrote. */
export const styleOf = (fluid: string): LineStyle => styles[readFluid(fluid).family ?? 'other'];

/** The styles that a drawing uses, each once, in the order of the legend. */
export function stylesIn(fluids: readonly string[]): readonly LineStyle[] {
  const used = new Set(fluids.map((fluid) => styleOf(fluid).id));
  return Object.values(styles).filter(({ id }) => used.has(id));
}
