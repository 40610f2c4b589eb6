import type { PlanJob, ProgressMeasures } from '../../contract/plan.ts';
import type { Lag } from '../../contract/records.ts';
import { dayWords } from '../../dates/day-words.ts';
import { dateOfMinute, minutesPerDay, startOfDay } from '../../dates/instant.ts';
import { jobsProgress, type PartState as ProgressLine, partsProgress, spendShare } from '../../progress/progress.ts';
import { nothingYet, ratioOf, type Share, showShare } from '../../progress/share.ts';
import type { WorkingPerson } from '../../schedule/calendar.ts';
import { isUnit } from '../../units/quantity.ts';
import { allowedFrom } from './allowed-from.ts';
import { peopleOf } from './calendar.ts';
import { all, type Connection, readSettings } from './connection.ts';
import { quantityWords } from './entry-text.ts';
import { addPosition, noMoney, taggedPositions } from './money.ts';
import { partRows } from './part-rows.ts';
import type { Position } from './positions.ts';
import { listRecords } from './record-tables.ts';
import { remembered } from './remembered.ts';
import { subjectSums } from './states.ts';

/** Units that came in, are ours and weren't rejected, returned or lost. */
export function receivedOf(position: Position): number {
  const here =
    position.inspectionMilli +
    position.shelfMilli +
    position.allocatedMilli +
    position.trialMilli +
    position.fittedMilli +
    position.snugMilli +
    position.verifiedMilli +
    position.lentMilli;
  return Math.max(0, here - position.borrowedMilli);
}

/** Our units on the engine to stay. */
export function fittedOf(position: Position): number {
  const borrowedToStay = Math.max(0, position.borrowedOnMilli - position.trialMilli);
  return Math.max(0, position.fittedMilli + position.snugMilli + position.verifiedMilli - borrowedToStay);
}

export function progressLine(position: Position, unit: string): ProgressLine {
  return {
    unit: isUnit(unit) ? unit : 'each',
    needMilli: position.needMilli,
    receivedMilli: receivedOf(position),
    fittedMilli: fittedOf(position),
    verifiedMilli: position.verifiedMilli,
    valueMinor: position.costMinor + position.commitmentMinor + position.remainingMinor,
  };
}

const shown = (share: Share | null, whenEmpty: string): ProgressMeasures['spend'] =>
  share === null
    ? { share: null, text: nothingYet.mixedUnits, done: 0, of: 0 }
    : { share: ratioOf(share), text: showShare(share, whenEmpty), done: share.done, of: share.of };

/** How far a build is, by every measure, now or at the end of a past day. */
export const progressMeasures = (connection: Connection, build: number, asOf: string | undefined): ProgressMeasures =>
  remembered(connection, `progress ${build} ${asOf}`, () => measure(connection, build, asOf));

function measure(connection: Connection, build: number, asOf: string | undefined): ProgressMeasures {
  const units = new Map(
    all<{ id: number; unit: string; optional: number }>(
      connection,
      'SELECT id, unit, optional FROM parts WHERE build = ?',
      build,
    ).map((row) => [row.id, row]),
  );
  const tagged = taggedPositions(connection, build, asOf);
  const lines = tagged
    .filter(({ tags }) => tags.dropped === 0 && units.get(tags.id)?.optional === 0)
    .map(({ tags, position }) => progressLine(position, units.get(tags.id)?.unit ?? 'each'));
  const progress = partsProgress(lines);
  const stage = (name: 'received' | 'fitted' | 'verified'): ProgressMeasures['received'] => ({
    byLine: shown(progress[name].byLine, nothingYet.parts),
    byQuantity: shown(progress[name].byQuantity, nothingYet.parts),
    byValue: shown(progress[name].byValue, nothingYet.parts),
  });
  const jobs = jobsProgress(
    planJobRows(connection, build, asOf).map((job) => ({ done: job.done, workMinutes: job.minutesGuess ?? 0 })),
  );
  const money = tagged.reduce((sum, { position }) => addPosition(sum, position), noMoney);
  return {
    received: stage('received'),
    fitted: stage('fitted'),
    verified: stage('verified'),
    jobs: { byCount: shown(jobs.byCount, nothingYet.jobs), byWeight: shown(jobs.byWork, nothingYet.jobs) },
    spend: shown(spendShare(money.costMinor, money.forecastMinor), nothingYet.spend),
  };
}

