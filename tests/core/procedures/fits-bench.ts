/** The bench with the procedures of fits and the hoist check, and short ways to make parts, ports and connections. */
import { createRouterClient } from '@orpc/server';
import type { OrderDraft } from '../../../core/contract/orders.ts';
import type { RecordKind } from '../../../core/contract/records.ts';
import { fitsProcedures } from '../../../core/procedures/fits.ts';
import { gateProcedures } from '../../../core/procedures/gate.ts';
import { answering } from '../../../core/procedures/handler.ts';
import { type BenchOptions, openBench } from './bench.ts';

export async function openFitsBench(options: BenchOptions = {}) {
  const bench = await openBench(options);
  const interceptors = [answering((line) => (bench.logged as string[]).push(line)) as never];
  const client = createRouterClient(
    { fits: fitsProcedures, gate: gateProcedures },
    { context: bench.context, interceptors },
  );
  const { build } = bench;
  const save = async (kind: RecordKind, values: Record<string, unknown>): Promise<number> =>
    (await bench.client.records.save({ ...bench.act(), kind, build, values })).made[0] ?? 0;
  return {
    ...bench,
    fits: client.fits,
    gate: client.gate,
    save,
    /** Changes some values of a record. */
    async change(kind: RecordKind, id: number, values: Record<string, unknown>, on?: string) {
      const rows = await bench.client.records.list({ kind, build });
      const revision = rows.find((row) => row.id === id)?.revision ?? 0;
      return bench.client.records.save({ ...bench.act(on), kind, build, id, revision, values });
    },
    async part(description: string, facts: readonly (readonly [string, string, string?])[] = []): Promise<number> {
      const { made } = await bench.client.parts.add({
        ...bench.act(),
        build,
        parts: [
          {
            description,
            needMilli: 1000,
            facts: facts.map(([key, value, unit]) => ({ key, value, unit: unit ?? '' })),
          },
        ],
      });
      return made[0] ?? 0;
    },
    port: (name: string, part: number | null, designation: string, more: Record<string, unknown> = {}) =>
      save('port', { name, part, designation, ...(part === null ? { place: 'block' } : {}), ...more }),
    connection: (title: string, one: number | string, other: number | string, more: Record<string, unknown> = {}) => {
      const side = (of: number | string) =>
        typeof of === 'number' ? { port: of, typed: '' } : { port: null, typed: of };
      return save('connection', { title, one: side(one), other: side(other), ...more });
    },
    async row(id: number, asOf?: string) {
      const view = await client.fits.view({ build, ...(asOf === undefined ? {} : { asOf }) });
      const found = view.connections.find((row) => row.id === id);
      if (found === undefined) throw new Error('No such connection.');
      return found;
    },
    async declared(id: number) {
      const found = (await client.fits.view({ build })).declared.find((row) => row.id === id);
      if (found === undefined) throw new Error('No such fit.');
      return found;
    },
    /** What stands on the list, by description, with its need. */
    async list(): Promise<Record<string, number>> {
      const { columns, rows } = await bench.client.parts.rows({ build, from: 0, count: 1000 });
      const [description, need] = [columns.indexOf('description'), columns.indexOf('needMilli')];
      return Object.fromEntries(rows.map((row) => [String(row[description]), Number(row[need]) / 1000]));
    },
    draft(vendor: number, ...parts: readonly number[]): OrderDraft {
      return {
        build,
        vendor,
        number: '',
        currency: 'USD',
        charges: { discountMinor: 0, shippingMinor: 0, dutyMinor: 0, tax: { kind: 'amount', minor: 0 } },
        promisedOn: null,
        note: '',
        lines: parts.map((part) => ({ part, quantityMilli: 1000, eachE4: 120_000 })),
      };
    },
  };
}
