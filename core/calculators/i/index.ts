import type { Calculator } from '../calculator.ts';
import { roadSpeed } from './road-speed.ts';
import { tyreSize } from './tyre-size.ts';

export const groupI: readonly Calculator[] = [tyreSize, roadSpeed];
