import type { Calculator } from '../calculator.ts';
import { airMassFlow } from './air-mass-flow.ts';
import { compressorOutlet } from './compressor-outlet.ts';
import { correctedFlow } from './corrected-flow.ts';
import { manifoldPressureForPower } from './manifold-pressure.ts';
import { powerCorrection } from './power-correction.ts';
import { pressureRatio } from './pressure-ratio.ts';
import { sensorRange } from './sensor-range.ts';
import { standardAtmosphere } from './standard-atmosphere.ts';

export const groupC: readonly Calculator[] = [
  airMassFlow,
  manifoldPressureForPower,
  pressureRatio,
  compressorOutlet,
  correctedFlow,
  standardAtmosphere,
  powerCorrection,
  sensorRange,
];
