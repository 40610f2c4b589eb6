import type { ForecastView } from '../contract/forecast.ts';
import { dateOfMinute, minutesPerDay, parseInstant } from '../dates/instant.ts';
import { type ForecastResult, runForecast } from '../forecast/forecast.ts';
import { Refusal } from '../refusal.ts';
import { worksToMidnight } from '../schedule/calendar.ts';
import { hasWorkingTime } from '../schedule/working-time.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { type ForecastFacts, forecastFacts } from '../workbook/store/forecast-facts.ts';
import { type Context, counted, needBuild, procedures } from './context.ts';

type Gate = ForecastView['gates'][number];

/** What holds a gate is listed down to this share of runs. */
const leastCriticality = 0.01;

const assumes = [
  'Work left comes from the hours at best, likely and at worst, less the hours spent; where only one guess is given, at best three quarters of it and at worst twice.',
  'Deliveries of one vendor run late together, with a correlation of 0.3.',
  'Decisions, bolt groups, checks and the fitting of parts that belong to no job are not counted.',
];

const pad = (number: number): string => String(number).padStart(2, '0');

/** Who does the work, and where their hours stand. */
function workedBy({ people }: ForecastFacts): string {
  const [only] = people;
  return people.length === 1 && only !== undefined
    ? `Work is done by one person${only.id === 'builder' ? '' : `, ${only.name},`} in the hours of the calendar.`
    : `Work is done by ${people.map(({ name }) => name).join(', ')}, each in their own hours of the calendar; a job that names nobody by who is free first.`;
}

/** The minute that the forecast begins at: now, or the last of a past day. */
function nowMinuteOf(context: Context, past: string | undefined): number {
  const now = context.now();
  return parseInstant(
    past === undefined ? `${context.today()}T${pad(now.getHours())}:${pad(now.getMinutes())}` : `${past}T23:59`,
  );
}

function gateRows(facts: ForecastFacts, result: ForecastResult, dayOf: (minute: number) => string): Gate[] {
  const partOf = new Map(facts.coming.map(({ arrival, part }) => [arrival, part]));
  return result.gates.map((gate, index) => {
    const plan = facts.gates.find(({ id }) => id === gate.id) ?? facts.gates[index];
    const wanted = new Set(plan?.jobs);
    const deliveries = new Set([
      ...(plan?.arrivals ?? []),
      ...facts.jobs.filter(({ id }) => wanted.has(id)).flatMap(({ arrivals }) => arrivals),
    ]);
    return {
      name: gate.name,
      p10On: dayOf(gate.p10Minute),
      p50On: dayOf(gate.p50Minute),
      p80On: dayOf(gate.p80Minute),
      p90On: dayOf(gate.p90Minute),
      p50Band: [dayOf(gate.p50Band[0]), dayOf(gate.p50Band[1])],
      p80Band: [dayOf(gate.p80Band[0]), dayOf(gate.p80Band[1])],
      jobsOpen: wanted.size,
      partsToCome: new Set([...deliveries].map((arrival) => partOf.get(arrival))).size,
      heldBy: gate.heldBy
        .filter(({ criticality }) => criticality >= leastCriticality)
        .map(({ kind, id, name, criticality, daysWon }) => ({
          kind: kind === 'job' ? ('job' as const) : ('part' as const),
          id: kind === 'job' ? Number(id) : (partOf.get(id) ?? 0),
          name,
          criticality,
          daysWon: daysWon === null ? null : Math.round(daysWon * 10) / 10,
        })),
    };
  });
}

function answerOf(gates: readonly Gate[], gaps: number): string {
  const [first] = gates;
  if (first === undefined) return 'There is no gate to forecast.';
  if (first.jobsOpen + first.partsToCome === 0) {
    return `No open job and no part still to come stands before ${first.name}, as far as it is written down.`;
  }
  const [holder] = first.heldBy;
  const held =
    holder === undefined
      ? ''
      : ` ${holder.kind === 'job' ? `The job “${holder.name}”` : `The part “${holder.name}”`} holds it in ${Math.round(holder.criticality * 100)} of 100 runs.`;
  const lacking = gaps === 0 ? '' : ` ${counted(gaps, 'thing')} lacked a guess or a day.`;
  const days = `as likely as not by ${dayWords(first.p50On)}, four times of five by ${dayWords(first.p80On)}`;
  return `${first.name}: ${days}.${held}${lacking}`;
}

export const forecastProcedures = {
  run: procedures.forecast.run.handler(({ context, input }): ForecastView => {
    needBuild(context, input.build);
    const past = input.asOf !== undefined && input.asOf < context.today() ? input.asOf : undefined;
    const nowMinute = nowMinuteOf(context, past);
    const facts = forecastFacts(context.book().connection, input.build, context.today(), past, nowMinute);
    // A phase's gate that no open job stands before has no day to forecast, unless it is asked for.
    const gates = facts.gates.filter(({ name, jobs }, index) =>
      input.gate === undefined ? index === 0 || jobs.length > 0 : name === input.gate,
    );
    if (gates.length === 0) {
      throw new Refusal('bad-input', `This build has no gate “${input.gate}”. Nothing was changed.`, {
        field: 'gate',
        accepted: facts.gates.map(({ name }) => name).join(', '),
      });
    }
    const base = { runs: input.runs, seed: input.seed, beyondShare: 0, gates: [], coming: [], gaps: [...facts.gaps] };
    if (!facts.anything) {
      const answer = 'Nothing is written down yet: jobs with a guess of hours and parts give a forecast.';
      return { ...base, answer, assumes: [] };
    }
    const work = facts.jobs.filter(({ hands }) => hands).length;
    if (work > 0 && !facts.people.some(({ time }) => hasWorkingTime(time))) {
      const answer = `No forecast: ${counted(work, 'job needs', 'jobs need')} hands, and no free hours are set in the settings.`;
      return { ...base, answer, assumes: [] };
    }
    const result = runForecast(
      {
        nowMinute,
        people: facts.people,
        jobs: facts.jobs,
        arrivals: facts.arrivals,
        gates,
      },
      { runs: input.runs, seed: input.seed },
    );
    // Work that fills a window up to midnight is done on the day that ends there.
    const toMidnight = worksToMidnight(facts.people);
    const dayOf = (minute: number): string =>
      dateOfMinute(toMidnight && minute > nowMinute && minute % minutesPerDay === 0 ? minute - 1 : minute);
    const rows = gateRows(facts, result, dayOf);
    const ahead = (days: number): string => dateOfMinute(nowMinute + Math.ceil(days * minutesPerDay));
    return {
      answer: answerOf(rows, facts.gaps.length),
      runs: result.runs,
      seed: result.seed,
      beyondShare: result.beyondShare,
      gates: rows,
      coming: facts.coming.map(({ arrival: _, vendor: __, p50Days, p80Days, ...row }) => ({
        ...row,
        p50On: ahead(p50Days),
        p80On: ahead(p80Days),
      })),
      gaps: [...facts.gaps],
      assumes: [workedBy(facts), ...assumes],
    };
  }),
};
