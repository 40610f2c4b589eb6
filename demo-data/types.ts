/**
 * The demo as plain data. Records are named by short slugs; amounts are decimal text in the currency that stands
 * beside them (US dollars where none does); quantities are plain numbers of the part's unit; days are ISO text.
 */

export interface DemoBuild {
  readonly name: string;
  readonly car: string;
  readonly engine: string;
  readonly startedOn: string;
  readonly targetOn: string;
  readonly note: string;
}

export interface DemoVendor {
  readonly slug: string;
  readonly name: string;
  readonly leadDays: number | null;
  readonly currency?: string;
  readonly account?: string;
  readonly contact?: string;
  readonly note: string;
}

export interface DemoNamed {
  readonly slug: string;
  readonly name: string;
}

export interface DemoPhase extends DemoNamed {
  readonly gate: string;
  readonly plannedStart: string;
  readonly plannedEnd: string;
}

export interface DemoTool extends DemoNamed {
  /** Where it is on the first day; at hand when absent. */
  readonly away?: string;
  readonly dueOn?: string;
  readonly hire?: string;
  readonly note?: string;
}

export interface DemoBin extends DemoNamed {
  readonly place: string;
}

export interface DemoDecision {
  readonly slug: string;
  readonly title: string;
  readonly options: readonly (readonly [text: string, cost: string | null])[];
  readonly owner: string;
  readonly neededBy: string;
  readonly note?: string;
}

export interface DemoBoltGroup extends DemoNamed {
  readonly part: string | null;
  readonly job: string;
  readonly system: string;
  readonly count: number;
  readonly method: 'torque' | 'torque and angle' | 'stretch';
  /** Final torque, newton metres. */
  readonly newtonMetres: string | null;
  readonly angleDeg?: number;
  readonly source: string;
  readonly sequence: string;
  readonly thread: string;
  readonly boltClass: string;
  /** Steps up to the final torque, newton metres; the final figure in one go when absent. */
  readonly steps?: readonly number[];
  readonly pattern: 'star' | 'spiral' | 'custom';
  readonly rows?: number;
  readonly order?: readonly number[];
  readonly lubricant: string;
  readonly note?: string;
}

type DemoLimits = readonly [least: number | null, most: number | null, source: string];

/** A sheet of places × readings; figures in its unit. */
export interface DemoSheet {
  readonly slug: string;
  readonly title: string;
  readonly quantity: 'journal' | 'bore' | 'ring gap' | 'end float' | 'lash' | 'other';
  readonly part: string | null;
  readonly job: string;
  readonly system: string;
  readonly places: readonly string[];
  readonly readings: readonly string[];
  readonly unit: string;
  readonly instrument: string;
  readonly resolution: number;
  readonly uncertainty: number;
  readonly expansionPpm?: number;
  readonly limits?: DemoLimits;
  /** The sheet whose means are taken off, for a clearance and its limits. */
  readonly less?: string;
  readonly clearance?: DemoLimits;
  readonly fit?: {
    readonly way: 'shim' | 'shell';
    readonly target: number;
    readonly step: number;
    readonly sizes: readonly (readonly [name: string, size: number, count: number])[];
    readonly now: readonly (number | null)[];
  };
  readonly note?: string;
}

export interface DemoBudgetLine {
  readonly system: string;
  readonly name: string;
  readonly original: string;
}

export interface DemoJob {
  readonly slug: string;
  readonly title: string;
  readonly system: string;
  /** Guess of the hours; null when nobody has guessed. */
  readonly hours: number | null;
  readonly tools?: readonly string[];
  readonly after?: readonly string[];
  readonly signOff?: true;
  /** Comes after the engine is in. */
  readonly afterHoist?: true;
  /** Where it is done. */
  readonly place?: string;
  /** What it uses up. */
  readonly usesUp?: string;
  readonly note?: string;
}

export interface DemoPart {
  readonly slug: string;
  readonly what: string;
  readonly need: number;
  /** Unit; pieces when absent. */
  readonly unit?: string;
  /** Guess of the price each on the first day; null when there was none. */
  readonly guess: string | null;
  /** Vendor that it was meant to come from; null for own, donor and home-made parts. */
  readonly from: string | null;
  readonly job: string;
  readonly number?: string;
  readonly maker?: string;
  /** 1 first, 3 when absent. */
  readonly priority?: number;
  readonly neededBy?: string;
  readonly optional?: true;
  /** Counts only once its final check is recorded. */
  readonly verify?: true;
  /** Stretched once, then thrown away. */
  readonly stretch?: true;
  readonly attention?: string;
  readonly note?: string;
  /** Kind of part, in the vocabulary of facts. */
  readonly kind?: string;
  readonly facts?: readonly (readonly [key: string, value: string, unit?: string])[];
}

export interface SystemParts {
  readonly system: string;
  readonly parts: readonly DemoPart[];
}

export interface DemoTarget {
  readonly name: string;
  readonly value: string;
  readonly unit?: string;
  readonly source?: string;
}

type DemoRole = 'fluid' | 'gas' | 'fastener' | 'electrical';

/** Where something joins; `place` names where on the car it is when it is of no part line. */
export interface DemoPort {
  readonly slug: string;
  readonly part: string | null;
  readonly place?: string;
  readonly name: string;
  /** As people write it. */
  readonly port: string;
  /** For a fluid when absent. */
  readonly role?: DemoRole;
  readonly medium?: string;
}

/** Two ports that are to join, or a port and something typed. */
export type DemoConnection = {
  readonly title: string;
  readonly one: string;
  readonly role?: DemoRole;
  readonly medium?: string;
  readonly beforeGate?: false;
  readonly note?: string;
} & ({ readonly other: string } | { readonly typed: string });

export interface DemoDeclaredFit {
  readonly shipped: string;
  readonly title: string;
  readonly things: Readonly<Record<string, string>>;
  readonly values: readonly (readonly [path: string, value: string, unit?: string])[];
}
