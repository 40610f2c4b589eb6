import type { Calculator } from '../calculator.ts';

export const groupA: readonly Calculator[] = [];
