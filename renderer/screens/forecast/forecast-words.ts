import type { Derivation } from '../../../core/contract/journal.ts';
import { dayWords } from '../../../core/dates/day-words.ts';
import type { ForecastAnswer } from '../../../core/forecast/view.ts';

type Gate = ForecastAnswer['gates'][number];

/** "34 of 100 runs", and of what is rarer than one in a hundred, so. */
export const inHundred = (share: number): string =>
  share < 0.01 ? 'fewer than 1 of 100' : `${Math.round(share * 100)} of 100`;

/** Where the days of a gate come from. */
export function forecastDerivation(view: ForecastAnswer, gate: Gate): Derivation {
  const term = (label: string, text: string) => ({ label, text, quantityMilli: null, amountMinor: null });
  return {
    title: `Forecast of ${gate.name}`,
    quantityMilli: null,
    amountMinor: null,
    text: gate.says,
    formula:
      'In each run every delivery and every open job draws its own luck, and the jobs are done one after another in the hours of the calendar, the one with the longest way to the gate first. The days are sorted: P50 is the one that half of the runs keep, P80 four of five.',
    source: `${view.runs} runs, seed ${view.seed}`,
    terms: [
      term('One run in ten is done by (P10)', dayWords(gate.p10On)),
      term('As likely as not by (P50)', dayWords(gate.p50On)),
      term('With this many runs the true P50 lies', `${dayWords(gate.p50Band[0])} to ${dayWords(gate.p50Band[1])}`),
      term('Four runs of five by (P80)', dayWords(gate.p80On)),
      term('With this many runs the true P80 lies', `${dayWords(gate.p80Band[0])} to ${dayWords(gate.p80Band[1])}`),
      term('Nine runs of ten by (P90)', dayWords(gate.p90On)),
      term('Open jobs before it', String(gate.jobsOpen)),
      term('Parts still to come for it', String(gate.partsToCome)),
      term('Things without a guess or a day', String(view.gaps.length)),
    ],
    entries: [],
    more: 0,
  };
}
