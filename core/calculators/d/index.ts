import type { Calculator } from '../calculator.ts';
import { blendProperties } from './blend-properties.ts';
import { injectorPower, injectorSize } from './injector-size.ts';

export const groupD: readonly Calculator[] = [blendProperties, injectorSize, injectorPower];
