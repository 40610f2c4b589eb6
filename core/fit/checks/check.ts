import type { PortRole } from '../port.ts';
import type { Severity } from '../tables/lookalikes.ts';

/** From where a pressure counts: from vacuum or from the air outside. */
export type PressureReference = 'abs' | 'gauge';

/** A measured value; unit and reference are part of it. */
export interface Quantity {
  readonly value: number;
  readonly unit?: string;
  readonly ref?: PressureReference;
}

/** A span; a side left out is open. */
export interface Range {
  readonly min?: number;
  readonly max?: number;
  readonly unit?: string;
  readonly ref?: PressureReference;
}

/** What is known of the things compared, by name: `{ head: { coolant_ports: 2 } }`. */
export type FactValue = number | string | boolean | null | Quantity | Range | readonly FactValue[] | Facts;
export interface Facts {
  readonly [name: string]: FactValue | undefined;
}

/**
 * One side of a check: a dotted path into the facts (text), a literal number or yes/no, `{ text }`, a range, a list of
 * sides, or a value with its unit, where `value` is a number or a path.
 */
export type Operand =
  | string
  | number
  | boolean
  | { readonly text: string }
  | Range
  | readonly Operand[]
  | {
      readonly value: number | string;
      readonly unit?: string;
      readonly ref?: PressureReference;
      readonly margin?: number;
    };

export const comparisons = [
  'eq',
  'ne',
  'near',
  'le',
  'ge',
  'lt',
  'gt',
  'within',
  'covers',
  'in',
  'subset',
  'contains',
  'mates',
  'sum_le',
  'sum_ge',
] as const;
export type Comparison = (typeof comparisons)[number];

interface Common {
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  /** Paths and the values that they must have for the check to be asked at all. */
  readonly when?: Readonly<Record<string, string | number | boolean>>;
  /** Texts; `{left}`, `{right}`, `{margin}`, `{missing}` and `{reason}` are filled in. */
  readonly pass: string;
  readonly fail: string;
  readonly unknown: string;
  /** Where the figure in it comes from, if it has one. */
  readonly source?: string;
  /** One line, where a wrong joint can hurt somebody. */
  readonly caution?: string;
}

/** Compares an attribute of one thing with an attribute of another. */
export interface ComparingCheck extends Common {
  readonly left: Operand;
  readonly op: Comparison;
  readonly right: Operand;
  /** Largest difference of `near`, in the unit of the right side. */
  readonly tol?: number;
  /** What `mates` joins. */
  readonly role?: PortRole;
}

/** Several checks as one. */
export interface GroupCheck extends Common {
  readonly op: 'all' | 'any';
  readonly of: readonly FitCheck[];
}

/** A fit as data: no code per check. */
export type FitCheck = ComparingCheck | GroupCheck;

export type CheckOutcome = 'pass' | 'fail' | 'unknown' | 'not asked';

export interface CheckResult {
  readonly id: string;
  readonly title: string;
  readonly outcome: CheckOutcome;
  /** Of a failed check only. */
  readonly severity?: Severity;
  readonly op: FitCheck['op'];
  /** The two sides in words. */
  readonly left: string;
  readonly right: string;
  /** What is left before it fails (negative: by how much it fails), in `unit`. */
  readonly marginLeft?: number;
  readonly unit?: string;
  readonly text: string;
  /** Paths without a value. */
  readonly missing: readonly string[];
  /** What was assumed. */
  readonly notes: readonly string[];
  readonly source?: string;
  readonly caution?: string;
  /** Of the checks inside. */
  readonly of?: readonly CheckResult[];
}
