import type { RecordValues } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { usePartNames } from './part-names.ts';

interface KeptPort {
  readonly id: number;
  /** Whose it is, its name, and how it is made: "Turbocharger, oil drain: flange". */
  readonly words: string;
}

/** The build's kept ports, for choosing one. */
export function usePorts(build: number): readonly KeptPort[] {
  const parts = usePartNames();
  const read = useRead(['records', build, null, 'port'], () => api.records.list({ kind: 'port', build }));
  if (read.state !== 'ready') return [];
  return read.value.map(({ id, values }) => {
    const { name, part, place, designation } = values as unknown as RecordValues['port'];
    const whose = part === null ? place : (parts.find((one) => one.id === part)?.description ?? '');
    return { id, words: `${[whose, name].filter((text) => text !== '').join(', ')}: ${designation}` };
  });
}
