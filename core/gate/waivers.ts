/** Waivers: somebody answers, with a reason, for going ahead although an item blocks. The item stays visible. */
import { Refusal } from '../refusal.ts';
import { type BlockerKind, blockerKey } from './blocker.ts';
import type { WaiverFact } from './facts.ts';

/**
 * Checks a waiver before it is recorded.
 * @throws Refusal `needs-reason` without a reason or a name; `not-allowed-from-here` for a kind that can't be waived;
 * `bad-input` when it would end before it begins.
 */
export function checkWaiver(waiver: Omit<WaiverFact, 'seq'>, noWaiver: readonly BlockerKind[] = []): void {
  if (noWaiver.includes(waiver.kind)) {
    throw new Refusal(
      'not-allowed-from-here',
      `“${waiver.kind}” can't be waived in this workbook. Nothing was changed.`,
      {
        field: 'kind',
        accepted: 'clear the item instead',
      },
    );
  }
  if (waiver.reason.trim() === '') throw needs('reason', 'why the item may stand');
  if (waiver.by.trim() === '') throw needs('name', 'who answers for it');
  if (waiver.until !== null && waiver.until < waiver.on) {
    throw new Refusal('bad-input', 'The waiver would end before it begins. Nothing was changed.', {
      field: 'until',
      accepted: `a day from ${waiver.on} on, or none`,
    });
  }
}

function needs(field: string, accepted: string): Refusal {
  return new Refusal('needs-reason', `A waiver needs a ${field}. Nothing was changed.`, { field, accepted });
}

/** The waivers that hold on a day, by blocker key; of several the latest. One without a reason or a name holds nothing. */
export function heldWaivers(
  waivers: readonly WaiverFact[],
  today: string,
  noWaiver: readonly BlockerKind[] = [],
): Map<string, WaiverFact> {
  const held = new Map<string, WaiverFact>();
  for (const waiver of [...waivers].sort((a, b) => a.seq - b.seq)) {
    const holds = waiver.on <= today && (waiver.until === null || waiver.until >= today);
    const answered = waiver.reason.trim() !== '' && waiver.by.trim() !== '';
    if (holds && answered && !noWaiver.includes(waiver.kind)) held.set(blockerKey(waiver.kind, waiver.subject), waiver);
  }
  return held;
}
