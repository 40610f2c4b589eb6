import type { ElkExtendedEdge, ElkNode } from 'elkjs/lib/elk-api.js';
import type { SchematicView } from '../../../core/contract/plumbing.ts';
import { packed, sheetHeight } from './drawing-pack.ts';
import {
  type Box,
  type LabelShape,
  type Look,
  type NodeShape,
  type Point,
  type SchematicNode,
  type Sides,
  shapeLabel,
  shapeNode,
} from './drawing-shapes.ts';
import type { Measure } from './drawing-text.ts';

/** Gives every component, line and label a place of its own: layers from left to right, lines at right angles. */

export interface PlacedNode extends Box {
  readonly id: string;
  readonly shape: NodeShape;
}

export interface PlacedEdge {
  readonly line: number;
  readonly label: LabelShape & Box;
  /** Corners of the line in the direction of flow; it runs under its own label. */
  readonly points: readonly Point[];
}

export interface Drawing {
  readonly nodes: readonly PlacedNode[];
  readonly edges: readonly PlacedEdge[];
}

/** What lays out: the library in this window, in a worker, or in a test. */
export type LayOut = (graph: ElkNode) => Promise<ElkNode>;

const options: Readonly<Record<string, string>> = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.layered.nodePlacement.strategy': 'BRANDES_KOEPF',
  'elk.layered.thoroughness': '20',
  'elk.spacing.nodeNode': '26',
  'elk.layered.spacing.nodeNodeBetweenLayers': '26',
  'elk.spacing.edgeNode': '14',
  'elk.layered.spacing.edgeNodeBetweenLayers': '16',
  'elk.spacing.edgeEdge': '12',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '12',
  'elk.spacing.edgeLabel': '6',
  'elk.spacing.componentComponent': '40',
  'elk.padding': '[top=16,left=16,bottom=16,right=16]',
};

const nodeOfGraph = (shape: NodeShape, fixed: boolean): ElkNode => ({
  id: shape.node.id,
  width: shape.width,
  height: shape.height,
  layoutOptions: { 'elk.portConstraints': fixed ? 'FIXED_POS' : 'FREE' },
  ports: shape.ports.map(({ id, side, y }) => ({
    id: portKey(shape.node.id, id),
    width: 0,
    height: 0,
    x: side === 'left' ? 0 : shape.width,
    y,
    ...(fixed ? { layoutOptions: { 'elk.port.side': side === 'left' ? 'WEST' : 'EAST' } } : {}),
  })),
});

const portKey = (node: string, port: string): string => `${node}/${port}`;

/** Where a loop begins, such as tank to rail and back, can be chosen in either way. */
const beginnings = ['DEPTH_FIRST', 'GREEDY'] as const;
type Beginning = (typeof beginnings)[number];

function graphOf(
  shapes: readonly NodeShape[],
  labels: readonly LabelShape[],
  fixed: boolean,
  beginning: Beginning,
): ElkNode {
  return {
    id: 'drawing',
    layoutOptions: { ...options, 'elk.layered.cycleBreaking.strategy': beginning },
    children: shapes.map((shape) => nodeOfGraph(shape, fixed)),
    edges: labels.map(({ edge, width, height }) => ({
      id: String(edge.line),
      sources: [portKey(edge.from.node, edge.from.port)],
      targets: [portKey(edge.to.node, edge.to.port)],
      labels: [{ text: edge.name, width, height, layoutOptions: { 'elk.edgeLabels.inline': 'true' } }],
    })),
  };
}

/** Where ports stand before anything is known of the neighbours: what comes in at the left, what goes out at the right. */
function firstSides(node: SchematicNode, edges: SchematicView['edges']): Sides {
  const goesOut = new Set(edges.map(({ from }) => from.port));
  const ids = node.ports.map(({ id }) => id);
  return { left: ids.filter((id) => !goesOut.has(id)), right: ids.filter((id) => goesOut.has(id)) };
}

/** The sides that the first layout chose, in its order; ports without a line fill up the shorter side. */
function sidesIn(placed: ElkNode, node: SchematicNode, joined: ReadonlySet<string>): Sides {
  const middle = (placed.width ?? 0) / 2;
  const at = new Map((placed.ports ?? []).map(({ id, x = 0, y = 0 }) => [id, { x, y }]));
  const place = (id: string): Point => at.get(portKey(node.id, id)) ?? { x: 0, y: 0 };
  const inOrder = node.ports.map(({ id }) => id).sort((a, b) => place(a).y - place(b).y);
  const used = inOrder.filter((id) => joined.has(portKey(node.id, id)));
  const left = used.filter((id) => place(id).x < middle);
  const right = used.filter((id) => place(id).x >= middle);
  for (const id of inOrder) if (!used.includes(id)) (left.length <= right.length ? left : right).push(id);
  return { left, right };
}

const pointsOf = ({ sections = [] }: ElkExtendedEdge): Point[] =>
  sections
    .flatMap(({ startPoint, bendPoints = [], endPoint }) => [startPoint, ...bendPoints, endPoint])
    .map(({ x, y }) => ({ x, y }));

interface Tools {
  readonly layOut: LayOut;
  readonly measure: Measure;
  readonly look: Look;
}

type Shown = Pick<SchematicView, 'nodes' | 'edges'>;

/**
 * Laid out twice: first to learn on which side each port is best, then with the ports where they are drawn. Groups without
 * a line between them are put side by side afterwards.
 */
async function layOutFrom(beginning: Beginning, view: Shown, { layOut, measure, look }: Tools): Promise<Drawing> {
  const labels = view.edges.map((edge) => shapeLabel(edge, measure, look));
  const first = view.nodes.map((node) => shapeNode(node, firstSides(node, view.edges), measure, look));
  const rough = await layOut(graphOf(first, labels, false, beginning));
  const joined = new Set(view.edges.flatMap(({ from, to }) => [from, to].map((end) => portKey(end.node, end.port))));
  const shapes = view.nodes.map((node) => {
    const placed = rough.children?.find(({ id }) => id === node.id) ?? { id: node.id };
    return shapeNode(node, sidesIn(placed, node, joined), measure, look);
  });
  const done = await layOut(graphOf(shapes, labels, true, beginning));
  const boxes = new Map((done.children ?? []).map(({ id, x = 0, y = 0 }) => [id, { x, y }]));
  const lines = new Map((done.edges ?? []).map((edge) => [edge.id, edge]));
  return packed({
    nodes: shapes.map((shape) => ({
      id: shape.node.id,
      shape,
      ...(boxes.get(shape.node.id) ?? { x: 0, y: 0 }),
      width: shape.width,
      height: shape.height,
    })),
    edges: labels.flatMap((label) => {
      const edge = lines.get(String(label.edge.line));
      const [{ x = 0, y = 0 } = {}] = edge?.labels ?? [];
      return edge === undefined ? [] : [{ line: label.edge.line, label: { ...label, x, y }, points: pointsOf(edge) }];
    }),
  });
}

/** The drawing in the way in which it can be shown largest. */
export async function layOutDrawing(view: Shown, tools: Tools): Promise<Drawing> {
  if (view.nodes.length === 0) return { nodes: [], edges: [] };
  const drawings: Drawing[] = [];
  for (const beginning of beginnings) drawings.push(await layOutFrom(beginning, view, tools));
  return drawings.reduce((best, one) => (sheetHeight(one) < sheetHeight(best) ? one : best));
}
