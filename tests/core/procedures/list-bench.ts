/** The bench with the procedures for lists, searches and whole workbooks, and the invented sample lists. */
import { readFileSync } from 'node:fs';
import { createRouterClient } from '@orpc/server';
import type { ImportChoices } from '../../../core/contract/exchange.ts';
import { exchangeProcedures } from '../../../core/procedures/exchange.ts';
import { gateProcedures } from '../../../core/procedures/gate.ts';
import { answering } from '../../../core/procedures/handler.ts';
import { searchProcedures } from '../../../core/procedures/search.ts';
import { type Bench, type BenchOptions, openBench } from './bench.ts';

const listProcedures = { exchange: exchangeProcedures, search: searchProcedures, gate: gateProcedures };

export const sampleFile = (name: string): File =>
  new File([readFileSync(new URL(`../../samples/${name}`, import.meta.url))], name);

export const textFile = (name: string, ...lines: string[]): File => new File([`${lines.join('\n')}\n`], name);

export async function openListBench(options: BenchOptions = {}) {
  const bench: Bench = await openBench({ today: '2026-11-25', ...options });
  const client = createRouterClient(listProcedures, {
    context: bench.context,
    interceptors: [answering((line) => (bench.logged as string[]).push(line)) as never],
  });
  const choicesFor = (token: string, more: Partial<ImportChoices> = {}): ImportChoices => ({
    token,
    sheet: 0,
    answers: {},
    build: bench.build,
    ...more,
    defaults: {
      currency: options.currency ?? 'USD',
      paid: 'not-recorded',
      missingQuantityIsOne: false,
      ...more.defaults,
    },
  });
  return {
    bench,
    lists: client.exchange,
    search: client.search,
    gate: client.gate,
    choicesFor,
    /** Reads a file and brings it in. */
    async bring(file: File, more: Partial<ImportChoices> & { again?: boolean } = {}) {
      const { token } = await client.exchange.read({ file });
      const { again, ...choices } = more;
      return client.exchange.bringIn({
        ...choicesFor(token, choices),
        ...bench.act(),
        ...(again === undefined ? {} : { again }),
      });
    },
    /** All part lines by part number, else by description. */
    async parts() {
      const { columns, rows } = await bench.client.parts.rows({ build: bench.build, from: 0, count: 5000 });
      const list = rows.map((row) => Object.fromEntries(columns.map((column, index) => [column, row[index]])));
      return new Map(list.map((part) => [String(part['partNumber'] || part['description']), part]));
    },
  };
}
