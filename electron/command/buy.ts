import { formatMoney } from '../../core/money/currency.ts';
import { formatQuantity, isUnit, plainQuantity } from '../../core/units/quantity.ts';
import { chooseBuild, dayOption, table, withWorkbook, wrapped } from './open.ts';
import { type Given, UsageError, type Verb } from './verb.ts';

const widest = 110;

/** Weeks ahead as typed. @throws UsageError unless they are a whole number from 1 to 104. */
function weeksOption(given: Given): number | undefined {
  const text = given.text('weeks');
  if (text === undefined) return undefined;
  const weeks = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (weeks >= 1 && weeks <= 104) return weeks;
  throw new UsageError(`--weeks ${text}: whole weeks from 1 to 104.`);
}

export const buy: Verb = {
  name: 'buy',
  summary: 'what to order when, so that the gate is earliest and the floor is never broken',
  usage: 'FILE',
  takes: [1, 1],
  options: {
    build: { type: 'string' },
    'as-of': { type: 'string' },
    weeks: { type: 'string' },
    safe: { type: 'boolean' },
    quick: { type: 'boolean' },
  },
  optionHelp: [
    ['--safe', 'judge by waits that four of five orders keep, and by monthly income only'],
    ['--weeks N', 'weeks ahead in which orders may be placed, 1 to 104; 52 when left out'],
    ['--quick', 'skip the search for a proven best'],
    ['--build NAME', 'the build, by number or name, when there are several'],
    ['--as-of DAY', 'as it stood at the end of that day, YYYY-MM-DD'],
  ],
  examples: ['buy drover.hoistday', 'buy drover.hoistday --safe --json'],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const weeks = weeksOption(given);
      const build = await chooseBuild(host, given);
      const asOf = dayOption(given, 'as-of');
      const of = { build, ...(asOf === undefined ? {} : { asOf }) };
      const plan = await host.client.buying.plan({
        ...of,
        ...(weeks === undefined ? {} : { weeks }),
        safe: given.flag('safe'),
        quick: given.flag('quick'),
      });
      const cash = await host.client.buying.cash({ ...of, ...(weeks === undefined ? {} : { weeks }) });
      const money = (minor: number): string => formatMoney(minor, plan.currency);
      const quantity = (milli: number, unit: string): string =>
        isUnit(unit) ? formatQuantity(milli, unit) : plainQuantity(milli);
      const lineOf = new Map(plan.lines.map((line) => [line.part, line]));
      const under = (text: string): string[] => wrapped(text, widest - 4).map((line) => `    ${line}`);
      const block = (lines: readonly string[]): readonly string[] => (lines.length === 0 ? [] : ['', ...lines]);
      const left = plan.lines.filter(({ week }) => week === null);
      return {
        data: { ...plan, cashOverTime: cash },
        lines: [
          ...wrapped(plan.answer, widest),
          ...(plan.method === 'quick'
            ? wrapped(
                'Found by moving one order at a time, not proven best: the list is long, or the search gave up.',
                widest,
              )
            : []),
          ...wrapped(cash.answer, widest),
          ...plan.weeks.flatMap(({ on, orders, spendMinor, cashAfterMinor }) => [
            '',
            `Week of ${on}: ${money(spendMinor)}, ${money(cashAfterMinor)} left`,
            ...orders.flatMap(({ vendorName, goodsMinor, shippingMinor, parts }) => [
              `  ${vendorName}: ${money(goodsMinor)}${shippingMinor === 0 ? '' : ` and ${money(shippingMinor)} shipping`}`,
              ...parts.flatMap((part) => {
                const line = lineOf.get(part);
                if (line === undefined) return [];
                const price = line.priceMinor === null ? '' : `, ${money(line.priceMinor)}`;
                return under(`${quantity(line.orderMilli, line.unit)}${price}. ${line.sentence} ${line.priceSays}.`);
              }),
            ]),
          ]),
          ...block(left.flatMap(({ sentence }) => wrapped(sentence, widest))),
          ...block(
            plan.lacking.length === 0
              ? []
              : table(
                  ['not in the plan', 'what it lacks'],
                  plan.lacking.map(({ description, why }) => [description, why]),
                  new Set(),
                  { 0: 50 },
                ),
          ),
          ...block([...plan.assumes, ...cash.assumes].flatMap((text) => wrapped(text, widest))),
          'A proposal: nothing is ordered by it.',
        ],
      };
    }),
};
