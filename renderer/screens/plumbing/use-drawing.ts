import { useEffect, useMemo, useState } from 'react';
import type { SchematicView } from '../../../core/contract/plumbing.ts';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { type Drawing, layOutDrawing } from './drawing-elk.ts';
import { layoutEngine } from './drawing-engine.ts';
import { drawingAt, type Places } from './drawing-places.ts';
import { deskLook, type Look } from './drawing-shapes.ts';
import { measureIn } from './drawing-text.ts';

type Laid =
  | { readonly state: 'working' }
  | { readonly state: 'failed'; readonly refusal: RefusalWords }
  | { readonly state: 'ready'; readonly drawing: Drawing };

/** The drawing laid out by itself; the former one stays until a changed one is ready. */
export function useLaidOut(view: SchematicView, look: Look): Laid {
  const [laid, setLaid] = useState<Laid>({ state: 'working' });
  const key = JSON.stringify([view.nodes, view.edges]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what is drawn of the view
  useEffect(() => {
    let wanted = true;
    const work = async () => {
      // Words are measured with the program's own letters, once these are there.
      await document.fonts.ready;
      const layOut = await layoutEngine();
      return layOutDrawing(view, { layOut, measure: measureIn(document), look });
    };
    work().then(
      (drawing) => wanted && setLaid({ state: 'ready', drawing }),
      (error: unknown) => wanted && setLaid({ state: 'failed', refusal: refusalWords(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [key, look]);
  return laid;
}

const scaled = (places: Places, factor: number): Places =>
  Object.fromEntries(Object.entries(places).map(([id, { x, y }]) => [id, { x: x * factor, y: y * factor }]));

export interface Placed {
  readonly drawing: Drawing;
  /** Whether something was moved since the places were kept. */
  readonly unkept: boolean;
  readonly move: (id: string, to: { x: number; y: number }) => void;
  readonly putBack: () => void;
  /** Where everything stands, as it is kept: in the sizes of the desk. */
  readonly places: () => Places;
}

interface Moved {
  readonly places: Places;
  readonly last: string;
}

/** The drawing with components where they were kept, and where they were moved since. */
export function usePlaced(laidOut: Drawing, kept: Places, look: Look): Placed {
  const [moved, setMoved] = useState<Moved | null>(null);
  const factor = look.text / deskLook.text;
  const drawing = useMemo(
    () => drawingAt(laidOut, moved?.places ?? scaled(kept, factor), moved?.last),
    [laidOut, kept, moved, factor],
  );
  const standing = (): Places => Object.fromEntries(drawing.nodes.map(({ id, x, y }) => [id, { x, y }]));
  return {
    drawing,
    unkept: moved !== null,
    move: (id, to) => setMoved({ places: { ...standing(), [id]: to }, last: id }),
    putBack: () => setMoved(null),
    places: () => scaled(standing(), 1 / factor),
  };
}
