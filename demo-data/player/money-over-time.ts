import { cashCounts, type DemoIncome, incomes, laterIncomes, offers } from '../one-builder/money-over-time.ts';
import { eachOf, milliOf, minorOf } from './amounts.ts';
import type { Stage } from './names.ts';

/** The acts about money over time on some days, in an order in which the parts are listed already. */
export function moneyOverTime(stage: Stage, wanted: (on: string) => boolean, first: string): (() => Promise<void>)[] {
  const save = async (on: string, kind: 'income' | 'cashCount' | 'offer', values: Record<string, unknown>) => {
    await stage.client.records.save({ ...stage.act(on), kind, build: stage.build, values });
  };
  const income = (on: string, { name, amount, every, from, note }: DemoIncome) => ({
    on,
    act: () => save(on, 'income', { name, amountMinor: minorOf(amount), every, from, note: note ?? '' }),
  });
  return [
    ...incomes.map((each) => income(first, each)),
    ...laterIncomes.map((each) => income(each.on, each)),
    ...cashCounts.map(({ on, cash, floor }) => ({
      on,
      act: () => save(on, 'cashCount', { on, cashMinor: minorOf(cash), floorMinor: minorOf(floor) }),
    })),
    ...offers.map(({ on, part, vendor, from, each, until, note }) => ({
      on,
      act: () =>
        save(on, 'offer', {
          part: stage.id('part', part),
          vendor: stage.id('vendor', vendor),
          fromMilli: milliOf(from),
          eachE4: eachOf(each),
          currency: 'USD',
          until,
          note,
        }),
    })),
  ]
    .filter(({ on }) => wanted(on))
    .map(({ act }) => act);
}
