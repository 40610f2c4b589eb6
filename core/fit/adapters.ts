import { borePieces, listedPieces, type Piece } from './adapter-pieces.ts';
import { describeEnd } from './describe-end.ts';
import { classOf, genderOf, join } from './direct.ts';
import { formatPort } from './format.ts';
import { isThreaded, type Port } from './port.ts';
import { type Availability, adapterFamilies } from './tables/adapter-families.ts';
import { flareToMetric } from './tables/adapter-sizes.ts';
import { sameThread } from './thread.ts';

/** One piece of an adapter, described generically: nobody's product, and not claimed to be in stock. */
export interface AdapterPiece {
  readonly text: string;
  /** Kind of adapter: `flare to pipe`. */
  readonly name: string;
  readonly availability: Availability;
  readonly lessUsual: boolean;
  /** The two ends as ports, from the first port toward the second. */
  readonly ends: readonly [Port, Port];
  readonly source: string;
}

/** One or two pieces that join two ports. */
export interface Adapter {
  readonly text: string;
  readonly pieces: readonly AdapterPiece[];
  /** Loose items of all joints: washers, O-rings, sealant, clamps. */
  readonly needs: readonly string[];
  readonly notes: readonly string[];
}

const mostShown = 5;

/** A quick look, so that only ends that may mate are judged. */
function mayJoin(one: Port, other: Port): boolean {
  const genders = [genderOf(one), genderOf(other)];
  if (genders[0] !== undefined && genders[0] === genders[1]) return false;
  if (isThreaded(one) && isThreaded(other)) return sameThread(one.thread, other.thread);
  return one.kind === other.kind || one.kind === 'hose' || other.kind === 'hose';
}

const joins = (one: Port, other: Port): boolean => mayJoin(one, other) && join(one, other, 'fluid').verdict === 'mates';

interface Reached {
  readonly piece: Piece;
  readonly inner: Port;
  readonly outer: Port;
}

/** Pieces with an end that joins this port, with the end that is left. */
const reaching = (port: Port, all: readonly Piece[]): readonly Reached[] =>
  all.flatMap((piece) => {
    const [first, second] = piece.ends;
    const found: Reached[] = [];
    if (joins(port, first)) found.push({ piece, inner: first, outer: second });
    // A piece with two equal ends is the same either way round.
    if (formatPort(first) !== formatPort(second) && joins(port, second))
      found.push({ piece, inner: second, outer: first });
    return found;
  });

/** What a middle joint may be, the better first; hose and barb only where a hose is in play anyway. */
const middles: readonly (readonly string[])[] = [['flare37'], ['orb'], ['npt'], ['barb', 'hose']];

const middleRank = ({ kind }: Port): number => middles.findIndex((kinds) => kinds.includes(kind));

/** The passage of an end in mm, by its nominal; 0.6 of a plain thread's diameter. For ranking only. */
function nominal(port: Port): number {
  if ('mm' in port) return port.mm;
  if ('dash' in port && port.dash !== undefined) return (port.dash * 25.4) / 16;
  return isThreaded(port) ? port.thread.diameter * 0.6 : 0;
}

const isTaper = ({ kind }: Port): boolean => ['npt', 'nptf', 'r'].includes(kind);

interface Found {
  readonly steps: readonly { readonly piece: Piece; readonly from: Port; readonly to: Port }[];
}

const availabilities: readonly Availability[] = ['common', 'uncommon', 'made to order'];

const familyOf = (id: string) => {
  const family = adapterFamilies.find((one) => one.id === id);
  if (family === undefined) throw new Error(`The table of adapters has no family ${id}.`);
  return family;
};

/** Fewer pieces, easier to have, usual sizes, no narrower passage, no taper thread in fuel or brake lines, better middle. */
function rank({ steps }: Found, one: Port, other: Port, avoidTaper: boolean): readonly (number | string)[] {
  const ends = steps.flatMap(({ from, to }) => [from, to]);
  const narrowest = Math.min(nominal(one), nominal(other));
  const middle = steps.length === 2 && steps[0] !== undefined ? steps[0].to : undefined;
  return [
    steps.length,
    Math.max(...steps.map(({ piece }) => availabilities.indexOf(familyOf(piece.family).availability))),
    avoidTaper && ends.some(isTaper) ? 1 : 0,
    steps.filter(({ piece }) => !piece.usual).length,
    middle !== undefined && nominal(middle) < narrowest - 0.5 ? 1 : 0,
    middle === undefined ? 0 : middleRank(middle),
    middle === undefined ? 0 : Math.abs(nominal(middle) - narrowest),
    ends.map(formatPort).toSorted().join('|'),
  ];
}

function compare(one: readonly (number | string)[], other: readonly (number | string)[]): number {
  for (const [at, value] of one.entries()) {
    const against = other[at] ?? 0;
    if (value !== against) return value < against ? -1 : 1;
  }
  return 0;
}

