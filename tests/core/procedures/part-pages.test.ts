import { describe, expect, it } from 'vitest';
import { openBench } from './bench.ts';

describe('pages of the parts list', () => {
  it('put together are the whole list, by system, phase and number', async () => {
    const bench = await openBench();
    const { client, build } = bench;
    const record = async (kind: 'system' | 'phase', name: string, sort: number): Promise<number> =>
      (await client.records.save({ ...bench.act(), kind, build, values: { name, sort } })).made[0] as number;
    // Made in the other order than they stand in.
    const systems = [await record('system', 'Head', 2), await record('system', 'Block', 1), null];
    const phases = [await record('phase', 'Later', 2), await record('phase', 'Sooner', 1), null];
    await client.parts.add({
      ...bench.act(),
      build,
      parts: Array.from({ length: 40 }, (_, index) => ({
        description: `Part ${index}`,
        needMilli: 1000,
        system: systems[index % 3] ?? null,
        phase: phases[(index * 7) % 4] ?? null,
      })),
    });
    await client.parts.drop({ ...bench.act(), parts: [3, 17], reason: 'not needed' });

    const page = async (from: number, count: number, dropped = false): Promise<Record<string, unknown>[]> => {
      const { columns, rows } = await client.parts.rows({ build, from, count, dropped });
      return rows.map((row) => Object.fromEntries(columns.map((column, index) => [column, row[index]])));
    };
    const place = (list: readonly (number | null)[], id: unknown): number =>
      [list[1], list[0], null].indexOf(id as null);
    const whole = await page(0, 5000);
    expect(whole).toHaveLength(38);
    const expected = [...whole].sort(
      (a, b) =>
        place(systems, a['system']) - place(systems, b['system']) ||
        place(phases, a['phase']) - place(phases, b['phase']) ||
        Number(a['id']) - Number(b['id']),
    );
    expect(whole).toEqual(expected);

    const pieces: Record<string, unknown>[] = [];
    for (let from = 0; from < 38; from += 7) pieces.push(...(await page(from, 7)));
    expect(pieces).toEqual(whole);
    expect(await page(38, 7)).toEqual([]);
    expect(await page(0, 5000, true)).toHaveLength(40);
    expect((await client.parts.rows({ build, from: 0, count: 1 })).total).toBe(38);
  });

  it('and figures kept between acts follow the next act', async () => {
    const bench = await openBench();
    const { client, build } = bench;
    const { made } = await client.parts.add({
      ...bench.act(),
      build,
      parts: [{ description: 'Head stud', needMilli: 8000, estimateEachE4: 1_000_000 }],
    });
    const forecast = async (): Promise<number> => (await client.money.summary({ build })).forecastMinor;
    // 8 at 1.00 each: by hand.
    expect(await forecast()).toBe(800);
    const part = made[0] as number;
    const values = { needMilli: 10_000 };
    await client.parts.editMany({ ...bench.act(), parts: [part], values });
    expect(await forecast()).toBe(1000);
    await client.journal.undo({ key: 'undo-the-change' });
    expect(await forecast()).toBe(800);
    await client.parts.drop({ ...bench.act(), parts: [part], reason: 'not needed' });
    expect((await client.parts.rows({ build, from: 0, count: 10 })).total).toBe(0);
    await bench.verify();
  });
});
