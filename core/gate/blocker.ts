/** One thing that stands before the gate. */

export const blockerKinds = [
  'part not in hand',
  'part not fitted',
  'part not verified',
  'trial part on',
  'borrowed part on',
  'wrong part not settled',
  'bolts not final',
  'check failing',
  'check unknown',
  'measurement missing',
  'measurement out',
  'fit wrong',
  'fit unknown',
  'line unfit',
  'line unknown',
  'line not made',
  'job open',
  'tool missing',
  'decision open',
] as const;
export type BlockerKind = (typeof blockerKinds)[number];

export interface BlockerSubject {
  readonly kind:
    | 'part'
    | 'job'
    | 'tool'
    | 'decision'
    | 'bolt-group'
    | 'check'
    | 'measuring-sheet'
    | 'connection'
    | 'declared-fit'
    | 'hose-line';
  readonly id: number;
}

export interface Blocker {
  readonly kind: BlockerKind;
  readonly subject: BlockerSubject;
  readonly title: string;
  /** A few words on where it stands, such as "back-ordered 34 days". */
  readonly standing: string;
  /** A sentence: why it blocks. */
  readonly why: string;
  /** A sentence: what clears it. */
  readonly clears: string;
  /** When work on it may begin; null = not known, and `noDate` says why. */
  readonly readyOn: string | null;
  /** Where that day is a forecast: the day by which it may begin in four of five cases; else null. */
  readonly readyLateOn: string | null;
  /** What a forecast day stands on, a sentence; empty otherwise. */
  readonly readySays: string;
  /** When it is cleared at best; null = no date, and `noDate` says why. */
  readonly clearOn: string | null;
  /** A sentence; empty when there is a date. */
  readonly noDate: string;
  /** Whole days by which the gate moves earlier if this alone were cleared now. */
  readonly daysGained: number;
  /** What it still costs; null = not known. */
  readonly costMinor: number | null;
  /** Hands-on minutes counted for it. */
  readonly minutes: number;
}

/** A blocker before dates are worked out. */
export interface Finding
  extends Pick<Blocker, 'kind' | 'subject' | 'title' | 'standing' | 'why' | 'clears' | 'readyOn' | 'costMinor'> {
  readonly readyLateOn?: string | null;
  readonly readySays?: string;
  /** Why it has no ready day; empty when it has one. */
  readonly notReady: string;
  /** Null when nobody has guessed. */
  readonly minutes: number | null;
  /** Whether the minutes were assumed rather than guessed for this very item. */
  readonly assumed: boolean;
  /** Keys of the findings that must be cleared before work on this one may begin. */
  readonly after: readonly string[];
  /** Keys of the jobs whose end clears this one; their minutes cover it. */
  readonly clearedBy: readonly string[];
  /** Minute of wall time before which work on it can't begin, where it is known more closely than by `readyOn`. */
  readonly fromMinute?: number;
  /** False: the minutes run on the clock. True when left out. */
  readonly hands?: boolean;
  readonly oneSitting?: boolean;
  /** Waits after findings named in `after`, by their keys. */
  readonly lags?: readonly { readonly after: string; readonly minutes: number; readonly on: 'clock' | 'work' }[];
}

/** Names a finding, and the waiver that belongs to it. */
export function blockerKey(kind: BlockerKind, subject: BlockerSubject): string {
  return `${kind}/${subject.kind}/${subject.id}`;
}
