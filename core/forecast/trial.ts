/**
 * One trial of a forecast: with durations and deliveries drawn, who does what when. Nobody who could begin something
 * waits, and of what could be begun the most urgent is; a job is not interrupted by another. Each job remembers what held
 * its start (an earlier job, the hands that were busy, a delivery), and these links lead back from a gate.
 */
import { minutesPerDay } from '../dates/instant.ts';
import { daysAhead } from './facts.ts';
import type { CompiledNetwork } from './network.ts';
import { readyHeaps } from './ready-heap.ts';
import type { WorkClock } from './work-clock.ts';

type Gate = CompiledNetwork['gates'][number];

/** Held by nothing but the calendar or its own earliest day. */
const free = -1;

export interface Trial {
  /** Minutes left of each job and days of each delivery: written before each run. */
  readonly minutes: Float64Array;
  readonly days: Float64Array;
  readonly finish: Float64Array;
  readonly arrival: Float64Array;
  run(): void;
  /** Nothing is looked for beyond this: a delivery that comes later, and what waits for it, is given this instant. */
  readonly endMinute: number;
  /** The minute a gate is reached. */
  gateMinute(gate: number): number;
  /** Adds 1 for each job and delivery on the chain that holds the gate. */
  countChain(gate: number, jobs: Uint32Array, arrivals: Uint32Array): void;
}

