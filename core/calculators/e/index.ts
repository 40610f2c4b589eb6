import type { Calculator } from '../calculator.ts';
import { hoseBore } from './hose-bore.ts';
import { pressureDrop } from './pressure-drop.ts';
import { velocityCheck } from './velocity-check.ts';

export const groupE: readonly Calculator[] = [hoseBore, pressureDrop, velocityCheck];
