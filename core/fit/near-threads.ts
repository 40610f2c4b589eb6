import { listedAlike, lookalikeThreads } from './tables/lookalike-threads.ts';
import { type LookalikeRow, lookalikes } from './tables/lookalikes.ts';
import { plain, sameThread, type Thread } from './thread.ts';

/** Limits are a choice of this program, tested on the usual port threads; no standard has them. */
const alwaysAlikeMm = 0.3;
const leastWindowMm = 0.6;
const windowShare = 0.06;
const largestWindowMm = 1.1;
const pitchShare = 0.12;
/** Sizes are tabulated to a thousandth; limits must not turn on the last bit. */
const rounding = 1e-9;

const pairOf = <Row extends readonly [string, string, ...unknown[]]>(
  rows: readonly Row[],
  one: Thread,
  other: Thread,
) =>
  rows.find(
    ([first, second]) => (first === one.name && second === other.name) || (first === other.name && second === one.name),
  );

/**
 * Whether two different threads can be taken for one another and started: by diameter alone (`L1`: within 0.30 mm), by
 * diameter and pitch (`L2`: within 6 % of the larger, at least 0.6 and at most 1.1 mm, pitches within 12 %), or by list (`L3`).
 * @returns undefined for threads that are the same or that don't engage
 */
export function nearlyAlike(one: Thread, other: Thread): 'L1' | 'L2' | 'L3' | undefined {
  if (sameThread(one, other)) return undefined;
  const apart = Math.abs(one.diameter - other.diameter);
  if (apart <= alwaysAlikeMm + rounding) return 'L1';
  const window = Math.min(
    Math.max(leastWindowMm, windowShare * Math.max(one.diameter, other.diameter)),
    largestWindowMm,
  );
  const pitches = Math.abs(one.pitch - other.pitch) / Math.min(one.pitch, other.pitch);
  if (apart <= window + rounding && pitches <= pitchShare + rounding) return 'L2';
  return pairOf(listedAlike, one, other) === undefined ? undefined : 'L3';
}

export const lookalikeRow = (id: string): LookalikeRow | undefined => lookalikes.find((row) => row.id === id);

/** The catalogue's row about these two threads. */
export function lookalikeOf(one: Thread, other: Thread): LookalikeRow | undefined {
  const id = pairOf(lookalikeThreads, one, other)?.[2];
  return id === undefined ? undefined : lookalikeRow(id);
}

/** `14.29 against 14.00 mm, pitch 1.411 against 1.5 mm, flanks 60° against 55°`: what differs, first thread first. */
export function difference(one: Thread, other: Thread): string {
  const sameSize = Math.abs(one.diameter - other.diameter) < 0.02;
  return [
    sameSize ? 'same diameter' : `${hundredths(one.diameter)} against ${hundredths(other.diameter)} mm`,
    Math.abs(one.pitch - other.pitch) < 0.004
      ? 'pitch equal'
      : `pitch ${plain(one.pitch)} against ${plain(other.pitch)} mm${threadsPerInch(one, other)}`,
    ...(one.flank === other.flank ? [] : [`flanks ${one.flank}° against ${other.flank}°`]),
  ].join(', ');
}

/** Two decimals, halves up: 7/8 in is 22.225 mm and reads 22.23. */
export const hundredths = (mm: number): string => (Math.round(mm * 100 + 1e-6) / 100).toFixed(2);

const threadsPerInch = (one: Thread, other: Thread): string =>
  one.tpi === undefined || other.tpi === undefined ? '' : ` (${one.tpi} against ${other.tpi} threads per inch)`;

/** Ten threads beside a rule, the caliper over the tips, the taper and the flanks: how to tell the two apart. */
export function tellApart(one: Thread, other: Thread): string {
  const sizes = Math.abs(one.diameter - other.diameter) >= 0.15;
  const pitches = Math.abs(one.pitch - other.pitch) >= 0.02;
  const tapers = (one.system === 'npt') !== (other.system === 'npt');
  // A taper thread reads half a millimetre less at its tip.
  const range = ({ diameter, system }: Thread): string =>
    `${(diameter - (system === 'npt' ? 0.5 : 0.25)).toFixed(1)} to ${diameter.toFixed(1)} mm`;
  const said = [
    ...(sizes ? [`caliper over the outside thread: ${range(one)} is ${one.name}, ${range(other)} ${other.name}`] : []),
    ...(pitches
      ? [
          `10 threads are ${(one.pitch * 10).toFixed(1)} mm long on ${one.name}, ${(other.pitch * 10).toFixed(1)} mm on ${other.name}`,
        ]
      : []),
    ...(tapers ? [`${one.system === 'npt' ? one.name : other.name} gets thinner toward the tip`] : []),
    ...(one.flank === other.flank
      ? []
      : [`the flanks of ${one.name} stand at ${one.flank}°, of ${other.name} at ${other.flank}°`]),
  ];
  return said.length === 0 ? 'a pitch gauge' : said.join('; ');
}