/** Memory for trials over one network, allocated once. */
export function trialOf(network: CompiledNetwork): Trial {
  const { now, clocks, hands, earlierCount, laterFrom, laterJob, laterLag, laterLagIsWork } = network;
  const count = network.jobs.length;
  const ends = clocks.flatMap((clock) => (clock.endMinute > now ? [clock.endMinute] : []));
  // Without anybody's hours, deliveries are followed just as far.
  const endMinute = Math.max(now, ...(ends.length > 0 ? ends : [now + daysAhead * minutesPerDay]));
  const people = clocks.length;
  const [first, second] = clocks;
  const alone = second === undefined && first !== undefined && first.endMinute > now ? first : undefined;
  // With one pair of hands there is one queue.
  const queue = alone === undefined ? network.queue : new Int32Array(count);
  const words = (count + 31) >> 5;
  const minutes = new Float64Array(count);
  const days = new Float64Array(network.arrivals.length);
  const arrival = new Float64Array(network.arrivals.length);
  const ready = new Float64Array(count);
  const finish = new Float64Array(count);
  /** A job's number, or -2 less a delivery's number, or `free`. */
  const held = new Int32Array(count);
  const left = new Int32Array(count);
  const waiting = readyHeaps(ready, people + 1, count);
  const waitingCount = waiting.sizes;
  // Jobs that may begin, a bit each, the most urgent first: one set of words for each queue.
  const open = new Int32Array(words * (people + 1));
  const openCount = new Int32Array(people + 1);
  // When each person's hands are free again: in working minutes, as the end of the last job, as the next start.
  const freeWork = new Float64Array(people);
  const freeAt = new Float64Array(people);
  const freeStart = new Float64Array(people);
  const lastJob = new Int32Array(people);
  const stack = new Int32Array(count + 1);
  /** When what begins next begins; in a list for the same reason. */
  const moment = new Float64Array(1);
  let handsLeft = 0;
  /** Nothing will begin before this: what is ready by then needn't queue. In a list, so that writing it makes nothing. */
  const opensUpTo = Float64Array.of(now);
  /** No job of a queue is open in the words before this one. */
  const firstWord = new Int32Array(people + 1);

  const lowest = (line: number): number => {
    const base = line * words;
    for (let word = firstWord[line] as number; word < words; word += 1) {
      const bits = open[base + word] as number;
      if (bits !== 0) {
        firstWord[line] = word;
        return word * 32 + 31 - Math.clz32(bits & -bits);
      }
    }
    return count;
  };

  const openJob = (line: number, job: number): void => {
    const word = job >> 5;
    const at = line * words + word;
    open[at] = (open[at] as number) | (1 << (job & 31));
    if (word < (firstWord[line] as number)) firstWord[line] = word;
    openCount[line] = (openCount[line] as number) + 1;
  };

  /** Jobs whose earlier jobs are done: they queue for hands, or run on the clock and set others free in turn. */
  const release = (height: number): void => {
    let depth = height;
    while (depth > 0) {
      depth -= 1;
      const job = stack[depth] as number;
      if (hands[job] === 1 && (minutes[job] as number) > 0) {
        const line = queue[job] as number;
        if ((ready[job] as number) <= (opensUpTo[0] as number)) openJob(line, job);
        else waiting.push(line, job);
        continue;
      }
      if (hands[job] === 1) handsLeft -= 1;
      finish[job] = (ready[job] as number) + (minutes[job] as number);
      depth = passOn(job, depth);
    }
  };

  /** Tells the later jobs; those with nothing else to wait for go on the stack. */
  const passOn = (job: number, height: number): number => {
    let depth = height;
    const done = finish[job] as number;
    for (let link = laterFrom[job] as number, end = laterFrom[job + 1] as number; link < end; link += 1) {
      const next = laterJob[link] as number;
      let from = done + (laterLag[link] as number);
      if (laterLagIsWork[link] === 1) {
        const clock = clocks[0];
        if (clock !== undefined) from = clock.finishOf(clock.workAt(done) + (laterLag[link] as number));
      }
      if (from > (ready[next] as number) || ((held[next] as number) === free && from >= (ready[next] as number))) {
        ready[next] = from;
        held[next] = job;
      }
      left[next] = (left[next] as number) - 1;
      if (left[next] === 0) {
        stack[depth] = next;
        depth += 1;
      }
    }
    return depth;
  };

  const begin = (): void => {
    handsLeft = 0;
    opensUpTo[0] = now;
    firstWord.fill(0);
    freeWork.fill(0);
    freeAt.fill(now);
    for (let person = 0; person < people; person += 1) freeStart[person] = (clocks[person] as WorkClock).startOf(0);
    lastJob.fill(free);
    open.fill(0);
    openCount.fill(0);
    waitingCount.fill(0);
    for (let index = 0; index < arrival.length; index += 1) {
      const from = network.arrivals[index]?.fromMinute ?? now;
      arrival[index] = Math.min(endMinute, Math.max(now, from + (days[index] as number) * minutesPerDay));
    }
    left.set(earlierCount);
    for (let job = 0; job < count; job += 1) {
      if (hands[job] === 1) handsLeft += 1;
      let from = network.notBefore[job] as number;
      let holder = free;
      for (let at = network.needFrom[job] as number; at < (network.needFrom[job + 1] as number); at += 1) {
        const delivery = network.need[at] as number;
        if ((arrival[delivery] as number) > from) {
          from = arrival[delivery] as number;
          holder = -2 - delivery;
        }
      }
      ready[job] = from;
      held[job] = holder;
    }
    for (let job = 0; job < count; job += 1) {
      if (earlierCount[job] !== 0) continue;
      stack[0] = job;
      release(1);
    }
  };

  /** Moves the jobs of a queue that are ready by `moment` to those that may begin. */
  const openUp = (line: number): void => {
    const until = moment[0] as number;
    while ((waitingCount[line] as number) > 0 && (ready[waiting.earliest(line)] as number) <= until) {
      openJob(line, waiting.pop(line));
    }
  };

  /** One pair of hands: nobody to choose between, and what is named for them queues with the rest. */
  const runAlone = (clock: WorkClock): void => {
    let current = now;
    while (handsLeft > 0) {
      let next = current;
      if ((openCount[0] as number) === 0) {
        if ((waitingCount[0] as number) === 0) return;
        next = ready[waiting.earliest(0)] as number;
      }
      let work = freeWork[0] as number;
      let start = freeStart[0] as number;
      if (next > (freeAt[0] as number)) {
        work = Math.max(work, clock.workAt(next));
        start = clock.startOf(work);
      }
      // Behind the last hours that are known, a start falls before what it waits for.
      current = Math.max(start, next);
      moment[0] = current;
      if ((waitingCount[0] as number) > 0) openUp(0);
      const job = lowest(0);
      const word = job >> 5;
      open[word] = (open[word] as number) & ~(1 << (job & 31));
      openCount[0] = (openCount[0] as number) - 1;
      if ((ready[job] as number) < (freeAt[0] as number)) held[job] = lastJob[0] as number;
      const length = minutes[job] as number;
      freeWork[0] = (network.oneSitting[job] === 1 ? clock.sittingFrom(work, length) : work) + length;
      clock.settle(0, freeWork, freeAt, freeStart);
      finish[job] = freeAt[0] as number;
      lastJob[0] = job;
      handsLeft -= 1;
      opensUpTo[0] = freeStart[0] as number;
      release(passOn(job, 0));
    }
  };

  const run = (): void => {
    begin();
    if (alone !== undefined) runAlone(alone);
    else runTogether();
  };

  const runTogether = (): void => {
    let current = now;
    while (handsLeft > 0) {
      // Who can begin something first?
      let who = 0;
      let start = Number.POSITIVE_INFINITY;
      let startWork = 0;
      let opens = now;
      let anyoneNext = Number.POSITIVE_INFINITY;
      if ((openCount[0] as number) > 0) anyoneNext = current;
      else if ((waitingCount[0] as number) > 0) anyoneNext = ready[waiting.earliest(0)] as number;
      for (let person = 0; person < people; person += 1) {
        let next = anyoneNext;
        if ((openCount[person + 1] as number) > 0) next = Math.min(next, current);
        else if ((waitingCount[person + 1] as number) > 0) {
          next = Math.min(next, ready[waiting.earliest(person + 1)] as number);
        }
        // Nobody without hours takes a job.
        if (next === Number.POSITIVE_INFINITY || (clocks[person] as WorkClock).endMinute <= now) continue;
        let work = freeWork[person] as number;
        let at = freeStart[person] as number;
        if (next > (freeAt[person] as number)) {
          const clock = clocks[person] as WorkClock;
          work = Math.max(work, clock.workAt(next));
          at = clock.startOf(work);
        }
        if (at < start) {
          start = at;
          opens = next;
          who = person;
          startWork = work;
        }
      }
      if (start === Number.POSITIVE_INFINITY) return;
      // Behind the last hours that are known, a start falls before what it waits for.
      current = Math.max(start, opens);
      moment[0] = current;
      openUp(0);
      openUp(who + 1);
      const shared = (openCount[0] as number) > 0 ? lowest(0) : count;
      const own = (openCount[who + 1] as number) > 0 ? lowest(who + 1) : count;
      const job = Math.min(shared, own);
      const line = shared < own ? 0 : who + 1;
      const word = line * words + (job >> 5);
      open[word] = (open[word] as number) & ~(1 << (job & 31));
      openCount[line] = (openCount[line] as number) - 1;

      const clock = clocks[who] as WorkClock;
      if ((ready[job] as number) < (freeAt[who] as number)) held[job] = lastJob[who] as number;
      const length = minutes[job] as number;
      const from = network.oneSitting[job] === 1 ? clock.sittingFrom(startWork, length) : startWork;
      freeWork[who] = from + length;
      clock.settle(who, freeWork, freeAt, freeStart);
      finish[job] = freeAt[who] as number;
      lastJob[who] = job;
      handsLeft -= 1;
      opensUpTo[0] = current;
      release(passOn(job, 0));
    }
  };

  return {
    minutes,
    days,
    finish,
    arrival,
    run,
    endMinute,
    gateMinute(gate) {
      const { jobs, arrivals } = network.gates[gate] as Gate;
      let latest = now;
      for (const job of jobs) latest = Math.max(latest, finish[job] as number);
      for (const delivery of arrivals) latest = Math.max(latest, arrival[delivery] as number);
      return Math.min(latest, endMinute);
    },
    countChain(gate, jobCounts, arrivalCounts) {
      const { jobs, arrivals } = network.gates[gate] as Gate;
      let latest = Number.NEGATIVE_INFINITY;
      let holder = free;
      for (const job of jobs) {
        if ((finish[job] as number) > latest) {
          latest = finish[job] as number;
          holder = job;
        }
      }
      for (const delivery of arrivals) {
        if ((arrival[delivery] as number) > latest) {
          latest = arrival[delivery] as number;
          holder = -2 - delivery;
        }
      }
      while (holder >= 0) {
        jobCounts[holder] = (jobCounts[holder] as number) + 1;
        holder = held[holder] as number;
      }
      if (holder < free) arrivalCounts[-2 - holder] = (arrivalCounts[-2 - holder] as number) + 1;
    },
  };
}
