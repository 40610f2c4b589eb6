import type { DashKind, Gender, Port, PortRole } from '../port.ts';

/** What is known besides the text. */
export interface ParseContext {
  readonly role?: PortRole;
  /** Family of a dash size, where its field supplies it: then `-6` alone will do. */
  readonly family?: DashKind | 'hose';
  /** Bore in mm of this dash in the hose type chosen, for hoses written by dash. */
  readonly hoseBore?: (dash: number) => number | undefined;
}

/** Words beside the designation itself. */
export interface Sides {
  readonly gender?: Gender;
  readonly seal?: 'washer' | 'sealant';
  readonly swivel?: true;
  readonly key?: string;
  readonly profile?: string;
  readonly family?: string;
}

export interface Understood {
  readonly ok: true;
  readonly port: Port;
  /** What the builder should look at again. */
  readonly warnings: readonly string[];
  /** How it was read, where that isn't plain from the canonical form. */
  readonly notes: readonly string[];
}

export interface Rejected {
  readonly ok: false;
  readonly message: string;
  /** Ways to write it. */
  readonly write: readonly string[];
}

/** A reader's answer; undefined when the text isn't of its kind. */
export type Outcome = Understood | Rejected | undefined;

export const understood = (
  port: Port,
  warnings: readonly string[] = [],
  notes: readonly string[] = [],
): Understood => ({
  ok: true,
  port,
  warnings,
  notes,
});

export const rejected = (message: string, ...write: readonly string[]): Rejected => ({ ok: false, message, write });

/** A reader of one family of designations: the core text, the words beside it and the context. */
export type Reader = (core: string, sides: Sides, context: ParseContext) => Outcome;

/** The parts of `Sides` that any port may carry. */
export const commonSides = ({ gender, seal, swivel }: Sides): Pick<Sides, 'gender' | 'seal' | 'swivel'> => ({
  ...(gender === undefined ? {} : { gender }),
  ...(seal === undefined ? {} : { seal }),
  ...(swivel === undefined ? {} : { swivel }),
});

/** `3/8`, `1-1/16` or `2` as a number of inches; undefined for a fraction with nothing below the line. */
export function inches(mixed: string): number | undefined {
  const found = /^(?:(\d+)-)?(\d+)(?:\/(\d+))?$/.exec(mixed);
  if (found === null) return undefined;
  const [, whole = '0', top = '0', bottom = '1'] = found;
  return Number(bottom) === 0 ? undefined : Number(whole) + Number(top) / Number(bottom);
}

/** Pattern of `inches`, without anchors. */
export const mixed = String.raw`(?:\d+-\d+\/\d+|\d+\/\d+|\d+)`;
/** A decimal number. */
export const decimal = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
