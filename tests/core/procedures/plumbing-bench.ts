/** The bench with the procedures of lines and the hoist check. */
import { createRouterClient } from '@orpc/server';
import { fitsProcedures } from '../../../core/procedures/fits.ts';
import { gateProcedures } from '../../../core/procedures/gate.ts';
import { answering } from '../../../core/procedures/handler.ts';
import { plumbingProcedures } from '../../../core/procedures/plumbing.ts';
import { type BenchOptions, openBench } from './bench.ts';

/** A line between two straight ends that nothing is wrong with: PTFE for oil, every rating given. */
export const oilFeed = {
  fluid: 'engine oil',
  service: 'pressure',
  pressure_bar: 6,
  temp_max_C: 130,
  flow_l_min: 2,
  route: 'straight',
  length: 480,
  c1: 38,
  c2: 38,
  hose_type: '100R14 -6',
  bore_mm: 8,
  end1: { style: 'reusable', max_bar: 100 },
  end2: { style: 'reusable', max_bar: 100 },
} as const;

export async function openPlumbingBench(options: BenchOptions = {}) {
  const bench = await openBench(options);
  const interceptors = [answering((line) => (bench.logged as string[]).push(line)) as never];
  const { plumbing, gate, fits } = createRouterClient(
    { plumbing: plumbingProcedures, gate: gateProcedures, fits: fitsProcedures },
    { context: bench.context, interceptors },
  );
  const { build } = bench;
  const save = async (
    kind: 'hoseLine' | 'hoseLength' | 'billPart' | 'port' | 'connection' | 'system',
    values: object,
    on?: string,
  ) => {
    const shared = kind === 'hoseLength' ? {} : { build };
    const { made } = await bench.client.records.save({ ...bench.act(on), kind, ...shared, values: { ...values } });
    return made[0] ?? 0;
  };
  return {
    ...bench,
    plumbing,
    gate,
    fits,
    save,
    line: (name: string, definition: object, more: object = {}, on?: string) =>
      save('hoseLine', { name, definition, ...more }, on),
    /** Changes a line's definition. */
    redefine: async (id: number, definition: object, on?: string) =>
      bench.client.records.save({ ...bench.act(on), kind: 'hoseLine', id, values: { definition } }),
    /** A part line, with so many on the shelf. */
    async part(description: string, needMilli: number, shelfMilli = 0, unit = 'each'): Promise<number> {
      const { made } = await bench.client.parts.add({
        ...bench.act(),
        build,
        parts: [{ description, needMilli, unit }],
      });
      const [part = 0] = made;
      if (shelfMilli > 0) {
        await bench.client.parts.act({
          ...bench.act(),
          build,
          act: 'own',
          items: [{ part, quantityMilli: shelfMilli }],
        });
      }
      return part;
    },
    addNeeds: (...keys: string[]) => plumbing.addNeeds({ ...bench.act(), build, keys }),
    tick: (line: number, step: string, more: object = {}, on?: string) =>
      plumbing.step({ ...bench.act(on), line, copy: 1, step, done: true, by: 'Ray', note: '', ...more }),
    async row(id: number, asOf?: string) {
      const { lines } = await plumbing.view({ build, ...(asOf === undefined ? {} : { asOf }) });
      const row = lines.find((one) => one.id === id);
      if (row === undefined) throw new Error(`No line ${id}`);
      return row;
    },
    async need(kind: string) {
      const { needs } = await plumbing.view({ build });
      const found = needs.filter((one) => one.kind === kind);
      if (found.length !== 1 || found[0] === undefined) throw new Error(`${found.length} needs of kind ${kind}`);
      return found[0];
    },
    byIds: (...ids: number[]) => bench.client.parts.byIds({ build, ids }),
  };
}
