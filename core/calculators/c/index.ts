import type { Calculator } from '../calculator.ts';
import { airMassFlow } from './air-mass-flow.ts';
import { manifoldPressureForPower } from './manifold-pressure.ts';
import { pressureRatio } from './pressure-ratio.ts';

export const groupC: readonly Calculator[] = [airMassFlow, manifoldPressureForPower, pressureRatio];
