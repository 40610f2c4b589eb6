import type { Calculator } from '../calculator.ts';
import { fuse } from './fuse.ts';
import { voltageDrop } from './voltage-drop.ts';
import { wireGauge } from './wire-gauge.ts';

export const groupK: readonly Calculator[] = [wireGauge, voltageDrop, fuse];
