/** Components and the lines between them as a drawing shows them: who owns which port, and what is missing or wrong. */

/** One thing that isn't as it should be. Missing: it isn't there yet. Wrong: it is there and doesn't do. */
export interface Lack {
  readonly kind: 'missing' | 'wrong';
  /** A few words, for the drawing. */
  readonly short: string;
  /** The whole sentence. */
  readonly text: string;
}

export interface SchematicPart {
  readonly id: number;
  readonly title: string;
  /** One word: "needed", "in hand". */
  readonly standing: string;
  /** The sentence behind the word. */
  readonly standingText: string;
}

export interface SchematicPort {
  readonly id: number;
  readonly name: string;
  /** The part line that has it; null = the engine has it, at `place`. */
  readonly part: number | null;
  readonly place: string;
  /** Whether something flows through it; what only holds or conducts isn't plumbing. */
  readonly flows: boolean;
  /** As read, or as typed where it can't be read. */
  readonly text: string;
  /** Why it can't be read; empty when it can. */
  readonly problem: string;
}

export interface SchematicLine {
  readonly id: number;
  readonly name: string;
  readonly fluid: string;
  readonly hose: string;
  readonly from: number | null;
  readonly to: number | null;
  /** What an end joins where only that was written, without a port kept with the build. */
  readonly typed?: { readonly from: string; readonly to: string };
  readonly standing: 'made' | 'unfit' | 'not made';
  readonly wrong: readonly Lack[];
}

/** Two ports that join without a line between them. */
export interface DirectJoint {
  readonly ports: readonly number[];
  readonly stands: 'fits' | 'wrong' | 'unknown';
  readonly says: string;
}

export interface SchematicFacts {
  readonly parts: readonly SchematicPart[];
  readonly ports: readonly SchematicPort[];
  readonly lines: readonly SchematicLine[];
  readonly joints: readonly DirectJoint[];
}

export interface SchematicNode {
  /** "part 12", "place sump", "end 3 from". */
  readonly id: string;
  readonly title: string;
  readonly part: number | null;
  readonly standing: string;
  readonly ports: readonly { id: string; port: number | null; name: string; text: string; open: boolean }[];
  readonly wrong: readonly Lack[];
}

export interface SchematicEdge {
  readonly line: number;
  readonly name: string;
  readonly fluid: string;
  readonly hose: string;
  readonly from: { readonly node: string; readonly port: string };
  readonly to: { readonly node: string; readonly port: string };
  readonly standing: SchematicLine['standing'];
  readonly wrong: readonly Lack[];
}

export interface Schematic {
  readonly answer: string;
  readonly nodes: readonly SchematicNode[];
  readonly edges: readonly SchematicEdge[];
}

const onTheEngine = 'on the engine';
const here = new Set(['in hand', 'to inspect', 'trial-fitted', 'part fitted', 'fitted', 'snug', 'final']);

const lack = (kind: Lack['kind'], short: string, text: string): Lack => ({ kind, short, text });

/** What the standing of a part says about it, if anything. */
function lackOfPart({ standing, standingText }: SchematicPart): readonly Lack[] {
  if (here.has(standing)) return [];
  if (standing === 'wrong') return [lack('wrong', 'Wrong part', `What came is wrong or faulty: ${standingText}.`)];
  if (standing === 'not needed') return [lack('wrong', 'Off the list', 'The part line was taken off the list.')];
  return [lack('missing', 'Not here yet', `Not here yet: ${standingText}.`)];
}

const placeName = (place: string): string => (place.trim() === '' ? 'Engine' : place.trim());
const ownerOf = ({ part, place }: SchematicPort): string =>
  part === null ? `place ${placeName(place).toLowerCase()}` : `part ${part}`;

const quoted = (names: readonly string[]): string => names.map((name) => `“${name}”`).join(', ');
const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** What is missing or wrong about the ports of one component. */
function lacksOfPorts(
  ports: readonly SchematicPort[],
  linesAt: ReadonlyMap<number, readonly SchematicLine[]>,
  jointsAt: ReadonlyMap<number, readonly DirectJoint[]>,
): readonly Lack[] {
  const open = ports.filter((port) => isOpen(port, linesAt, jointsAt)).map(({ name }) => name);
  return [
    ...ports
      .filter(({ problem }) => problem !== '')
      .map(({ name, text, problem }) =>
        lack('wrong', `Can't read “${name}”`, `The port “${name}” says “${text}”, which can't be read: ${problem}.`),
      ),
    ...ports.flatMap(({ id, name }) => {
      const lines = linesAt.get(id) ?? [];
      if (lines.length < 2) return [];
      const names = quoted(lines.map((line) => line.name));
      return [lack('wrong', `${lines.length} lines at “${name}”`, `One port can't take several lines: ${names}.`)];
    }),
    ...ports.flatMap(({ id, name }) =>
      (jointsAt.get(id) ?? [])
        .filter(({ stands }) => stands !== 'fits')
        .map(({ stands, says }) =>
          stands === 'wrong'
            ? lack('wrong', `“${name}” doesn't fit`, says)
            : lack('missing', `“${name}”: fit not known`, says),
        ),
    ),
    ...(open.length === 0
      ? []
      : [lack('missing', `Nothing joins ${quoted(open)}`, `No line and no other part joins ${quoted(open)}.`)]),
  ];
}

