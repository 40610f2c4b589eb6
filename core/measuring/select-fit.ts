/**
 * Which shim or shell goes into which place. A thicker shim takes as much off the lash as it is thicker: new = old +
 * measured − target. A bearing has two shells, so a pair thicker by a wall takes twice that off the clearance. Of what is
 * at hand, and what comes out of other places, a set is chosen so that the fewest are bought.
 */
import { assignLeastCost } from './assignment.ts';

export interface FitSetup {
  readonly way: 'shim' | 'shell';
  /** Lash, height or clearance aimed at. */
  readonly target: number;
  /** Sizes are made in steps of this; what is bought is a multiple of it. */
  readonly step: number;
  /** At hand: size (of a shell its wall), and how many (of shells: pairs). */
  readonly sizes: readonly { readonly name: string; readonly size: number; readonly count: number }[];
  /** What is in each place now: 0 = none, null = not known. */
  readonly now: readonly (number | null)[];
}

export interface FitLimits {
  readonly least: number | null;
  readonly most: number | null;
}

export interface FitPlace {
  readonly place: string;
  readonly measured: number | null;
}

export interface FitChoice {
  readonly place: string;
  readonly now: number | null;
  readonly measured: number | null;
  /** The exact size wanted, and the size to use; 0 = none. */
  readonly wanted: number | null;
  readonly use: number | null;
  readonly name: string;
  readonly from: 'stays' | 'another place' | 'at hand' | 'to buy' | 'not known';
  readonly fromPlace: string;
  /** Lash, height or clearance with it. */
  readonly becomes: number | null;
}

interface Piece {
  readonly size: number;
  /** Place that it comes out of, by its position; null = from the box. */
  readonly place: number | null;
}

/** Costs that never trade against each other: one bought outweighs every change, one change every deviation. */
const boughtCost = 1e9;
const changeCost = 1e4;

/**
 * Chooses for all places together. A size will do where the result is inside the limits; where none are given, within
 * half a step of the target. What is right stays. A place not measured, or whose size isn't known, is left alone.
 */
export function selectFit(setup: FitSetup, places: readonly FitPlace[], limits: FitLimits): FitChoice[] {
  const factor = setup.way === 'shell' ? 2 : 1;
  const known = places.flatMap(({ place, measured }, index) => {
    const now = setup.now[index] ?? null;
    return measured === null || now === null ? [] : [{ index, place, measured, now }];
  });
  const becomes = (one: { measured: number; now: number }, size: number): number =>
    one.measured + factor * (one.now - size);
  const wanted = (one: { measured: number; now: number }): number => one.now + (one.measured - setup.target) / factor;
  const toBuy = (one: { measured: number; now: number }): number =>
    Number(Math.max(0, Math.round(wanted(one) / setup.step) * setup.step).toPrecision(12));
  const dust = 1e-9 * Math.max(1, Math.abs(setup.target));
  const bounded = limits.least !== null || limits.most !== null;
  const willDo = (result: number): boolean =>
    bounded
      ? (limits.least === null || result >= limits.least - dust) &&
        (limits.most === null || result <= limits.most + dust)
      : Math.abs(result - setup.target) <= (factor * setup.step) / 2 + dust;

  const pieces: Piece[] = [
    ...known.filter(({ now }) => now > 0).map(({ now, index }) => ({ size: now, place: index })),
    ...setup.sizes.flatMap(({ size, count }) =>
      // More of one size than there are places can't be used.
      Array.from({ length: Math.min(count, known.length) }, () => ({ size, place: null })),
    ),
  ];
  const deviation = (result: number): number => Math.min(999, Math.abs(result - setup.target) / setup.step);
  const costs = known.map((one) => [
    ...pieces.map((piece) => {
      const result = becomes(one, piece.size);
      if (!willDo(result)) return Number.POSITIVE_INFINITY;
      return (piece.place === one.index ? 0 : changeCost) + deviation(result);
    }),
    // No shim at all, which only this place can choose.
    ...known.map(({ index }) => {
      const result = becomes(one, 0);
      if (index !== one.index || setup.way === 'shell' || !willDo(result)) return Number.POSITIVE_INFINITY;
      return (one.now === 0 ? 0 : changeCost) + deviation(result);
    }),
    ...known.map(({ index }) =>
      index === one.index ? boughtCost + changeCost + deviation(becomes(one, toBuy(one))) : Number.POSITIVE_INFINITY,
    ),
  ]);
  const chosen = assignLeastCost(costs);
  const byIndex = new Map(
    known.map((one, row): [number, FitChoice] => {
      const column = chosen[row] ?? -1;
      const piece = pieces[column];
      const none = piece === undefined && column < pieces.length + known.length;
      const use = piece?.size ?? (none ? 0 : toBuy(one));
      const stays = piece === undefined ? none && one.now === 0 : piece.place === one.index;
      const from = stays
        ? 'stays'
        : piece === undefined
          ? none
            ? 'at hand'
            : 'to buy'
          : piece.place === null
            ? 'at hand'
            : 'another place';
      const named = setup.sizes.find(({ size }) => size === use)?.name ?? '';
      return [
        one.index,
        {
          place: one.place,
          now: one.now,
          measured: one.measured,
          wanted: Number(wanted(one).toPrecision(12)),
          use,
          name: none ? 'none' : named,
          from,
          fromPlace: from === 'another place' ? (places[piece?.place ?? -1]?.place ?? '') : '',
          becomes: Number(becomes(one, use).toPrecision(12)),
        },
      ];
    }),
  );
  return places.map(
    ({ place, measured }, index) =>
      byIndex.get(index) ?? {
        place,
        now: setup.now[index] ?? null,
        measured,
        wanted: null,
        use: null,
        name: '',
        from: 'not known',
        fromPlace: '',
        becomes: null,
      },
  );
}

/** The choice in a sentence: what stays, what moves, what is bought. */
export function fitSays(choices: readonly FitChoice[], unit: string): string {
  const count = (from: FitChoice['from']): number => choices.filter((choice) => choice.from === from).length;
  const buy = choices.filter((choice) => choice.from === 'to buy');
  const sizes = [...Map.groupBy(buy, ({ use }) => use)].map(([use, list]) => `${list.length} of ${use} ${unit}`);
  const pieces = [
    count('stays') === 0 ? '' : `${count('stays')} stay`,
    count('another place') === 0 ? '' : `${count('another place')} from another place`,
    count('at hand') === 0 ? '' : `${count('at hand')} from what is at hand`,
    buy.length === 0 ? '' : `to buy: ${sizes.join(', ')}`,
    count('not known') === 0 ? '' : `${count('not known')} not measured, or nothing known of what is in`,
  ].filter((piece) => piece !== '');
  return `${pieces.join('; ')}.`;
}
