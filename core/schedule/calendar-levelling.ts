/**
 * A levelled schedule over the calendar: the serial scheme with people, each in their own hours, and tools of which there
 * is one each. A job that was begun is not interrupted by another; it pauses only while its person is off.
 * Source: serial schedule generation, Kolisch 1996, from memory; the rest is our own.
 */

import { isWider, type WorkingPerson } from './calendar.ts';
import {
  type CalendarJob,
  type CalendarNetwork,
  type CalendarTimes,
  calendarNetwork,
  calendarTimes,
  latestEnd,
  type Placing,
} from './calendar-network.ts';
import { readWorkingTime, type WeeklyWindow, type WorkingTime } from './working-time.ts';

/** What set a job's beginning. */
export type LevelledBy =
  | { readonly by: 'start' }
  | { readonly by: 'release' }
  | { readonly by: 'job'; readonly id: string; readonly lagMinutes: number; readonly lagOn: 'clock' | 'work' }
  | { readonly by: 'person'; readonly id: string }
  | { readonly by: 'tool'; readonly tool: string; readonly id: string };

export interface LevelledBar extends CalendarTimes {
  readonly id: string;
  /** The person's id; null when it takes no hands. */
  readonly who: string | null;
  readonly startMinute: number;
  readonly finishMinute: number;
  /** Working minutes (or minutes on the clock) that it can move right with all sequences kept, the gate unmoved. */
  readonly slackMinutes: number;
  readonly heldBy: LevelledBy;
}

/** Jobs in the order in which they begin, each with who does it. */
export type Sequence = readonly { readonly id: string; readonly who: string | null }[];

export interface LevelledCalendar {
  readonly bars: readonly LevelledBar[];
  /** When the last job before the gate is done, by this plan, and if hands and tools were never short. */
  readonly gateMinute: number;
  readonly networkMinute: number;
  /** The jobs by beginning, each with who does it. */
  readonly sequence: Sequence;
}

/** The rule in words, for the page. */
export const levellingRule =
  'Of the jobs whose earlier jobs are placed, the one that must be over first (its latest finish if hands were never ' +
  'short) is placed next, ties in the order of the plan, at the first time at which somebody who may do it and its tools ' +
  'are free for all of it. The same is tried by latest start and by the first day that each job can begin, each for ' +
  'weeks of few and of many hours; the sequence that reaches the gate first in the hours that there really are is shown.';

interface Busy {
  readonly from: number;
  readonly to: number;
  readonly job: number;
}

type Placed = Placing & { readonly ready: number };

/** Keeps the list in order of time; a thing is never in use twice at once. */
function insert(list: Busy[], one: Busy): void {
  let at = list.length;
  while (at > 0 && (list[at - 1] as Busy).from > one.from) at -= 1;
  list.splice(at, 0, one);
}

interface InTurn {
  /** Who does each job, by place, as far as it was said. */
  readonly who: ReadonlyMap<number, number>;
  /** Jobs, by place, that every person and tool takes strictly in the order given. */
  readonly jobs: readonly boolean[];
}

/**
 * Places jobs in this order, each at the first time that its person and tools are free.
 * @param inTurn the jobs that are not to be moved into gaps.
 */
