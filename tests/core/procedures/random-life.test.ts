import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { partActs } from '../../../core/contract/parts.ts';
import { type Bench, openBench } from './bench.ts';

/**
 * Random days in the life of a build, through the procedures: whatever is let in, the books fold to what is kept, undoing
 * everything leads back to the start, and doing it again leads to the same end.
 */

type Step =
  | {
      readonly do: 'act';
      readonly act: (typeof partActs)[number];
      readonly part: number;
      readonly milli: number;
      readonly day: number;
      readonly to: 'shelf' | 'allocated' | 'rejected';
    }
  | {
      readonly do: 'order';
      readonly part: number;
      readonly units: number;
      readonly each: number;
      readonly shipping: number;
      readonly day: number;
    }
  | { readonly do: 'receive'; readonly good: number; readonly bad: number; readonly day: number }
  | { readonly do: 'pay'; readonly minor: number; readonly day: number }
  | { readonly do: 'cancel'; readonly units: number; readonly day: number }
  | { readonly do: 'back-order'; readonly day: number; readonly promised: boolean }
  | {
      readonly do: 'need';
      readonly part: number;
      readonly units: number;
      readonly each: number | null;
      readonly day: number;
    }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' };

const day = fc.integer({ min: 1, max: 28 });
const part = fc.integer({ min: 0, max: 2 });
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('act' as const),
      act: fc.constantFrom(...partActs),
      part,
      milli: fc.integer({ min: 1, max: 4 }),
      day,
      to: fc.constantFrom('shelf' as const, 'allocated' as const, 'rejected' as const),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('order' as const),
      part,
      units: fc.integer({ min: 1, max: 6 }),
      each: fc.integer({ min: 0, max: 99_999_999 }),
      shipping: fc.integer({ min: 0, max: 5000 }),
      day,
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('receive' as const),
      good: fc.integer({ min: 0, max: 4 }),
      bad: fc.integer({ min: 0, max: 2 }),
      day,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('pay' as const), minor: fc.integer({ min: 1, max: 60_000 }), day }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('cancel' as const), units: fc.integer({ min: 1, max: 3 }), day }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('back-order' as const), day, promised: fc.boolean() }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('need' as const),
      part,
      units: fc.integer({ min: 0, max: 9 }),
      each: fc.option(fc.integer({ min: 0, max: 9_999_999 })),
      day,
    }),
  },
  { weight: 2, arbitrary: fc.constantFrom({ do: 'undo' as const }, { do: 'redo' as const }) },
);

const on = (number: number): string => `2026-03-${String(number).padStart(2, '0')}`;

interface World {
  readonly bench: Bench;
  readonly parts: readonly number[];
  readonly vendor: number;
  /** Acts up to this one made the world; undo stops there. */
  readonly base: number;
}

async function openWorld(): Promise<World> {
  const bench = await openBench({ today: '2026-03-31' });
  const { client, build } = bench;
  const vendor = (
    await client.records.save({ ...bench.act(on(1)), kind: 'vendor', values: { name: 'Keld Fasteners' } })
  ).made[0] as number;
  const added = await client.parts.add({
    ...bench.act(on(1)),
    build,
    parts: [
      { description: 'head stud', needMilli: 8000, estimateEachE4: 15_000_000 },
      { description: 'rod', needMilli: 6000, estimateEachE4: 812_345_600, needsVerification: true },
      { description: 'spare plug', needMilli: 0 },
    ],
  });
  return { bench, parts: added.made, vendor, base: added.act };
}

/** Does a step; true when it was let in. A refusal is an answer, anything else a failure. */
async function take({ bench, parts, vendor, base }: World, taken: Step): Promise<boolean> {
  const { client, build } = bench;
  const one = (index: number): number => parts[index] as number;
  try {
    switch (taken.do) {
      case 'act':
        await client.parts.act({
          ...bench.act(on(taken.day)),
          build,
          act: taken.act,
          items: [{ part: one(taken.part), quantityMilli: taken.milli * 1000 }],
          reason: 'random',
          rejectReason: 'faulty',
          to: taken.to,
          owner: 'a friend',
          dueOn: '2026-04-30',
          valueMinor: 100,
        });
        break;
      case 'order':
        await client.orders.place({
          ...bench.act(on(taken.day)),
          order: {
            build,
            vendor,
            number: '',
            currency: 'USD',
            charges: {
              discountMinor: 0,
              shippingMinor: taken.shipping,
              dutyMinor: 0,
              tax: { kind: 'amount', minor: 77 },
            },
            promisedOn: null,
            note: '',
            lines: [{ part: one(taken.part), quantityMilli: taken.units * 1000, eachE4: taken.each }],
          },
        });
        break;
      default:
        await takeOnOrder({ bench, parts, vendor, base }, taken);
    }
    return true;
  } catch (error) {
    if ((error as { data?: { code?: string } }).data?.code === undefined) throw error;
    return false;
  }
}

