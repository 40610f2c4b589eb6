import type { Calculator } from '../calculator.ts';
import {
  lengthConversion,
  massFlowConversion,
  powerConversion,
  temperatureConversion,
  torqueConversion,
  volumeFlowConversion,
} from './conversions.ts';
import { dashSize } from './dash-size.ts';
import { injectorFlowConversion } from './injector-flow.ts';
import { pressureConversion } from './pressure.ts';
import { threadPitch } from './thread-pitch.ts';

export const groupA: readonly Calculator[] = [
  torqueConversion,
  pressureConversion,
  massFlowConversion,
  volumeFlowConversion,
  injectorFlowConversion,
  powerConversion,
  lengthConversion,
  temperatureConversion,
  dashSize,
  threadPitch,
];
