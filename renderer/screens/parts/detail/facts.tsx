import { Button } from '@mantine/core';
import { useState } from 'react';
import type { PartDetail } from '../../../../core/contract/parts.ts';
import { api } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { type KindOfPart, kindNamed, labelOf } from './fact-fields.ts';
import { FactProposals } from './fact-proposals.tsx';
import { FactsForm } from './facts-form.tsx';
import type { PartSectionProps } from './part-in-full.tsx';

type Fact = PartDetail['facts'][number];

/** What kind of part it is and what is known about it, in the words and units that checks read. */
export function Facts({ detail, closed }: PartSectionProps) {
  const { row, facts } = detail;
  const { today } = useWorkspace();
  const [editing, setEditing] = useState(false);
  const read = useRead(['checks', 'vocabulary'], () => api.checks.vocabulary());
  const kinds: readonly KindOfPart[] = read.state === 'ready' ? read.value : [];
  const act = useAct((key, { kind, facts: next }: { kind: string; facts: readonly Fact[] }) =>
    api.checks.setFacts({ key, on: today, part: row.id, revision: row.revision, kind, facts: [...next] }),
  );
  const changeable = closed === null && !row.dropped;
  const kind = kindNamed(kinds, row.kind);
  return (
    <section aria-label="Facts">
      <h3>Facts</h3>
      {row.kind !== '' && <p>Kind of part: {kind?.label ?? row.kind}</p>}
      {facts.length === 0 && <p>Nothing is noted yet: a thread, a flow, a length that other parts must fit.</p>}
      <dl className="part-figures">
        {facts.map(({ key, value, unit }) => (
          <div key={`${key} ${value}`}>
            <dt>{labelOf(kind, key)}</dt>
            <dd>
              <span className="figure">{unit === '' ? value : `${value} ${unit}`}</span>
            </dd>
          </div>
        ))}
      </dl>
      {act.refusal !== null && !editing && <RefusalNote refusal={act.refusal} />}
      {changeable && (
        <FactProposals
          part={row.id}
          kinds={kinds}
          busy={act.busy}
          onAccept={(proposedKind, accepted) =>
            void act.run({ kind: row.kind === '' ? proposedKind : row.kind, facts: [...facts, ...accepted] })
          }
        />
      )}
      <div className="parts-bulk">
        {changeable && <Button onClick={() => setEditing(true)}>Change kind and facts…</Button>}
        <Link to="/checks" params={{ swap: row.id }}>
          What if it were swapped?
        </Link>
      </div>
      {editing && (
        <FactsForm
          kind={row.kind}
          facts={facts}
          kinds={kinds}
          busy={act.busy}
          refusal={act.refusal}
          onClose={() => {
            act.forget();
            setEditing(false);
          }}
          onStore={async (kindChosen, next) => {
            if ((await act.run({ kind: kindChosen, facts: next })) !== null) setEditing(false);
          }}
        />
      )}
    </section>
  );
}
