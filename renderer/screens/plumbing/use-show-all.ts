import { useReactFlow, useStoreApi } from '@xyflow/react';
import { useCallback } from 'react';
import { boundsOf } from './drawing-bounds.ts';
import type { Drawing } from './drawing-elk.ts';
import type { Point } from './drawing-shapes.ts';

/** No larger than this: two components needn't fill the window. */
const most = 1.25;
const margin = 12;

/** Shows all of the drawing; with a least zoom, as much of it as can be read. */
export function useShowAll(drawing: Drawing): (least?: number) => void {
  const flow = useReactFlow();
  const store = useStoreApi();
  return useCallback(
    (least = 0) => {
      const { width, height } = store.getState();
      const bounds = boundsOf(drawing);
      const zoom = Math.max(least, Math.min(width / bounds.width, height / bounds.height, most));
      const first = drawing.nodes.reduce<Point>(
        (one, node) => (node.x + node.y < one.x + one.y ? node : one),
        drawing.nodes[0] ?? bounds,
      );
      // In the middle where all of it has room; else from its edge, or, where little is seen, from the first component on.
      const shift = (size: number, whole: number, edge: number, from: number): number => {
        const room = size - whole * zoom;
        if (room >= 0) return room / 2 - edge * zoom;
        return size > (whole * zoom) / 2 ? -edge * zoom : Math.max(room - edge * zoom, margin - from * zoom);
      };
      void flow.setViewport({
        x: shift(width, bounds.width, bounds.x, first.x),
        y: shift(height, bounds.height, bounds.y, first.y),
        zoom,
      });
    },
    [flow, store, drawing],
  );
}
