import { compareDates } from '../../dates/calendar-date.ts';
import { minutesPerDay } from '../../dates/instant.ts';
import { quantile } from '../../forecast/distribution.ts';
import { convertDocument } from '../../money/convert.ts';
import type { BuyNeed } from '../../purchasing/buying-needs.ts';
import type { BuyVendor } from '../../purchasing/buying-plan.ts';
import { type JobTails, jobTails } from '../../purchasing/job-tails.ts';
import type { PriceChoice } from '../../purchasing/need-price.ts';
import { workingMinutes } from '../../schedule/working-time.ts';
import { arrivalOutlooks } from './arrival-outlooks.ts';
import { recordsAsOf } from './checks-past.ts';
import { all, type Connection } from './connection.ts';
import type { RecordTable } from './edits.ts';
import { type ForecastFacts, forecastFacts } from './forecast-facts.ts';
import { partRows } from './part-rows.ts';
import { listRecords, type RecordValuesRow, readRecord } from './record-tables.ts';

/** The day that is asked about, and whether it is past. */
export interface BuyingDay {
  readonly build: number;
  /** The workbook's currency. */
  readonly currency: string;
  readonly today: string;
  /** A past day, or undefined for now. */
  readonly asOf: string | undefined;
  /** Minute of wall time that work begins at. */
  readonly nowMinute: number;
}

/** Records of a build that count on the day asked about. */
export function recordsOn(connection: Connection, table: RecordTable, day: BuyingDay): RecordValuesRow[] {
  const { build, asOf } = day;
  if (asOf === undefined) return listRecords(connection, table, 'build = ? AND retired_on IS NULL', build);
  return recordsAsOf(connection, build, table, asOf).filter(({ retiredOn }) => retiredOn === null || retiredOn > asOf);
}

/** Base units for one of a currency by the latest rate on record; null when there is none. */
function rates(connection: Connection, day: BuyingDay): (currency: string) => string | null {
  const until = day.asOf ?? day.today;
  const rows = listRecords(connection, 'rates', 'on_day <= ? AND retired_on IS NULL', until);
  const latest = new Map<string, RecordValuesRow>();
  for (const row of rows.sort((a, b) => compareDates(String(a['on']), String(b['on'])) || a.id - b.id)) {
    latest.set(String(row['currency']), row);
  }
  return (currency) => {
    const row = latest.get(currency);
    return row === undefined ? null : String(row['rate']);
  };
}

export interface VendorTerms extends BuyVendor {
  /** Terms that couldn't be read in the base currency, in words; empty when all could. */
  readonly says: string;
}

/** What vendors charge for an order, in the base currency. */
export function vendorTerms(connection: Connection, day: BuyingDay): VendorTerms[] {
  const rateOf = rates(connection, day);
  return listRecords(connection, 'vendors').map((vendor) => {
    const currency = (vendor['currency'] as string | null) ?? day.currency;
    const rate = currency === day.currency ? null : rateOf(currency);
    const known = currency === day.currency || rate !== null;
    const inBase = (value: unknown): number | null =>
      typeof value !== 'number' || !known
        ? null
        : rate === null
          ? value
          : convertDocument(value, currency, day.currency, rate);
    return {
      id: String(vendor.id),
      name: String(vendor['name']),
      shippingMinor: inBase(vendor['shippingMinor']) ?? 0,
      freeFromMinor: inBase(vendor['freeFromMinor']),
      says:
        typeof vendor['shippingMinor'] === 'number' && !known
          ? `Shipping of ${String(vendor['name'])} is in ${currency}, for which no rate is on record; it counts as nothing.`
          : '',
    };
  });
}

export interface LeadAnswer {
  readonly p50Days: number;
  readonly p80Days: number;
  readonly says: string;
}

/** How long each vendor takes from an order placed now: the same wait that the forecast and the hoist check count on. */
export function vendorLeads(connection: Connection, day: BuyingDay): (vendor: number) => LeadAnswer {
  const outlooks = arrivalOutlooks(connection, day);
  return (vendor) => {
    const stated = (readRecord(connection, 'vendors', vendor)?.['leadDays'] as number | null | undefined) ?? null;
    const { grounds, leadSays } = outlooks.ofOrder({ vendor, statedDays: stated });
    return { p50Days: grounds.p50Days, p80Days: grounds.p80Days, says: leadSays };
  };
}

