import type { RecordRow } from '../../../core/contract/records.ts';
import { dayWords } from '../../../core/dates/day-words.ts';
import { api } from '../../app/client.ts';
import { type Read, useRead } from '../../app/data.tsx';
import { kindSpecs, type ListKind, ofOneBuild } from './kinds.ts';

/** Names of the records that others point at, by kind and id. */
export type Names = Readonly<Record<'system' | 'phase' | 'job' | 'part' | 'person', ReadonlyMap<number, string>>>;

export function nameOf(record: RecordRow, kind: ListKind): string {
  const name = String(record.values[kindSpecs[kind].nameField] ?? '');
  if (kind !== 'calendarDay') return name;
  const { until } = record.values;
  return typeof until === 'string' && until !== name ? `${dayWords(name)} to ${dayWords(until)}` : dayWords(name);
}

/** All records of a kind, retired ones too. */
export const useRecords = (kind: ListKind, build: number): Read<readonly RecordRow[]> =>
  useRead(['records', build, undefined, kind, 'all'], () =>
    api.records.list({ kind, retired: true, ...(ofOneBuild(kind) ? { build } : {}) }),
  );

const none: ReadonlyMap<number, string> = new Map();

/** What records of this kind may point at; nothing is read for kinds that point at nothing. */
export function useNames(kind: ListKind, build: number): Names {
  const wanted = new Set(kindSpecs[kind].fields.map(({ type }) => type));
  const records = (of: 'system' | 'phase' | 'job' | 'person', name: 'name' | 'title') => async () => {
    const rows = await api.records.list(of === 'person' ? { kind: of } : { kind: of, build });
    return new Map(rows.map(({ id, values }) => [id, String(values[name] ?? '')]));
  };
  const key = (of: string) => ['records', build, undefined, of, 'names'];
  const system = useRead(key('system'), wanted.has('system') ? records('system', 'name') : null);
  const phase = useRead(key('phase'), wanted.has('phase') ? records('phase', 'name') : null);
  const job = useRead(key('job'), wanted.has('job') ? records('job', 'title') : null);
  const person = useRead(key('person'), wanted.has('person') ? records('person', 'name') : null);
  const part = useRead(['parts', build, undefined, 'names-by-id'], wanted.has('part') ? () => partNames(build) : null);
  const ready = (read: Read<ReadonlyMap<number, string>>) => (read.state === 'ready' ? read.value : none);
  return {
    system: ready(system),
    phase: ready(phase),
    job: ready(job),
    part: ready(part),
    person: ready(person),
  };
}

async function partNames(build: number): Promise<ReadonlyMap<number, string>> {
  const { columns, rows } = await api.parts.rows({ build, from: 0, count: 20_000 });
  const [id, description] = [columns.indexOf('id'), columns.indexOf('description')];
  return new Map(rows.map((row) => [Number(row[id]), String(row[description] ?? '')]));
}
