import { chooseBuild, dayOption, table, withWorkbook } from './open.ts';
import { exitCodes, type Verb } from './verb.ts';

export const checks: Verb = {
  name: 'checks',
  summary: 'every check of the build worked out: its figure against its limit',
  usage: 'FILE',
  takes: [1, 1],
  options: { build: { type: 'string' }, 'as-of': { type: 'string' }, strict: { type: 'boolean' } },
  optionHelp: [
    ['--build NAME', 'the build, by number or name, when there are several'],
    ['--as-of DAY', 'as it stood at the end of that day, YYYY-MM-DD'],
    ['--strict', `end with ${exitCodes.found} while a check fails or lacks a figure`],
  ],
  examples: ['checks drover.hoistday', 'checks drover.hoistday --as-of 2026-06-30 --json'],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const build = await chooseBuild(host, given);
      const asOf = dayOption(given, 'as-of');
      const found = await host.client.checks.view({ build, ...(asOf === undefined ? {} : { asOf }) });
      const open = found.counts.fails + found.counts.lacks > 0;
      const rows = found.checks.map(({ verdict, title, says, waived }) => [
        verdict,
        title,
        waived === '' ? says : `${says} Waived: ${waived}`,
      ]);
      const cautions = [...new Set(found.checks.map(({ caution }) => caution))].filter((text) => text !== '');
      return {
        data: found,
        exit: given.flag('strict') && open ? exitCodes.found : exitCodes.done,
        lines: [
          found.answer,
          ...(rows.length === 0
            ? []
            : ['', ...table(['verdict', 'check', 'what it says'], rows, new Set(), { 1: 36, 2: 110 })]),
          ...(cautions.length === 0 ? [] : ['', ...cautions]),
        ],
      };
    }),
};
