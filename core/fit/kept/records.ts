/** Ports, connections and declared fits as a workbook keeps them, with what is known of the part lines they belong to. */
import type { PortRole } from '../port.ts';

/** A part line, as far as a fit asks. */
export interface FitPart {
  readonly id: number;
  readonly description: string;
  /** How it stands: "needed", "on order", "in hand", "fitted"; empty when nothing of it is needed or here. */
  readonly standing: string;
  /** On the list; false once it was dropped. */
  readonly listed: boolean;
  readonly facts: readonly { readonly key: string; readonly value: string; readonly unit: string }[];
}

export interface KeptPort {
  readonly id: number;
  readonly revision: number;
  readonly name: string;
  /** Null for the engine's own, at `place`. */
  readonly part: number | null;
  readonly place: string;
  readonly role: PortRole;
  readonly medium: string;
  readonly designation: string;
  readonly retired: boolean;
  readonly note: string;
}

/** One side: a kept port, or a designation typed for something that isn't on the list. */
export interface KeptSide {
  readonly port: number | null;
  readonly typed: string;
}

/** A wrong fit that somebody accepted, for the very texts in `for`. */
export interface Acceptance {
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly for: string;
}

export interface KeptConnection {
  readonly id: number;
  readonly revision: number;
  readonly title: string;
  readonly one: KeptSide;
  readonly other: KeptSide;
  readonly role: PortRole;
  readonly medium: string;
  readonly pressureBar: number | null;
  readonly accepted: Acceptance | null;
  readonly adapter: { readonly pieces: readonly string[]; readonly parts: readonly number[] } | null;
  readonly beforeGate: boolean;
  readonly note: string;
}

/** A value of a declared fit as it was typed. */
export interface FitValue {
  readonly path: string;
  readonly value: string;
  readonly unit: string;
}

export interface KeptDeclaredFit {
  readonly id: number;
  readonly revision: number;
  readonly title: string;
  readonly shipped: string;
  readonly rule: Readonly<Record<string, unknown>> | null;
  readonly things: Readonly<Record<string, number>>;
  readonly values: readonly FitValue[];
  readonly accepted: Acceptance | null;
  readonly beforeGate: boolean;
  readonly note: string;
}

/** What fits are judged by: all ports and part lines of a build, its target sheet. */
export interface FitContext {
  readonly ports: ReadonlyMap<number, KeptPort>;
  readonly parts: ReadonlyMap<number, FitPart>;
  readonly targets: readonly { readonly name: string; readonly value: string; readonly unit: string }[];
}

/** Whether something is still wrong after adapter and acceptance. */
export type Stands = 'fits' | 'wrong' | 'unknown';

/** An acceptance as shown; `lapsed` when a side has changed since. */
export interface AcceptanceShown {
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly lapsed: boolean;
}

/** What an acceptance is good for, of these texts in whatever order; no longer than a record takes. */
export const acceptanceOf = (texts: readonly string[]): string => texts.toSorted().join(' | ').slice(0, 600);

export const shownAcceptance = (accepted: Acceptance | null, now: string): AcceptanceShown | null =>
  accepted === null
    ? null
    : { reason: accepted.reason, by: accepted.by, on: accepted.on, lapsed: accepted.for !== now };
