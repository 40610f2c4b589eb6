/**
 * What the hoist check is told about a build. The caller folds these from the ledger and the records; nothing here is
 * read from disk or from a clock. Dates are ISO days, amounts minor units of the build's currency, quantities
 * thousandths.
 */
import type { WorkingTime } from '../schedule/working-time.ts';
import type { Unit } from '../units/quantity.ts';
import type { BlockerKind, BlockerSubject } from './blocker.ts';

/** A part line. Each of its units stands in one of the counts, except that `borrowedOnMilli` are among those on the engine. */
export interface PartFact {
  readonly id: number;
  readonly description: string;
  readonly unit: Unit;
  readonly needMilli: number;
  /** On the engine to stay: loose or unrecorded, brought to snug, and finally torqued, measured or checked. */
  readonly fittedMilli: number;
  readonly snugMilli: number;
  readonly verifiedMilli: number;
  readonly trialFittedMilli: number;
  /** Units on the engine (fitted, snug or verified) that belong to somebody else. */
  readonly borrowedOnMilli: number;
  readonly lentMilli: number;
  /** Wrong or faulty units that have been neither exchanged nor refunded. */
  readonly rejectedUnsettledMilli: number;
  /** Accepted, ours and off the engine. */
  readonly inHandMilli: number;
  /** Arrived and not yet looked at. */
  readonly inspectionMilli?: number;
  /** Outstanding at vendors, back-orders left out. */
  readonly onOrderMilli: number;
  readonly backOrderedMilli: number;
  /** Day of the oldest back-order notice that still stands. */
  readonly backOrderedOn?: string | null;
  readonly needsVerification: boolean;
  readonly optional: boolean;
  /** The vendor's latest promise, and the day by which it is here as likely as not; the forecast goes first. */
  readonly promisedOn?: string | null;
  readonly expectedOn?: string | null;
  /** By this day it is here in four of five cases; and what both days stand on, a sentence. */
  readonly expectedLateOn?: string | null;
  readonly expectedSays?: string;
  readonly lentDueOn?: string | null;
  /** Commitment and remaining estimate of the line. */
  readonly costToComeMinor: number;
  /** Whether that cost is known: false when units are still to be bought and nobody has guessed their price. */
  readonly estimateKnown: boolean;
  /** Work to fit what is missing, when no job of the plan covers it. */
  readonly fittingMinutes?: number | null;
}

export interface JobFact {
  readonly id: number;
  readonly title: string;
  readonly done: boolean;
  /** Hands-on minutes still to work; null when nobody has guessed. */
  readonly minutesGuess: number | null;
  /** Must be done before the gate. Jobs before such a job must be, too, whatever they say. */
  readonly beforeGate: boolean;
  readonly earlier: readonly number[];
  readonly parts: readonly number[];
  readonly tools: readonly number[];
  readonly decisions?: readonly number[];
  /** Minute of wall time that it can't begin before: its own day, a wait after a job that is done. */
  readonly fromMinute?: number;
  /** False: its minutes run on the clock. True when left out. */
  readonly hands?: boolean;
  readonly oneSitting?: boolean;
  /** Waits after earlier jobs. */
  readonly lags?: readonly { readonly job: number; readonly minutes: number; readonly on: 'clock' | 'work' }[];
  /** Why it counts as open although it was worked on, such as a reading outside its limits. */
  readonly because?: string;
}

export interface ToolFact {
  readonly id: number;
  readonly name: string;
  readonly atHand: boolean;
  readonly dueOn?: string | null;
  /** Hire or price; 0 when it costs nothing, null when not known. */
  readonly hireMinor?: number | null;
}

export interface DecisionFact {
  readonly id: number;
  readonly title: string;
  readonly open: boolean;
  readonly neededBy?: string | null;
  /** Gap between the cheapest and the dearest option; null when not known. */
  readonly costSpreadMinor?: number | null;
}

export interface BoltGroupFact {
  readonly id: number;
  readonly name: string;
  /** Whole bolts. */
  readonly count: number;
  readonly snugCount: number;
  readonly finalCount: number;
  /** Whether the maker's method (torque, angle or stretch) and its value are recorded. */
  readonly methodKnown: boolean;
  readonly minutes?: number | null;
}

/** A check of the build, worked out: a figure from its parts and targets held against a limit. */
export interface CheckFact {
  readonly id: number;
  readonly title: string;
  readonly verdict: 'holds' | 'close' | 'fails' | 'lacks data';
  /** A sentence: the figure against its limit, or what is lacking. */
  readonly says: string;
}

/** A measuring sheet, worked out. */
export interface SheetFact {
  readonly id: number;
  readonly title: string;
  readonly standing: 'in limits' | 'missing' | 'out';
  /** A sentence: which places are missing or out. */
  readonly says: string;
}

/** Two ports that are to join, or another fit of the build, worked out. */
export interface FitFact {
  readonly kind: 'connection' | 'declared-fit';
  readonly id: number;
  readonly title: string;
  /** Fits: it joins, by the adapter that was chosen, or somebody accepted it with a reason. */
  readonly verdict: 'fits' | 'wrong' | 'unknown';
  /** A few words: "look-alike", "does not fit", "lacks a pitch". */
  readonly standing: string;
  readonly says: string;
  readonly clears: string;
}

/** A hose line, worked out. */
export interface LineFact {
  readonly id: number;
  readonly title: string;
  readonly standing: 'made' | 'unfit' | 'not made';
  /** A sentence: which check fails, or which steps are open. */
  readonly says: string;
  /** A sentence: what a check lacks; left out where every check has its answer. */
  readonly lacks?: string;
  /** Work left to make it. */
  readonly minutes: number;
}

export interface WaiverFact {
  readonly kind: BlockerKind;
  readonly subject: BlockerSubject;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  /** Last day it holds; null for no end. */
  readonly until: string | null;
  /** The ledger entry, so that the waiver can be ended. */
  readonly seq: number;
}

export interface GateFacts {
  readonly gateName: string;
  readonly parts: readonly PartFact[];
  readonly jobs: readonly JobFact[];
  readonly tools: readonly ToolFact[];
  readonly decisions: readonly DecisionFact[];
  readonly boltGroups: readonly BoltGroupFact[];
  readonly checks?: readonly CheckFact[];
  readonly sheets?: readonly SheetFact[];
  readonly fits?: readonly FitFact[];
  readonly lines?: readonly LineFact[];
  readonly waivers: readonly WaiverFact[];
}

/** Minutes to count where nobody has guessed; null leaves the item, and so the gate, without a date. */
export interface AssumedMinutes {
  readonly fitting: number | null;
  readonly verifying: number | null;
  readonly perBolt: number | null;
  readonly job: number | null;
}

export const nothingAssumed: AssumedMinutes = { fitting: null, verifying: null, perBolt: null, job: null };

/** How days and quantities stand in sentences. */
export interface GateWords {
  readonly day: (date: string) => string;
  readonly quantity: (milli: number, unit: Unit) => string;
}

export interface GateOptions {
  /** Wall time YYYY-MM-DDTHH:MM. */
  readonly now: string;
  /** The builder's hours; null when none are set, and then nothing that takes work has a date. */
  readonly workingTime: WorkingTime | null;
  readonly assume: AssumedMinutes;
  readonly words: GateWords;
  /** Kinds that can't be waived. */
  readonly noWaiver?: readonly BlockerKind[];
}
