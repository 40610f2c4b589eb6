import type { OrderDetail } from '../../core/contract/orders.ts';
import type { OrderStep, ReceiveStep, Some, StoryStep } from '../story-types.ts';
import { eachOf, milliOf, minorOf } from './amounts.ts';
import { onlyMade, type Stage } from './names.ts';

const key = (order: string, part: string): string => `${order} ${part}`;

const lineIds = (stage: Stage, order: string, parts: readonly Some[]) =>
  parts.map((some) =>
    typeof some === 'string'
      ? { line: stage.id('order-line', key(order, some)) }
      : { line: stage.id('order-line', key(order, some[0])), quantityMilli: milliOf(some[1]) },
  );

async function detail(stage: Stage, order: string): Promise<OrderDetail> {
  return stage.client.orders.detail({ order: stage.id('order', order) });
}

function needLine(found: OrderDetail, line: number): OrderDetail['lines'][number] {
  const row = found.lines.find(({ id }) => id === line);
  if (row === undefined) throw new Error(`Order ${found.row.number} has no line ${line}`);
  return row;
}

/** Places an order and learns its lines. */
export async function place(stage: Stage, on: string, step: OrderStep): Promise<void> {
  const amount = (text: string | undefined): number => (text === undefined ? 0 : minorOf(text));
  const result = await stage.client.orders.place({
    ...stage.act(on),
    paid: step.paid ?? false,
    order: {
      build: stage.build,
      vendor: stage.id('vendor', step.vendor),
      number: step.number,
      currency: step.currency ?? 'USD',
      ...(step.rate === undefined ? {} : { rate: step.rate }),
      charges: {
        discountMinor: amount(step.discount),
        shippingMinor: amount(step.shipping),
        dutyMinor: amount(step.duty),
        tax:
          step.taxPercent === undefined
            ? { kind: 'amount', minor: 0 }
            : { kind: 'rate', percent: step.taxPercent, included: false, base: 'goods' },
      },
      promisedOn: step.promised ?? null,
      note: step.note ?? '',
      lines: step.lines.map(([part, quantity, each, deposit]) => ({
        part: stage.id('part', part),
        quantityMilli: milliOf(quantity),
        eachE4: eachOf(each),
        ...(deposit === undefined ? {} : { coreDepositMinor: minorOf(deposit) }),
      })),
    },
  });
  const order = onlyMade(result);
  stage.name('order', step.number, order);
  const placed = await stage.client.orders.detail({ order });
  for (const [part] of step.lines) {
    const line = placed.lines.find((row) => row.part === stage.id('part', part));
    if (line === undefined) throw new Error(`Order ${step.number} has no line for “${part}”`);
    stage.name('order-line', key(step.number, part), line.id);
  }
}

/** One box checked against its order; without `good`, all that is outstanding came. */
export async function receive(stage: Stage, on: string, step: ReceiveStep): Promise<void> {
  const lines = new Map<number, BoxLine>();
  const at = (line: number): BoxLine => {
    const known = lines.get(line);
    if (known !== undefined) return known;
    const made: BoxLine = { line, goodMilli: 0, bad: [], extraMilli: 0, restBackOrdered: false, restPromisedOn: null };
    lines.set(line, made);
    return made;
  };
  const lineOf = (part: string): BoxLine => at(stage.id('order-line', key(step.order, part)));
  if (step.good === undefined && step.bad === undefined) {
    for (const row of (await detail(stage, step.order)).lines) {
      if (row.outstandingMilli > 0) at(row.id).goodMilli = row.outstandingMilli;
    }
  }
  for (const [part, quantity] of step.good ?? []) lineOf(part).goodMilli = milliOf(quantity);
  for (const [part, quantity, reason, note] of step.bad ?? []) {
    lineOf(part).bad.push({ quantityMilli: milliOf(quantity), reason, note });
  }
  for (const [part, quantity] of step.extra ?? []) lineOf(part).extraMilli = milliOf(quantity);
  for (const [part, promised] of step.rest ?? []) {
    Object.assign(lineOf(part), { restBackOrdered: true, restPromisedOn: promised });
  }
  const result = await stage.client.orders.receiveBox({
    ...stage.act(on),
    order: stage.id('order', step.order),
    lines: [...lines.values()],
    bin: step.into === null ? null : stage.id('bin', step.into),
    leaveForInspection: step.inspect ?? false,
    note: step.note ?? '',
  });
  if (step.label !== undefined) stage.name('act', step.label, result.act);
}

