import { Button } from '@mantine/core';
import { useState } from 'react';
import type { ConnectionRow, FitsView } from '../../../core/contract/fits.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { FitMark, lookOf } from '../../parts/fit-mark.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { Window } from '../../parts/window.tsx';
import { Acceptance } from './acceptance.tsx';
import { Adapters } from './adapters.tsx';
import { ConnectionForm } from './connection-form.tsx';
import { AcceptForm, RetireForm } from './fit-acts.tsx';
import { KeptRecord } from './kept-record.tsx';
import { ListedNeeds } from './listed-needs.tsx';
import { OnTheList } from './on-the-list.tsx';
import { sentence } from './port-text.ts';
import { TryAnother } from './try-another.tsx';
import { FactsOfFit } from './verdict.tsx';

export interface ConnectionDetailProps {
  readonly row: ConnectionRow;
  readonly view: FitsView;
  readonly build: number;
}

type Doing = 'edit' | 'accept' | 'retire';
const leave = () => navigate('/fit', { view: 'connections' });

/** One connection in full: the verdict, what it takes, what would happen, and what can be done about it. */
export function ConnectionDetail({ row, view, build }: ConnectionDetailProps) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const [trying, setTrying] = useState(false);
  const canAct = useCanAct();
  const stop = () => setDoing(null);
  if (doing === 'edit') {
    return (
      <KeptRecord build={build} kind="connection" id={row.id}>
        {(kept) => <ConnectionForm build={build} ports={view.ports} kept={kept} onClose={stop} />}
      </KeptRecord>
    );
  }
  const { fit } = row;
  const wrong = fit.verdict !== 'mates' && fit.verdict !== 'unknown';
  return (
    <Window opened as="drawer" title={row.title} onClose={leave}>
      <div className="fit-block">
        <p>
          <FitMark look={lookOf(row)} /> {sentence(fit.reason)}
        </p>
        <Acceptance accepted={row.accepted} />
        <PastDayNote />
        <dl className="fit-sides">
          <SideOf title="One side" side={row.one} />
          <SideOf title="Other side" side={row.other} />
        </dl>
        {canAct && <Buttons row={row} wrong={wrong} onDo={setDoing} />}
        <FactsOfFit judged={fit}>
          <ListedNeeds row={row} />
          <ChosenAdapter row={row} />
          {(row.adapter === null || row.adapter.missing) && <Offered row={row} />}
        </FactsOfFit>
        {row.note !== '' && <p>{row.note}</p>}
        <div>
          <Button variant="default" aria-expanded={trying} onClick={() => setTrying(!trying)}>
            {trying ? 'Stop trying' : 'Try another port in its place…'}
          </Button>
        </div>
        {trying && <TryAnother row={row} ports={view.ports} build={build} />}
      </div>
      {doing === 'accept' && (
        <AcceptForm subject={{ kind: 'connection', id: row.id }} title={row.title} says={row.says} onClose={stop} />
      )}
      {doing === 'retire' && (
        <RetireForm kind="connection" id={row.id} title={row.title} onClose={stop} onDone={leave} />
      )}
    </Window>
  );
}

function Buttons({
  row: { id, accepted },
  wrong,
  onDo,
}: {
  readonly row: ConnectionRow;
  readonly wrong: boolean;
  readonly onDo: (what: Doing) => void;
}) {
  const { today } = useWorkspace();
  const end = useAct((key, on: string) => api.fits.endAcceptance({ key, on, subject: { kind: 'connection', id } }));
  return (
    <>
      <div className="fit-buttons">
        <Button onClick={() => onDo('edit')}>Change…</Button>
        {wrong && (accepted === null || accepted.lapsed) && (
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

/** The adapters to choose from; taking one puts its pieces on the parts list. */
function Offered({ row: { id, fit } }: { readonly row: ConnectionRow }) {
  const { today } = useWorkspace();
  const canAct = useCanAct();
  // biome-ignore lint/correctness/useHookAtTopLevel: a procedure of the workbook, no hook
  const act = useAct((key, adapter: number) => api.fits.useAdapter({ key, on: today, connection: id, adapter }));
  return (
    <>
      <Adapters
        adapters={fit.adapters}
        busy={act.busy}
        {...(canAct ? { onUse: (at: number) => void act.run(at) } : {})}
      />
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
    </>
  );
}

/** The adapter that was chosen, with the part lines that it became. */
function ChosenAdapter({ row: { id, adapter } }: { readonly row: ConnectionRow }) {
  const { today } = useWorkspace();
  const canAct = useCanAct();
  const act = useAct((key, on: string) => api.fits.dropAdapter({ key, on, connection: id }));
  if (adapter === null) return null;
  return (
    <section aria-label="Adapter chosen" className="fit-block">
      <p>
        <strong>Joined by:</strong> {adapter.pieces.join(' + ')}.
        {adapter.missing && ' It is missing: off the parts list, or it joins these two no longer. Choose again.'}
      </p>
      <OnTheList parts={adapter.parts} />
      {canAct && (
        <div>
          <Button variant="subtle" disabled={act.busy} onClick={() => void act.run(today)}>
            Do without this adapter
          </Button>
        </div>
      )}
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
    </section>
  );
}

function SideOf({ title, side: { port, part, text, whose, standing } }: { title: string; side: ConnectionRow['one'] }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        <strong>{text}</strong>
        <span>
          {whose === '' ? 'typed, not on the list' : whose}
          {standing !== '' && `, ${standing}`}
        </span>
        <span className="fit-links">
          {port !== null && (
            <Link to="/fit" params={{ port }}>
              Open the port
            </Link>
          )}
          {part !== null && (
            <Link to="/parts" params={{ part }}>
              Open the part
            </Link>
          )}
        </span>
      </dd>
    </div>
  );
}
