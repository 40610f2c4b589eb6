import type { Calculator } from '../calculator.ts';

export const groupJ: readonly Calculator[] = [];
