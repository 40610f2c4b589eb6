import { Refusal } from '../refusal.ts';
import { dashNames, dashSizes } from './dash.ts';
import { tellApart } from './near-threads.ts';
import { dashKinds } from './port.ts';
import { everyThread, plain, type Thread, threadOfTable } from './thread.ts';

/** What was measured on a thread. */
export interface MeasuredThread {
  /** Outside thread: over the tips; inside thread: the bore between the tips. mm, 1 to 110. */
  readonly diameter: number;
  /** mm, 0.2 to 7; left out where it couldn't be measured. */
  readonly pitch?: number;
  /** `outside` when left out: a caliper reads it better. */
  readonly where?: 'outside' | 'inside';
}

/** A thread that it may be. */
export interface ThreadCandidate {
  readonly thread: Thread;
  readonly name: string;
  /** What a caliper reads on a sound one, mm. */
  readonly reads: readonly [least: number, most: number];
  /** By how much the measured pitch is off, mm; missing where none was measured. */
  readonly pitchOff?: number;
  /** Whether it reads as a sound thread of this size should. */
  readonly likely: boolean;
  /** Fittings that carry it: `JIC -6`, `ORB -6`. */
  readonly usedOn: readonly string[];
}

export interface ThreadAnswer {
  /** The answer in one sentence. */
  readonly text: string;
  readonly candidates: readonly ThreadCandidate[];
  /** How to tell the first from each other one. */
  readonly tellApart: readonly { readonly one: string; readonly other: string; readonly how: string }[];
}

/** Taper threads read smaller toward the tip, and more beyond the gauge plane. */
const taperBelowMm = 0.5;
const taperAboveMm = 0.1;
/** Beyond the limits of a sound thread by this much, wear, paint and the hand on the caliper are the reason. */
const furthestMm = 0.3;
const furthestPitchShare = 0.08;
const mostCandidates = 6;

/**
 * What a caliper reads on a sound thread, mm. Source: tolerances of the usual class by the formulas of ISO 965-1
 * (6g: es = 15 + 11 P, Td = 180 P^(2/3) - 3.15 / sqrt P, in µm; 6H: TD1 = 230 P^0.7, for P below 1: 433 P - 190 P^1.22),
 * taken for inch threads as well; taper threads by their taper of 1:16 over the usual length.
 */
function readsOf({ diameter, pitch, system }: Thread, where: 'outside' | 'inside'): readonly [number, number] {
  const taper = system === 'npt' || system === 'bsp';
  if (where === 'outside') {
    if (taper) return [diameter - taperBelowMm, diameter + taperAboveMm];
    const most = diameter - (15 + 11 * pitch) / 1000;
    return [most - (180 * Math.cbrt(pitch) ** 2 - 3.15 / Math.sqrt(pitch)) / 1000, most];
  }
  const minor = diameter - (system === 'bsp' ? 1.280654 : 1.082532) * pitch;
  if (taper) return [minor - taperBelowMm, minor + taperBelowMm];
  const tolerance = pitch >= 1 ? 230 * pitch ** 0.7 : 433 * pitch - 190 * pitch ** 1.22;
  return [minor, minor + tolerance / 1000];
}

function usedOn(thread: Thread): readonly string[] {
  return dashKinds.flatMap((kind) =>
    dashSizes[kind]
      .filter((row) => threadOfTable(row.thread).name === thread.name)
      .map(({ dash }) => `${dashNames[kind]} -${dash}`),
  );
}

function need(value: number, field: string, least: number, most: number): void {
  if (Number.isFinite(value) && value >= least && value <= most) return;
  const accepted = `a length from ${least} to ${most} mm`;
  throw new Refusal(
    'bad-input',
    `The ${field} of ${value} mm can't be a thread's: it is ${accepted}. Nothing was changed.`,
    {
      field,
      accepted,
    },
  );
}

/** Which outside and inside threads have the same name: G stands for R, Rc and Rp of its size too. */
const nameOf = ({ name, system, size }: Thread): string => (system === 'bsp' ? `G or R ${size}` : name);

/**
 * What a measured thread can be, the likeliest first, and how to tell those apart.
 * @throws Refusal `bad-input` naming the measurement that can't be a thread's
 */
export function identifyThread({ diameter, pitch, where = 'outside' }: MeasuredThread): ThreadAnswer {
  need(diameter, 'diameter', 1, 110);
  if (pitch !== undefined) need(pitch, 'pitch', 0.2, 7);
  const found = everyThread()
    .map((thread) => {
      const reads = readsOf(thread, where);
      const off = Math.max(reads[0] - diameter, diameter - reads[1], 0);
      const pitchShare = pitch === undefined ? 0 : Math.abs(pitch - thread.pitch) / thread.pitch;
      return { thread, reads, off, pitchShare, score: (off / 0.1) ** 2 + (pitchShare / 0.02) ** 2 };
    })
    .filter(({ off, pitchShare }) => off <= furthestMm && pitchShare <= furthestPitchShare)
    .toSorted((one, other) => one.score - other.score)
    .slice(0, mostCandidates);
  const candidates = found.map(
    ({ thread, reads, off, pitchShare }): ThreadCandidate => ({
      thread,
      name: nameOf(thread),
      reads: [Number(reads[0].toFixed(2)), Number(reads[1].toFixed(2))],
      ...(pitch === undefined ? {} : { pitchOff: Number((pitch - thread.pitch).toFixed(3)) }),
      likely: off === 0 && pitchShare <= 0.02,
      usedOn: usedOn(thread),
    }),
  );
  const measured = `measured ${plain(diameter)} mm${pitch === undefined ? '' : ` and ${plain(pitch)} pitch`}${where === 'inside' ? ' in the bore' : ''}`;
  const [first, ...others] = candidates;
  if (first === undefined) {
    return {
      text: `${measured}: no listed thread is near; measure again over the tips, and ten threads beside a rule`,
      candidates,
      tellApart: [],
    };
  }
  const ways = others.map((other) => ({
    one: first.name,
    other: other.name,
    how: tellApart(first.thread, other.thread),
  }));
  const names = candidates.map(({ name }) => name);
  const [way] = ways;
  return {
    text:
      way === undefined
        ? `${measured}: ${first.name}`
        : `${measured}: ${names.slice(0, -1).join(', ')} or ${names.at(-1)}, tell them apart by: ${way.how}`,
    candidates,
    tellApart: ways,
  };
}