function placeAll(network: CalendarNetwork, order: readonly number[], inTurn?: InTurn): Placed[] {
  const { jobs, now, may, before } = network;
  const people: Busy[][] = network.clocks.map(() => []);
  const tools = new Map<string, Busy[]>();
  const placed: Placed[] = [];
  for (const at of order) {
    const job = jobs[at] as CalendarJob;
    const ready = (before[at] ?? []).reduce(
      (latest, { from, link }) => Math.max(latest, network.over(link, placed[from]?.finish ?? now)),
      Math.max(now, job.releaseMinute),
    );
    const held = job.minutes > 0 ? job.tools.map((tool) => tools.get(tool) ?? []) : [];
    let best: Placing | undefined;
    const kept = inTurn?.jobs[at] === true;
    const named = kept ? inTurn?.who.get(at) : undefined;
    const able = may[at]?.length === 0 ? [-1] : (may[at] ?? []);
    for (const who of named !== undefined && able.includes(named) ? [named] : able) {
      const lists = [...(who < 0 ? [] : [people[who] ?? []]), ...held];
      const from = !kept ? ready : Math.max(ready, ...lists.map((list) => list.at(-1)?.to ?? ready));
      const found = firstFree(network, at, who, from, lists);
      if (best === undefined || found.finish < best.finish) best = found;
    }
    const chosen = best as Placing;
    placed[at] = { ...chosen, ready };
    if (chosen.finish === chosen.first) continue;
    const busy = { from: chosen.first, to: chosen.finish, job: at };
    if (chosen.who >= 0) insert(people[chosen.who] as Busy[], busy);
    for (const tool of job.tools) {
      const list = tools.get(tool) ?? [];
      tools.set(tool, list);
      insert(list, busy);
    }
  }
  return placed;
}

function firstFree(
  network: CalendarNetwork,
  job: number,
  who: number,
  ready: number,
  lists: readonly (readonly Busy[])[],
): Placing {
  let from = ready;
  const next = lists.map(() => 0);
  for (;;) {
    const found = network.place(job, who, from);
    let until = from;
    lists.forEach((list, index) => {
      let at = next[index] as number;
      while (at < list.length && (list[at] as Busy).to <= found.first) at += 1;
      next[index] = at;
      // Everything that lies in the way is over before it can be tried again.
      while (at < list.length && (list[at] as Busy).from < found.finish) {
        until = Math.max(until, (list[at] as Busy).to);
        at += 1;
      }
    });
    if (until <= from) return found;
    from = until;
  }
}

/** Jobs by key, each after its earlier ones; ties in the order of the plan. */
function orderBy(network: CalendarNetwork, key: readonly number[], rank: readonly number[]): number[] {
  const waiting = network.before.map((links) => links.length);
  const ready = waiting.flatMap((count, at) => (count === 0 ? [at] : []));
  const order: number[] = [];
  while (ready.length > 0) {
    const best = ready.reduce((chosen, at, index) => {
      const other = ready[chosen] as number;
      const less = (key[at] as number) - (key[other] as number) || (rank[at] as number) - (rank[other] as number);
      return less < 0 ? index : chosen;
    }, 0);
    const [at = 0] = ready.splice(best, 1);
    order.push(at);
    for (const { to } of network.after[at] ?? []) {
      waiting[to] = (waiting[to] as number) - 1;
      if (waiting[to] === 0) ready.push(to);
    }
  }
  return order;
}

/** First day of each job with the releases of all that it waits for, whatever the hours: for one person without lags this order is the best there is. */
function releases(network: CalendarNetwork): number[] {
  const from: number[] = [];
  network.jobs.forEach((job, at) => {
    from[at] = (network.before[at] ?? []).reduce(
      (latest, { from: earlier }) => Math.max(latest, from[earlier] ?? 0),
      Math.max(network.now, job.releaseMinute),
    );
  });
  return from;
}

/**
 * Levels jobs over people and tools. Nobody and nothing is ever used twice at once, no job begins before what it waits
 * for, and the gate is never sooner than the network alone allows.
 *
 * More hours never make the gate later where all have the same hours before, nor does one more person at the end of the
 * list (up to four): the sequences that are tried don't depend on the hours, each kept in turn ends nothing later with
 * more of them, and so does the best. For one person without lags, sittings and tools the gate is as soon as it can be.
 * Where people have hours of their own, who does what must depend on them, and then a plan made with fewer hours has to
 * be handed in as `alsoTry` for the same to hold. Only for a sitting that is longer than every window it can't hold: it
 * is split until some window takes it whole.
 * @param given in the order of the plan.
 * @param gateFrom the gate is not reached before this.
 * @throws Refusal `bad-input` for a ring (its path is named), a job that isn't listed, or times that aren't whole.
 */
