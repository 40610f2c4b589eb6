import { type PointerEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PlanBar } from '../../../core/contract/plan.ts';

/** A bar that is being moved, or its end: how many points from where it was. */
export interface Drag {
  readonly bar: PlanBar;
  readonly part: 'bar' | 'end';
  readonly by: number;
}

interface Handlers {
  readonly onPointerDown: (event: PointerEvent<SVGElement>) => void;
  readonly onPointerMove: (event: PointerEvent<SVGElement>) => void;
  readonly onPointerUp: (event: PointerEvent<SVGElement>) => void;
  readonly onPointerCancel: () => void;
}

export interface BarDrag {
  readonly drag: Drag | null;
  /** Handlers of a bar or its end; the same function from drawing to drawing. */
  readonly handlers: (bar: PlanBar, part: Drag['part']) => Handlers;
}

/** Below this many points it was a click. */
const least = 4;

/** Follows a pointer that drags a bar; `onDrop` is told how far, `onClick` when it didn't go anywhere. */
export function useBarDrag(onDrop: (drag: Drag) => void, onClick: (bar: PlanBar) => void): BarDrag {
  const [drag, setDrag] = useState<Drag | null>(null);
  const from = useRef<{ readonly bar: PlanBar; readonly part: Drag['part']; readonly x: number } | null>(null);
  const told = useRef({ onDrop, onClick });
  useLayoutEffect(() => {
    told.current = { onDrop, onClick };
  }, [onDrop, onClick]);
  const handlers = useMemo(() => {
    const stop = () => {
      from.current = null;
      setDrag(null);
    };
    return (bar: PlanBar, part: Drag['part']): Handlers => ({
      onPointerDown: (event) => {
        if (event.button !== 0) return;
        event.preventDefault();
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = { bar, part, x: event.clientX };
      },
      onPointerMove: (event) => {
        const began = from.current;
        if (began === null) return;
        const by = event.clientX - began.x;
        setDrag(Math.abs(by) < least ? null : { bar: began.bar, part: began.part, by });
      },
      onPointerUp: (event) => {
        const began = from.current;
        if (began === null) return;
        const by = event.clientX - began.x;
        stop();
        if (Math.abs(by) < least) told.current.onClick(began.bar);
        else told.current.onDrop({ bar: began.bar, part: began.part, by });
      },
      onPointerCancel: stop,
    });
  }, []);
  return { drag, handlers };
}
