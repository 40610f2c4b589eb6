import type { Calculator } from '../calculator.ts';

export const groupH: readonly Calculator[] = [];
