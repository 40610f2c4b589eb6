import type { LeadBasis } from '../purchasing/lead-time.ts';
import type { WorkingPerson } from '../schedule/calendar.ts';
import type { ForecastArrival, ForecastGate, ForecastJob } from './network.ts';

/** So many days are looked ahead; what lies beyond is given the last of them. */
export const daysAhead = 3653;

/** Something that the forecast can't count, and why. */
export interface ForecastGap {
  readonly kind: 'job' | 'part' | 'tool';
  readonly id: number;
  readonly title: string;
  readonly why: string;
}

/** What the day of a delivery stands on. */
export interface ArrivalGrounds {
  readonly basis: LeadBasis;
  /** Past lines or promises behind it. */
  readonly count: number;
  readonly longerThanAnyPast: boolean;
  readonly says: string;
  /** Days from now. */
  readonly p50Days: number;
  readonly p80Days: number;
  /** As likely as not it is here by this day, and by the other in four of five cases. */
  readonly p50On: string;
  readonly p80On: string;
}

/** A delivery that a gate or a job waits for, and what its day stands on. */
export interface ComingPart extends ArrivalGrounds {
  /** The delivery's id in the network. */
  readonly arrival: string;
  readonly part: number;
  readonly description: string;
  readonly vendor: number | null;
  readonly vendorName: string;
  /** Null when nothing is ordered yet. */
  readonly line: number | null;
}

export interface ForecastFacts {
  /** Who works, by the calendar. */
  readonly people: readonly WorkingPerson[];
  readonly jobs: readonly ForecastJob[];
  readonly arrivals: readonly ForecastArrival[];
  readonly gates: readonly ForecastGate[];
  readonly coming: readonly ComingPart[];
  readonly gaps: readonly ForecastGap[];
  /** Anything at all is written down: a job or a part line. */
  readonly anything: boolean;
}

/** All that a forecast needs, as plain data: it can be sent to a worker and run there. */
export interface ForecastTask {
  readonly facts: ForecastFacts;
  /** The minute of wall time that it begins at. */
  readonly nowMinute: number;
}
