import type { Severity } from './tables/lookalikes.ts';

/** What becomes of two ends put together as they are; `apart` may still be joined by an adapter, `no` may not. */
export interface Joint {
  readonly verdict: 'mates' | 'lookalike' | 'unknown' | 'apart' | 'no';
  readonly reason: string;
  /** What else the joint needs, each a thing to have at hand. */
  readonly needs: readonly string[];
  readonly notes: readonly string[];
  /** What happens if it is assembled all the same. */
  readonly consequence?: string;
  readonly howToTell?: string;
  readonly severity: Severity;
  /** What must be said before it can be judged. */
  readonly missing: readonly string[];
  readonly source: string;
  /** Row of the look-alike catalogue. */
  readonly lookalike?: string;
}

const bare = { needs: [], notes: [], missing: [] } as const;

export const mates = (
  reason: string,
  source: string,
  needs: readonly string[] = [],
  notes: readonly string[] = [],
): Joint => ({ ...bare, verdict: 'mates', reason, needs, notes, severity: 'info', source });

export const unknown = (missing: readonly string[], source: string): Joint => ({
  ...bare,
  verdict: 'unknown',
  reason: `It can't be judged before this is known: ${missing.join('; ')}`,
  severity: 'caution',
  missing,
  source,
});

export const apart = (reason: string, source: string, notes: readonly string[] = []): Joint => ({
  ...bare,
  verdict: 'apart',
  reason,
  notes,
  severity: 'info',
  source,
});

export const no = (reason: string, source: string): Joint => ({
  ...bare,
  verdict: 'no',
  reason,
  severity: 'caution',
  source,
});

interface Alike {
  readonly consequence: string;
  readonly howToTell: string;
  readonly severity: Severity;
  readonly source: string;
  readonly id?: string;
}

export const lookalike = (reason: string, { consequence, howToTell, severity, source, id }: Alike): Joint => ({
  ...bare,
  verdict: 'lookalike',
  reason,
  consequence,
  howToTell,
  severity,
  source,
  ...(id === undefined ? {} : { lookalike: id }),
});
