import type { Calculator } from '../calculator.ts';
import { displacement } from './displacement.ts';

export const groupB: readonly Calculator[] = [displacement];
