import type { Calculator } from '../calculator.ts';
import { chamberVolume } from './chamber-volume.ts';
import { compressionRatio } from './compression-ratio.ts';
import { displacement } from './displacement.ts';
import { overbore } from './overbore.ts';

export const groupB: readonly Calculator[] = [displacement, compressionRatio, chamberVolume, overbore];
