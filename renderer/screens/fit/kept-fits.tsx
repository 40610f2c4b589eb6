import { Button } from '@mantine/core';
import { useState } from 'react';
import type { FitsView } from '../../../core/contract/fits.ts';
import { Link, type Params } from '../../app/route.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { ConnectionDetail } from './connection-detail.tsx';
import { ConnectionForm } from './connection-form.tsx';
import { ConnectionTable } from './connection-table.tsx';
import { DeclaredDetail } from './declared-detail.tsx';
import { DeclaredForm } from './declared-form.tsx';
import { DeclaredTable } from './declared-table.tsx';
import { numberIn, type ViewId } from './fit-address.ts';
import { OfferedFits } from './offered-fits.tsx';
import { usePartChoices } from './part-lines.ts';
import { PortDetail } from './port-detail.tsx';
import { PortForm } from './port-form.tsx';
import { PortTables } from './port-table.tsx';
import { WrongList } from './wrong-list.tsx';

type Making = 'port' | 'connection' | 'declared';

export interface KeptFitsProps {
  readonly view: FitsView;
  readonly build: number;
  readonly shown: Exclude<ViewId, 'try'>;
  readonly params: Params;
}

/** The list that is shown, what the address names beside it, and the forms for new ones. */
export function KeptFits({ view, build, shown, params }: KeptFitsProps) {
  const [making, setMaking] = useState<Making | null>(null);
  const canAct = useCanAct();
  const part = numberIn(params['part']);
  const make = canAct ? setMaking : undefined;
  const stop = () => setMaking(null);
  return (
    <div className="fit-block">
      <PastDayNote />
      <Lists view={view} build={build} shown={shown} part={part} make={make} />
      <Opened view={view} build={build} params={params} />
      {canAct && making === 'port' && <PortForm build={build} part={part} onClose={stop} />}
      {canAct && making === 'connection' && <ConnectionForm build={build} ports={view.ports} onClose={stop} />}
      {canAct && making === 'declared' && <DeclaredForm build={build} onClose={stop} />}
    </div>
  );
}

type ListProps = Pick<KeptFitsProps, 'view' | 'build'> & {
  readonly shown: KeptFitsProps['shown'];
  readonly part: number | null;
  readonly make: ((what: Making) => void) | undefined;
};

function Lists({ view, build, shown, part, make }: ListProps) {
  const first = (label: string, what: Making) =>
    make === undefined ? {} : { action: { label, onClick: () => make(what) } };
  if (shown === 'wrong') {
    const none = view.connections.length + view.declared.length === 0;
    return none ? (
      <Empty {...first('Add the first port…', 'port')}>
        Here stands what doesn’t fit, before it is ordered. Write down the ports of the block and of the parts that bolt
        to it, then connect them.
      </Empty>
    ) : (
      <WrongList view={view} />
    );
  }
  if (shown === 'connections') {
    return view.connections.length === 0 ? (
      <Empty {...first('Connect two ports…', 'connection')}>
        A connection is two ports that are to join: a bolt and its hole, a line and its fitting, a part that isn’t
        bought yet and the engine.
      </Empty>
    ) : (
      <>
        <New label="Connect two ports…" what="connection" make={make} />
        <ConnectionTable rows={view.connections} />
      </>
    );
  }
  if (shown === 'declared') {
    return (
      <>
        <p className="fit-soft">A fit that is no thread: counts, bores, patterns, ranges, sides.</p>
        {view.declared.length > 0 && <DeclaredTable rows={view.declared} />}
        <New label="Make a fit of your own…" what="declared" make={make} />
        {make !== undefined && view.offered.length > 0 && <OfferedFits build={build} offered={view.offered} />}
      </>
    );
  }
  return <PortList view={view} part={part} make={make} />;
}

function PortList({ view, part, make }: Omit<ListProps, 'shown' | 'build'>) {
  const name = usePartChoices().find(({ value }) => value === String(part))?.label;
  const ports = part === null ? view.ports : view.ports.filter((port) => port.part === part);
  const ids = new Set(ports.map(({ id }) => id));
  const joined = view.connections.filter(
    ({ one, other }) => one.part === part || other.part === part || ids.has(one.port ?? 0) || ids.has(other.port ?? 0),
  );
  return (
    <>
      {part !== null && (
        <p>
          Ports of <strong>{name ?? `part line ${part}`}</strong>.{' '}
          <Link to="/fit" params={{ view: 'ports' }}>
            Show all ports
          </Link>
        </p>
      )}
      {ports.length === 0 ? (
        <Empty {...(make === undefined ? {} : { action: { label: 'Add a port…', onClick: () => make('port') } })}>
          A port is where something joins: a thread, a flange, a hose end, a connector, of a part or of the engine
          itself.
        </Empty>
      ) : (
        <>
          <New label="Add a port…" what="port" make={make} />
          <PortTables ports={ports} />
        </>
      )}
      {part !== null && joined.length > 0 && <ConnectionTable rows={joined} />}
    </>
  );
}

function New({ label, what, make }: { label: string; what: Making; make: ListProps['make'] }) {
  if (make === undefined) return null;
  return (
    <Toolbar label="Add">
      <Button onClick={() => make(what)}>{label}</Button>
    </Toolbar>
  );
}

/** What the address names, in full beside the list. */
function Opened({ view, build, params }: Pick<KeptFitsProps, 'view' | 'build' | 'params'>) {
  const named = <Row extends { readonly id: number }>(name: string, rows: readonly Row[]): Row | undefined =>
    rows.find(({ id }) => id === numberIn(params[name]));
  const connection = named('connection', view.connections);
  const declared = named('declared', view.declared);
  const port = named('port', view.ports);
  const asked = ['connection', 'declared', 'port'].some((name) => params[name] !== undefined);
  if (connection !== undefined) {
    return <ConnectionDetail key={connection.id} row={connection} view={view} build={build} />;
  }
  if (declared !== undefined) return <DeclaredDetail key={declared.id} row={declared} build={build} />;
  if (port !== undefined) return <PortDetail key={port.id} port={port} view={view} build={build} />;
  return asked ? <p>What was asked for isn’t on the list: it was retired, or belongs to another build.</p> : null;
}
