/** The hoist check's answer in words. */
import type { Blocker } from './blocker.ts';
import type { GateWords } from './facts.ts';
import type { GateReview } from './gate.ts';

/**
 * One or two sentences, such as "14 things stand before engine-in; the clutch kit, back-ordered 34 days, holds the
 * date." An item without a date is named before any that has one, with the earliest day by what is known.
 */
export function answerSentence(review: GateReview, words: GateWords): string {
  const count = review.blockers.length;
  const waived = review.waived.length;
  if (review.listed === 0) {
    return `Nothing is written down yet; ${review.gateName} is judged by the parts, jobs and bolts that you list.`;
  }
  if (count === 0) {
    const rest = waived === 0 ? '' : `; ${waived} ${waived === 1 ? 'is' : 'are'} waived`;
    return `Nothing stands before ${review.gateName}${rest}.`;
  }
  const opening = `${count} ${count === 1 ? 'thing stands' : 'things stand'} before ${review.gateName}`;
  const holder = holderOf(review.blockers);
  const named = holder === undefined ? '' : `${nameOf(holder)}, ${holder.standing},`;
  if (review.gateOn !== null) return `${opening}; ${named} holds the date.`;
  const undated = review.blockers.filter((blocker) => blocker.clearOn === null).length;
  const earliest = `It can't be before ${words.day(review.atLeastOn)}.`;
  if (undated === 1) return `${opening}; ${named} holds the date and has none itself. ${earliest}`;
  return `${opening}; ${undated} of them have no date, among them ${named.slice(0, -1)}. ${earliest}`;
}

/** What holds the date: the first item without one, else the one that gains most, else the last to be cleared. */
export function holderOf(blockers: readonly Blocker[]): Blocker | undefined {
  const first = blockers[0];
  if (first === undefined || first.clearOn === null) return first;
  const most = blockers.reduce((max, { daysGained }) => Math.max(max, daysGained), 0);
  return blockers.find((blocker) => blocker.daysGained === most);
}

function nameOf({ subject, title }: Blocker): string {
  if (subject.kind === 'job') return `the job “${title}”`;
  if (subject.kind === 'decision') return `the decision “${title}”`;
  return `the ${title}`;
}
