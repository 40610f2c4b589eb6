/**
 * Bolts of a group: straight (in place, not tightened), snug, final. A final torque figure is the maker's; the manual
 * or the fastener's sheet decides.
 */
import type { Posting } from './accounts.ts';
import type { EntryDraft } from './entry.ts';
import { tooMany } from './limits.ts';
import { payloadChoice, quantityOf } from './payloads.ts';
import { countOn, type SubjectBalances, subjectPosting } from './subject-posting.ts';

type BoltState = 'straight' | 'snug' | 'final';
const stateAccounts = { snug: 'bolts-snug', final: 'bolts-final' } as const;

/** How many bolts of a group are in each state, in thousandths; straight ones are those neither snug nor final. */
export function boltStates(current: SubjectBalances): Record<BoltState, number> {
  const snug = countOn(current, 'bolts-snug');
  const final = countOn(current, 'bolts-final');
  return { straight: countOn(current, 'bolts') - snug - final, snug, final };
}

/** Bolts listed: the group grows by so many straight ones. */
export function postBoltsListed(draft: EntryDraft): Posting[] {
  return [subjectPosting(draft, 'bolts', { quantityMilli: quantityOf(draft) })];
}

/** Snugged: straight → snug. Final: snug, then straight → final. Loosened: final, then snug → straight. */
export function postBoltsTurned(
  draft: EntryDraft,
  current: SubjectBalances,
  kind: 'bolts-snugged' | 'bolts-final' | 'bolts-loosened',
): Posting[] {
  const [sources, to] = turns[kind];
  const asked = quantityOf(draft);
  const postings = take(draft, current, sources, asked);
  if (to !== 'straight') postings.push(subjectPosting(draft, stateAccounts[to], { quantityMilli: asked }));
  return postings;
}

const turns = {
  'bolts-snugged': [['straight'], 'snug'],
  'bolts-final': [['snug', 'straight'], 'final'],
  'bolts-loosened': [['final', 'snug'], 'straight'],
} as const satisfies Record<string, readonly [readonly BoltState[], BoltState]>;

/** Bolts dropped from the group: so many straight ones, or the whole group whatever its state. */
export function postBoltsDropped(draft: EntryDraft, current: SubjectBalances): Posting[] {
  if (draft.quantityMilli !== undefined) {
    const asked = quantityOf(draft);
    const { straight } = boltStates(current);
    if (asked > straight) throw tooMany('straight', straight, asked);
    return [subjectPosting(draft, 'bolts', { quantityMilli: -asked })];
  }
  if (countOn(current, 'bolts') === 0) throw tooMany('bolts', 0, 1000);
  return (['bolts-snug', 'bolts-final', 'bolts'] as const)
    .filter((account) => countOn(current, account) > 0)
    .map((account) => subjectPosting(draft, account, { quantityMilli: -countOn(current, account) }));
}

function take(draft: EntryDraft, current: SubjectBalances, sources: readonly BoltState[], asked: number): Posting[] {
  const from = payloadChoice(draft, 'from', sources);
  const states = from === undefined ? sources : [from];
  const held = boltStates(current);
  const postings: Posting[] = [];
  let open = asked;
  for (const state of states) {
    const taken = Math.min(open, held[state]);
    open -= taken;
    if (state !== 'straight' && taken > 0) {
      postings.push(subjectPosting(draft, stateAccounts[state], { quantityMilli: -taken }));
    }
  }
  if (open > 0) throw tooMany(states.join(' + '), asked - open, asked);
  return postings;
}
