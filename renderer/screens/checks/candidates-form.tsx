import { Button } from '@mantine/core';
import { useState } from 'react';
import type { SwapView } from '../../../core/contract/checks.ts';
import type { PartDetail } from '../../../core/contract/parts.ts';
import { api } from '../../app/client.ts';
import { Form } from '../../parts/form.tsx';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { type CandidateDraft, candidateOf, emptyCandidate, factLines, type PartKindRow } from './candidate.ts';
import { CandidateFields } from './candidate-fields.tsx';

const most = 6;

export interface CandidatesFormProps {
  readonly part: PartDetail;
  readonly kinds: readonly PartKindRow[];
  readonly build: number;
  readonly onCompared: (view: SwapView | null) => void;
}

/** One to six things that could stand in a part's place, side by side, and the comparison on request. */
export function CandidatesForm({ part, kinds, build, onCompared }: CandidatesFormProps) {
  const [drafts, setDrafts] = useState<readonly CandidateDraft[]>([emptyCandidate(1), emptyCandidate(2)]);
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<RefusalWords | null>(null);
  const lines = factLines(part, kinds);
  const next = Math.max(...drafts.map(({ number }) => number)) + 1;
  const compare = async () => {
    setBusy(true);
    setRefusal(null);
    try {
      const candidates = drafts.map((draft) => candidateOf(draft, part.row.id, lines));
      onCompared(await api.checks.swap({ build, candidates }));
    } catch (error) {
      onCompared(null);
      setRefusal(refusalWords(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <Form submitLabel="Compare" onSubmit={compare} busy={busy} refusal={refusal}>
      {lines.length === 0 && (
        <p>
          Nothing is known about what kind of part it is: choose its kind among its facts, and the fields of that kind
          stand here.
        </p>
      )}
      <div className="checks-candidates">
        {drafts.map((draft) => (
          <CandidateFields
            key={draft.number}
            draft={draft}
            lines={lines}
            onChange={(changed) => setDrafts(drafts.map((one) => (one.number === draft.number ? changed : one)))}
            {...(drafts.length > 1
              ? { onRemove: () => setDrafts(drafts.filter(({ number }) => number !== draft.number)) }
              : {})}
          />
        ))}
      </div>
      {drafts.length < most && (
        <div className="checks-buttons">
          <Button onClick={() => setDrafts([...drafts, emptyCandidate(next)])}>One more candidate</Button>
        </div>
      )}
    </Form>
  );
}
