import type { KeyboardEvent } from 'react';
import { href } from '../../app/route.tsx';
import { TextRows } from './drawing-marks.tsx';
import { lacksHeard, type NodeShape, type PortShape, type SchematicNode } from './drawing-shapes.ts';

/** Where a component leads: to its part line, else to its first port, else to the line that ends there. */
function placeOf({ id, part, ports }: SchematicNode): string {
  if (part !== null) return href('/parts', { part });
  const port = ports.find((one) => one.port !== null)?.port;
  if (port != null) return href('/fit', { port });
  return href('/plumbing', { line: id.split(' ')[1] });
}

/** The component as it is heard: name, standing, and what is missing or wrong. */
const heard = ({ title, standing, wrong }: SchematicNode): string =>
  [title, standing, ...lacksHeard(wrong)].filter((text) => text !== '').join(', ');

export interface NodeFigureProps {
  readonly shape: NodeShape;
  readonly onKeyDown?: (event: KeyboardEvent) => void;
}

/** A component with its ports, drawn from its upper left corner. */
export function NodeFigure({ shape, onKeyDown }: NodeFigureProps) {
  const { node, width, height, head, rows, ports } = shape;
  return (
    <g className="drawing-node" data-end={node.id.startsWith('end ') || undefined}>
      <rect className="drawing-box" width={width} height={height} rx={2} />
      <a href={placeOf(node)} aria-label={heard(node)} onKeyDown={onKeyDown} draggable={false}>
        <rect className="drawing-target" width={width} height={head} />
        <TextRows rows={rows} />
      </a>
      {ports.map((port) => (
        <PortFigure key={port.id} port={port} shape={shape} />
      ))}
    </g>
  );
}

function PortFigure({ port, shape }: { readonly port: PortShape; readonly shape: NodeShape }) {
  const { width, node } = shape;
  const said = node.ports.find(({ id }) => id === port.id);
  const both = new Set(shape.ports.map(({ side }) => side)).size > 1;
  const wide = both ? width / 2 : width;
  const inside = (
    <>
      <rect
        className="drawing-target"
        x={port.side === 'left' ? 0 : width - wide}
        y={port.y - port.height / 2}
        width={wide}
        height={port.height}
      />
      <TextRows rows={port.rows} />
      <circle
        className="drawing-port"
        data-open={port.open || undefined}
        cx={port.side === 'left' ? 0 : width}
        cy={port.y}
        r={4}
      />
    </>
  );
  if (port.port === null) return <g>{inside}</g>;
  const text = [said?.name, said?.text, port.open ? 'nothing joins it' : ''].filter(Boolean).join(', ');
  return (
    <a href={href('/fit', { port: port.port })} aria-label={`Port ${text}`} draggable={false}>
      {inside}
    </a>
  );
}