async function takeOnOrder(
  { bench, parts, base }: World,
  taken: Exclude<Step, { do: 'act' | 'order' }>,
): Promise<void> {
  const { client, build } = bench;
  if (taken.do === 'undo') {
    const { undo } = await client.journal.undoState();
    if (undo !== null && undo.act > base) await client.journal.undo({ key: bench.act().key });
    return;
  }
  if (taken.do === 'redo') return void (await client.journal.redo({ key: bench.act().key }));
  if (taken.do === 'need') {
    const id = parts[taken.part] as number;
    const [row] = await client.parts.byIds({ build, ids: [id] });
    return void (await client.parts.edit({
      ...bench.act(on(taken.day)),
      part: id,
      revision: row?.revision ?? 0,
      values: { needMilli: taken.units * 1000, estimateEachE4: taken.each },
    }));
  }
  const order = (await client.orders.list({ build })).at(-1);
  if (order === undefined) return;
  const detail = await client.orders.detail({ order: order.id });
  const line = detail.lines[0]?.id as number;
  const act = bench.act(on(taken.day));
  if (taken.do === 'pay')
    await client.orders.pay({ ...act, order: order.id, amountMinor: taken.minor, method: '', note: '' });
  if (taken.do === 'cancel')
    await client.orders.cancel({
      ...act,
      order: order.id,
      lines: [{ line, quantityMilli: taken.units * 1000 }],
      reason: 'random',
    });
  if (taken.do === 'back-order')
    await client.orders.backOrder({
      ...act,
      order: order.id,
      lines: [{ line }],
      promisedOn: taken.promised ? '2026-05-01' : null,
      note: '',
    });
  if (taken.do === 'receive') {
    const bad = taken.bad === 0 ? [] : [{ quantityMilli: taken.bad * 1000, reason: 'wrong part' as const, note: '' }];
    await client.orders.receiveBox({
      ...act,
      order: order.id,
      lines: [{ line, goodMilli: taken.good * 1000, bad, extraMilli: 0, restBackOrdered: false, restPromisedOn: null }],
      bin: null,
      leaveForInspection: false,
      note: '',
    });
  }
}

/** Everything that a person could see of the parts and the money, now and on some past days. */
async function picture({ bench, parts }: World): Promise<string> {
  const { client, build } = bench;
  const seen: unknown[] = [];
  for (const asOf of [undefined, on(7), on(20)]) {
    const rows = await client.parts.byIds({ build, ids: [...parts], ...(asOf === undefined ? {} : { asOf }) });
    seen.push(rows.map(({ revision: _, ...row }) => row));
    const { answer: __, ...money } = await client.money.summary({ build, ...(asOf === undefined ? {} : { asOf }) });
    seen.push(money);
  }
  return JSON.stringify(seen);
}

const runs = Number(process.env['RANDOM_LIVES'] ?? 25);

describe('a random life', () => {
  it('folds to what is kept, whatever was let in', { timeout: 120_000 }, async () => {
    let letIn = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 10, maxLength: 40 }), async (steps) => {
        const world = await openWorld();
        for (const taken of steps) if (await take(world, taken)) letIn += 1;
        await world.bench.verify();
        expect(world.bench.logged).toEqual([]);
      }),
      { numRuns: runs },
    );
    expect(letIn).toBeGreaterThan(runs);
  });

  it('leads back to the start by undo and to the same end by redo', { timeout: 120_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 5, maxLength: 30 }), async (steps) => {
        const world = await openWorld();
        const start = await picture(world);
        let standing = 0;
        for (const taken of steps) {
          if (taken.do === 'undo' || taken.do === 'redo') continue;
          if (await take(world, taken)) standing += 1;
        }
        const { client } = world.bench;
        const end = await picture(world);
        let undone = 0;
        for (;;) {
          const { undo } = await client.journal.undoState();
          if (undo === null || undo.act <= world.base) break;
          await client.journal.undo({ key: world.bench.act().key });
          undone += 1;
        }
        expect(undone).toBeLessThanOrEqual(standing);
        expect(await picture(world)).toBe(start);
        for (let again = 0; again < undone; again += 1) await client.journal.redo({ key: world.bench.act().key });
        expect(await picture(world)).toBe(end);
        await world.bench.verify();
      }),
      { numRuns: runs },
    );
  });

  it('says the same of a past day however much was entered since', { timeout: 120_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(step, { minLength: 5, maxLength: 20 }),
        fc.array(step, { maxLength: 15 }),
        async (first, later) => {
          const world = await openWorld();
          for (const taken of first) if (!('day' in taken) || taken.day <= 14) await take(world, taken);
          const { client, build } = world.bench;
          const past = async (): Promise<string> => JSON.stringify(await client.money.summary({ build, asOf: on(14) }));
          const before = await past();
          for (const taken of later) if ('day' in taken && taken.day > 14) await take(world, taken);
          expect(await past()).toBe(before);
        },
      ),
      { numRuns: runs },
    );
  });
});
