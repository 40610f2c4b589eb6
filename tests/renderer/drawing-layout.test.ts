import Engine from 'elkjs/lib/elk.bundled.js';
import { expect, it } from 'vitest';
import type { SchematicView } from '../../core/contract/plumbing.ts';
import { schematicOf } from '../../core/plumbing/schematic.ts';
import { type Drawing, layOutDrawing } from '../../renderer/screens/plumbing/drawing-elk.ts';
import { overlapsIn } from '../../renderer/screens/plumbing/drawing-overlaps.ts';
import { drawingAt, freePlace } from '../../renderer/screens/plumbing/drawing-places.ts';
import { benchLook, deskLook, type Look } from '../../renderer/screens/plumbing/drawing-shapes.ts';
import { guessWidth, wrapText } from '../../renderer/screens/plumbing/drawing-text.ts';
import { sampleFacts } from '../core/plumbing/schematic-sample.ts';

const engine = new Engine();
const view: Pick<SchematicView, 'nodes' | 'edges'> = JSON.parse(JSON.stringify(schematicOf(sampleFacts)));
const laidOut = (look: Look): Promise<Drawing> =>
  layOutDrawing(view, { layOut: (graph) => engine.layout(graph), measure: guessWidth, look });

/** Every line goes from its port to its port, at right angles. */
function expectJoined({ nodes, edges }: Drawing): void {
  for (const { label, points } of edges) {
    for (const [end, point] of [
      [label.edge.from, points[0]],
      [label.edge.to, points.at(-1)],
    ] as const) {
      const node = nodes.find(({ id }) => id === end.node);
      const port = node?.shape.ports.find(({ id }) => id === end.port);
      expect(point?.x).toBeCloseTo((node?.x ?? 0) + (port?.side === 'right' ? (node?.width ?? 0) : 0), 0);
      expect(point?.y).toBeCloseTo((node?.y ?? 0) + (port?.y ?? 0), 0);
    }
    for (const [at, point] of points.entries()) {
      const next = points[at + 1] ?? point;
      expect(Math.min(Math.abs(next.x - point.x), Math.abs(next.y - point.y))).toBeLessThan(0.5);
    }
  }
}

it.each([
  ['desk', deskLook],
  ['bench', benchLook],
])('lays out 25 lines so that no text, component or line hides another (%s)', async (_name, look) => {
  const drawing = await laidOut(look);
  expect(drawing.edges).toHaveLength(25);
  expect(overlapsIn(drawing)).toEqual([]);
  expectJoined(drawing);
});

it('leads the lines of moved components anew, around everything else', async () => {
  const drawing = await laidOut(deskLook);
  const [first, ...others] = drawing.nodes;
  const few = drawingAt(drawing, { [first?.id ?? '']: { x: 700, y: 420 } }, first?.id);
  expect(overlapsIn(few)).toEqual([]);
  expectJoined(few);
  const still = others.filter(({ id, x, y }) => few.nodes.some((one) => one.id === id && one.x === x && one.y === y));
  expect(still).toHaveLength(others.length);

  const rows = Object.fromEntries(
    drawing.nodes.map(({ id }, at) => [id, { x: (at % 5) * 380, y: Math.floor(at / 5) * 300 }]),
  );
  const all = drawingAt(drawing, rows);
  expect(overlapsIn(all)).toEqual([]);
  expectJoined(all);
});

it('leaves the drawing as it is while nothing was moved', async () => {
  const drawing = await laidOut(deskLook);
  const places = Object.fromEntries(drawing.nodes.map(({ id, x, y }) => [id, { x, y }]));
  expect(drawingAt(drawing, places)).toBe(drawing);
});

it('finds what hides something', async () => {
  const drawing = await laidOut(deskLook);
  const [node, other] = drawing.nodes;
  if (node === undefined || other === undefined) throw new Error('Nothing was laid out.');
  const onEachOther = { ...drawing, nodes: [node, { ...other, x: node.x + 5, y: node.y + 5 }] };
  expect(overlapsIn(onEachOther)).toContainEqual({
    one: `component “${node.shape.node.title}”`,
    other: `component “${other.shape.node.title}”`,
  });
  const [edge, second] = drawing.edges;
  if (edge === undefined || second === undefined) throw new Error('No line was laid out.');
  const { x, y, width, height } = second.label;
  const across = [
    { x: x - 9, y: y + height / 2 },
    { x: x + width + 9, y: y + height / 2 },
  ];
  expect(overlapsIn({ nodes: [], edges: [{ ...edge, points: across }, second] })).toContainEqual({
    one: `line “${edge.label.edge.name}”`,
    other: `label “${second.label.edge.name}”`,
  });
});

it('moves what would stand on something to the nearest free place', () => {
  const taken = [{ x: 0, y: 0, width: 100, height: 100 }];
  expect(freePlace({ x: 300, y: 0, width: 50, height: 50 }, taken)).toEqual({ x: 300, y: 0 });
  const { x, y } = freePlace({ x: 90, y: 20, width: 50, height: 50 }, taken, 30);
  expect([x, y]).toEqual([130, 20]);
});

it('breaks text between words, and a word only where it must', () => {
  const width = (text: string): number => text.length;
  expect(wrapText('Turbocharger oil drain', 12, width)).toEqual(['Turbocharger', 'oil drain']);
  expect(wrapText('Turbochargeroildrain', 12, width)).toEqual(['Turbocharger', 'oildrain']);
  expect(wrapText('', 12, width)).toEqual([]);
});
