/**
 * The forecast: many trials of the same plan, each with its own luck, counted. It runs in portions, so that a worker can
 * report progress, show a first picture and stop; the same network, seed and number of runs give the same answer on every
 * machine, however the portions were cut.
 */
import { minutesPerDay } from '../dates/instant.ts';
import { Refusal } from '../refusal.ts';
import { type ColumnDraw, columnDrawOf, type Draw, drawnShare, drawOf } from './draw.ts';
import { type CompiledNetwork, compileNetwork, type ForecastNetwork } from './network.ts';
import { nearestRank, percentileBand } from './percentile.ts';
import { normalQuantile } from './probability.ts';
import { requireSeed, trialDraws } from './seeded-random.ts';
import { type Trial, trialOf } from './trial.ts';

export interface ForecastOptions {
  /** 1 to 100,000; 2,000 when left out. */
  readonly runs?: number;
  readonly seed: number;
  /** How alike the luck of one vendor's deliveries is, 0 to below 1; 0.3 when left out (an assumption, no source). */
  readonly vendorCorrelation?: number;
  /** For how many of the most critical jobs and deliveries the days won are worked out; 12 when left out. */
  readonly daysWonFor?: number;
  /**
   * The plan before a change that made nothing harder (see `isNoHarder`), with the same gates: with the same luck its
   * course can still be kept, so that no gate of a run comes later than there.
   */
  readonly keepable?: ForecastNetwork;
}

export interface GateForecast {
  readonly id: string;
  readonly name: string;
  /** Minutes of wall time, rounded up. */
  readonly p10Minute: number;
  readonly p50Minute: number;
  readonly p80Minute: number;
  readonly p90Minute: number;
  readonly p95Minute: number;
  readonly meanMinute: number;
  /** Between these the true value lies with 95 % confidence, as far as the number of runs goes. */
  readonly p50Band: readonly [number, number];
  readonly p80Band: readonly [number, number];
  /** Share of runs that met the wished-for instant; null without one. */
  readonly chanceOfTarget: number | null;
  /** Runs by the day number on which they reached the gate, in order of days. */
  readonly runsByDay: readonly { readonly day: number; readonly runs: number }[];
  /** What held this gate, most often first; elements that never did are left out. */
  readonly heldBy: readonly GateHolder[];
}

export interface GateHolder {
  readonly kind: 'job' | 'arrival';
  readonly id: string;
  readonly name: string;
  /** Share of runs in which it lay on the chain that held the gate. */
  readonly criticality: number;
  /**
   * Mean days by which this gate would come earlier if it came a week earlier: a delivery or a stay on the clock seven
   * days sooner, a job with a week's working hours less, neither below nothing. Null where not worked out (yet).
   */
  readonly daysWon: number | null;
}

export interface ForecastResult {
  readonly runs: number;
  readonly asked: number;
  readonly seed: number;
  /** All runs and the days won are in. */
  readonly complete: boolean;
  /** Share of runs in which something lay beyond the ten years that are looked ahead. */
  readonly beyondShare: number;
  readonly gates: readonly GateForecast[];
}

export interface Forecast {
  /** Does up to this many more trials. @returns whether any are left. */
  advance(trials: number): boolean;
  /** Share of the whole done, 0 to 1. */
  progress(): number;
  /** What is known so far. @throws Refusal `bad-input` before the first trial. */
  result(): ForecastResult;
}

const shiftTrials = 200;

/**
 * Prepares a forecast; nothing is drawn yet.
 * @throws Refusal `bad-input` for a network that can't be laid out (see `compileNetwork`) or an option out of range.
 */
