import type { Calculator } from '../calculator.ts';

export const groupI: readonly Calculator[] = [];
