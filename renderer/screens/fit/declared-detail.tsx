import { Button } from '@mantine/core';
import { useState } from 'react';
import type { DeclaredRow } from '../../../core/contract/fits.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { declaredLookOf, FitMark } from '../../parts/fit-mark.tsx';
import { Caution } from '../../parts/notes.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { Window } from '../../parts/window.tsx';
import { Acceptance } from './acceptance.tsx';
import { DeclaredForm } from './declared-form.tsx';
import { AcceptForm, RetireForm } from './fit-acts.tsx';
import { severityWords } from './fit-words.ts';
import { KeptRecord } from './kept-record.tsx';

type Doing = 'edit' | 'accept' | 'retire';
const leave = () => navigate('/fit', { view: 'declared' });

/** One declared fit in full: the outcome, what it was given and from where, and what can be done about it. */
export function DeclaredDetail({ row, build }: { readonly row: DeclaredRow; readonly build: number }) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const canAct = useCanAct();
  const stop = () => setDoing(null);
  if (doing === 'edit') {
    return (
      <KeptRecord build={build} kind="declaredFit" id={row.id}>
        {(kept) => <DeclaredForm build={build} kept={kept} onClose={stop} />}
      </KeptRecord>
    );
  }
  return (
    <Window opened as="drawer" title={row.title} onClose={leave}>
      <div className="fit-block">
        <p>
          <FitMark look={declaredLookOf(row)} /> {row.says}
        </p>
        {row.outcome === 'fail' && row.severity !== 'info' && <p>How bad it is: {severityWords[row.severity]}.</p>}
        <Acceptance accepted={row.accepted} />
        {row.caution !== '' && <Caution>{row.caution}</Caution>}
        <PastDayNote />
        {canAct && <Buttons row={row} onDo={setDoing} />}
        <Given row={row} />
        {row.notes.map((note) => (
          <p key={note} className="fit-soft">
            {note}
          </p>
        ))}
        {row.source !== '' && <p className="fit-soft">Source: {row.source}</p>}
        {row.note !== '' && <p>{row.note}</p>}
      </div>
      {doing === 'accept' && (
        <AcceptForm subject={{ kind: 'declared-fit', id: row.id }} title={row.title} says={row.says} onClose={stop} />
      )}
      {doing === 'retire' && (
        <RetireForm kind="declaredFit" id={row.id} title={row.title} onClose={stop} onDone={leave} />
      )}
    </Window>
  );
}

function Given({ row: { asks, things, left, right, margin } }: { readonly row: DeclaredRow }) {
  return (
    <section aria-label="What it was given" className="fit-block">
      <h3>What it was given</h3>
      {left !== '' && margin !== '' && (
        <p>
          {left} against {right}, margin {margin}.
        </p>
      )}
      <dl className="fit-sides">
        {asks.map(({ path, label, value, from }) => (
          <div key={path}>
            <dt>{label}</dt>
            <dd>
              <strong>{value === '' ? 'not known yet' : value}</strong>
              {value !== '' && from !== '' && <span>{from}</span>}
            </dd>
          </div>
        ))}
        {things
          .filter(({ part }) => part !== null)
          .map(({ name, part, description }) => (
            <div key={name}>
              <dt>the {name.replaceAll('_', ' ')}</dt>
              <dd>
                <Link to="/parts" params={{ part: part ?? undefined }}>
                  {description}
                </Link>
              </dd>
            </div>
          ))}
      </dl>
    </section>
  );
}

function Buttons({ row, onDo }: { readonly row: DeclaredRow; readonly onDo: (what: Doing) => void }) {
  const { id, accepted, outcome } = row;
  const { today } = useWorkspace();
  const end = useAct((key, on: string) => api.fits.endAcceptance({ key, on, subject: { kind: 'declared-fit', id } }));
  return (
    <>
      <div className="fit-buttons">
        <Button onClick={() => onDo('edit')}>Fill in or change…</Button>
        {outcome === 'fail' && (accepted === null || accepted.lapsed) && (
          <Button onClick={() => onDo('accept')}>Accept with a reason…</Button>
        )}
        {accepted !== null && (
          <Button disabled={end.busy} onClick={() => void end.run(today)}>
            End the acceptance
          </Button>
        )}
        <Button variant="subtle" onClick={() => onDo('retire')}>
          Retire…
        </Button>
      </div>
      {end.refusal !== null && <RefusalNote refusal={end.refusal} />}
    </>
  );
}
