import type { SchematicView } from '../../../core/contract/plumbing.ts';
import { type Measure, wrapText } from './drawing-text.ts';

/** What a component or a label looks like before it has a place: its rows of text, measured, and its ports. */

export type SchematicNode = SchematicView['nodes'][number];
export type SchematicEdge = SchematicView['edges'][number];

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

/** Shapes that stand before words: what is made, open, missing or wrong. */
export type Mark = 'made' | 'not made' | 'unfit' | 'missing' | 'wrong';

/** One row of text. `x` and `y` are of its baseline's beginning, from the corner of what it stands in. */
export interface TextRow extends Point {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly tone: 'ink' | 'soft' | 'blocks' | 'warn' | 'good';
  readonly mark: Mark | null;
}

/** Sizes of a density, px. */
export interface Look {
  readonly text: number;
  /** Least height of a port's row, which is also a target. */
  readonly row: number;
}
export const deskLook: Look = { text: 13, row: 25 };
export const benchLook: Look = { text: 17, row: 44 };

export type Side = 'left' | 'right';

export interface PortShape {
  readonly id: string;
  readonly port: number | null;
  readonly open: boolean;
  readonly side: Side;
  /** Centre of its row, from the top of the node: a line ends here. */
  readonly y: number;
  readonly height: number;
  readonly rows: readonly TextRow[];
}

export interface NodeShape {
  readonly node: SchematicNode;
  readonly width: number;
  readonly height: number;
  /** From the top of the node to its ports. */
  readonly head: number;
  readonly rows: readonly TextRow[];
  readonly ports: readonly PortShape[];
}

export interface LabelShape {
  readonly edge: SchematicEdge;
  readonly width: number;
  readonly height: number;
  readonly rows: readonly TextRow[];
}

export const pad = 8;
/** Width of a mark with the gap behind it, as a share of the text's size. */
export const markWidth = 1.3;
/** From the edge of a node to the name of a port. */
const portInset = 12;

interface Said {
  readonly text: string;
  readonly bold?: boolean;
  readonly tone?: TextRow['tone'];
  readonly mark?: Mark;
}

/** Sets texts one under the other, each broken where it must be. */
function setText(said: readonly Said[], most: number, measure: Measure, { text: size }: Look) {
  const rows: TextRow[] = [];
  const leading = Math.round(size * 1.32);
  let width = 0;
  let y = 0;
  for (const { text, bold = false, tone = 'ink', mark } of said) {
    const indent = mark === undefined ? 0 : size * markWidth;
    const lines = wrapText(text, most - indent, (one) => measure(one, size, bold));
    for (const [at, line] of lines.entries()) {
      rows.push({ text: line, x: indent, y: y + size, size, bold, tone, mark: at === 0 ? (mark ?? null) : null });
      width = Math.max(width, indent + measure(line, size, bold));
      y += leading;
    }
  }
  return { rows, width: Math.ceil(width), height: y };
}

const movedBy = (rows: readonly TextRow[], x: number, y: number): TextRow[] =>
  rows.map((row) => ({ ...row, x: row.x + x, y: row.y + y }));

const lacksSaid = (wrong: SchematicNode['wrong']): Said[] =>
  wrong.map(({ kind, short }) => ({ text: short, mark: kind, tone: kind === 'wrong' ? 'blocks' : 'warn' }));

/** What is missing or wrong as it is heard: the words shown, then how many of each sort. */
export function lacksHeard(wrong: SchematicNode['wrong']): readonly string[] {
  const sorts = (['wrong', 'missing'] as const).flatMap((kind) => {
    const count = wrong.filter((one) => one.kind === kind).length;
    return count === 0 ? [] : [`${count} ${kind}`];
  });
  return [...wrong.map(({ short }) => short), ...sorts];
}

/** What flows in which hose. */
export const contentOf = ({ fluid, hose }: SchematicEdge): string =>
  [fluid || 'fluid not said', hose].filter((text) => text !== '').join(', ');

/** The label of a line: its name, what flows in which hose, how it stands and what is wrong. */
export function shapeLabel(edge: SchematicEdge, measure: Measure, look: Look): LabelShape {
  const { name, standing, wrong } = edge;
  const tone = { made: 'good', 'not made': 'warn', unfit: 'blocks' } as const;
  const said: Said[] = [
    { text: name, bold: true },
    { text: contentOf(edge), tone: 'soft' },
    { text: standing, mark: standing, tone: tone[standing] },
    ...lacksSaid(wrong),
  ];
  const { rows, width, height } = setText(said, look.text * 9.5, measure, look);
  return { edge, width: width + 2 * pad, height: height + pad, rows: movedBy(rows, pad, pad / 2) };
}

/** Which ports stand left and right, from the top down. */
export interface Sides {
  readonly left: readonly string[];
  readonly right: readonly string[];
}

/** The component with its ports on the sides given. */
export function shapeNode(node: SchematicNode, sides: Sides, measure: Measure, look: Look): NodeShape {
  const said: Said[] = [
    { text: node.title, bold: true },
    ...(node.standing === '' ? [] : [{ text: node.standing, tone: 'soft' as const }]),
    ...lacksSaid(node.wrong),
  ];
  const top = setText(said, look.text * 11, measure, look);
  const names = new Map(
    node.ports.map(({ id, name }) => [id, setText([{ text: name }], look.text * 7.5, measure, look)] as const),
  );
  const widest = (ids: readonly string[]): number => Math.max(0, ...ids.map((id) => names.get(id)?.width ?? 0));
  const [left, right] = [widest(sides.left), widest(sides.right)];
  const gap = left > 0 && right > 0 ? look.text : 0;
  const width = Math.ceil(Math.max(top.width + 2 * pad, left + right + gap + 2 * portInset, look.text * 6));
  const head = top.height + pad + pad / 2;
  const place = (side: Side): PortShape[] => {
    let y = head;
    return sides[side].flatMap((id) => {
      const port = node.ports.find((one) => one.id === id);
      const name = names.get(id);
      if (port === undefined || name === undefined) return [];
      const height = Math.max(look.row, name.height + 6);
      const x = side === 'left' ? portInset : width - portInset - name.width;
      const shape: PortShape = {
        id,
        port: port.port,
        open: port.open,
        side,
        y: y + height / 2,
        height,
        rows: movedBy(name.rows, x, y + (height - name.height) / 2),
      };
      y += height;
      return [shape];
    });
  };
  const ports = [...place('left'), ...place('right')];
  const height = Math.max(head, ...ports.map((port) => port.y + port.height / 2)) + pad / 2;
  return { node, width, height, head, rows: movedBy(top.rows, pad, pad / 2), ports };
}
