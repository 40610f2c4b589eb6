import type { ReactNode } from 'react';
import type { RecordKind, RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { ReadView } from '../../parts/read-view.tsx';

export interface KeptRecordProps {
  readonly build: number;
  readonly kind: RecordKind;
  readonly id: number;
  readonly children: (kept: RecordRow) => ReactNode;
}

/** The record behind a worked-out row, for its form: the row no longer tells all that was entered. */
export function KeptRecord({ build, kind, id, children }: KeptRecordProps) {
  const read = useRead(['records', build, null, kind], () => api.records.list({ kind, build }));
  return (
    <ReadView read={read} label="Reading what was entered">
      {(rows) => {
        const kept = rows.find((row) => row.id === id);
        return kept === undefined ? null : children(kept);
      }}
    </ReadView>
  );
}
