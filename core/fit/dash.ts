import type { DashKind } from './port.ts';
import {
  type DashRow,
  flare37Sizes,
  flare45Sizes,
  invertedFlareSizes,
  orbSizes,
  orfsSizes,
} from './tables/dash-sizes.ts';

/** The sizes of each family that is sized by dash. */
export const dashSizes: Readonly<Record<DashKind, readonly DashRow[]>> = {
  flare37: flare37Sizes,
  flare45: flare45Sizes,
  flareinv: invertedFlareSizes,
  orb: orbSizes,
  orfs: orfsSizes,
};

export const dashRow = (kind: DashKind, dash: number): DashRow | undefined =>
  dashSizes[kind].find((row) => row.dash === dash);

/** Names of the families, as canonical text begins. */
export const dashNames: Readonly<Record<DashKind, string>> = {
  flare37: 'JIC',
  flare45: 'SAE45',
  flareinv: 'INV',
  orb: 'ORB',
  orfs: 'ORFS',
};
