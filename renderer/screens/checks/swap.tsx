import { useState } from 'react';
import type { SwapView } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Choice } from '../../parts/fields.tsx';
import { Empty } from '../../parts/notes.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { CandidatesForm } from './candidates-form.tsx';
import { usePartLines } from './part-lines.ts';
import { SwapTable } from './swap-table.tsx';

/** Every check, the cost and the day as they stand, and with something else in the place of a part. */
export function Swap({ part, build }: { readonly part: number; readonly build: number }) {
  const lines = usePartLines();
  return (
    <div className="checks-block">
      <p>
        Nothing is written down here: the checks, the cost and the day are worked out for each candidate as though it
        stood in the part's place today.
      </p>
      <div className="checks-beside">
        <Choice
          name="part"
          label="Part that would be swapped"
          required
          value={part === 0 ? null : String(part)}
          options={lines.map(({ id, description }) => ({ value: String(id), label: description }))}
          onChange={(id) => navigate('/checks', { swap: id ?? '' }, { replace: true })}
        />
      </div>
      {part === 0 ? (
        <Empty>
          Choose the part line first; then give one to six candidates, each with what is different about it.
        </Empty>
      ) : (
        <OfPart part={part} build={build} />
      )}
    </div>
  );
}

function OfPart({ part, build }: { readonly part: number; readonly build: number }) {
  const reading = useReading();
  const [view, setView] = useState<SwapView | null>(null);
  const detail = useRead(
    ['parts.detail', reading, part],
    reading === null ? null : () => api.parts.detail({ ...reading, part }),
  );
  const vocabulary = useRead(['checks', 'vocabulary'], () => api.checks.vocabulary());
  return (
    <ReadView read={detail} label="Reading the part">
      {(known) => (
        <>
          <CandidatesForm
            part={known}
            kinds={vocabulary.state === 'ready' ? vocabulary.value : []}
            build={build}
            onCompared={setView}
          />
          {view !== null && <SwapTable view={view} />}
        </>
      )}
    </ReadView>
  );
}
