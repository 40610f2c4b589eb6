import { useMemo } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';

/** The records of one kind by name, as cells and forms need them. */
export interface NameList {
  /** The name of a record, retired or not; empty for none. */
  readonly nameOf: (id: number | null) => string;
  /** Records that can still be chosen, in their own order. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** The record with exactly this name; null for none. */
  readonly idOf: (name: string) => number | null;
}

export interface Names {
  readonly system: NameList;
  readonly phase: NameList;
  readonly vendor: NameList;
  readonly bin: NameList;
  readonly job: NameList;
}

export const namedKinds = ['system', 'phase', 'vendor', 'bin', 'job'] as const;
export type NamedKind = (typeof namedKinds)[number];

const nameOfRecord = ({ values }: RecordRow): string => String(values['name'] ?? values['title'] ?? '');

function listOf(records: readonly RecordRow[]): NameList {
  const names = new Map(records.map((record) => [record.id, nameOfRecord(record)]));
  const standing = records.filter(({ retiredOn }) => retiredOn === null);
  const ids = new Map(standing.map((record) => [nameOfRecord(record), record.id]));
  return {
    nameOf: (id) => (id === null ? '' : (names.get(id) ?? '')),
    options: standing.map((record) => ({ value: String(record.id), label: nameOfRecord(record) })),
    idOf: (name) => ids.get(name) ?? null,
  };
}

const noRecords: readonly RecordRow[] = [];

/** The same list as long as no name changed: an act changes how often a record is used, and ten thousand cells hang on this. */
function useNameList(kind: NamedKind, build: number | null): NameList {
  const shared = kind === 'vendor' || kind === 'bin';
  const read = useRead(
    ['records.list', build, kind, 'with retired'],
    build === null ? null : () => api.records.list({ kind, ...(shared ? {} : { build }), retired: true }),
  );
  const records = read.state === 'ready' ? read.value : noRecords;
  const signature = records.map((record) => `${record.id} ${record.retiredOn} ${nameOfRecord(record)}`).join('\n');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the signature stands for what is read of the records
  return useMemo(() => listOf(records), [signature]);
}

/** The names of all that a part line can stand on. */
export function useNames(build: number | null): Names {
  const system = useNameList('system', build);
  const phase = useNameList('phase', build);
  const vendor = useNameList('vendor', build);
  const bin = useNameList('bin', build);
  const job = useNameList('job', build);
  return useMemo(() => ({ system, phase, vendor, bin, job }), [system, phase, vendor, bin, job]);
}
