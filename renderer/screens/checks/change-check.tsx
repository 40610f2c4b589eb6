import type { ChecksView } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { CheckForm } from './check-form.tsx';

export interface ChangeCheckProps {
  readonly view: ChecksView;
  readonly build: number;
  readonly check: number;
  readonly onClose: () => void;
}

/** The form of a kept check. It starts from the record itself: the worked-out row no longer tells what was bound. */
export function ChangeCheck({ view, build, check, onClose }: ChangeCheckProps) {
  const read = useRead(['records', build, null, 'check'], () => api.records.list({ kind: 'check', build }));
  return (
    <ReadView read={read} label="Reading the check">
      {(rows) => {
        const kept = rows.find(({ id }) => id === check);
        return kept === undefined ? null : <CheckForm view={view} build={build} kept={kept} onClose={onClose} />;
      }}
    </ReadView>
  );
}
