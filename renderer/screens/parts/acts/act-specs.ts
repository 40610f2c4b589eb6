import type { PartAct, PartRow } from '../../../../core/contract/parts.ts';
import type { Bucket, UnitMoveKind } from '../../../../core/ledger/moves.ts';
import { moves } from '../../../../core/ledger/moves.ts';

/** What the form of an act asks for besides the quantity and the day. */
export type Asked =
  | 'reason'
  | 'rejectReason'
  | 'bin'
  | 'owner'
  | 'dueOn'
  | 'value'
  | 'by'
  | 'torque'
  | 'takenTo'
  | 'acceptedTo';

export type ActGroup = 'Arriving' | 'On the engine' | 'From elsewhere' | 'Leaving';

export interface ActSpec {
  readonly act: PartAct;
  /** The act as the words of a button. */
  readonly label: string;
  readonly group: ActGroup;
  readonly asks: readonly Asked[];
  /** Asked fields that can't be left empty. */
  readonly needs: readonly Asked[];
  /** Why the act is out of reach when no line has units for it. */
  readonly unless: string;
  /** Whether the line may have units that the act could move; the workbook has the last word. */
  readonly applies: (row: PartRow, alone: boolean) => boolean;
}

const figureOf: Partial<Record<Bucket, (row: PartRow) => number>> = {
  shelf: (row) => row.shelfMilli,
  allocated: (row) => row.allocatedMilli,
  inspection: (row) => row.inspectionMilli,
  lent: (row) => row.lentMilli,
  rejected: (row) => row.rejectedMilli,
  'trial-fitted': (row) => row.trialMilli,
  fitted: (row) => row.fittedMilli,
  snug: (row) => row.snugMilli,
  verified: (row) => row.verifiedMilli,
};

/** Whether any place that this kind of entry takes units from holds some, by the workbook's own table of moves. */
const holdsFor = (kind: UnitMoveKind) => (row: PartRow) =>
  moves[kind].from.some((bucket) => (figureOf[bucket]?.(row) ?? 0) > 0);

const spec = (
  act: PartAct,
  label: string,
  group: ActGroup,
  applies: ActSpec['applies'],
  unless: string,
  asks: readonly Asked[] = [],
  needs: readonly Asked[] = [],
): ActSpec => ({ act, label, group, asks, needs, unless, applies });

const wanted = (row: PartRow, alone: boolean) => alone || row.uncoveredMilli > 0;
const covered = 'Everything needed is in hand or on the way.';
const notHere = 'Nothing of it is in hand.';

/** The acts on units, in the order of a part's way through the build. */
export const actSpecs: readonly ActSpec[] = [
  spec('accept', 'Accept', 'Arriving', holdsFor('accepted'), 'Nothing waits for inspection.', ['acceptedTo', 'bin']),
  spec(
    'reject',
    'Reject',
    'Arriving',
    holdsFor('rejected'),
    'Nothing is here that could be rejected.',
    ['rejectReason'],
    ['rejectReason'],
  ),
  spec('bin', 'Put in bin', 'Arriving', () => true, '', ['bin'], ['bin']),
  spec('send back', 'Send back', 'Arriving', holdsFor('sent-back'), 'Nothing stands rejected.', ['reason']),
  spec('settle by exchange', 'Settle by exchange', 'Arriving', () => false, 'Nothing was sent back.', ['dueOn']),
  spec('allocate', 'Set aside', 'On the engine', holdsFor('allocated'), 'Nothing of it lies on the shelf.'),
  spec('release', 'Put back on the shelf', 'On the engine', holdsFor('released'), 'Nothing of it is set aside.'),
  spec('trial-fit', 'Trial-fit', 'On the engine', holdsFor('trial-fitted'), notHere, ['by']),
  spec(
    'fit',
    'Fit',
    'On the engine',
    (row) =>
      holdsFor('fitted')(row) && row.fittedMilli + row.snugMilli + row.verifiedMilli < Math.max(row.needMilli, 1),
    'Nothing of it is in hand, or all that is needed is fitted.',
    ['by'],
  ),
  spec('snug', 'Snug', 'On the engine', holdsFor('snugged'), 'Nothing is fitted that isn’t snug yet.', ['by']),
  spec('verify', 'Final', 'On the engine', holdsFor('verified'), 'Nothing is fitted that waits for its final check.', [
    'by',
    'torque',
  ]),
  spec(
    'withdraw',
    'Withdraw final check',
    'On the engine',
    (row) => holdsFor('verification-withdrawn')(row) && !row.stretchOnce,
    'Nothing has its final check, or it stretches once and must be replaced.',
    ['reason'],
    ['reason'],
  ),
  spec('take off', 'Take off', 'On the engine', holdsFor('taken-off'), 'Nothing of it is on the engine.', [
    'takenTo',
    'reason',
  ]),
  spec('own', 'From own stock', 'From elsewhere', wanted, covered, ['value', 'bin']),
  spec('donor', 'From a donor', 'From elsewhere', wanted, covered, ['value', 'bin', 'reason']),
  spec(
    'borrow',
    'Borrow',
    'From elsewhere',
    (row, alone) => alone || row.uncoveredMilli > 0 || row.needMilli > 0,
    'None is needed.',
    ['owner', 'dueOn', 'bin'],
    ['owner', 'dueOn'],
  ),
  spec('find', 'Found', 'From elsewhere', wanted, covered, ['value', 'bin']),
  spec('make', 'Made', 'From elsewhere', wanted, covered, ['value', 'bin', 'by']),
  spec('lend', 'Lend', 'Leaving', holdsFor('lent'), 'Nothing of it lies on the shelf.', ['owner', 'dueOn'], ['owner']),
  spec('come back', 'Lent units came back', 'Leaving', holdsFor('came-back'), 'Nothing of it is lent out.'),
  spec(
    'give back',
    'Give back',
    'Leaving',
    (row) => row.borrowedMilli > row.borrowedOnMilli,
    'Nothing borrowed is here and off the engine.',
  ),
  spec('lose', 'Lose', 'Leaving', holdsFor('lost'), 'There is nothing of it here.', ['reason'], ['reason']),
  spec('scrap', 'Scrap', 'Leaving', holdsFor('scrapped'), 'There is nothing of it here.', ['reason'], ['reason']),
  spec('use up', 'Use up', 'Leaving', holdsFor('consumed'), 'There is nothing of it here.', ['reason'], ['reason']),
];

export const specOf = (act: PartAct): ActSpec => actSpecs.find((each) => each.act === act) as ActSpec;

/** The acts in their groups, as menus show them. */
export const actGroups = [...Map.groupBy(actSpecs, ({ group }) => group)];
