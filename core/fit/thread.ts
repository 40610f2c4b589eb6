import { banjoSizes, flatFacePorts, oRingPorts } from './tables/metric-ports.ts';
import { coarseThreads, fineThreads } from './tables/metric-threads.ts';
import { type BspRow, bspThreads, type NptRow, nptThreads } from './tables/pipe-threads.ts';
import { type UnifiedThreadRow, unifiedFittingThreads, unifiedThreads } from './tables/unified-threads.ts';

/** The screw thread itself, without its sealing. */
export interface Thread {
  readonly system: 'metric' | 'unified' | 'npt' | 'bsp';
  /** As written: `M14x1.5`, `7/16-20 UNF`, `1/8-27 NPT`, `G 1/8`. */
  readonly name: string;
  /** As written before the pitch: `14`, `7/16`, `1/8`. */
  readonly size: string;
  /** Outside diameter, mm; of taper threads that of the pipe (NPT) or at the gauge plane (R). */
  readonly diameter: number;
  /** mm. */
  readonly pitch: number;
  /** Threads per inch, of inch threads. */
  readonly tpi?: number;
  /** Angle of the flanks: 60° (ISO 68-1, ASME B1.1, B1.20.1) or 55° (ISO 7-1, ISO 228-1). */
  readonly flank: 60 | 55;
}

const inch = 25.4;

/** A number as people write it: no more decimals than it has, halves up (25.4/16 is 1.5875 and reads 1.588). */
export const plain = (value: number, digits = 3): string =>
  String(Number((Math.round(value * 10 ** digits + 1e-6) / 10 ** digits).toFixed(digits)));

const metricText = /^M([\d.]+)x([\d.]+)$/;

const rowsOfPorts = [
  ...oRingPorts,
  ...flatFacePorts.map(({ thread }) => thread),
  ...banjoSizes.map(({ thread }) => thread),
].flatMap((thread) => {
  const found = metricText.exec(thread);
  return found === null ? [] : [{ diameter: Number(found[1]), pitch: Number(found[2]) }];
});

/** Listed pitches of a metric diameter, coarse first, then falling; empty when the diameter isn't listed. Source: the tables. */
export function metricPitches(diameter: number): readonly number[] {
  const coarse = coarseThreads.filter((row) => row.diameter === diameter).map(({ pitch }) => pitch);
  const finer = [...fineThreads, ...rowsOfPorts].filter((row) => row.diameter === diameter).map(({ pitch }) => pitch);
  return [...new Set([...coarse, ...finer.toSorted((one, other) => other - one)])];
}

/** The pitch meant by a diameter alone (ISO 261 coarse), where one is listed. */
export const coarsePitch = (diameter: number): number | undefined =>
  coarseThreads.find((row) => row.diameter === diameter)?.pitch;

/** Every listed metric diameter, mm, rising. */
export const metricDiameters = (): readonly number[] =>
  [...new Set([...coarseThreads, ...fineThreads, ...rowsOfPorts].map(({ diameter }) => diameter))].toSorted(
    (one, other) => one - other,
  );

/** A metric thread, listed or not; lengths in mm. */
export const metricThread = (diameter: number, pitch: number): Thread => ({
  system: 'metric',
  name: `M${plain(diameter)}x${plain(pitch)}`,
  size: plain(diameter),
  diameter,
  pitch,
  flank: 60,
});

/** Every listed unified thread, bolts' first. */
export const unifiedRows: readonly UnifiedThreadRow[] = [...unifiedThreads, ...unifiedFittingThreads];

const fromUnified = ({ size, tpi, series, majorInch }: UnifiedThreadRow): Thread => ({
  system: 'unified',
  name: `${size}-${tpi} ${series}`,
  size,
  diameter: majorInch * inch,
  pitch: inch / tpi,
  tpi,
  flank: 60,
});

/** The listed unified thread of this size (`7/16`, `#10`) and threads per inch. */
export function unifiedThread(size: string, tpi: number): Thread | undefined {
  const row = unifiedRows.find((one) => one.size === size && one.tpi === tpi);
  return row === undefined ? undefined : fromUnified(row);
}

/** A thread of the dash tables, written `9/16-18`. @throws Error when the tables disagree, which their test excludes. */
export function threadOfTable(text: string): Thread {
  const at = text.lastIndexOf('-');
  const found = unifiedThread(text.slice(0, at), Number(text.slice(at + 1)));
  if (found === undefined) throw new Error(`The tables name a thread that they don't list: ${text}.`);
  return found;
}

const fromNpt = ({ size, tpi, pipeOutside }: NptRow): Thread => ({
  system: 'npt',
  name: `${size}-${tpi} NPT`,
  size,
  diameter: pipeOutside,
  pitch: inch / tpi,
  tpi,
  flank: 60,
});

export function nptThread(size: string): Thread | undefined {
  const row = nptThreads.find((one) => one.size === size);
  return row === undefined ? undefined : fromNpt(row);
}

const fromBsp = ({ size, tpi, major }: BspRow, letter: 'G' | 'R'): Thread => ({
  system: 'bsp',
  name: `${letter} ${size}`,
  size,
  diameter: major,
  pitch: inch / tpi,
  tpi,
  flank: 55,
});

/** The 55° pipe thread of this size; taper (R, Rc) and Rp exist in fewer sizes than G. */
export function bspThread(size: string, need: 'any' | 'taper' = 'any'): Thread | undefined {
  const row = bspThreads.find((one) => one.size === size && (need === 'any' || one.taperListed));
  return row === undefined ? undefined : fromBsp(row, need === 'taper' ? 'R' : 'G');
}

/** Every listed thread, each once: what a measured one may be. */
export function everyThread(): readonly Thread[] {
  return [
    ...metricDiameters().flatMap((diameter) => metricPitches(diameter).map((pitch) => metricThread(diameter, pitch))),
    ...unifiedRows.map(fromUnified),
    ...nptThreads.map(fromNpt),
    ...bspThreads.map((row) => fromBsp(row, 'G')),
  ];
}

/**
 * Whether two threads are one and the same: diameter within 0.02 mm, pitch within 0.004 mm, equal flanks. The limits are
 * a choice of this program: the tables round to a thousandth, and no two listed threads lie that close.
 */
export const sameThread = (one: Thread, other: Thread): boolean =>
  Math.abs(one.diameter - other.diameter) < 0.02 &&
  Math.abs(one.pitch - other.pitch) < 0.004 &&
  one.flank === other.flank;
