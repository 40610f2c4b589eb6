import { ReactFlowProvider } from '@xyflow/react';
import { useId, useRef } from 'react';
import type { SchematicView } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { usePreferences } from '../../app/preferences.ts';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { dateText } from '../../parts/formats.ts';
import { KeyHints } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { Canvas } from './drawing-canvas.tsx';
import type { Drawing as LaidOut } from './drawing-elk.ts';
import { Legend } from './drawing-legend.tsx';
import { OnPaper } from './drawing-paper.tsx';
import type { Places } from './drawing-places.ts';
import { benchLook, deskLook, type Look } from './drawing-shapes.ts';
import { DrawingTables } from './drawing-tables.tsx';
import { DrawingTools } from './drawing-tools.tsx';
import { useLaidOut, usePlaced } from './use-drawing.ts';
import './drawing.css';

/** Components and lines of the build, drawn and laid out by themselves, and the same as tables. */
export default function Drawing() {
  const reading = useReading();
  const read = useRead(
    ['plumbing', reading?.build ?? null, reading?.asOf ?? null, 'schematic'],
    reading === null ? null : () => api.plumbing.schematic(reading),
  );
  if (reading === null) return null;
  return (
    <ReadView read={read} label="Reading the drawing">
      {(view) => <Drawn view={view} build={reading.build} />}
    </ReadView>
  );
}

interface DrawnProps {
  readonly view: SchematicView;
  readonly build: number;
}

function Drawn({ view, build }: DrawnProps) {
  const { density } = usePreferences();
  const look = density === 'bench' ? benchLook : deskLook;
  const laid = useLaidOut(view, look);
  const tables = useRef<HTMLElement>(null);
  const { builds, today, asOf } = useWorkspace();
  const locale = useLocale();
  if (view.nodes.length === 0) {
    return (
      <Empty>
        Here stands which component is joined to which. Plan a line and name the ports at its two ends, and it is drawn.
      </Empty>
    );
  }
  return (
    <div className="drawing">
      <p className="drawing-printed">
        {builds.find(({ id }) => id === build)?.name}, {dateText(asOf ?? today, locale)}
      </p>
      <p>{view.answer}</p>
      {laid.state === 'working' && <Loading label="Laying out the drawing" />}
      {laid.state === 'failed' && <RefusalNote refusal={laid.refusal} />}
      {laid.state === 'ready' && (
        <ReactFlowProvider>
          <Placed
            key={look.text}
            view={view}
            build={build}
            look={look}
            laidOut={laid.drawing}
            onTables={() => tables.current?.focus()}
          />
        </ReactFlowProvider>
      )}
      <section ref={tables} tabIndex={-1} aria-label="The drawing as tables" className="drawing-tables not-printed">
        <DrawingTables view={view} />
      </section>
    </div>
  );
}

interface PlacedProps extends DrawnProps {
  readonly look: Look;
  readonly laidOut: LaidOut;
  readonly onTables: () => void;
}

function Placed({ view, build, look, laidOut, onTables }: PlacedProps) {
  const canAct = useCanAct();
  const { today } = useWorkspace();
  const hint = useId();
  const { drawing, unkept, move, putBack, places } = usePlaced(laidOut, view.places, look);
  const act = useAct((key, kept: Places) => api.plumbing.keepPlaces({ key, on: today, build, places: { ...kept } }));
  const keep = async (kept: Places) => {
    if ((await act.run(kept)) !== null) putBack();
  };
  const isKept = Object.keys(view.places).length > 0;
  return (
    <>
      <DrawingTools
        drawing={drawing}
        busy={act.busy}
        onKeep={canAct && unkept ? () => void keep(places()) : null}
        onPutBack={unkept && isKept ? putBack : null}
        onLayOut={canAct && isKept ? () => void keep({}) : unkept ? putBack : null}
        onTables={onTables}
      />
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      <p role="status" className="only-heard">
        {unkept ? 'A component was moved. Its place isn’t kept yet.' : ''}
      </p>
      <p id={hint} className="only-heard">
        The tables below say the same as the drawing.
      </p>
      <Canvas drawing={drawing} onMove={canAct ? move : null} label="Drawing of the lines" describedBy={hint} />
      <OnPaper drawing={drawing} />
      <Legend fluids={view.edges.map(({ fluid }) => fluid)} />
      <KeyHints
        hints={[
          { keys: 'Tab', does: 'from one component, port or line to the next' },
          { keys: 'Enter', does: 'open it' },
          ...(canAct ? [{ keys: '← ↑ → ↓', does: 'move a component, with Shift farther' }] : []),
          { keys: '+ − 0', does: 'larger, smaller, all of it' },
        ]}
      />
    </>
  );
}
