import type { Calculator } from '../calculator.ts';
import { bendRadius } from './bend-radius.ts';
import { hoseBore } from './hose-bore.ts';
import { hoseCutLength } from './hose-cut-length.ts';
import { oilDrain } from './oil-drain.ts';
import { pressureDrop } from './pressure-drop.ts';
import { velocityCheck } from './velocity-check.ts';

export const groupE: readonly Calculator[] = [
  hoseBore,
  pressureDrop,
  velocityCheck,
  oilDrain,
  hoseCutLength,
  bendRadius,
];
