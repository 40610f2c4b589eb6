import { formatMoney } from '../../core/money/currency.ts';
import { formatQuantity, isUnit, plainQuantity } from '../../core/units/quantity.ts';
import { choiceOption, chooseBuild, dayOption, table, withWorkbook } from './open.ts';
import { exitCodes, type Given, type Verb } from './verb.ts';

const buildOption = ['--build NAME', 'the build, by number or name, when there are several'] as const;
const asOfOption = ['--as-of DAY', 'as it stood at the end of that day, YYYY-MM-DD'] as const;
const reading = { build: { type: 'string' }, 'as-of': { type: 'string' } } as const;

const asOf = (given: Given): { asOf?: string } => {
  const day = dayOption(given, 'as-of');
  return day === undefined ? {} : { asOf: day };
};

const quantity = (milli: number, unit: string): string =>
  isUnit(unit) ? formatQuantity(milli, unit) : plainQuantity(milli);

export const review: Verb = {
  name: 'review',
  summary: 'the hoist check: what still stands before the engine goes in',
  usage: 'FILE',
  takes: [1, 1],
  options: { ...reading, strict: { type: 'boolean' } },
  optionHelp: [buildOption, asOfOption, ['--strict', `end with ${exitCodes.found} while anything stands`]],
  examples: ['review drover.hoistday', 'review drover.hoistday --as-of 2026-06-30 --json'],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const { client } = host;
      const build = await chooseBuild(host, given);
      const found = await client.gate.review({ build, ...asOf(given) });
      const { currency } = await client.workbook.settings();
      const rows = found.blockers.map((blocker) => [
        blocker.kind,
        blocker.title,
        blocker.clearOn ?? 'no date',
        blocker.costMinor === null ? 'not known' : formatMoney(blocker.costMinor, currency),
        blocker.clears,
      ]);
      return {
        data: found,
        exit: given.flag('strict') && found.blockers.length > 0 ? exitCodes.found : exitCodes.done,
        lines: [
          found.answer,
          '',
          ...(rows.length === 0
            ? []
            : table(['kind', 'what', 'cleared at best', 'still costs', 'what clears it'], rows, new Set([3]), {
                0: 24,
                1: 36,
                4: 44,
              })),
          ...found.waived.map(({ title, reason, by }) => `waived: ${title} (${reason}; ${by})`),
          '',
          `Still costs ${formatMoney(found.costMinor, currency)}${found.costUnknown === 0 ? '' : `, and ${found.costUnknown} without a known cost`}.`,
          found.caution,
        ],
      };
    }),
};

export const positions: Verb = {
  name: 'positions',
  summary: 'every part line: needed, on order, in hand, on the engine, and its money',
  usage: 'FILE',
  takes: [1, 1],
  options: reading,
  optionHelp: [buildOption, asOfOption],
  examples: ['positions drover.hoistday', 'positions drover.hoistday --as-of 2026-03-31 --json'],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const build = await chooseBuild(host, given);
      const { currency } = await host.client.workbook.settings();
      const parts: Record<string, unknown>[] = [];
      for (let from = 0; ; ) {
        const page = await host.client.parts.rows({ build, from, count: 5000, ...asOf(given) });
        parts.push(
          ...page.rows.map((row) => Object.fromEntries(page.columns.map((name, index) => [name, row[index]]))),
        );
        from += 5000;
        if (from >= page.total) break;
      }
      const number = (part: Record<string, unknown>, name: string): number => Number(part[name]);
      const rows = parts.map((part) => {
        const say = (name: string): string => quantity(number(part, name), String(part['unit']));
        const inHand = number(part, 'shelfMilli') + number(part, 'allocatedMilli') + number(part, 'inspectionMilli');
        const on = number(part, 'fittedMilli') + number(part, 'snugMilli') + number(part, 'verifiedMilli');
        return [
          String(part['description']),
          String(part['standing']),
          say('needMilli'),
          say('onOrderMilli'),
          quantity(inHand, String(part['unit'])),
          quantity(on, String(part['unit'])),
          formatMoney(number(part, 'forecastMinor'), currency),
        ];
      });
      return {
        data: parts,
        lines: table(
          ['part', 'standing', 'needed', 'on order', 'in hand', 'on engine', 'estimate'],
          rows,
          new Set([2, 3, 4, 5, 6]),
          { 0: 40 },
        ),
      };
    }),
};

export const money: Verb = {
  name: 'money',
  summary: 'paid, owed on orders, still to order, estimate at completion, against budget',
  usage: 'FILE',
  takes: [1, 1],
  options: { ...reading, by: { type: 'string' } },
  optionHelp: [buildOption, asOfOption, ['--by TAG', 'system (the default), phase or vendor']],
  examples: ['money drover.hoistday --by vendor'],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const build = await chooseBuild(host, given);
      const by = choiceOption(given, 'by', ['system', 'phase', 'vendor']) ?? 'system';
      const summary = await host.client.money.summary({ build, ...asOf(given) });
      const rows = await host.client.money.by({ build, by, ...asOf(given) });
      const say = (minor: number): string => formatMoney(minor, summary.currency);
      const cells = (name: string, row: Omit<(typeof rows)[number], 'id' | 'name'>): string[] => [
        name,
        say(row.budgetMinor),
        say(row.paidMinor),
        say(row.stillToPayMinor),
        say(row.remainingMinor),
        say(row.forecastMinor),
        say(row.varianceMinor),
      ];
      return {
        data: { summary, rows },
        lines: [
          summary.answer,
          '',
          ...table(
            [by, 'budget', 'paid', 'still to pay', 'still to order', 'estimate', 'budget less estimate'],
            [...rows.map((row) => cells(row.name, row)), cells('total', summary)],
            new Set([1, 2, 3, 4, 5, 6]),
            { 0: 30 },
          ),
        ],
      };
    }),
};

export const verify: Verb = {
  name: 'verify',
  summary: 'fold every entry again and compare; check the file’s integrity and links',
  usage: 'FILE',
  takes: [1, 1],
  options: {},
  optionHelp: [],
  examples: ['verify drover.hoistday'],
  run: (given, room) =>
    withWorkbook(given, room, async ({ client }) => {
      const report = await client.workbook.verify();
      const found = [...report.integrity, ...report.foreignKeys, ...report.differences, ...report.invariants];
      return {
        data: report,
        exit: report.ok ? exitCodes.done : exitCodes.found,
        lines: [
          report.ok
            ? `Sound: ${report.entries} entries and ${report.postings} postings fold to what is kept.`
            : `${found.length} things are not as they should be:`,
          ...found,
        ],
      };
    }),
};
