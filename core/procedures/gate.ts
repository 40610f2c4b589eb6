import type { z } from 'zod';
import type { GateReview as GateReviewData, gateContract } from '../contract/gate.ts';
import type { Settings } from '../contract/workbook.ts';
import { addDays, daysBetween } from '../dates/calendar-date.ts';
import { answerSentence } from '../gate/answer.ts';
import type { GateFacts, GateWords } from '../gate/facts.ts';
import { type GateReview, reviewGate } from '../gate/gate.ts';
import { checkWaiver } from '../gate/waivers.ts';
import type { EntryDraft } from '../ledger/entry.ts';
import { Refusal } from '../refusal.ts';
import { togetherTime } from '../schedule/calendar.ts';
import { hasWorkingTime, type WorkingTime } from '../schedule/working-time.ts';
import { peopleOf } from '../workbook/store/calendar.ts';
import { type Connection, first } from '../workbook/store/connection.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { fitFacts } from '../workbook/store/fits.ts';
import { gateFacts } from '../workbook/store/gate-facts.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { remembered } from '../workbook/store/remembered.ts';
import { sheetFacts } from './bench-sheets.ts';
import { act, type Context, counted, needBuild, procedures } from './context.ts';
import { nowMinuteOf } from './forecast.ts';
import { lineFacts } from './plumbing-gate.ts';

const { gate } = procedures;

/** Minutes counted where nobody has guessed; the review says how many items stand on them. Ours, no published source. */
const assume = { fitting: 30, verifying: 15, perBolt: 3, job: null };

const words: GateWords = { day: dayWords, quantity: quantityWords };

const clock = (instant: Date): string =>
  `${String(instant.getHours()).padStart(2, '0')}:${String(instant.getMinutes()).padStart(2, '0')}`;

/** The hoist check of a build now or at the end of a past day: one home for its list, date, cost and sentence. */
export function reviewOf(
  context: Context,
  build: number,
  asOf: string | undefined,
): { review: GateReview; answer: string } {
  const today = context.today();
  const past = asOf !== undefined && asOf < today ? asOf : undefined;
  const { connection } = context.book();
  const now = past === undefined ? `${today}T${clock(context.now())}` : `${past}T23:59`;
  const settings = context.settings();
  // Several screens ask for the same check at once, and the list of past weeks asks for many: each is worked out once
  // between two acts (the working windows and the minute belong to what it depends on).
  return remembered(connection, `gate ${build} ${now} ${JSON.stringify(settings.weekWindows)}`, () => {
    const time = workingTimeOf(connection, build, settings);
    const review = reviewAt(now, time, allGateFacts(context, build, past));
    return { review, answer: answerSentence(review, words) };
  });
}

/** All that the hoist check is told: the ledger's facts, the checks, the measuring sheets and the lines. */
export function allGateFacts(context: Context, build: number, past: string | undefined): GateFacts {
  const { connection } = context.book();
  const nowMinute = nowMinuteOf(context, past);
  return {
    ...gateFacts(connection, build, { today: context.today(), asOf: past, nowMinute }),
    sheets: sheetFacts(connection, build, past),
    fits: fitFacts(connection, build, past),
    lines: lineFacts(connection, build, past),
  };
}

function reviewAt(now: string, workingTime: WorkingTime | null, facts: GateFacts): GateReview {
  return reviewGate(facts, { now, workingTime, assume, words });
}

/** The hoist check of facts that aren't so, such as those with another part in a line's place. */
export function reviewFacts(context: Context, build: number, facts: GateFacts): GateReview {
  const time = workingTimeOf(context.book().connection, build, context.settings());
  return reviewAt(`${context.today()}T${clock(context.now())}`, time, facts);
}

/** When somebody works on the build; null when nobody ever does. */
function workingTimeOf(connection: Connection, build: number, settings: Settings): WorkingTime | null {
  const time = togetherTime(peopleOf(connection, build, settings));
  return hasWorkingTime(time) ? time : null;
}

function asData({ review, answer }: { review: GateReview; answer: string }): GateReviewData {
  return {
    ...review,
    answer,
    blockers: review.blockers.map((blocker) => ({ ...blocker })),
    counts: review.counts.map((count) => ({ ...count })),
    waived: review.waived.map(({ waiver, ...blocker }) => ({
      ...blocker,
      reason: waiver.reason,
      by: waiver.by,
      waivedOn: waiver.on,
      until: waiver.until,
      seq: waiver.seq,
    })),
  };
}

/** At most so many points: each is a whole review of the build at the end of a day. */
const mostPoints = 30;

/** Days from the build's first entry to `until`, evenly spread, whole weeks apart where there are few enough. */
export function historyDays(firstDay: string, until: string): string[] {
  const span = Math.max(0, daysBetween(firstDay, until));
  const step = Math.max(7, Math.ceil(span / mostPoints / 7) * 7);
  const days: string[] = [];
  for (let back = 0; back <= span; back += step) days.push(addDays(until, -back));
  if (days.at(-1) !== firstDay && span > 0) days.push(firstDay);
  return days.reverse();
}

