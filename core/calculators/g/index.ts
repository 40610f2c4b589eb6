import type { Calculator } from '../calculator.ts';

export const groupG: readonly Calculator[] = [];
