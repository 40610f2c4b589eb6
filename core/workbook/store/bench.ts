import type { EntryKind } from '../../ledger/entry.ts';
import { all, type Connection } from './connection.ts';

/** What measuring sheets and bolt groups have in the ledger: readings written down, bolts turned. */

export interface StoredReading {
  readonly place: string;
  readonly name: string;
  /** As typed, and as read from it in the sheet's unit. */
  readonly typed: string;
  readonly value: number;
  readonly temperatureC: number | null;
  readonly by: string;
  readonly instrument: string;
  readonly on: string;
  readonly entry: number;
}

interface SubjectEntry {
  readonly seq: number;
  readonly kind: EntryKind;
  readonly subject: number;
  readonly on_day: string;
  readonly recorded_at: string;
  readonly quantity_milli: number | null;
  readonly payload: string | null;
}

function subjectEntries(
  connection: Connection,
  subjectKind: 'measuring-sheet' | 'bolt-group',
  build: number,
  asOf: string | undefined,
  subject?: number,
): SubjectEntry[] {
  return all<SubjectEntry>(
    connection,
    `SELECT seq, kind, subject, on_day, recorded_at, quantity_milli, payload FROM entries e
     WHERE subject_kind = ? AND ${subject === undefined ? '+build = ?' : 'subject = ?'} AND kind <> 'reversal' AND on_day <= ?
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
    subjectKind,
    subject ?? build,
    asOf ?? '9999-12-31',
  );
}

interface MeasuredPayload {
  readonly readings?: readonly Pick<StoredReading, 'place' | 'name' | 'typed' | 'value' | 'temperatureC'>[];
  readonly struck?: { readonly place: string; readonly name: string };
  readonly by?: string;
  readonly instrument?: string;
}

/** The readings that stand on each sheet of a build: the latest for its place and name, unless it was struck off. */
export function standingReadings(
  connection: Connection,
  build: number,
  asOf: string | undefined,
): Map<number, StoredReading[]> {
  const bySheet = new Map<number, Map<string, StoredReading>>();
  for (const entry of subjectEntries(connection, 'measuring-sheet', build, asOf)) {
    if (entry.kind !== 'measured') continue;
    const said = JSON.parse(entry.payload ?? '{}') as MeasuredPayload;
    const own = bySheet.get(entry.subject) ?? new Map<string, StoredReading>();
    bySheet.set(entry.subject, own);
    for (const reading of said.readings ?? []) {
      own.set(`${reading.place}\n${reading.name}`, {
        ...reading,
        by: said.by ?? '',
        instrument: said.instrument ?? '',
        on: entry.on_day,
        entry: entry.seq,
      });
    }
    if (said.struck !== undefined) own.delete(`${said.struck.place}\n${said.struck.name}`);
  }
  return new Map([...bySheet].map(([sheet, own]) => [sheet, [...own.values()]]));
}

/** One thing that was done to bolts of a group. Acts on a number of bolts, not on one by one, name no bolt. */
export interface BoltEvent {
  readonly entry: number;
  readonly kind: 'bolt-turned' | 'bolts-snugged' | 'bolts-final' | 'bolts-loosened' | 'bolts-rechecked';
  readonly on: string;
  readonly at: string;
  readonly count: number;
  readonly bolt: number | null;
  readonly stage: number | null;
  readonly bolts: readonly number[];
  readonly by: string;
  readonly wrench: string;
  readonly settingMilliNm: number | null;
  readonly reason: string;
  /** Written beside a turned bolt, for the counts; says nothing that the turn doesn't. */
  readonly withTurn: boolean;
}

const boltKinds: ReadonlySet<string> = new Set([
  'bolt-turned',
  'bolts-snugged',
  'bolts-final',
  'bolts-loosened',
  'bolts-rechecked',
]);

/** What was done to each bolt group of a build, in the order in which it was written down. */
export function boltEvents(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  group?: number,
): Map<number, BoltEvent[]> {
  const events = new Map<number, BoltEvent[]>();
  for (const entry of subjectEntries(connection, 'bolt-group', build, asOf, group)) {
    if (!boltKinds.has(entry.kind)) continue;
    const said = JSON.parse(entry.payload ?? '{}') as Partial<Record<string, unknown>>;
    const text = (key: string): string => (typeof said[key] === 'string' ? (said[key] as string) : '');
    const number = (key: string): number | null => (typeof said[key] === 'number' ? (said[key] as number) : null);
    const own = events.get(entry.subject) ?? [];
    events.set(entry.subject, own);
    own.push({
      entry: entry.seq,
      kind: entry.kind as BoltEvent['kind'],
      on: entry.on_day,
      at: entry.recorded_at,
      count: Math.round((entry.quantity_milli ?? 0) / 1000),
      bolt: number('bolt'),
      stage: number('stage'),
      bolts: Array.isArray(said['bolts']) ? (said['bolts'] as number[]) : [],
      by: text('by'),
      wrench: text('wrench'),
      settingMilliNm: number('settingMilliNm'),
      reason: text('reason'),
      withTurn: said['withTurn'] === true,
    });
  }
  return events;
}
