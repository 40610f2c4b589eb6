import type { Calculator } from '../calculator.ts';
import { blendProperties } from './blend-properties.ts';
import { deadTime } from './dead-time.ts';
import { fuelLine } from './fuel-line.ts';
import { injectorFlowAtPressure } from './injector-flow-at-pressure.ts';
import { injectorPower, injectorSize } from './injector-size.ts';
import { pump } from './pump.ts';
import { tankBlend } from './tank-blend.ts';

export const groupD: readonly Calculator[] = [
  blendProperties,
  tankBlend,
  injectorSize,
  injectorPower,
  injectorFlowAtPressure,
  deadTime,
  pump,
  fuelLine,
];