export function levelCalendar(
  given: readonly CalendarJob[],
  people: readonly WorkingPerson[],
  now: number,
  gateFrom = now,
  alsoTry: readonly Sequence[] = [],
): LevelledCalendar {
  const network = calendarNetwork(given, people, now);
  const times = calendarTimes(network, gateFrom);
  const listed = new Map(given.map(({ id }, at) => [id, at]));
  const rank = network.jobs.map(({ id }) => listed.get(id) ?? 0);
  const holding = holdingJobs(network);
  const gateOf = (placed: readonly Placed[]): number =>
    placed.reduce(
      (latest, { finish }, at) => (network.jobs[at]?.beforeGate === true ? Math.max(latest, finish) : latest),
      Math.max(now, gateFrom),
    );
  let best: { placed: Placed[]; gate: number; last: number } | undefined;
  const consider = (placed: Placed[]): void => {
    const gate = gateOf(placed);
    const last = placed.reduce((latest, { finish }) => Math.max(latest, finish), now);
    if (best === undefined || gate < best.gate || (gate === best.gate && last < best.last)) {
      best = { placed, gate, last };
    }
  };
  const held = new Set(network.jobs.flatMap(({ id }, at) => (holding[at] === true ? [id] : [])));
  const model = modelSequences(
    given.filter(({ id }) => held.has(id)),
    people,
    now,
    gateFrom,
  );
  // Often the same sequence comes out for many weeks.
  const different = new Map(
    [...alsoTry, ...model].map((sequence) => [sequence.map(({ id, who }) => `${id} ${who}`).join('\n'), sequence]),
  );
  for (const sequence of different.values()) consider(placeInTurn(network, sequence, people, { holding, rank }));
  // Hours that differ from person to person decide who should do what: then the plan made for them counts too.
  if (!sameHours(people)) {
    for (const key of priorities(network, times)) consider(placeAll(network, orderBy(network, key, rank)));
  }
  const { placed, gate, last } = best as NonNullable<typeof best>;
  const slack = slacks(network, placed, gate, last);
  const bars = network.jobs.map((job, at): LevelledBar => {
    const { who, first, finish } = placed[at] as Placed;
    return {
      ...(times[at] as CalendarTimes),
      id: job.id,
      who: people[who]?.id ?? null,
      startMinute: first,
      finishMinute: finish,
      slackMinutes: slack[at] ?? 0,
      heldBy: heldBy(network, placed, at),
    };
  });
  bars.sort((a, b) => (listed.get(a.id) ?? 0) - (listed.get(b.id) ?? 0));
  const networkMinute = times.reduce(
    (latest, { earlyFinish }, at) => (network.jobs[at]?.beforeGate === true ? Math.max(latest, earlyFinish) : latest),
    Math.max(now, gateFrom),
  );
  return { bars, gateMinute: gate, networkMinute, sequence: sequenceOf(network, placed, people) };
}

/** A plan made elsewhere, kept in turn as far as the gate waits for its jobs; the rest takes what is left. */
function placeInTurn(
  network: CalendarNetwork,
  sequence: Sequence,
  people: readonly WorkingPerson[],
  { holding, rank }: { readonly holding: readonly boolean[]; readonly rank: readonly number[] },
): Placed[] {
  const place = new Map(network.jobs.map(({ id }, at) => [id, at]));
  const personAt = new Map(people.map(({ id }, at) => [id, at]));
  const key = holding.map((holds) => (holds ? sequence.length : 2 * sequence.length));
  const who = new Map<number, number>();
  sequence.forEach(({ id, who: name }, index) => {
    const at = place.get(id);
    if (at === undefined) return;
    key[at] = holding[at] === true ? index : sequence.length + index;
    const by = name === null ? undefined : personAt.get(name);
    if (by !== undefined) who.set(at, by);
  });
  return placeAll(network, orderBy(network, key, rank), { who, jobs: holding });
}

