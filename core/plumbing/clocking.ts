import { named } from './field-labels.ts';
import type { Line } from './line.ts';

export interface Clocking {
  /** Only where both ends are bent and one at least can't swivel. */
  readonly applies: boolean;
  /** Clockwise from 12 o'clock. */
  readonly clockDeg?: number | undefined;
  readonly toleranceDeg?: number | undefined;
  readonly text: string;
}

/** Hose up to this is clocked within the smaller tolerance [mm]. */
const shortUpTo = 600;
const shortTolerance = 3;
const longTolerance = 5;
const how = "Hold the hose with the far end pointing to 12 o'clock and the near end toward you; count clockwise.";
const twist = 'Twisted hose fails early: never twist it to fit.';

/** How the two bent ends of a line stand to each other. Tolerances: common practice, no published source. */
export function clockingOf({ ends, clockDeg }: Line, freeHoseMm: number): Clocking {
  const bent = ends.every(({ angleDeg }) => angleDeg !== 0);
  if (!bent || ends.every(({ swivel }) => swivel === true)) {
    return { applies: false, text: `The ends need no clocking. ${twist}` };
  }
  const toleranceDeg = freeHoseMm <= shortUpTo ? shortTolerance : longTolerance;
  const text =
    clockDeg === undefined
      ? `Both ends are bent: say how they stand to each other (${named('clock_deg')}). ${how}`
      : `Clock the near end at ${clockDeg}° ± ${toleranceDeg}°. ${how} ${twist}`;
  return { applies: true, clockDeg, toleranceDeg, text };
}
