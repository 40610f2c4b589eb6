/** Folding all entries again, to compare with what is stored. */
import type { Posting } from './accounts.ts';
import { isCountKind, postCount } from './counts.ts';
import type { Entry } from './entry.ts';
import { addMovement, emptyPart, lotIn, lotOfDraft, type MutablePart, type PartState } from './part-state.ts';
import { isPartKind, post } from './post.ts';
import { reversalPostings } from './reverse.ts';
import type { SubjectBalances } from './subject-posting.ts';

/** What one entry moved. */
export interface FoldedEntry {
  readonly seq: number;
  readonly postings: readonly Posting[];
}

type MutableBalances = { -readonly [A in keyof SubjectBalances]: SubjectBalances[A] };

/**
 * Derives every entry's postings anew from what the entries say, in their sequence. Records aren't needed: what a
 * record forbids (a stretched fastener used again) was refused when it was written and moves nothing.
 * @param reversed sequence numbers of entries that are reversed by later ones; only their postings are kept in memory.
 * Without it all are.
 */
export class LedgerFold {
  private readonly parts = new Map<number, MutablePart>();
  private readonly subjects = new Map<string, MutableBalances>();
  private readonly kept = new Map<number, readonly Posting[]>();
  private readonly reversed: ReadonlySet<number> | undefined;

  constructor(reversed?: ReadonlySet<number>) {
    this.reversed = reversed;
  }

  /** Adds the next entry. @throws Refusal when it could not have been let in, Error when it reverses an unknown one. */
  add(entry: Entry): FoldedEntry {
    const postings = this.derive(entry);
    if (this.reversed?.has(entry.seq) ?? true) this.kept.set(entry.seq, postings);
    const lot = lotOfDraft(entry);
    if (lot !== undefined && entry.part !== undefined) lotIn(this.part(entry.part, entry.build), lot);
    for (const posting of postings) this.apply(entry, posting);
    return { seq: entry.seq, postings };
  }

  /** The part lines as they stand now. */
  states(): Iterable<PartState> {
    return this.parts.values();
  }

  private derive(entry: Entry): readonly Posting[] {
    if (entry.reverses !== undefined) {
      const first = this.kept.get(entry.reverses);
      if (first === undefined) throw new Error(`Entry ${entry.seq} reverses ${entry.reverses}, which is not there`);
      return reversalPostings(first);
    }
    if (isPartKind(entry.kind)) {
      if (entry.part === undefined) throw new Error(`Entry ${entry.seq} names no part line`);
      return post(this.part(entry.part, entry.build), entry);
    }
    if (!isCountKind(entry.kind)) throw new Error(`Entry ${entry.seq} is of kind “${entry.kind}” and reverses nothing`);
    const current = this.subject(keyOf(entry));
    const contingency = this.subject(`build ${entry.build}`).contingency;
    return postCount(entry, contingency === undefined ? current : { ...current, contingency });
  }

  private apply(entry: Entry, posting: Posting): void {
    if (posting.part !== 0) addMovement(this.part(posting.part, entry.build), posting, posting.order);
    // A waiver may be about a part line; its count is no part of the line's state.
    if (posting.part !== 0 && posting.account !== 'waived') return;
    const balances = this.subject(keyOf(posting));
    const before = balances[posting.account];
    balances[posting.account] = {
      quantityMilli: (before?.quantityMilli ?? 0) + posting.quantityMilli,
      amountMinor: (before?.amountMinor ?? 0) + posting.amountMinor,
    };
  }

  private part(part: number, build: number): MutablePart {
    const known = this.parts.get(part);
    if (known !== undefined) return known;
    const made = emptyPart({ part, build });
    this.parts.set(part, made);
    return made;
  }

  private subject(key: string): MutableBalances {
    const known = this.subjects.get(key);
    if (known !== undefined) return known;
    const made: MutableBalances = {};
    this.subjects.set(key, made);
    return made;
  }
}

/** Every entry with the postings that it must have made. @throws as `LedgerFold.add`. */
export function* foldEntries(entries: Iterable<Entry>, reversed?: ReadonlySet<number>): Generator<FoldedEntry> {
  const fold = new LedgerFold(reversed);
  for (const entry of entries) yield fold.add(entry);
}

function keyOf(of: {
  readonly subjectKind?: Posting['subjectKind'];
  readonly subject?: number;
  readonly part?: number;
}): string {
  return of.subjectKind ? `${of.subjectKind} ${of.subject ?? 0}` : `part ${of.part ?? 0}`;
}
