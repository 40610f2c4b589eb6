/**
 * Which shim or shell goes into which place. A thicker shim takes as much off the lash as it is thicker: new = old +
 * measured − target. A bearing has two shells, so a pair thicker by a wall takes twice that off the clearance. Of what is
 * at hand, and what comes out of other places, a set is chosen so that the fewest are bought.
 */
import { nearestStep } from '../calculators/g/nearest-step.ts';
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
  /** Lash, height or clearance with it, and whether that will do; null where nothing is chosen. */
  readonly becomes: number | null;
  readonly inside: boolean | null;
}

interface Piece {
  readonly size: number;
  /** Place that it comes out of, by its position; null = from the box. */
  readonly place: number | null;
}

/** How far off the target one place may count, in steps: an end to it, so that it never outweighs a change. */
const mostDeviation = 999;

/**
 * Chooses for all places together. A size will do where the result is inside the limits; where none are given, within
 * half a step of the target. What is right stays. A place not measured, or whose size isn't known, is left alone, and so
 * is one too tight for any shim. What is bought is the nearest step, a tie to the thinner, as in calculator G5.
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
    Number(Math.max(0, nearestStep(wanted(one), setup.step)).toPrecision(12));
  const dust = 1e-9 * Math.max(1, Math.abs(setup.target));
  const bounded = limits.least !== null || limits.most !== null;
  const willDo = (result: number): boolean =>
    bounded
      ? (limits.least === null || result >= limits.least - dust) &&
        (limits.most === null || result <= limits.most + dust)
      : Math.abs(result - setup.target) <= (factor * setup.step) / 2 + dust;

  const pieces: Piece[] = [
    ...known.filter(({ now }) => now > 0).map(({ now, index }) => ({ size: now, place: index })),
    ...setup.sizes.flatMap(({ size, count }) => {
      // More of one size than there are places for it can't be used, and would only cost time.
      const fits = known.filter((one) => willDo(becomes(one, size))).length;
      return Array.from({ length: Math.min(count, fits) }, () => ({ size, place: null }));
    }),
  ];
  const deviation = (result: number): number => Math.min(mostDeviation, Math.abs(result - setup.target) / setup.step);
  // Costs that never trade against each other: one change outweighs all deviations, one bought all changes.
  const changeCost = (known.length + 1) * (mostDeviation + 1);
  const boughtCost = (known.length + 1) * (changeCost + mostDeviation);
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
      const exact = Number(wanted(one).toPrecision(12));
      if (from === 'to buy' && use <= 0) {
        return [one.index, { ...leftAlone(one.place, one.now, one.measured), wanted: exact }];
      }
      const named = setup.sizes.find(({ size }) => size === use)?.name ?? '';
      return [
        one.index,
        {
          place: one.place,
          now: one.now,
          measured: one.measured,
          wanted: exact,
          use,
          name: none ? 'none' : named,
          from,
          fromPlace: from === 'another place' ? (places[piece?.place ?? -1]?.place ?? '') : '',
          becomes: Number(becomes(one, use).toPrecision(12)),
          inside: willDo(becomes(one, use)),
        },
      ];
    }),
  );
  return places.map(
    ({ place, measured }, index) => byIndex.get(index) ?? leftAlone(place, setup.now[index] ?? null, measured),
  );
}

const leftAlone = (place: string, now: number | null, measured: number | null): FitChoice => ({
  place,
  now,
  measured,
  wanted: null,
  use: null,
  name: '',
  from: 'not known',
  fromPlace: '',
  becomes: null,
  inside: null,
});

/** The choice in words: what stays, what moves, what is bought, and what even so isn't right. */
export function fitSays(choices: readonly FitChoice[], unit: string): string {
  const count = (from: FitChoice['from']): number => choices.filter((choice) => choice.from === from).length;
  const buy = choices.filter((choice) => choice.from === 'to buy');
  const tight = choices.filter(({ from, wanted }) => from === 'not known' && wanted !== null);
  const unknown = count('not known') - tight.length;
  const sizes = [...Map.groupBy(buy, ({ use }) => use)].map(([use, list]) => `${list.length} of ${use} ${unit}`);
  const pieces = [
    count('stays') === 0 ? '' : `${count('stays')} stay`,
    count('another place') === 0 ? '' : `${count('another place')} from another place`,
    count('at hand') === 0 ? '' : `${count('at hand')} from what is at hand`,
    buy.length === 0 ? '' : `to buy: ${sizes.join(', ')}`,
    unknown === 0 ? '' : `${unknown} not measured, or nothing known of what is in`,
  ].filter((piece) => piece !== '');
  const named = (list: readonly FitChoice[]): string => list.map(({ place }) => place).join(', ');
  const off = choices.filter(({ inside }) => inside === false);
  const shut = choices.filter(({ measured, now }) => measured === 0 && now !== null);
  return [
    pieces.length === 0 ? '' : `${pieces.join('; ')}.`,
    tight.length === 0 ? '' : `Too tight for any size: ${named(tight)}.`,
    off.length === 0 ? '' : `Not right even with the nearest size: ${named(off)}.`,
    // Source: rule of calculator G5; a valve that is held open reads nothing, too.
    shut.length === 0
      ? ''
      : `A gap of 0 leaves the true one unknown; fit a thinner size and measure again: ${named(shut)}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
