/** The bench with the procedures of checks, the hoist check and measuring sheets. */
import { createRouterClient } from '@orpc/server';
import { benchProcedures } from '../../../core/procedures/bench.ts';
import { checksProcedures } from '../../../core/procedures/checks.ts';
import { gateProcedures } from '../../../core/procedures/gate.ts';
import { answering } from '../../../core/procedures/handler.ts';
import { type BenchOptions, openBench } from './bench.ts';

type Fact = readonly [key: string, value: string, unit?: string];

export async function openChecksBench(options: BenchOptions = {}) {
  const bench = await openBench(options);
  const interceptors = [answering((line) => (bench.logged as string[]).push(line)) as never];
  const client = createRouterClient(
    { checks: checksProcedures, gate: gateProcedures, bench: benchProcedures },
    { context: bench.context, interceptors },
  );
  const { build } = bench;
  return {
    ...bench,
    checks: client.checks,
    gate: client.gate,
    sheets: client.bench,
    /** A part line with a kind and facts. */
    async part(description: string, kind: string, facts: readonly Fact[], on?: string): Promise<number> {
      const values = {
        description,
        needMilli: 1000,
        kind,
        facts: facts.map(([key, value, unit]) => ({ key, value, unit: unit ?? '' })),
      };
      const { made } = await bench.client.parts.add({ ...bench.act(on), build, parts: [values] });
      return made[0] ?? 0;
    },
    async targets(...lines: readonly (readonly [name: string, value: string, unit?: string])[]) {
      const targets = lines.map(([name, value, unit]) => ({ name, value, unit: unit ?? '', source: '' }));
      return client.checks.setTargets({ ...bench.act(), build, targets });
    },
    /** The only check of the build. */
    async only(asOf?: string) {
      const view = await client.checks.view({ build, ...(asOf === undefined ? {} : { asOf }) });
      const [row] = view.checks;
      if (row === undefined) throw new Error('No check.');
      return row;
    },
  };
}
