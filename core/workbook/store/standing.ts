import type { Standing } from '../../contract/parts.ts';
import { daysBetween } from '../../dates/calendar-date.ts';
import { dayWords, quantityWords } from './entry-text.ts';
import type { Position } from './positions.ts';

/** The word for where a part line stands, and the sentence behind it. One home: every screen and export asks here. */
export interface StandingWords {
  readonly standing: Standing;
  readonly text: string;
}

const onEngine = (position: Position): number => position.fittedMilli + position.snugMilli + position.verifiedMilli;

function wordOf(position: Position, dropped: boolean): Standing {
  const { needMilli } = position;
  const own = onEngine(position);
  const inHand = position.shelfMilli + position.allocatedMilli;
  const here = own + inHand + position.trialMilli;
  const coming =
    position.placedMilli + position.acknowledgedMilli + position.backOrderedMilli + position.inTransitMilli;
  const refused = position.rejectedMilli > 0 || position.returnedUnsettledMilli > 0;
  // A refused unit is news until its replacement is on the way or here.
  if (position.rejectedMilli > 0 || (refused && position.uncoveredMilli > 0 && coming === 0)) return 'wrong';
  if (dropped || (needMilli === 0 && here === 0 && position.inspectionMilli === 0)) {
    if (
      dropped ||
      position.placedMilli + position.acknowledgedMilli + position.backOrderedMilli + position.inTransitMilli === 0
    ) {
      return 'not needed';
    }
  }
  const need = needMilli === 0 ? Math.max(1, here) : needMilli;
  if (position.trialMilli > 0 && own < need) return 'trial-fitted';
  if (position.verifiedMilli >= need) return 'final';
  if (own >= need) {
    if (position.verifiedMilli + position.snugMilli >= need && position.snugMilli > 0) return 'snug';
    return 'fitted';
  }
  if (position.backOrderedMilli > 0) return 'back-ordered';
  if (own > 0) return 'part fitted';
  if (position.inspectionMilli > 0) return 'to inspect';
  if (inHand >= need) return 'in hand';
  if (position.inTransitMilli > 0) return 'in transit';
  if (position.placedMilli + position.acknowledgedMilli > 0) return 'ordered';
  if (inHand > 0) return 'part in hand';
  return position.quotes > 0 ? 'quoted' : 'needed';
}

/** @param today for the age of a back-order. */
export function standingOf(
  position: Position,
  line: { readonly unit: string; readonly dropped: boolean },
  today: string,
): StandingWords {
  const say = (milli: number): string => quantityWords(milli, line.unit);
  const pieces: string[] = [];
  const add = (milli: number, text: string): void => {
    if (milli > 0) pieces.push(`${say(milli)} ${text}`);
  };
  add(position.verifiedMilli, 'at final torque or verified');
  add(position.snugMilli, 'snug');
  add(position.fittedMilli, 'fitted');
  add(position.trialMilli, 'on for trial fit');
  add(position.allocatedMilli, 'set aside');
  add(position.shelfMilli, 'on the shelf');
  add(position.inspectionMilli, 'to inspect');
  add(position.rejectedMilli, 'rejected');
  add(position.returnedUnsettledMilli, 'sent back, not settled');
  add(position.lentMilli, 'lent out');
  if (position.backOrderedMilli > 0) {
    const since = position.backOrderedOn;
    const age = since === null ? '' : ` for ${daysBetween(since, today)} days`;
    pieces.push(
      `${say(position.backOrderedMilli)} on back-order${age}${position.promisedOn === null ? ', no date promised' : `, promised for ${dayWords(position.promisedOn)}`}`,
    );
  }
  add(position.inTransitMilli, 'on the way');
  const ordered = position.placedMilli + position.acknowledgedMilli;
  if (ordered > 0) {
    pieces.push(
      `${say(ordered)} on order${position.promisedOn === null ? '' : `, promised for ${dayWords(position.promisedOn)}`}`,
    );
  }
  if (position.borrowedMilli > 0) pieces.push(`${say(position.borrowedMilli)} borrowed`);
  add(position.uncoveredMilli, 'still to get');
  const standing = wordOf(position, line.dropped);
  const of = position.needMilli === 0 ? 'spare' : `${say(position.needMilli)} needed`;
  return { standing, text: pieces.length === 0 ? of : `${of}: ${pieces.join('; ')}` };
}
