import type { RecordKind, RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import type { Names } from './change-words.ts';

/** Parts, jobs, people and incomes of the build, by name. */
export function useNames(build: number): Names {
  const parts = useRead(['parts', build, null, 'names'], () => api.parts.rows({ build, from: 0, count: 20_000 }));
  return {
    parts: parts.state === 'ready' ? partNames(parts.value) : [],
    jobs: useRecords(build, 'job'),
    people: useRecords(build, 'person'),
    incomes: useRecords(build, 'income'),
  };
}

function partNames({ columns, rows }: { columns: readonly string[]; rows: readonly (readonly unknown[])[] }) {
  const [id, description] = [columns.indexOf('id'), columns.indexOf('description')];
  return rows.map((row) => ({ value: String(row[id]), label: String(row[description]) }));
}

/** Records of a kind that are in use. */
export function useRecords(build: number, kind: RecordKind): readonly RecordRow[] {
  const read = useRead(['records', build, null, kind], () => api.records.list({ kind, build }));
  return read.state === 'ready' ? read.value : [];
}