export function startForecast(network: ForecastNetwork, options: ForecastOptions): Forecast {
  const seed = requireSeed(options.seed);
  const runs = inRange(options.runs ?? 2000, 1, 100_000, 'runs', true);
  const correlation = inRange(options.vendorCorrelation ?? 0.3, 0, 0.999, 'vendor correlation', false);
  const wanted = inRange(options.daysWonFor ?? 12, 0, 1000, 'days won for', true);
  const compiled = compileNetwork(network);
  const trial = trialOf(compiled);
  const draw = elementDraws(compiled, trial, seed, correlation);
  const keptMinutes = options.keepable === undefined ? null : keptRuns(options.keepable, seed, correlation);
  const jobCount = compiled.jobs.length;
  const elements = jobCount + compiled.arrivals.length;
  const { endMinute } = trial;
  const gates = compiled.gates.map(() => ({
    minutes: new Float64Array(runs),
    jobs: new Uint32Array(jobCount),
    arrivals: new Uint32Array(compiled.arrivals.length),
    won: new Float64Array(elements),
  }));
  let done = 0;
  let beyond = 0;
  let shifts: number[] | null = null;
  let shiftsDone = 0;
  const perShift = Math.min(runs, shiftTrials);

  const oneRun = (): void => {
    draw(done + 1);
    trial.run();
    const kept = keptMinutes?.(done + 1);
    let late = false;
    for (let index = 0; index < gates.length; index += 1) {
      const gate = gates[index] as (typeof gates)[0];
      const minute = Math.min(trial.gateMinute(index), kept?.[index] ?? Number.POSITIVE_INFINITY);
      gate.minutes[done] = minute;
      trial.countChain(index, gate.jobs, gate.arrivals);
      if (minute >= endMinute) late = true;
    }
    if (late) beyond += 1;
    done += 1;
  };

  /** The most critical elements, over all gates. */
  const choose = (): number[] => {
    const share = new Float64Array(elements);
    for (const gate of gates) {
      gate.jobs.forEach((count, job) => {
        share[job] = Math.max(share[job] as number, count);
      });
      gate.arrivals.forEach((count, arrival) => {
        share[jobCount + arrival] = Math.max(share[jobCount + arrival] as number, count);
      });
    }
    return [...share.keys()]
      .filter((element) => (share[element] as number) > 0)
      .sort((a, b) => (share[b] as number) - (share[a] as number) || a - b)
      .slice(0, wanted);
  };

  const oneShift = (element: number, number: number): void => {
    draw(number + 1);
    if (element >= jobCount) {
      const arrival = element - jobCount;
      trial.days[arrival] = (trial.days[arrival] as number) - 7;
    } else {
      const week = compiled.hands[element] === 1 ? weekOf(compiled, element) : 7 * minutesPerDay;
      trial.minutes[element] = Math.max(0, (trial.minutes[element] as number) - week);
    }
    trial.run();
    gates.forEach((gate, index) => {
      const days = ((gate.minutes[number] as number) - trial.gateMinute(index)) / minutesPerDay;
      gate.won[element] = (gate.won[element] as number) + days / perShift;
    });
  };

  return {
    advance(trials) {
      for (let step = 0; step < trials; step += 1) {
        if (done < runs) {
          oneRun();
          if (done === runs) shifts = choose();
        } else {
          // Trial by trial rather than element by element: a trial's draws then serve all elements.
          const chosen = shifts ?? [];
          if (shiftsDone >= chosen.length * perShift) return false;
          oneShift(chosen[shiftsDone % chosen.length] as number, Math.floor(shiftsDone / chosen.length));
          shiftsDone += 1;
        }
      }
      return done < runs || shiftsDone < (shifts?.length ?? wanted) * perShift;
    },
    progress() {
      const extra = (shifts?.length ?? Math.min(wanted, elements)) * perShift;
      return (done + shiftsDone) / (runs + extra);
    },
    result() {
      if (done === 0) throw refused('runs', 'No run has been made yet.', 'at least one run');
      const worked = new Set(shifts !== null && shiftsDone >= shifts.length * perShift ? shifts : []);
      return {
        runs: done,
        asked: runs,
        seed,
        complete: done === runs && shifts !== null && shiftsDone >= shifts.length * perShift,
        beyondShare: beyond / done,
        gates: network.gates.map((gate, index) => {
          const tally = gates[index] as (typeof gates)[0];
          const days = (element: number): number | null =>
            worked.has(element) ? (tally.won[element] as number) : null;
          return {
            ...summary(tally.minutes.subarray(0, done), gate.targetMinute ?? null),
            id: gate.id,
            name: gate.name,
            heldBy: [
              ...holders('job', compiled.jobs, tally.jobs, done, (at) => days(at)),
              ...holders('arrival', compiled.arrivals, tally.arrivals, done, (at) => days(jobCount + at)),
            ].sort((a, b) => b.criticality - a.criticality || (a.name < b.name ? -1 : 1)),
          };
        }),
      };
    },
  };
}

/** The whole forecast in one go, days won included. See `startForecast`. */
export function runForecast(network: ForecastNetwork, options: ForecastOptions): ForecastResult {
  const forecast = startForecast(network, options);
  while (forecast.advance(1000));
  return forecast.result();
}

/** When each gate of a plan is reached in a run. */
function keptRuns(network: ForecastNetwork, seed: number, correlation: number): (number: number) => readonly number[] {
  const compiled = compileNetwork(network);
  const trial = trialOf(compiled);
  const draw = elementDraws(compiled, trial, seed, correlation);
  return (number) => {
    draw(number);
    trial.run();
    return compiled.gates.map((_, index) => trial.gateMinute(index));
  };
}

/** Trials drawn at a time: each element's table is then read while it is at hand. */
const blockSize = 32;

/**
 * Writes the draws of a trial: every element has its own stream, and one vendor's deliveries share some luck. The draws
 * of a block of trials are made together, element by element; which trial is asked for first changes nothing.
 */
