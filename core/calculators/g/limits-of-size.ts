/** The limits a maker gives for a measured size, and what follows from them; alike in every calculator of the group. */
import { type NumberInput, refuseInput } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';

export const limitInputs = {
  limit_min: {
    label: 'Least allowed',
    hint: 'from the maker’s manual',
    dimension: 'length',
    unit: 'mm',
    must: { atLeast: 0 },
    optional: true,
  },
  limit_max: {
    label: 'Most allowed',
    hint: 'from the maker’s manual',
    dimension: 'length',
    unit: 'mm',
    must: { above: 0 },
    optional: true,
  },
} as const satisfies Record<string, NumberInput>;

interface Limits {
  readonly limit_min: number | undefined;
  readonly limit_max: number | undefined;
}

/**
 * Whether a size lies inside the limits; a size equal to a limit does.
 * @returns undefined where no limit was given: nothing can be said then.
 * @throws Refusal `bad-input` at `limit_min` above `limit_max`.
 */
export function insideLimits(size: number, { limit_min: least, limit_max: most }: Limits): boolean | undefined {
  refuseCrossed({ limit_min: least, limit_max: most });
  if (least === undefined && most === undefined) return undefined;
  return (least === undefined || !fallsShort(size, least)) && (most === undefined || !exceeds(size, most));
}

/**
 * The width between the limits [m], or undefined unless both are given.
 * @throws Refusal `bad-input` at `limit_min` above `limit_max`.
 */
export function toleranceWidth({ limit_min: least, limit_max: most }: Limits): number | undefined {
  refuseCrossed({ limit_min: least, limit_max: most });
  return least === undefined || most === undefined ? undefined : most - least;
}

function refuseCrossed({ limit_min: least, limit_max: most }: Limits): void {
  if (least !== undefined && most !== undefined && exceeds(least, most)) {
    refuseInput(
      'limit_min',
      'The least allowed (limit_min) is above the most allowed (limit_max).',
      'a limit at or below limit_max',
    );
  }
}
