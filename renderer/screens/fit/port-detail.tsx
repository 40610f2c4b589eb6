import { Button } from '@mantine/core';
import { useState } from 'react';
import type { FitsView, PortRow } from '../../../core/contract/fits.ts';
import { measuresOf } from '../../../core/fit/measuring.ts';
import { parsePort } from '../../../core/fit/parse.ts';
import { Link, navigate } from '../../app/route.tsx';
import { FitMark, lookOf } from '../../parts/fit-mark.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { Window } from '../../parts/window.tsx';
import { ConnectionForm } from './connection-form.tsx';
import { RetireForm } from './fit-acts.tsx';
import { roleChoices } from './fit-words.ts';
import { PortForm } from './port-form.tsx';
import { sizeText } from './port-text.ts';

export interface PortDetailProps {
  readonly port: PortRow;
  readonly view: FitsView;
  readonly build: number;
}

/** One port in full: how it is read and measured, and what it is connected to. */
export function PortDetail({ port, view, build }: PortDetailProps) {
  const [doing, setDoing] = useState<'edit' | 'connect' | 'retire' | null>(null);
  const canAct = useCanAct();
  const stop = () => setDoing(null);
  const leave = () => navigate('/fit', { view: 'ports', ...(port.part === null ? {} : { part: port.part }) });
  if (doing === 'edit') return <PortForm build={build} kept={port} onClose={stop} />;
  if (doing === 'connect') return <ConnectionForm build={build} ports={view.ports} from={port} onClose={stop} />;
  const read = parsePort(port.designation, { role: port.role });
  const joined = view.connections.filter(({ id }) => port.connections.includes(id));
  return (
    <Window opened as="drawer" title={`${port.name}, ${port.owner}`} onClose={leave}>
      <div className="fit-block">
        <p>
          <strong>{port.canonical || port.designation}</strong>
          {read.ok && sizeText(read.port) !== '' && ` (${sizeText(read.port)})`}
          {port.canonical !== '' && port.canonical !== port.designation && (
            <span className="fit-under">Typed as {port.designation}</span>
          )}
        </p>
        {port.problem !== '' && (
          <p className="fit-unread">
            <strong>Can’t be read:</strong> {port.problem}
          </p>
        )}
        {read.ok && <p className="fit-soft">To be sure: {measuresOf(read.port).howToMeasure}</p>}
        <p>
          {roleChoices.find(({ value }) => value === port.role)?.label}
          {port.medium !== '' && `; ${port.medium}`}.{' '}
          {port.part !== null && (
            <Link to="/parts" params={{ part: port.part }}>
              Open the part
            </Link>
          )}
        </p>
        {port.note !== '' && <p>{port.note}</p>}
        <PastDayNote />
        {canAct && (
          <div className="fit-buttons">
            <Button onClick={() => setDoing('connect')}>Connect it…</Button>
            <Button onClick={() => setDoing('edit')}>Change…</Button>
            <Button variant="subtle" onClick={() => setDoing('retire')}>
              Retire…
            </Button>
          </div>
        )}
        <section aria-label="Connected to" className="fit-block">
          <h3>Connected to</h3>
          {joined.length === 0 ? (
            <p>Nothing is connected to it yet.</p>
          ) : (
            <ul className="fit-plain">
              {joined.map((row) => (
                <li key={row.id}>
                  <Link to="/fit" params={{ connection: row.id }}>
                    {row.title}
                  </Link>{' '}
                  <FitMark look={lookOf(row)} />
                </li>
              ))}
            </ul>
          )}
        </section>
      </div>
      {doing === 'retire' && <RetireForm kind="port" id={port.id} title={port.name} onClose={stop} onDone={leave} />}
    </Window>
  );
}
