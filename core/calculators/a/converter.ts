/** What the plain conversions have in common: one value in, the same value in another unit out. */
import type { Dimension } from '../../units/dimensions.ts';
import { type Calculator, calculator, type Given, type Must, type Usual } from '../calculator.ts';

interface Conversion {
  readonly id: string;
  readonly slug: string;
  readonly title: string;
  readonly about: string;
  /** What is converted, as a form calls it. */
  readonly label: string;
  readonly hint?: string;
  readonly dimension: Dimension;
  /** Unit of the result when none is asked for. */
  readonly unit: string;
  readonly must?: Must;
  readonly usual?: Usual;
  readonly formula: string;
  readonly notes: readonly string[];
  readonly caution?: string;
  readonly example: Given;
}

export const specialPublication811 =
  'NIST SP 811, Appendix B; the factors are exact, or products of exact ones (recomputed, equal to the printed digits)';

export function converter(conversion: Conversion): Calculator {
  const { label, hint, dimension, unit, must, usual, example, ...facts } = conversion;
  return calculator({
    ...facts,
    source: specialPublication811,
    inputs: {
      value: {
        label,
        dimension,
        unit,
        ...(hint === undefined ? {} : { hint }),
        ...(must === undefined ? {} : { must }),
        ...(usual === undefined ? {} : { usual }),
      },
    },
    outputs: { result: { label: 'In the unit asked for', dimension, unit } },
    example: { value: example },
    compute: ({ value }) => ({ outputs: { result: value } }),
  });
}
