import type { Calculator } from '../calculator.ts';
import { beltMarks } from './belt-marks.ts';
import { camDegreeing } from './cam-degreeing.ts';
import { pistonToValve } from './piston-to-valve.ts';
import { toothError } from './tooth-error.ts';

export const groupH: readonly Calculator[] = [beltMarks, toothError, camDegreeing, pistonToValve];