/** The jobs that the gate waits for, by place, those before them included; all of them where it waits for none. */
function holdingJobs(network: CalendarNetwork): boolean[] {
  const holding = network.jobs.map(({ beforeGate }) => beforeGate);
  for (let at = holding.length - 1; at >= 0; at -= 1) {
    if (holding[at] === true) for (const { from } of network.before[at] ?? []) holding[from] = true;
  }
  return holding.includes(true) ? holding : holding.map(() => true);
}

/**
 * Weeks that sequences are made for, whatever hours people have: from one short day to hours that never end. Whoever
 * then keeps such a sequence in turn ends nothing later with more hours, and so does the best of them.
 */
const modelTimes: readonly WorkingTime[] = [
  [{ weekday: 6, from: '09:00', to: '17:00' }],
  week([1, 2, 3, 4, 5, 6, 7], '19:00', '21:00'),
  [...week([1, 2, 3, 4, 5], '18:00', '21:00'), ...week([6], '09:00', '18:00')],
  week([1, 2, 3, 4, 5], '08:00', '17:00'),
  week([1, 2, 3, 4, 5, 6, 7], '00:00', '24:00'),
].map((weekly) => readWorkingTime({ weekly, exceptions: [] }));

function week(weekdays: readonly number[], from: string, to: string): WeeklyWindow[] {
  return weekdays.map((weekday) => ({ weekday, from, to }));
}

/** Crews that sequences are made for: each person alone, and the first two, three and so on together. */
function crewsOf(people: readonly WorkingPerson[]): (readonly WorkingPerson[])[] {
  return [...people.map((person) => [person]), ...people.slice(1).map((_, at) => people.slice(0, at + 2))];
}

/** Sequences that depend on the jobs and on who there is, but not on the hours. */
function modelSequences(
  given: readonly CalendarJob[],
  people: readonly WorkingPerson[],
  now: number,
  gateFrom: number,
): Sequence[] {
  const listed = new Map(given.map(({ id }, at) => [id, at]));
  return crewsOf(people.slice(0, mostModelled)).flatMap((crew) =>
    modelTimes.flatMap((time) => {
      const network = calendarNetwork(
        given,
        crew.map((person) => ({ ...person, time })),
        now,
      );
      const rank = network.jobs.map(({ id }) => listed.get(id) ?? 0);
      const times = calendarTimes(network, gateFrom);
      return priorities(network, times).map((key) =>
        sequenceOf(network, placeAll(network, orderBy(network, key, rank)), crew),
      );
    }),
  );
}

/** Of more people than this, sequences are made for the first ones only. */
const mostModelled = 4;

/** What may decide which job goes first, in the order in which the plans are tried. */
function priorities(network: CalendarNetwork, times: readonly CalendarTimes[]): (readonly number[])[] {
  return [
    times.map(({ lateFinish }) => lateFinish),
    times.map(({ lateStart }) => lateStart),
    releases(network),
    times.map(({ earlyStart }) => earlyStart),
  ];
}

/** Jobs by beginning, each with who does it. */
function sequenceOf(network: CalendarNetwork, placed: readonly Placed[], people: readonly WorkingPerson[]): Sequence {
  return placed
    .map(({ first, who }, at) => ({ first, at, id: network.jobs[at]?.id ?? '', who: people[who]?.id ?? null }))
    .sort((a, b) => a.first - b.first || a.at - b.at)
    .map(({ id, who }) => ({ id, who }));
}

/** Whether all have the same hours on every day. */
function sameHours(people: readonly WorkingPerson[]): boolean {
  const [first] = people;
  return people.every(({ time }) => first !== undefined && isWider(time, first.time) && isWider(first.time, time));
}

