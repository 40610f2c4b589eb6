import type { Some, StoryStep } from '../../demo-data/story-types.ts';

/**
 * A small book of its own for the story's quantities, written apart from the program's ledger so that the two can
 * disagree: what is on order, on the shelf, on the engine and refused, by part.
 */
export interface PartStock {
  ordered: number;
  received: number;
  cancelled: number;
  replaced: number;
  /** In hand and off the engine. */
  here: number;
  trial: number;
  fitted: number;
  rejected: number;
  returned: number;
  gone: number;
}

export interface Stock {
  of(part: string): PartStock;
  /** What the steps so far make impossible, in words. */
  readonly problems: string[];
  apply(step: StoryStep): void;
}

const fresh = (): PartStock => ({
  ordered: 0,
  received: 0,
  cancelled: 0,
  replaced: 0,
  here: 0,
  trial: 0,
  fitted: 0,
  rejected: 0,
  returned: 0,
  gone: 0,
});

const near = (number: number): number => Math.round(number * 1000) / 1000;

export function newStock(needOf: (part: string) => number): Stock {
  const parts = new Map<string, PartStock>();
  const lines = new Map<string, { ordered: number; received: number }>();
  const labelled = new Map<string, () => void>();
  const problems: string[] = [];
  const of = (part: string): PartStock => {
    const known = parts.get(part) ?? fresh();
    parts.set(part, known);
    return known;
  };
  const move = (on: string, part: string, from: keyof PartStock, to: keyof PartStock, quantity: number): void => {
    const stock = of(part);
    if (quantity <= 0 || quantity > stock[from])
      problems.push(`${on}: ${quantity} ${part} from ${from} ${stock[from]}`);
    stock[from] = near(stock[from] - quantity);
    stock[to] = near(stock[to] + quantity);
  };
  const each = (some: readonly Some[], all: (stock: PartStock, part: string) => number) =>
    some.map((item): [string, number] => (typeof item === 'string' ? [item, all(of(item), item)] : [item[0], item[1]]));
  const arrive = (on: string, order: string, part: string, quantity: number): void => {
    const line = lines.get(`${order} ${part}`);
    if (line === undefined) return void problems.push(`${on}: ${part} is not on order ${order}`);
    line.received = near(line.received + quantity);
    if (line.received > line.ordered)
      problems.push(`${on}: ${line.received} ${part} came of ${line.ordered} on ${order}`);
    of(part).received += quantity;
  };
  const outstanding = (order: string): [string, number][] =>
    [...lines]
      .filter(([key, line]) => key.startsWith(`${order} `) && line.ordered > line.received)
      .map(([key, line]) => [key.slice(order.length + 1), near(line.ordered - line.received)]);

  const apply = (step: StoryStep): void => {
    const { on } = step;
    switch (step.do) {
      case 'order':
        for (const [part, quantity] of step.lines) {
          lines.set(`${step.number} ${part}`, { ordered: quantity, received: 0 });
          of(part).ordered += quantity;
        }
        return;
      case 'receive': {
        const good = step.good ?? (step.bad === undefined ? outstanding(step.order) : []);
        const came = good.map(([part, quantity]): [string, number] => [part, quantity]);
        const take = (sign: 1 | -1): void => {
          for (const [part, quantity] of came) {
            arrive(on, step.order, part, sign * quantity);
            of(part).here = near(of(part).here + sign * quantity);
          }
        };
        take(1);
        for (const [part, quantity] of step.bad ?? []) {
          arrive(on, step.order, part, quantity);
          of(part).rejected += quantity;
        }
        for (const [part, quantity] of step.extra ?? []) of(part).here += quantity;
        if (step.label !== undefined) labelled.set(step.label, () => take(-1));
        return;
      }
      case 'cancel':
        for (const [part, quantity] of each(step.lines, (stock) => stock.ordered - stock.received)) {
          const line = lines.get(`${step.order} ${part}`);
          if (line !== undefined) line.ordered -= quantity;
          of(part).cancelled += quantity;
        }
        return;
      case 'settle by exchange':
        for (const [part, quantity] of each(step.parts, (stock) => stock.returned)) {
          move(on, part, 'returned', 'replaced', quantity);
          const line = [...lines].find(([key]) => key.endsWith(` ${part}`));
          if (line !== undefined) line[1].ordered += quantity;
        }
        return;
      case 'own':
      case 'donor':
      case 'borrow':
      case 'find':
      case 'make':
        for (const [part, quantity] of each(step.parts, (_, part) => needOf(part))) of(part).here += quantity;
        return;
      case 'trial-fit':
        for (const [part, quantity] of each(step.parts, ({ here }) => here)) move(on, part, 'here', 'trial', quantity);
        return;
      case 'take off':
        for (const [part, quantity] of each(step.parts, ({ trial }) => trial))
          move(on, part, 'trial', 'here', quantity);
        return;
      case 'fit':
        for (const [part, quantity] of each(step.parts, ({ here, fitted }, part) =>
          Math.min(here, needOf(part) - fitted),
        )) {
          move(on, part, 'here', 'fitted', quantity);
        }
        return;
      case 'verify':
      case 'snug':
        for (const [part, quantity] of each(step.parts, ({ fitted }) => fitted))
          move(on, part, 'fitted', 'fitted', quantity);
        return;
      case 'reject':
        for (const [part, quantity] of each(step.parts, ({ here }) => here))
          move(on, part, 'here', 'rejected', quantity);
        return;
      case 'send back':
        for (const [part, quantity] of each(step.parts, ({ rejected }) => rejected)) {
          move(on, part, 'rejected', 'returned', quantity);
        }
        return;
      case 'give back':
      case 'use up':
      case 'lend':
      case 'lose': {
        const moved = each(step.parts, ({ here }, part) => (step.do === 'give back' ? needOf(part) : here));
        for (const [part, quantity] of moved) move(on, part, 'here', 'gone', quantity);
        if (step.label !== undefined) {
          labelled.set(step.label, () => {
            for (const [part, quantity] of moved) move(on, part, 'gone', 'here', quantity);
          });
        }
        return;
      }
      case 'correct': {
        const takeBack = labelled.get(step.of);
        if (takeBack === undefined) problems.push(`${on}: nothing is labelled ${step.of}`);
        else takeBack();
        return;
      }
      default:
    }
  };
  return { of, problems, apply };
}