/** The network of open jobs before the gate, and what it says of every job: the tail that stands behind it. */
export function tailsOf(
  connection: Connection,
  day: BuyingDay,
  safe: boolean,
): { readonly facts: ForecastFacts; readonly tails: JobTails; readonly hasHours: boolean } {
  const { build, today, asOf, nowMinute } = day;
  const facts = forecastFacts(connection, build, today, asOf, nowMinute);
  const [gate] = facts.gates;
  const wanted = new Set<string>();
  const next = [...(gate?.jobs ?? [])];
  const byId = new Map(facts.jobs.map((job) => [job.id, job]));
  for (let id = next.pop(); id !== undefined; id = next.pop()) {
    if (wanted.has(id)) continue;
    wanted.add(id);
    next.push(...(byId.get(id)?.after ?? []).map(({ job }) => job));
  }
  // What isn't ordered yet is the plan's own matter; what is on order holds its jobs until it comes.
  const onOrder = new Map(
    facts.coming.filter(({ line }) => line !== null).map((row) => [row.arrival, safe ? row.p80Days : row.p50Days]),
  );
  const arrivalDays = (arrivals: readonly string[]): number =>
    Math.max(0, ...arrivals.map((arrival) => onOrder.get(arrival) ?? 0));
  const fourWeeks = 28 * minutesPerDay;
  const paces = facts.people.map(({ time }) => workingMinutes(time, nowMinute, nowMinute + fourWeeks) / 4);
  const pace = { one: Math.max(0, ...paces), all: paces.reduce((sum, minutes) => sum + minutes, 0) };
  const tails = jobTails(
    facts.jobs
      .filter(({ id }) => wanted.has(id))
      .map(({ id, minutes, hands, notBeforeMinute, after, arrivals }) => ({
        id,
        minutes: quantile(minutes, 0.5),
        hands,
        notBeforeDays: Math.max(((notBeforeMinute ?? nowMinute) - nowMinute) / minutesPerDay, arrivalDays(arrivals)),
        after: after.map(({ job, lagMinutes, lagOn }) => ({ job, lagMinutes, lagOn })),
      })),
    pace,
  );
  const leastDays = Math.max(tails.leastDays, arrivalDays(gate?.arrivals ?? []));
  return { facts, tails: { days: tails.days, leastDays }, hasHours: pace.all > 0 };
}

interface Quote {
  readonly part: number;
  readonly currency: string;
  readonly payload: string;
}

/** Every need that nothing covers yet, with all prices that are known for it. Those of jobs after the gate don't hold it. */
export function buyNeeds(connection: Connection, day: BuyingDay, tails: JobTails): BuyNeed[] {
  const { build, today, asOf, currency } = day;
  const until = asOf ?? today;
  const rateOf = rates(connection, day);
  const rows = partRows(connection, { build, today, asOf }).filter(({ uncoveredMilli }) => uncoveredMilli > 0);
  const offers = Map.groupBy(recordsOn(connection, 'offers', day), (offer) => Number(offer['part']));
  const quotes = Map.groupBy(
    all<Quote>(
      connection,
      `SELECT part, currency, payload FROM entries e WHERE build = ? AND kind = 'quoted' AND on_day <= ?
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
      build,
      until,
    ),
    ({ part }) => part,
  );
  const jobs = new Map(listRecords(connection, 'jobs', 'build = ?', build).map((job) => [job.id, job]));
  const stands = new Set(listRecords(connection, 'vendors').map(({ id }) => id));
  return rows.map((row): BuyNeed => {
    const afterGate = row.job !== null && jobs.get(row.job)?.['beforeGate'] !== true;
    const noRateFor = new Set<string>();
    const choices: PriceChoice[] = [];
    const add = (choice: Omit<PriceChoice, 'rate'>): void => {
      const rate = choice.currency === currency ? null : rateOf(choice.currency);
      if (choice.currency !== currency && rate === null) noRateFor.add(choice.currency);
      else if (stands.has(choice.vendor)) choices.push({ ...choice, rate });
    };
    for (const offer of offers.get(row.id) ?? []) {
      add({
        from: 'offer',
        vendor: Number(offer['vendor']),
        eachE4: Number(offer['eachE4']),
        currency: String(offer['currency']),
        fromMilli: Number(offer['fromMilli']),
        until: offer['until'] as string | null,
      });
    }
    for (const quote of quotes.get(row.id) ?? []) {
      const said = JSON.parse(quote.payload) as { eachE4: number; vendor: number | null; validUntil: string | null };
      const vendor = said.vendor ?? row.vendor;
      if (vendor === null) continue;
      const { eachE4, validUntil } = said;
      add({ from: 'quote', vendor, eachE4, currency: quote.currency, fromMilli: 0, until: validUntil });
    }
    if (row.estimateEachE4 !== null && row.vendor !== null) {
      const { vendor, estimateEachE4: eachE4 } = row;
      add({ from: 'estimate', vendor, eachE4, currency, fromMilli: 0, until: null });
    }
    return {
      part: row.id,
      name: row.description,
      quantityMilli: row.uncoveredMilli,
      sameAs:
        row.partNumber.trim() === '' ? '' : `${row.maker.trim()} ${row.partNumber.trim()} ${row.unit}`.toLowerCase(),
      must: !row.optional && !afterGate,
      afterGate,
      priority: row.priority,
      tailDays: row.job === null || afterGate ? 0 : (tails.days.get(String(row.job)) ?? 0),
      choices,
      noRateFor: [...noRateFor],
      hasVendor: row.vendor !== null,
    };
  });
}

/** The newest count of cash up to the day; null when nobody has counted. */
export function newestCount(connection: Connection, day: BuyingDay): RecordValuesRow | null {
  const until = day.asOf ?? day.today;
  const counts = recordsOn(connection, 'cashCounts', day).filter((count) => String(count['on']) <= until);
  return counts.sort((a, b) => compareDates(String(a['on']), String(b['on'])) || a.id - b.id).at(-1) ?? null;
}

/** What was paid less what came back, by day, after one day up to another: minus is paid. */
export function cashPostings(
  connection: Connection,
  build: number,
  after: string,
  upTo: string,
): { readonly on: string; readonly minor: number }[] {
  return all<{ on: string; minor: number }>(
    connection,
    `SELECT on_day AS "on", sum(amount_minor) AS minor FROM postings WHERE build = ? AND account = 'cash'
     AND on_day > ? AND on_day <= ? AND amount_minor <> 0 GROUP BY on_day ORDER BY on_day`,
    build,
    after,
    upTo,
  );
}
