/** The sentences of the plan over the calendar: what holds each job, what holds the gate, the answer. */
import type { BarsView, PlanBar } from '../contract/plan.ts';
import { dateOfMinute, formatInstant, minutesPerDay, startOfDay } from '../dates/instant.ts';
import type { LevelledBar, LevelledBy } from '../schedule/calendar-levelling.ts';
import { showMinutes } from '../schedule/working-time.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { counted } from './context.ts';

/** Something that a job can't begin before, with its words. */
export interface Release {
  readonly minute: number;
  readonly says: string;
}

/** The day and the time of an end or a beginning; an end at midnight belongs to the day before. */
export function dayAndTime(minute: number, isEnd: boolean): { on: string; at: string } {
  if (isEnd && minute % minutesPerDay === 0) return { on: dateOfMinute(minute - 1), at: '24:00' };
  return { on: dateOfMinute(minute), at: formatInstant(minute).slice(11) };
}

/** What sets a job's beginning, in words; empty when it can begin now. */
export function heldWords(
  { heldBy, startMinute }: LevelledBar,
  releases: readonly Release[],
  titleOf: (id: string) => string,
  toolName: (id: string) => string,
  whoName: string,
): string {
  switch (heldBy.by) {
    case 'start':
      return '';
    case 'release':
      return (
        releases.toSorted((a, b) => b.minute - a.minute)[0]?.says ?? `not before ${dayWords(dateOfMinute(startMinute))}`
      );
    case 'job': {
      const wait = showMinutes(heldBy.lagMinutes);
      const lag =
        heldBy.lagMinutes === 0 ? '' : ` and ${wait} ${heldBy.lagOn === 'work' ? 'of working time ' : ''}after it`;
      return `the job “${titleOf(heldBy.id)}”${lag}`;
    }
    case 'person':
      return `${whoName} does “${titleOf(heldBy.id)}” first`;
    case 'tool':
      return `the ${toolName(heldBy.tool)} is used for “${titleOf(heldBy.id)}” first`;
  }
}

/** From the gate back to what holds it first, told from the first thing on. */
export function chainOf(
  bars: readonly LevelledBar[],
  gateMinute: number,
  gateParts: readonly Release[],
  ofBar: ReadonlyMap<string, Pick<PlanBar, 'id' | 'title' | 'heldBy' | 'finishOn' | 'beforeGate'>>,
): BarsView['chain'] {
  const byId = new Map(bars.map((bar) => [bar.id, bar]));
  const chain: BarsView['chain'] = [];
  let at: LevelledBar | undefined = bars.find(
    ({ id, finishMinute }) => finishMinute === gateMinute && ofBar.get(id)?.beforeGate === true,
  );
  if (at === undefined) {
    const part = gateParts.find(({ minute }) => minute === gateMinute);
    return part === undefined ? [] : [{ job: null, says: part.says }];
  }
  const seen = new Set<string>();
  while (at !== undefined && !seen.has(at.id)) {
    seen.add(at.id);
    const bar = ofBar.get(at.id);
    const until = bar?.finishOn == null ? '' : `, done on ${dayWords(bar.finishOn)}`;
    chain.push({ job: bar?.id ?? null, says: `“${bar?.title ?? at.id}”${until}` });
    const heldBy: LevelledBy = at.heldBy;
    if (heldBy.by === 'release' && bar !== undefined) chain.push({ job: null, says: bar.heldBy });
    at = 'id' in heldBy ? byId.get(heldBy.id) : undefined;
  }
  return chain.reverse();
}

/** A job that is done while one that it should follow is open: what happened stays, and the order is to be looked at. */
function outOfOrder(bars: readonly PlanBar[]): string {
  const open = new Map(bars.filter(({ state }) => state !== 'done').map(({ id, title }) => [id, title]));
  const broken = bars.flatMap(({ state, title, after }) => {
    const before = state === 'done' ? after.find(({ job }) => open.has(job)) : undefined;
    return before === undefined ? [] : [{ title, before: open.get(before.job) ?? '' }];
  });
  const [first] = broken;
  if (first === undefined) return '';
  const more = broken.length === 1 ? '' : `, and ${counted(broken.length - 1, 'other job')} likewise`;
  return ` “${first.title}” is done although “${first.before}”, which comes before it, is not${more}.`;
}

export function barsAnswer(view: Omit<BarsView, 'answer'>): string {
  const open = view.bars.filter(({ state }) => state !== 'done');
  const { name, on, networkOn } = view.gate;
  if (view.bars.length === 0) return 'No jobs yet: the first one you write down starts the plan.';
  if (open.length === 0) return `All ${view.bars.length} jobs are done.`;
  if (on === null) return `No days can be said: ${counted(open.length, 'job')} open, and nobody has free hours.`;
  const [first] = view.chain;
  const held = first === undefined ? '' : ` It begins with ${first.says}.`;
  const sooner =
    networkOn === null || networkOn >= on
      ? ''
      : ` With hands and tools never short it would be ${dayWords(networkOn)}.`;
  const unguessed = open.filter(({ minutesLeft, hands }) => minutesLeft === null && hands).length;
  const lacking =
    unguessed === 0
      ? ''
      : ` ${unguessed === 1 ? '1 job has no guess and counts' : `${unguessed} jobs have no guess and count`} as nothing.`;
  return `${name} on ${dayWords(on)} if every guess holds.${held}${sooner}${lacking}${outOfOrder(view.bars)}`;
}

/** A day from which a job may begin, as a release. */
export const notBeforeRelease = (day: string): Release => ({
  minute: startOfDay(day),
  says: `not before ${dayWords(day)}`,
});
