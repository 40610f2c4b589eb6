import '@xyflow/react/dist/base.css';
import { type Node, type NodeChange, type NodeProps, ReactFlow, useReactFlow, ViewportPortal } from '@xyflow/react';
import { type FocusEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { Drawing, PlacedEdge, PlacedNode } from './drawing-elk.ts';
import { LabelFigure, LineFigure } from './drawing-line.tsx';
import { NodeFigure } from './drawing-node.tsx';
import type { Point } from './drawing-shapes.ts';
import { useShowAll } from './use-show-all.ts';

type Move = (id: string, to: Point) => void;
type ComponentNode = Node<{ readonly placed: PlacedNode; readonly onMove: Move | null }, 'component'>;

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};
const stride = { small: 10, large: 60, pan: 80 } as const;
/** Below the readable zoom nothing opens by itself. */
const zooms = { least: 0.15, readable: 0.6, most: 2.5 } as const;

function ComponentFigure({ data: { placed, onMove } }: NodeProps<ComponentNode>) {
  const pressed = (event: KeyboardEvent) => {
    const way = arrows[event.key];
    if (way === undefined || onMove === null || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const far = event.shiftKey ? stride.large : stride.small;
    onMove(placed.id, { x: placed.x + way.x * far, y: placed.y + way.y * far });
  };
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: what stands in it has names of its own
    <svg width={placed.width} height={placed.height} className="drawing-figure">
      <NodeFigure shape={placed.shape} onKeyDown={pressed} />
    </svg>
  );
}

const nodeTypes = { component: ComponentFigure };

/** While a component is dragged its lines follow straight; they are led anew when it is let go. */
function following({ nodes, edges }: Drawing, dragged: PlacedNode | null): readonly PlacedEdge[] {
  const before = nodes.find(({ id }) => id === dragged?.id);
  if (dragged === null || before === undefined) return edges;
  const by = { x: dragged.x - before.x, y: dragged.y - before.y };
  return edges.map((edge) => {
    const { from, to } = edge.label.edge;
    const last = edge.points.length - 1;
    const points = edge.points.map((point, at) =>
      (at === 0 && from.node === dragged.id) || (at === last && to.node === dragged.id)
        ? { x: point.x + by.x, y: point.y + by.y }
        : point,
    );
    return { ...edge, points };
  });
}

export interface CanvasProps {
  readonly drawing: Drawing;
  /** Null on a past day: nothing is moved there. */
  readonly onMove: Move | null;
  readonly label: string;
  readonly describedBy: string;
}

/** The drawing in a window of its own, to be panned and zoomed. */
export function Canvas({ drawing, onMove, label, describedBy }: CanvasProps) {
  const flow = useReactFlow();
  const [dragged, setDragged] = useState<PlacedNode | null>(null);
  const showAll = useShowAll(drawing);

  // Other components have come: all is shown, once. Moving a component doesn't move the paper.
  const shownFor = useRef('');
  const content = drawing.nodes.map(({ id }) => id).join();
  useEffect(() => {
    if (shownFor.current === content) return;
    shownFor.current = content;
    showAll(zooms.readable);
  }, [content, showAll]);

  const nodes = drawing.nodes.map((placed): ComponentNode => {
    const at = dragged?.id === placed.id ? dragged : placed;
    const size = { width: placed.width, height: placed.height };
    return {
      id: placed.id,
      type: 'component',
      position: { x: at.x, y: at.y },
      ...size,
      measured: size,
      data: { placed, onMove },
    };
  });
  const changed = (changes: NodeChange<ComponentNode>[]) => {
    for (const change of changes) {
      if (change.type !== 'position' || change.position === undefined || change.dragging !== true) continue;
      const placed = drawing.nodes.find(({ id }) => id === change.id);
      if (placed !== undefined) setDragged({ ...placed, ...change.position });
    }
  };
  const pressed = (event: KeyboardEvent) => {
    const pan = arrows[event.key];
    if (event.key === '+' || event.key === '=') void flow.zoomIn();
    else if (event.key === '-') void flow.zoomOut();
    else if (event.key === '0') showAll();
    else if (pan !== undefined && event.target === event.currentTarget) {
      const { x, y, zoom } = flow.getViewport();
      void flow.setViewport({ x: x - pan.x * stride.pan, y: y - pan.y * stride.pan, zoom });
    } else return;
    event.preventDefault();
  };
  // What has the focus must be seen, wherever the paper is. (To show it, the browser scrolls what mustn't scroll.)
  const focused = ({ target, currentTarget }: FocusEvent) => {
    if (target === currentTarget) return;
    currentTarget.scrollTo(0, 0);
    const [inner, outer] = [target.getBoundingClientRect(), currentTarget.getBoundingClientRect()];
    const seen =
      inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;
    if (seen) return;
    const middle = flow.screenToFlowPosition({ x: inner.left + inner.width / 2, y: inner.top + inner.height / 2 });
    void flow.setCenter(middle.x, middle.y, { zoom: flow.getZoom() });
    requestAnimationFrame(() => target.scrollIntoView({ block: 'nearest', inline: 'nearest' }));
  };
  const edges = following(drawing, dragged);
  return (
    <div className="drawing-canvas">
      <ReactFlow
        nodes={nodes}
        edges={[]}
        nodeTypes={nodeTypes}
        onNodesChange={changed}
        onNodeDragStop={(_, { id, position }) => {
          setDragged(null);
          if (dragged !== null) onMove?.(id, position);
        }}
        nodesDraggable={onMove !== null}
        nodesConnectable={false}
        nodesFocusable={false}
        edgesFocusable={false}
        elementsSelectable={false}
        disableKeyboardA11y
        deleteKeyCode={null}
        selectionKeyCode={null}
        multiSelectionKeyCode={null}
        zoomOnScroll={false}
        zoomOnDoubleClick={false}
        preventScrolling={false}
        minZoom={zooms.least}
        maxZoom={zooms.most}
        nodeDragThreshold={4}
        proOptions={{ hideAttribution: true }}
        aria-label={label}
        aria-describedby={describedBy}
        tabIndex={0}
        onKeyDown={pressed}
        onFocus={focused}
      >
        <ViewportPortal>
          {/* biome-ignore lint/a11y/noSvgWithoutTitle: what stands in it has names of its own */}
          <svg className="drawing-lines">
            {edges.map((edge) => (
              <LineFigure key={edge.line} edge={edge} />
            ))}
            {edges.map((edge) => (
              <LabelFigure key={edge.line} edge={edge} />
            ))}
          </svg>
        </ViewportPortal>
      </ReactFlow>
    </div>
  );
}