const keyOf = (blocker: { kind: string; subject: { kind: string; id: number } }): string =>
  `${blocker.kind} ${blocker.subject.kind} ${blocker.subject.id}`;

type WaiveInput = z.infer<NonNullable<(typeof gateContract.waive)['~orpc']['inputSchema']>>;

/** A waiver is about a part line or about another subject; the entry says which. */
function waiverEntry(
  kind: 'waived' | 'waiver-ended',
  input: Pick<WaiveInput, 'on' | 'build' | 'kind' | 'subject' | 'reason'>,
): EntryDraft {
  const about =
    input.subject.kind === 'part'
      ? { part: input.subject.id }
      : { subjectKind: input.subject.kind, subject: input.subject.id };
  return {
    kind,
    on: input.on,
    build: input.build,
    ...about,
    quantityMilli: 1000,
    payload: { kind: input.kind, subject: { kind: input.subject.kind, id: input.subject.id }, reason: input.reason },
  };
}

export const gateProcedures = {
  review: gate.review.handler(({ context, input }) => {
    needBuild(context, input.build);
    return asData(reviewOf(context, input.build, input.asOf));
  }),
  history: gate.history.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const start = first<{ day: string | null }>(
      connection,
      'SELECT min(on_day) AS day FROM entries WHERE build = ?',
      input.build,
    )?.day;
    if (start === null || start === undefined) return [];
    const until = input.asOf ?? context.today();
    const minute = clock(context.now());
    const windows = JSON.stringify(context.settings().weekWindows);
    // Many reviews, wanted by several screens: kept together until the next act.
    return remembered(connection, `gate history ${input.build} ${until} ${minute} ${windows}`, () =>
      historyDays(start, until).map((on) => {
        const { review } = reviewOf(context, input.build, on);
        return { on, count: review.blockers.length, costMinor: review.costMinor };
      }),
    );
  }),
  compare: gate.compare.handler(({ context, input }) => {
    needBuild(context, input.build);
    const before = asData(reviewOf(context, input.build, input.from)).blockers;
    const after = asData(reviewOf(context, input.build, input.to)).blockers;
    const had = new Set(before.map(keyOf));
    const has = new Set(after.map(keyOf));
    return {
      gone: before.filter((blocker) => !has.has(keyOf(blocker))),
      came: after.filter((blocker) => !had.has(keyOf(blocker))),
      still: after.filter((blocker) => had.has(keyOf(blocker))).length,
    };
  }),
  waive: gate.waive.handler(({ context, input }) => {
    needBuild(context, input.build);
    checkWaiver({
      kind: input.kind,
      subject: input.subject,
      reason: input.reason,
      by: input.by,
      on: input.on,
      until: input.until,
    });
    const { review } = reviewOf(context, input.build, undefined);
    const blocking = review.blockers.find((blocker) => keyOf(blocker) === keyOf(input));
    if (blocking === undefined) {
      throw new Refusal(
        'not-allowed-from-here',
        'That does not stand in the way now, so there is nothing to waive. Nothing was changed.',
        {
          field: 'subject',
          accepted: 'an item of the hoist check',
        },
      );
    }
    return act(context, input, `Waiver for ${blocking.title}`, (writer) => {
      const entry = waiverEntry('waived', input);
      writer.post({ ...entry, payload: { ...entry.payload, by: input.by, until: input.until } });
      return undefined;
    });
  }),
  endWaiver: gate.endWaiver.handler(({ context, input }) => {
    needBuild(context, input.build);
    return act(context, input, 'End of a waiver', (writer) => {
      writer.post(waiverEntry('waiver-ended', input));
      return undefined;
    });
  }),
  pass: gate.pass.handler(({ context, input }) => {
    const build = needBuild(context, input.build);
    const { review } = reviewOf(context, input.build, undefined);
    const gateName = String(needRecord(context.book().connection, 'builds', build.id)['gateName']);
    if (review.listed === 0) {
      throw new Refusal(
        'not-allowed-from-here',
        `Nothing is written down yet, so nothing can be said about ${gateName}. Nothing was changed.`,
        { accepted: 'a build with its parts, jobs or bolts listed' },
      );
    }
    if (review.blockers.length > 0) {
      throw new Refusal(
        'not-allowed-from-here',
        `${counted(review.blockers.length, 'thing')} still ${review.blockers.length === 1 ? 'stands' : 'stand'} before ${gateName}; clear or waive them first. Nothing was changed.`,
        { accepted: 'a hoist check with nothing left on it', detail: { blockers: review.blockers.length } },
      );
    }
    return act(context, input, `${gateName} of ${build.name}`, (writer) => {
      writer.post({
        kind: 'gate-passed',
        on: input.on,
        build: build.id,
        subjectKind: 'build',
        subject: build.id,
        quantityMilli: 1000,
        note: input.note,
        payload: { by: input.by, waived: review.waived.map(({ title, waiver }) => `${title}: ${waiver.reason}`) },
      });
      return undefined;
    });
  }),
};