function search(one: Port, other: Port): readonly Found[] {
  const bores = [one, other].flatMap((port) =>
    port.kind === 'hose' || port.kind === 'barb' || port.kind === 'tube' ? [port.mm] : [],
  );
  const all = [...listedPieces(), ...borePieces(bores)];
  const fromOne = reaching(one, all);
  const direct = fromOne
    .filter(({ outer }) => joins(outer, other))
    .map(({ piece, inner, outer }) => ({ steps: [{ piece, from: inner, to: outer }] }));
  // A less usual single piece is shown with what usual ones would do.
  if (direct.some(({ steps }) => steps.every(({ piece }) => piece.usual))) return direct;
  const fromOther = reaching(other, all).filter(({ outer }) => middleRank(outer) >= 0);
  const inTwo = fromOne.flatMap((near) =>
    middleRank(near.outer) < 0
      ? []
      : fromOther
          .filter((far) => joins(near.outer, far.outer))
          .map((far) => ({
            steps: [
              { piece: near.piece, from: near.inner, to: near.outer },
              { piece: far.piece, from: far.outer, to: far.inner },
            ],
          })),
  );
  return [...direct, ...inTwo];
}

/** The size that is usually made for this flare and diameter, when this one is less usual. */
function usualInstead({ ends, usual }: Piece): string | undefined {
  const flare = ends.find(({ kind }) => kind === 'flare37');
  const metric = ends.find(({ kind }) => kind === 'thread');
  if (usual || flare === undefined || metric === undefined || !isThreaded(metric) || !('dash' in flare))
    return undefined;
  const row = flareToMetric.find(({ dash }) => dash === flare.dash);
  return row?.usual.find((thread) => thread.startsWith(`M${metric.thread.size}x`));
}

const lessUsualText = (piece: Piece): string => {
  if (piece.usual) return '';
  const instead = usualInstead(piece);
  return instead === undefined
    ? ' (less usual size)'
    : ` (less usual size; ${instead} is the usual one: check the port again)`;
};

const endsText = (from: Port, to: Port, name: string): string =>
  from.kind === 'hose' && to.kind === 'hose'
    ? `${name}, ${describeEnd(from)} to ${describeEnd(to)}`
    : from.kind === 'barb' && to.kind === 'flare37' && to.gender === 'female'
      ? `hose end with ${describeEnd(to)} for ${describeEnd(from).replace(' barb', ' bore')}`
      : to.kind === 'barb' && from.kind === 'flare37' && from.gender === 'female'
        ? `hose end with ${describeEnd(from)} for ${describeEnd(to).replace(' barb', ' bore')}`
        : `${describeEnd(from)} to ${describeEnd(to)}`;

function present({ steps }: Found, one: Port, other: Port): Adapter {
  const pieces = steps.map(({ piece, from, to }): AdapterPiece => {
    const { name, availability, source } = familyOf(piece.family);
    const text = `${endsText(from, to, name)}${lessUsualText(piece)}`;
    return { text, name, availability, lessUsual: !piece.usual, ends: [from, to], source };
  });
  const chain = [one, ...steps.flatMap(({ from, to }) => [from, to]), other];
  const joints = chain.flatMap((port, at) => {
    const next = chain[at + 1];
    return at % 2 === 0 && next !== undefined ? [join(port, next, 'fluid')] : [];
  });
  const ends = steps.flatMap(({ from, to }) => [from, to]);
  const maleTaper = ends.some((port) => isTaper(port) && genderOf(port) === 'male');
  return {
    text: pieces.map(({ text }) => text).join(', then '),
    pieces,
    needs: joints.flatMap(({ needs }) => needs),
    notes: [
      `Check the smallest passage of the adapter against the bore of the line.`,
      ...(maleTaper ? ['A male taper thread wedges: in an aluminium boss it splits what it is forced into.'] : []),
    ],
  };
}

/** Exhaust joints of different sizes are joined by a cone or plate made for them. */
function madeToOrder(one: Port, other: Port): readonly Adapter[] {
  const { name, availability, source } = familyOf('A28');
  const text = `${name}, from ${formatPort(one)} to ${formatPort(other)}`;
  return [
    {
      text,
      pieces: [{ text, name, availability, lessUsual: false, ends: [one, other], source }],
      needs: [],
      notes: ['Made to order: measure both flanges, their opening, holes or profile first.'],
    },
  ];
}

/**
 * Adapters of one piece, or else of two, that join these ports; the best first, at most five. Empty when none is usual.
 * @param avoidTaper ranks taper threads last (fuel and brake lines)
 */
export function findAdapters(one: Port, other: Port, avoidTaper = false): readonly Adapter[] {
  if (classOf(one) !== classOf(other)) return [];
  if (classOf(one) === 'exhaust') return madeToOrder(one, other);
  if (classOf(one) !== 'fluid') return [];
  return search(one, other)
    .map((found) => ({ found, rank: rank(found, one, other, avoidTaper) }))
    .toSorted((first, second) => compare(first.rank, second.rank))
    .slice(0, mostShown)
    .map(({ found }) => present(found, one, other));
}
