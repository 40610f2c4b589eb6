import type { Calculator } from '../calculator.ts';

export const groupK: readonly Calculator[] = [];
