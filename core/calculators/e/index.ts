import type { Calculator } from '../calculator.ts';

export const groupE: readonly Calculator[] = [];
