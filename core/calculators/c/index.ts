import type { Calculator } from '../calculator.ts';

export const groupC: readonly Calculator[] = [];
