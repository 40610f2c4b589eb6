import type { Calculator } from '../calculator.ts';
import { bearingClearance } from './bearing-clearance.ts';
import { endFloat } from './end-float.ts';
import { pistonToWall } from './piston-to-wall.ts';
import { ringEndGap } from './ring-end-gap.ts';
import { severalReadings } from './several-readings.ts';
import { temperatureCorrection } from './temperature-correction.ts';
import { valveLashShim } from './valve-lash-shim.ts';

export const groupG: readonly Calculator[] = [
  bearingClearance,
  pistonToWall,
  ringEndGap,
  endFloat,
  valveLashShim,
  severalReadings,
  temperatureCorrection,
];