export interface JobRow {
  readonly id: number;
  readonly title: string;
  readonly phase: number | null;
  readonly system: number | null;
  readonly sort: number;
  readonly minutesGuess: number | null;
  readonly minutesLow: number | null;
  readonly minutesHigh: number | null;
  readonly minutesSpent: number;
  readonly tools: readonly number[];
  readonly earlier: readonly number[];
  readonly lags: readonly Lag[];
  readonly notBefore: string | null;
  readonly oneSitting: boolean;
  readonly hands: boolean;
  readonly person: number | null;
  readonly place: string;
  readonly consumables: string;
  readonly beforeGate: boolean;
  readonly needsSignOff: boolean;
  readonly note: string;
  readonly revision: number;
  readonly done: boolean;
  readonly doneOn: string | null;
  readonly signedBy: string;
}

/** The jobs of a build in their order, with what the journal says of them, now or at the end of a past day. */
export function planJobRows(connection: Connection, build: number, asOf: string | undefined): JobRow[] {
  const day = asOf ?? '9999-12-31';
  const sums = subjectSums(connection, build, 'job', asOf);
  const words = all<{ subject: number; kind: string; on_day: string; payload: string | null }>(
    connection,
    `SELECT subject, kind, on_day, payload FROM entries e WHERE +build = ? AND subject_kind = 'job' AND kind IN ('job-done', 'hours')
     AND on_day <= ? AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
    build,
    day,
  );
  const done = new Map<number, { on: string; by: string }>();
  const spent = new Map<number, number>();
  for (const { subject, kind, on_day, payload } of words) {
    const said = payload === null ? {} : (JSON.parse(payload) as { by?: string; minutes?: number });
    if (kind === 'job-done') done.set(subject, { on: on_day, by: said.by ?? '' });
    else spent.set(subject, (spent.get(subject) ?? 0) + (said.minutes ?? 0));
  }
  return listRecords(connection, 'jobs', 'build = ?', build)
    .filter(({ id }) => (sums.get(id)?.get('job-planned')?.quantityMilli ?? 0) > 0)
    .map((record) => {
      const isDone = (sums.get(record.id)?.get('job-done')?.quantityMilli ?? 0) > 0;
      return {
        id: record.id,
        title: String(record['title']),
        phase: record['phase'] as number | null,
        system: record['system'] as number | null,
        sort: Number(record['sort']),
        minutesGuess: record['minutesGuess'] as number | null,
        minutesLow: record['minutesLow'] as number | null,
        minutesHigh: record['minutesHigh'] as number | null,
        minutesSpent: spent.get(record.id) ?? 0,
        tools: record['tools'] as unknown as number[],
        earlier: record['earlier'] as unknown as number[],
        lags: record['lags'] as unknown as Lag[],
        notBefore: record['notBefore'] as string | null,
        oneSitting: record['oneSitting'] === true,
        hands: record['hands'] === true,
        person: record['person'] as number | null,
        place: String(record['place']),
        consumables: String(record['consumables']),
        beforeGate: record['beforeGate'] === true,
        needsSignOff: record['needsSignOff'] === true,
        note: String(record['note']),
        revision: record.revision,
        done: isDone,
        doneOn: isDone ? (done.get(record.id)?.on ?? null) : null,
        signedBy: isDone ? (done.get(record.id)?.by ?? '') : '',
      };
    })
    .sort((a, b) => a.sort - b.sort || a.id - b.id);
}

/** Tools of a build by id, with whether they are at hand. */
export function toolsAtHand(
  connection: Connection,
  build: number,
  asOf: string | undefined,
): Map<
  number,
  {
    name: string;
    atHand: boolean;
    whereabouts: string;
    dueOn: string | null;
    hireMinor: number | null;
    listed: boolean;
  }
> {
  const sums = subjectSums(connection, build, 'tool', asOf);
  return new Map(
    listRecords(connection, 'tools', 'build = ?', build).map((record) => [
      record.id,
      {
        name: String(record['name']),
        atHand: (sums.get(record.id)?.get('tool-at-hand')?.quantityMilli ?? 0) > 0,
        listed: (sums.get(record.id)?.get('tool-listed')?.quantityMilli ?? 0) > 0,
        whereabouts: String(record['whereabouts']),
        dueOn: record['dueOn'] as string | null,
        hireMinor: record['hireMinor'] as number | null,
      },
    ]),
  );
}

/** What forbids a job on this day, as the words after "waits for": a day of its own, or the wait after jobs that are done. */
function dayWaitedFor(
  job: JobRow,
  jobs: ReadonlyMap<number, JobRow>,
  people: readonly WorkingPerson[],
  day: string,
): string[] {
  if (job.notBefore === null && job.lags.length === 0) return [];
  const evening = startOfDay(day) + minutesPerDay - 1;
  const from = allowedFrom(job, jobs, people, evening);
  if (from <= evening) return [];
  const on = dateOfMinute(from);
  return [job.notBefore === on ? `its day, ${dayWords(on)}` : `the wait after an earlier job, until ${dayWords(on)}`];
}

/** Jobs as the Plan shows them: what each needs, and what it waits for. */
export function planJobs(connection: Connection, build: number, today: string, asOf: string | undefined): PlanJob[] {
  const jobs = planJobRows(connection, build, asOf);
  const tools = toolsAtHand(connection, build, asOf);
  const wanted = all<{ id: number }>(
    connection,
    'SELECT id FROM parts WHERE +build = ? AND gone = 0 AND job IS NOT NULL',
    build,
  ).map(({ id }) => id);
  const rows = wanted.length === 0 ? [] : partRows(connection, { build, today, asOf, ids: wanted });
  const partsOf = Map.groupBy(
    rows.filter(({ dropped }) => !dropped),
    ({ job }) => job,
  );
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const people = peopleOf(connection, build, readSettings(connection));
  return jobs.map((job) => {
    const needs = (partsOf.get(job.id) ?? []).map((row) => ({
      part: row.id,
      description: row.description,
      standing: row.standing,
      unit: row.unit,
      missingMilli: Math.max(
        0,
        row.needMilli -
          row.shelfMilli -
          row.allocatedMilli -
          row.trialMilli -
          row.fittedMilli -
          row.snugMilli -
          row.verifiedMilli,
      ),
    }));
    const ownTools = job.tools.flatMap((id) => {
      const tool = tools.get(id);
      return tool === undefined ? [] : [{ id, name: tool.name, atHand: tool.atHand }];
    });
    const earlier = job.earlier.flatMap((id) => {
      const before = byId.get(id);
      return before === undefined ? [] : [{ id, title: before.title, done: before.done }];
    });
    const waitsFor = job.done
      ? []
      : [
          ...needs
            .filter(({ missingMilli }) => missingMilli > 0)
            .map(
              ({ description, missingMilli, unit, standing }) =>
                `${quantityWords(missingMilli, unit)} ${description} (${standing})`,
            ),
          ...ownTools.filter(({ atHand }) => !atHand).map(({ name }) => `the ${name}`),
          ...earlier.filter(({ done }) => !done).map(({ title }) => `the job “${title}”`),
          ...(earlier.every(({ done }) => done) ? dayWaitedFor(job, byId, people, asOf ?? today) : []),
        ];
    return { ...job, lags: [...job.lags], needs, tools: ownTools, earlier, waitsFor };
  });
}
