import type { ForecastView } from '../contract/forecast.ts';
import { parseInstant } from '../dates/instant.ts';
import type { ForecastTask } from '../forecast/facts.ts';
import { wholeForecast } from '../forecast/view.ts';
import { Refusal } from '../refusal.ts';
import { first } from '../workbook/store/connection.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { forecastFacts } from '../workbook/store/forecast-facts.ts';
import { keptForecasts } from '../workbook/store/kept-forecasts.ts';
import { vendorLeadTimes } from '../workbook/store/lead-times.ts';
import { remembered } from '../workbook/store/remembered.ts';
import { act, type Context, needBuild, procedures } from './context.ts';

const { forecast } = procedures;

/** What the forecast is asked for where nobody says otherwise, so that every page says the same. */
export const usualForecast = { runs: 2000, seed: 1 };
/**
 * More jobs and deliveries than this take too long to run beside a page that is about something else, and more part lines
 * than this too long to look through.
 */
const mostBeside = 600;
const mostLinesBeside = 5000;

const pad = (number: number): string => String(number).padStart(2, '0');

/** A past day, or undefined where today or no day is asked for. */
const pastOf = (context: Context, asOf: string | undefined): string | undefined =>
  asOf !== undefined && asOf < context.today() ? asOf : undefined;

/** The minute that a forecast begins at: now, or the last of a past day. */
export function nowMinuteOf(context: Context, past: string | undefined): number {
  const now = context.now();
  return parseInstant(
    past === undefined ? `${context.today()}T${pad(now.getHours())}:${pad(now.getMinutes())}` : `${past}T23:59`,
  );
}

/** All that a forecast of the build needs, now or at the end of a past day. */
function taskOf(context: Context, build: number, asOf: string | undefined): ForecastTask {
  needBuild(context, build);
  const past = pastOf(context, asOf);
  const nowMinute = nowMinuteOf(context, past);
  return { nowMinute, facts: forecastFacts(context.book().connection, build, context.today(), past, nowMinute) };
}

type GateDays = Pick<ForecastView['gates'][number], 'name' | 'p50On' | 'p80On'> & { runs: number; seed: number };

/** The first gate's days as the Forecast page first shows them, or as they were kept that day; null without either. */
function gateDaysOf(context: Context, build: number, asOf: string | undefined): GateDays | null {
  const { connection } = context.book();
  const lines = first<{ count: number }>(connection, 'SELECT count(*) AS count FROM parts WHERE build = ?', build);
  const task = (lines?.count ?? 0) > mostLinesBeside ? null : taskOf(context, build, asOf);
  if (task === null || task.facts.jobs.length + task.facts.arrivals.length > mostBeside) {
    const day = pastOf(context, asOf) ?? context.today();
    const kept = keptForecasts(connection, build, day).at(-1);
    const [gate] = kept?.on === day ? kept.gates : [];
    return kept === undefined || gate === undefined
      ? null
      : { name: gate.name, p50On: gate.p50On, p80On: gate.p80On, runs: kept.runs, seed: kept.seed };
  }
  const { gates } = wholeForecast(task, { ...usualForecast, daysWonFor: 0 });
  const [gate] = gates;
  return gate === undefined || gate.jobsOpen + gate.partsToCome === 0
    ? null
    : { name: gate.name, p50On: gate.p50On, p80On: gate.p80On, ...usualForecast };
}

export const forecastProcedures = {
  run: forecast.run.handler(({ context, input }): ForecastView => {
    const { gate, runs, seed } = input;
    return wholeForecast(taskOf(context, input.build, input.asOf), { gate, runs, seed });
  }),
  facts: forecast.facts.handler(({ context, input }) => taskOf(context, input.build, input.asOf)),
  gateDays: forecast.gateDays.handler(({ context, input }) => {
    needBuild(context, input.build);
    const past = pastOf(context, input.asOf);
    // The free hours are a setting and no act, so that they belong to what the days depend on.
    const windows = JSON.stringify(context.settings().weekWindows);
    const key = `gate days ${input.build} ${past} ${nowMinuteOf(context, past)} ${windows}`;
    return remembered(context.book().connection, key, () => gateDaysOf(context, input.build, input.asOf));
  }),
  keep: forecast.keep.handler(({ context, input }) => {
    const { build, on, runs, seed } = input;
    if (on > context.today()) {
      throw new Refusal('bad-input', `The day ${on} is still ahead. Nothing was changed.`, {
        field: 'on',
        accepted: `today or a day before, up to ${context.today()}`,
      });
    }
    const { answer, gates } = wholeForecast(taskOf(context, build, on), { runs, seed, daysWonFor: 0 });
    const [leading] = gates;
    if (leading === undefined) {
      throw new Refusal('not-allowed-from-here', `There is no forecast to keep. ${answer} Nothing was changed.`, {
        accepted: 'a build with jobs or parts still open, and hours to do them in',
      });
    }
    return act(context, input, `Forecast of ${leading.name}: ${dayWords(leading.p50On)}`, (writer) => {
      const said = gates.map(({ name, p10On, p50On, p80On, p90On }) => ({ name, p10On, p50On, p80On, p90On }));
      writer.post({
        kind: 'forecast-kept',
        on,
        build,
        subjectKind: 'build',
        subject: build,
        quantityMilli: 1000,
        payload: { runs, seed, gates: said },
      });
      return undefined;
    });
  }),
  history: forecast.history.handler(({ context, input }) => {
    needBuild(context, input.build);
    return keptForecasts(context.book().connection, input.build, input.asOf ?? context.today());
  }),
  leadTimes: forecast.leadTimes.handler(({ context, input }) =>
    vendorLeadTimes(context.book().connection, context.today(), pastOf(context, input.asOf)),
  ),
};
