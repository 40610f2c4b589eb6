/** The one list of calculators; menus, search, forms, help and the command line are drawn from it. */
import { groupA } from './a/index.ts';
import { groupB } from './b/index.ts';
import { groupC } from './c/index.ts';
import type { Calculator } from './calculator.ts';
import { groupD } from './d/index.ts';
import { groupE } from './e/index.ts';
import { groupF } from './f/index.ts';
import { groupG } from './g/index.ts';
import { groupH } from './h/index.ts';
import { groupI } from './i/index.ts';
import { groupJ } from './j/index.ts';
import { groupK } from './k/index.ts';

export const calculators: readonly Calculator[] = [
  groupA,
  groupB,
  groupC,
  groupD,
  groupE,
  groupF,
  groupG,
  groupH,
  groupI,
  groupJ,
  groupK,
].flat();

/** A calculator by its id (`B2`, `b2`) or slug, or undefined. */
export function findCalculator(named: string): Calculator | undefined {
  const asked = named.trim().toLowerCase();
  return calculators.find(({ id, slug }) => id.toLowerCase() === asked || slug === asked);
}
