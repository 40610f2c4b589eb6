import { Refusal } from '../../core/refusal.ts';
import { chooseBuild, dayOption, table, withWorkbook } from './open.ts';
import type { Given, Verb } from './verb.ts';

/** A whole number given as an option. @throws Refusal `bad-input` naming the option when it isn't one in the range. */
function wholeOption(given: Given, name: string, otherwise: number, least: number, most: number): number {
  const text = given.text(name);
  if (text === undefined) return otherwise;
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  throw new Refusal('bad-input', `The ${name} ${text} can't be used. Nothing was changed.`, {
    field: name,
    accepted: `a whole number from ${least} to ${most}`,
  });
}

const inHundred = (share: number): string => (share >= 0.01 ? `${Math.round(share * 100)} %` : '<1 %');

export const forecast: Verb = {
  name: 'forecast',
  summary: 'when the engine goes in: days with their chances, and what holds them',
  usage: 'FILE',
  takes: [1, 1],
  options: {
    build: { type: 'string' },
    gate: { type: 'string' },
    runs: { type: 'string' },
    seed: { type: 'string' },
    'as-of': { type: 'string' },
  },
  optionHelp: [
    ['--build NAME', 'the build, by number or name, when there are several'],
    ['--gate NAME', 'only this gate, such as engine-in'],
    ['--runs N', 'trials, 1 to 20000; 2000 when left out'],
    ['--seed N', 'the same seed gives the same answer; 1 when left out'],
    ['--as-of DAY', 'as it stood at the end of that day, YYYY-MM-DD'],
  ],
  examples: ['forecast drover.hoistday', 'forecast drover.hoistday --gate engine-in --runs 10000 --seed 7 --json'],
  run: (given, room) => {
    const runs = wholeOption(given, 'runs', 2000, 1, 20_000);
    const seed = wholeOption(given, 'seed', 1, 0, Number.MAX_SAFE_INTEGER);
    return withWorkbook(given, room, async (host) => {
      const build = await chooseBuild(host, given);
      const asOf = dayOption(given, 'as-of');
      const gate = given.text('gate');
      const found = await host.client.forecast.run({
        build,
        runs,
        seed,
        ...(gate === undefined ? {} : { gate }),
        ...(asOf === undefined ? {} : { asOf }),
      });
      const block = (lines: readonly string[]): readonly string[] => (lines.length === 0 ? [] : ['', ...lines]);
      const gates = found.gates.map(({ name, p10On, p50On, p80On, p90On }) => [name, p10On, p50On, p80On, p90On]);
      const holders = found.gates.flatMap(({ name, heldBy }) =>
        heldBy.map((holder) => [
          name,
          `${holder.kind} ${holder.name}`,
          inHundred(holder.criticality),
          holder.daysWon === null ? '' : holder.daysWon.toFixed(1),
        ]),
      );
      const coming = found.coming.map((part) => [
        part.description,
        part.vendorName,
        part.p50On,
        part.p80On,
        String(part.count),
        part.says,
      ]);
      const gaps = found.gaps.map(({ kind, title, why }) => [kind, title, why]);
      const wide = { 1: 40 };
      return {
        data: found,
        lines: [
          found.answer,
          ...block(gates.length === 0 ? [] : table(['gate', 'P10', 'P50', 'P80', 'P90'], gates)),
          ...block(
            holders.length === 0
              ? []
              : table(['gate', 'held by', 'of runs', 'days won by a week'], holders, new Set([2, 3]), wide),
          ),
          ...block(
            coming.length === 0
              ? []
              : table(['part', 'vendor', 'P50', 'P80', 'seen', 'stands on'], coming, new Set([4]), { 0: 36, 5: 60 }),
          ),
          ...block(gaps.length === 0 ? [] : table(['kind', 'without a guess or a day', 'why'], gaps, new Set(), wide)),
          ...block(found.assumes),
        ],
      };
    });
  },
};
