import type { PartAct } from '../../../../core/contract/parts.ts';
import type { UnitMoveKind } from '../../../../core/ledger/moves.ts';

/** The kind of entry that an act on units makes. Acts that bring units in, or don't move any, have none. */
export const moveOfAct: Partial<Record<PartAct, UnitMoveKind>> = {
  accept: 'accepted',
  reject: 'rejected',
  'send back': 'sent-back',
  allocate: 'allocated',
  release: 'released',
  'trial-fit': 'trial-fitted',
  fit: 'fitted',
  'take off': 'taken-off',
  snug: 'snugged',
  verify: 'verified',
  withdraw: 'verification-withdrawn',
  lend: 'lent',
  'come back': 'came-back',
  'give back': 'given-back',
  lose: 'lost',
  scrap: 'scrapped',
  'use up': 'consumed',
};
