import { parseInstant } from '../../core/dates/instant.ts';
import type { Distribution } from '../../core/forecast/distribution.ts';
import { seenValues } from '../../core/forecast/distribution.ts';
import { startForecast } from '../../core/forecast/forecast.ts';
import type { ForecastNetwork } from '../../core/forecast/network.ts';
import { splitMix64 } from '../../core/forecast/seeded-random.ts';
import { readWorkingTime } from '../../core/schedule/working-time.ts';

const jobCount = 300;
const deliveryCount = 75;

/** A plan of 300 jobs in a net, a quarter of them waiting for a delivery, over one person's 11 hours a week. */
export function plannedNetwork(): ForecastNetwork {
  const random = splitMix64(2026);
  const whole = (from: number, to: number): number => from + Math.floor(random.unit() * (to - from + 1));
  const lead = (index: number): Distribution => {
    if (index % 3 === 0) return seenValues(Array.from({ length: 12 }, () => whole(3, 60)));
    const fitted: Distribution = { kind: 'log-student', centre: Math.log(whole(5, 40)), scale: 0.6, degrees: 6 };
    return index % 3 === 1 ? fitted : { kind: 'remaining', of: fitted, waited: whole(1, 20) };
  };
  const jobs = Array.from({ length: jobCount }, (_, index) => {
    const likely = whole(20, 240);
    const earlier = new Set<number>();
    for (let link = 0; link < Math.min(2, index); link += 1) earlier.add(whole(Math.max(0, index - 20), index - 1));
    return {
      id: `job ${index}`,
      name: `Job ${index}`,
      minutes: { kind: 'pert', low: likely * 0.75, likely, high: likely * 2 } as const,
      hands: true,
      after: [...earlier].map((job) => ({ job: `job ${job}`, lagMinutes: 0, lagOn: 'clock' as const })),
      arrivals: index % (jobCount / deliveryCount) === 0 ? [`delivery ${index / (jobCount / deliveryCount)}`] : [],
    };
  });
  return {
    nowMinute: parseInstant('2026-03-02T08:00'),
    people: [
      {
        id: 'builder',
        time: readWorkingTime({
          weekly: [
            { weekday: 2, from: '18:30', to: '21:00' },
            { weekday: 4, from: '18:30', to: '21:00' },
            { weekday: 6, from: '09:00', to: '15:00' },
          ],
          exceptions: [],
        }),
      },
    ],
    jobs,
    arrivals: Array.from({ length: deliveryCount }, (_, index) => ({
      id: `delivery ${index}`,
      name: `Delivery ${index}`,
      fromMinute: parseInstant('2026-03-02T08:00'),
      days: lead(index),
      vendor: `vendor ${index % 9}`,
    })),
    gates: [{ id: 'engine-in', name: 'engine-in', jobs: jobs.map(({ id }) => id) }],
  };
}

/** Times of one forecast: until the first picture of 200 runs, all runs, the days won, in milliseconds. */
export function timedForecast(runs: number): { readonly first: number; readonly runs: number; readonly whole: number } {
  const start = performance.now();
  const forecast = startForecast(plannedNetwork(), { runs, seed: 1 });
  forecast.advance(200);
  forecast.result();
  const first = performance.now() - start;
  forecast.advance(runs - 200);
  const all = performance.now() - start;
  while (forecast.advance(1000));
  forecast.result();
  return { first, runs: all, whole: performance.now() - start };
}
