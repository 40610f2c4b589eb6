import type { Blocker, BlockerKind, GateReview } from '../../../core/contract/gate.ts';
import type { PartAct } from '../../../core/contract/parts.ts';

export type Waived = GateReview['waived'][number];

/** What somebody is about to do from the hoist check. */
export type Doing =
  | { readonly what: 'clear'; readonly blocker: Blocker }
  | { readonly what: 'waive'; readonly blocker: Blocker }
  | { readonly what: 'end waiver'; readonly waived: Waived }
  | { readonly what: 'pass' };

/** The words of the button where one act clears a kind of thing; null where it takes more than one. */
export const actWords: Readonly<Record<BlockerKind, string | null>> = {
  'part not in hand': null,
  'part not fitted': 'Fitted…',
  'part not verified': 'Verify…',
  'trial part on': 'Fit or take off…',
  'borrowed part on': 'Take off or give back…',
  'wrong part not settled': null,
  'bolts not final': 'Bolts…',
  'check failing': null,
  'check unknown': null,
  'measurement missing': null,
  'measurement out': null,
  'fit wrong': null,
  'fit unknown': null,
  'line unfit': null,
  'line unknown': null,
  'line not made': null,
  'job open': 'Job done…',
  'tool missing': 'At hand…',
  'decision open': 'Decide…',
};

/** The acts on a part's units that clear each kind, the usual one first. */
export const clearingPartActs: Readonly<Partial<Record<BlockerKind, readonly PartAct[]>>> = {
  'part not fitted': ['fit'],
  'part not verified': ['verify', 'snug'],
  'trial part on': ['fit', 'take off'],
  'borrowed part on': ['take off', 'give back'],
};
