/** The invented lists that the tests bring in, and the short way to a plan. */
import { readFileSync } from 'node:fs';
import { guessMapping } from '../../../core/exchange/guess-mapping.ts';
import type { ImportDefaults, ImportPlan, KnownRow } from '../../../core/exchange/import-types.ts';
import { planImport } from '../../../core/exchange/plan-import.ts';
import { readTables } from '../../../core/exchange/read-tables.ts';
import type { ReadChoices, Table } from '../../../core/exchange/table-types.ts';

export function sampleBytes(name: string): Uint8Array {
  return readFileSync(new URL(`../../samples/${name}`, import.meta.url));
}

export const defaults: ImportDefaults = {
  currency: 'USD',
  paid: 'not-recorded',
  missingQuantityIsOne: false,
  today: '2026-11-25',
};

export async function tableOf(bytes: Uint8Array | string, choices: ReadChoices = {}): Promise<Table> {
  const content = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;
  const [table] = (await readTables(content, 'list', choices)).tables;
  if (table === undefined) throw new Error('no table');
  return table;
}

export async function planOf(
  bytes: Uint8Array | string,
  more: {
    answers?: Record<string, string>;
    defaults?: Partial<ImportDefaults>;
    known?: readonly KnownRow[];
    choices?: ReadChoices;
  } = {},
): Promise<ImportPlan> {
  const table = await tableOf(bytes, more.choices);
  return planImport({
    table,
    mapping: guessMapping(table),
    answers: more.answers ?? {},
    defaults: { ...defaults, ...more.defaults },
    known: more.known ?? [],
  });
}

/** Lines of a text file, as the tests write them. */
export const list = (...lines: string[]) => `${lines.join('\n')}\n`;