function elementDraws(
  network: CompiledNetwork,
  trial: Trial,
  seed: number,
  correlation: number,
): (number: number) => void {
  const vendors = [...new Set(network.arrivals.flatMap((arrival) => arrival.vendor ?? []))];
  const jobCount = network.jobs.length;
  const arrivalCount = network.arrivals.length;
  const draws = trialDraws(seed, [
    ...network.jobs.map((job) => `job:${job.id}`),
    ...network.arrivals.map((arrival) => `arrival:${arrival.id}`),
    ...vendors.map((vendor) => `vendor:${vendor}`),
  ]);
  const jobDraws: ColumnDraw[] = network.jobs.map((job) => columnDrawOf(job.minutes));
  const arrivalDraws: Draw[] = network.arrivals.map((arrival) => drawOf(arrival.days));
  const vendorOf = network.arrivals.map((arrival) => (correlation > 0 ? vendors.indexOf(arrival.vendor ?? '') : -1));
  const shared = Math.sqrt(correlation);
  const own = Math.sqrt(1 - correlation);
  const width = jobCount + arrivalCount + vendors.length;
  // One element's draws of the block stand together.
  const units = new Float64Array(width * blockSize);
  let first = Number.NaN;

  const drawBlock = (from: number): void => {
    for (let row = 0; row < blockSize; row += 1) draws.fill(from + row, units, row, blockSize);
    for (let job = 0; job < jobCount; job += 1) {
      (jobDraws[job] as ColumnDraw)(units, job * blockSize, (job + 1) * blockSize);
    }
    if (correlation > 0) {
      for (let at = (jobCount + arrivalCount) * blockSize; at < units.length; at += 1) {
        units[at] = normalQuantile(units[at] as number);
      }
    }
    for (let arrival = 0; arrival < arrivalCount; arrival += 1) {
      const draw = arrivalDraws[arrival] as Draw;
      const vendor = vendorOf[arrival] as number;
      const base = (jobCount + arrival) * blockSize;
      const luckBase = (jobCount + arrivalCount + vendor) * blockSize;
      for (let row = 0; row < blockSize; row += 1) {
        let u = units[base + row] as number;
        if (vendor >= 0) {
          const luck = units[luckBase + row] as number;
          u = Math.min(drawnShare(shared * luck + own * normalQuantile(u)), 1 - 2 ** -53);
        }
        units[base + row] = draw(u);
      }
    }
  };

  return (number) => {
    const from = number - ((number - 1) % blockSize);
    if (from !== first) {
      drawBlock(from);
      first = from;
    }
    const row = number - from;
    const { minutes, days } = trial;
    for (let job = 0; job < jobCount; job += 1) minutes[job] = units[job * blockSize + row] as number;
    for (let arrival = 0; arrival < arrivalCount; arrival += 1) {
      days[arrival] = units[(jobCount + arrival) * blockSize + row] as number;
    }
  };
}

function weekOf(network: CompiledNetwork, job: number): number {
  const person = Math.max(0, (network.queue[job] as number) - 1);
  return network.clocks[person]?.perWeek ?? 0;
}

function summary(minutes: Float64Array, target: number | null): Omit<GateForecast, 'id' | 'name' | 'heldBy'> {
  const sorted = minutes.slice().sort();
  const at = (share: number): number => Math.ceil(nearestRank(sorted, share) - 1e-6);
  const band = (share: number): readonly [number, number] => {
    const [from, to] = percentileBand(sorted, share);
    return [Math.ceil(from - 1e-6), Math.ceil(to - 1e-6)];
  };
  const byDay = new Map<number, number>();
  let met = 0;
  let sum = 0;
  for (const minute of sorted) {
    const day = Math.floor(minute / minutesPerDay);
    byDay.set(day, (byDay.get(day) ?? 0) + 1);
    if (target !== null && minute <= target + 1e-6) met += 1;
    sum += minute - (sorted[0] as number);
  }
  return {
    p10Minute: at(0.1),
    p50Minute: at(0.5),
    p80Minute: at(0.8),
    p90Minute: at(0.9),
    p95Minute: at(0.95),
    meanMinute: Math.ceil((sorted[0] as number) + sum / sorted.length - 1e-6),
    p50Band: band(0.5),
    p80Band: band(0.8),
    chanceOfTarget: target === null ? null : met / sorted.length,
    runsByDay: [...byDay].map(([day, runs]) => ({ day, runs })),
  };
}

function holders(
  kind: GateHolder['kind'],
  records: readonly { readonly id: string; readonly name: string }[],
  counts: Uint32Array,
  runs: number,
  daysWon: (place: number) => number | null,
): GateHolder[] {
  return records.flatMap((record, place) => {
    const count = counts[place] as number;
    if (count === 0) return [];
    return [{ kind, id: record.id, name: record.name, criticality: count / runs, daysWon: daysWon(place) }];
  });
}

function inRange(value: number, from: number, to: number, field: string, whole: boolean): number {
  if (!(value >= from && value <= to) || (whole && !Number.isInteger(value))) {
    throw refused(
      field,
      `The ${field} ${value} is out of range.`,
      `${whole ? 'a whole number' : 'a number'} from ${from} to ${to}`,
    );
  }
  return value;
}

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}
