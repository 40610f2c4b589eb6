import type { Calculator } from '../calculator.ts';

export const groupF: readonly Calculator[] = [];
