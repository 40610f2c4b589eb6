import type { z } from 'zod';
import type { candidate, partKindRow } from '../../../core/contract/checks.ts';
import type { PartDetail } from '../../../core/contract/parts.ts';

export type Candidate = z.infer<typeof candidate>;
export type PartKindRow = z.infer<typeof partKindRow>;

/** A fact that a candidate may have otherwise, with what the part says now. */
export interface FactLine {
  readonly key: string;
  readonly label: string;
  readonly units: readonly string[];
  readonly unit: string;
  readonly now: string;
}

/** A candidate while it is typed; facts left empty stay as the part's own. */
export interface CandidateDraft {
  /** Keeps the fields of one candidate together while others come and go. */
  readonly number: number;
  readonly label: string;
  readonly facts: Readonly<Record<string, { readonly value: string; readonly unit: string }>>;
  readonly priceMinor: number | null;
  readonly arrivesInDays: number | null;
}

export const emptyCandidate = (number: number): CandidateDraft => ({
  number,
  label: `Candidate ${number}`,
  facts: {},
  priceMinor: null,
  arrivesInDays: null,
});

const plain = (key: string): string => key.trim().toLowerCase();

/** The facts of the part's kind, then whatever else is written down about it. */
export function factLines({ row, facts }: PartDetail, kinds: readonly PartKindRow[]): readonly FactLine[] {
  const terms = kinds.find(({ kind }) => kind === row.kind)?.facts ?? [];
  const named = new Set(terms.map(({ key }) => plain(key)));
  const ofKind = terms.map(({ key, label, units, unit }): FactLine => {
    const own = facts.find((one) => plain(one.key) === plain(key));
    const now = own === undefined ? '' : `${own.value} ${own.unit}`.trim();
    return { key, label, units, unit: own?.unit || (unit === '-' ? '' : unit), now };
  });
  const free = facts
    .filter(({ key }) => !named.has(plain(key)))
    .map(({ key, value, unit }): FactLine => ({ key, label: key, units: [], unit, now: `${value} ${unit}`.trim() }));
  return [...ofKind, ...free];
}

/** A typed candidate as the workbook takes it. */
export function candidateOf(draft: CandidateDraft, part: number, lines: readonly FactLine[]): Candidate {
  const facts = lines.flatMap(({ key, unit }) => {
    const typed = draft.facts[key];
    if (typed === undefined || typed.value.trim() === '') return [];
    return [{ key, value: typed.value.trim(), unit: typed.unit || unit }];
  });
  const { label, priceMinor, arrivesInDays } = draft;
  return { label: label.trim(), part, facts, priceMinor, arrivesInDays };
}
