import {
  type Icon,
  IconAlertTriangle,
  IconArrowBackUp,
  IconArrowsExchange,
  IconBookmark,
  IconChecks,
  IconCircle,
  IconCircleCheck,
  IconCircleDashed,
  IconCircleHalf2,
  IconCircleX,
  IconClockPause,
  IconHandOff,
  IconLock,
  IconMessageDollar,
  IconPackage,
  IconPackages,
  IconPencilCheck,
  IconProgressCheck,
  IconReceipt,
  IconRotateClockwise,
  IconRulerMeasure,
  IconSearch,
  IconTruck,
} from '@tabler/icons-react';
import './state.css';

type Tone = 'blocks' | 'waits' | 'moves' | 'there' | 'done' | 'quiet';

/**
 * Every state that something in the workbook can be in: its icon and its tone. The word is always shown with the icon, and the
 * icons differ in shape, so that the colour only repeats what is said already.
 */
const states = {
  needed: { icon: IconCircleDashed, tone: 'waits' },
  quoted: { icon: IconMessageDollar, tone: 'waits' },
  ordered: { icon: IconReceipt, tone: 'moves' },
  placed: { icon: IconReceipt, tone: 'moves' },
  acknowledged: { icon: IconPencilCheck, tone: 'moves' },
  'back-ordered': { icon: IconClockPause, tone: 'blocks' },
  'in transit': { icon: IconTruck, tone: 'moves' },
  'to inspect': { icon: IconSearch, tone: 'waits' },
  'part received': { icon: IconCircleHalf2, tone: 'moves' },
  received: { icon: IconPackage, tone: 'there' },
  'part in hand': { icon: IconCircleHalf2, tone: 'moves' },
  'in hand': { icon: IconPackage, tone: 'there' },
  'on the shelf': { icon: IconPackages, tone: 'there' },
  allocated: { icon: IconBookmark, tone: 'there' },
  'trial-fitted': { icon: IconRulerMeasure, tone: 'waits' },
  'part fitted': { icon: IconProgressCheck, tone: 'moves' },
  fitted: { icon: IconCircleCheck, tone: 'done' },
  snug: { icon: IconRotateClockwise, tone: 'waits' },
  final: { icon: IconLock, tone: 'done' },
  'under way': { icon: IconCircleHalf2, tone: 'moves' },
  'not begun': { icon: IconCircleDashed, tone: 'waits' },
  rechecked: { icon: IconChecks, tone: 'done' },
  pass: { icon: IconCircleCheck, tone: 'done' },
  'in limits': { icon: IconCircleCheck, tone: 'done' },
  'at limit': { icon: IconAlertTriangle, tone: 'waits' },
  out: { icon: IconCircleX, tone: 'blocks' },
  missing: { icon: IconCircleDashed, tone: 'blocks' },
  'no limits': { icon: IconCircle, tone: 'quiet' },
  wrong: { icon: IconCircleX, tone: 'blocks' },
  rejected: { icon: IconCircleX, tone: 'blocks' },
  returned: { icon: IconArrowBackUp, tone: 'quiet' },
  borrowed: { icon: IconHandOff, tone: 'waits' },
  lent: { icon: IconArrowsExchange, tone: 'waits' },
  'to settle': { icon: IconMessageDollar, tone: 'waits' },
  cancelled: { icon: IconCircle, tone: 'quiet' },
  'not needed': { icon: IconCircle, tone: 'quiet' },
} as const satisfies Record<string, { readonly icon: Icon; readonly tone: Tone }>;

export type StateName = keyof typeof states;

/** Every state there is, in the order of a part's life. */
export const stateNames = Object.keys(states) as readonly StateName[];

export interface StateProps {
  readonly state: StateName;
  /** More words than the state's own, such as "back-ordered 34 days". */
  readonly words?: string;
}

/** Icon and word of a state; colour only repeats them. */
export function State({ state, words }: StateProps) {
  const { icon: Mark, tone } = states[state];
  return (
    <span className="state" data-tone={tone}>
      <Mark aria-hidden className="state-mark" stroke={1.8} />
      <span>{words ?? state}</span>
    </span>
  );
}