type BoxLine = {
  -readonly [K in 'line' | 'goodMilli' | 'extraMilli']: number;
} & {
  bad: { quantityMilli: number; reason: 'wrong part' | 'faulty' | 'transit damage' | 'wrong quantity'; note: string }[];
  restBackOrdered: boolean;
  restPromisedOn: string | null;
};

type OnOrder = Extract<StoryStep, { readonly order: string }>;

/** Every other step about an order that stands. */
export async function onOrder(stage: Stage, step: Exclude<OnOrder, ReceiveStep>): Promise<void> {
  const { orders } = stage.client;
  const order = stage.id('order', step.order);
  switch (step.do) {
    case 'acknowledge': {
      const lines = (await detail(stage, step.order)).lines.filter((row) => row.placedMilli > 0);
      await orders.acknowledge({
        ...stage.act(step.on),
        order,
        lines: lines.map(({ id }) => ({ line: id })),
        promisedOn: step.promised ?? null,
      });
      return;
    }
    case 'back-order': {
      await orders.backOrder({
        ...stage.act(step.on),
        order,
        lines: lineIds(stage, step.order, step.lines),
        promisedOn: step.promised,
        note: step.note ?? '',
      });
      return;
    }
    case 'promise': {
      await orders.promise({
        ...stage.act(step.on),
        order,
        lines: lineIds(stage, step.order, step.parts).map(({ line }) => line),
        promisedOn: step.promised,
        note: step.note ?? '',
      });
      return;
    }
    case 'ship': {
      const open = (await detail(stage, step.order)).lines.filter((row) => row.outstandingMilli > 0);
      await orders.ship({
        ...stage.act(step.on),
        order,
        lines: step.lines === undefined ? open.map(({ id }) => ({ line: id })) : lineIds(stage, step.order, step.lines),
        tracking: step.tracking,
        expectedOn: step.expected,
      });
      return;
    }
    case 'chase': {
      await orders.chase({ ...stage.act(step.on), order, note: step.note });
      return;
    }
    case 'cancel': {
      const lines = lineIds(stage, step.order, step.lines);
      await orders.cancel({ ...stage.act(step.on), order, lines, reason: step.reason });
      return;
    }
    default:
      await moneyOnOrder(stage, order, step);
  }
}

type MoneyStep = Extract<OnOrder, { readonly do: 'reprice' | 'pay' | 'refund' | 'deposit' }>;

async function moneyOnOrder(stage: Stage, order: number, step: MoneyStep): Promise<void> {
  const { orders } = stage.client;
  const about = stage.act(step.on);
  const found = await detail(stage, step.order);
  const lineId = (part: string): number => stage.id('order-line', key(step.order, part));
  switch (step.do) {
    case 'reprice': {
      await orders.reprice({
        ...about,
        order,
        revision: found.revision,
        charges: found.charges,
        lines: step.prices.map(([part, each]) => ({ line: lineId(part), eachE4: eachOf(each) })),
        note: step.note,
      });
      return;
    }
    case 'pay': {
      const paid = found.payments.reduce((sum, payment) => sum + (payment.reversed ? 0 : payment.amountMinor), 0);
      await orders.pay({
        ...about,
        order,
        amountMinor: step.amount === 'rest' ? found.row.totalMinor - paid : minorOf(step.amount),
        ...(step.rate === undefined ? {} : { rate: step.rate }),
        method: step.method,
        note: step.note ?? '',
      });
      return;
    }
    case 'refund': {
      const line = lineId(step.part);
      const feeMinor = minorOf(step.fee);
      await orders.refund({
        ...about,
        order,
        line,
        amountMinor: needLine(found, line).claimsMinor - feeMinor,
        feeMinor,
        settlesMilli: milliOf(step.settles),
        note: step.note ?? '',
      });
      return;
    }
    case 'deposit': {
      await orders.deposit({
        ...about,
        order,
        line: lineId(step.part),
        what: step.what,
        amountMinor: minorOf(step.amount),
        dueOn: step.dueOn ?? null,
        reason: '',
      });
    }
  }
}