function isOpen(
  { id, flows }: SchematicPort,
  linesAt: ReadonlyMap<number, readonly SchematicLine[]>,
  jointsAt: ReadonlyMap<number, readonly DirectJoint[]>,
): boolean {
  return flows && !linesAt.has(id) && !jointsAt.has(id);
}

type Side = 'from' | 'to';

/** The end of a line that goes nowhere yet: a component of its own, so that the drawing shows the gap. */
function unnamedEnd(line: SchematicLine, side: Side): SchematicNode {
  const id = `end ${line.id} ${side}`;
  const name = side === 'from' ? 'start' : 'end';
  const goes = `“${line.name}” ${side === 'from' ? 'comes from' : 'goes to'}`;
  const typed = line.typed?.[side] ?? '';
  const text =
    line[side] !== null
      ? `The port that ${goes} was taken off the list.`
      : typed === ''
        ? `Nobody has said what ${goes}.`
        : `It is written that ${goes} “${typed}”, and not whose port that is.`;
  return {
    id,
    title: typed === '' ? `${side === 'from' ? 'Start' : 'End'} not named` : typed,
    part: null,
    standing: '',
    ports: [{ id, port: null, name, text: typed, open: typed === '' }],
    wrong: [lack('missing', typed === '' ? 'No port named' : 'No component named', text)],
  };
}

/**
 * Groups ports into components and lines into what joins them. A component is a part line with ports, a place of the
 * engine, or an end that nobody has named. One without a line is shown only while something that flows ends at it.
 */
export function schematicOf({ parts, ports, lines, joints }: SchematicFacts): Schematic {
  const portOf = new Map(ports.map((port) => [port.id, port]));
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const linesAt = Map.groupBy(
    lines.flatMap((line) => [line.from, line.to].flatMap((port) => (port === null ? [] : [{ port, line }]))),
    ({ port }) => port,
  );
  const lined = new Map([...linesAt].map(([port, list]) => [port, list.map(({ line }) => line)]));
  const jointsAt = new Map(ports.map(({ id }) => [id, joints.filter((joint) => joint.ports.includes(id))] as const));
  for (const [port, list] of jointsAt) if (list.length === 0) jointsAt.delete(port);

  const nodes: SchematicNode[] = [];
  for (const [id, own] of Map.groupBy(ports, ownerOf)) {
    const shown = own.filter((port) => port.flows || lined.has(port.id));
    if (!shown.some((port) => lined.has(port.id) || isOpen(port, lined, jointsAt))) continue;
    const [first] = shown;
    const part = partOf.get(first?.part ?? 0);
    nodes.push({
      id,
      title: part?.title ?? (first?.part == null ? capital(placeName(first?.place ?? '')) : `Part line ${first.part}`),
      part: first?.part ?? null,
      standing: part?.standing ?? (first?.part == null ? onTheEngine : 'not needed'),
      ports: shown.map((port) => ({
        id: `port ${port.id}`,
        port: port.id,
        name: port.name,
        text: port.text,
        open: isOpen(port, lined, jointsAt),
      })),
      wrong: [...(part === undefined ? [] : lackOfPart(part)), ...lacksOfPorts(shown, lined, jointsAt)],
    });
  }
  const edges = lines.map((line): SchematicEdge => {
    const end = (side: Side): SchematicEdge[Side] => {
      const port = portOf.get(line[side] ?? 0);
      if (port !== undefined) return { node: ownerOf(port), port: `port ${port.id}` };
      const node = unnamedEnd(line, side);
      nodes.push(node);
      return { node: node.id, port: node.id };
    };
    const { id, name, fluid, hose, standing, wrong } = line;
    return { line: id, name, fluid, hose, from: end('from'), to: end('to'), standing, wrong };
  });
  return { answer: answerOf(nodes, edges), nodes, edges };
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function answerOf(nodes: readonly SchematicNode[], edges: readonly SchematicEdge[]): string {
  if (edges.length === 0) return 'No lines yet.';
  const ends = nodes.filter(({ id }) => id.startsWith('end ')).length;
  const count = (standing: SchematicEdge['standing']): number =>
    edges.filter((edge) => edge.standing === standing).length;
  const [made, unfit, open] = [count('made'), count('unfit'), count('not made')];
  const joined = `${counted(edges.length, 'line')} between ${counted(nodes.length - ends, 'component')}`;
  const said = [
    unfit === 0 ? '' : `${unfit} unfit`,
    open === 0 ? '' : `${open} not made`,
    made === edges.length ? 'all made' : made === 0 ? '' : `${made} made`,
    ends === 0 ? '' : counted(ends, 'end goes nowhere yet', 'ends go nowhere yet'),
  ].filter((text) => text !== '');
  return `${joined}: ${said.join(', ')}.`;
}