/** The jobs that share a person or a tool with one, as far as they were placed in time. */
function sharing(
  network: CalendarNetwork,
  placed: readonly Placed[],
  at: number,
): { job: number; tool: string | null }[] {
  const own = placed[at] as Placed;
  if (own.finish === own.first) return [];
  return network.jobs.flatMap((job, other): { job: number; tool: string | null }[] => {
    const theirs = placed[other] as Placed;
    if (other === at || theirs.finish === theirs.first) return [];
    const tool = job.tools.find((one) => network.jobs[at]?.tools.includes(one)) ?? null;
    const same = own.who >= 0 && theirs.who === own.who;
    if (tool === null && !same) return [];
    // Where others could have done it, it was the tool.
    return [{ job: other, tool: same && network.may[at]?.length === 1 ? null : tool }];
  });
}

function heldBy(network: CalendarNetwork, placed: readonly Placed[], at: number): LevelledBy {
  const { who, first, ready } = placed[at] as Placed;
  if (first > network.place(at, who, ready).first) {
    // Of what was in the way, the last to be over held it.
    const over = sharing(network, placed, at)
      .filter(({ job: other }) => (placed[other] as Placed).finish <= first && (placed[other] as Placed).finish > ready)
      .sort((a, b) => (placed[b.job] as Placed).finish - (placed[a.job] as Placed).finish)[0];
    const id = network.jobs[over?.job ?? -1]?.id;
    if (over !== undefined && id !== undefined) {
      return over.tool === null ? { by: 'person', id } : { by: 'tool', tool: over.tool, id };
    }
  }
  const earlier = (network.before[at] ?? []).find(
    ({ from, link }) => network.over(link, placed[from]?.finish ?? 0) === ready,
  );
  if (ready > network.now && earlier !== undefined) {
    const { job: id, lagMinutes, lagOn } = earlier.link;
    return { by: 'job', id, lagMinutes, lagOn };
  }
  return ready > network.now ? { by: 'release' } : { by: 'start' };
}

/** How far each job can move right when each still follows those that it follows now. */
function slacks(network: CalendarNetwork, placed: readonly Placed[], gate: number, last: number): number[] {
  const late: number[] = [];
  const slack: number[] = [];
  const order = placed
    .map((_, at) => at)
    .sort(
      (a, b) =>
        (placed[b] as Placed).finish - (placed[a] as Placed).finish ||
        (placed[b] as Placed).first - (placed[a] as Placed).first ||
        b - a,
    );
  for (const at of order) {
    const { who, first, finish } = placed[at] as Placed;
    let end = network.jobs[at]?.beforeGate === true ? gate : last;
    for (const { to, link } of network.after[at] ?? []) end = Math.min(end, latestEnd(network, link, late[to] ?? end));
    for (const { job } of sharing(network, placed, at)) {
      if ((placed[job] as Placed).first >= finish) end = Math.min(end, late[job] ?? end);
    }
    late[at] = Math.max(first, network.latest(at, who, end));
    const clock = network.clocks[who];
    slack[at] = clock === undefined ? late[at] - first : clock.workAt(late[at]) - clock.workAt(first);
  }
  return slack;
}

/** People and tools that a plan uses twice at once; a levelled one has none. */
export function overAllocations(jobs: readonly CalendarJob[], bars: readonly LevelledBar[]): string[] {
  const tools = new Map(jobs.map(({ id, tools: own }) => [id, own]));
  const uses = bars.flatMap(({ id, who, startMinute: from, finishMinute: to }) =>
    to === from
      ? []
      : [...(who === null ? [] : [`person ${who}`]), ...(tools.get(id) ?? []).map((tool) => `tool ${tool}`)].map(
          (thing) => ({ thing, from, to }),
        ),
  );
  return [...Map.groupBy(uses, ({ thing }) => thing)].flatMap(([thing, list]) => {
    const sorted = list.toSorted((a, b) => a.from - b.from);
    return sorted.some(({ from }, index) => index > 0 && from < (sorted[index - 1]?.to ?? 0)) ? [thing] : [];
  });
}
