import type { Calculator } from '../calculator.ts';

export const groupD: readonly Calculator[] = [];
