import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { guessMapping } from '../../core/exchange/guess-mapping.ts';
import type { ImportDefaults } from '../../core/exchange/import-types.ts';
import { planImport } from '../../core/exchange/plan-import.ts';
import { readTables } from '../../core/exchange/read-tables.ts';

const defaults: ImportDefaults = {
  currency: 'USD',
  dateOrder: 'day-first',
  decimalMark: '.',
  paid: 'not-recorded',
  missingQuantityIsOne: false,
  today: '2026-11-20',
};

async function planOf(name: string) {
  const bytes = readFileSync(new URL(`../../demo-data/lists/${name}`, import.meta.url));
  const [table] = (await readTables(new Uint8Array(bytes), name)).tables;
  if (table === undefined) throw new Error(`${name} holds no table`);
  const mapping = guessMapping(table);
  return { table, mapping, plan: planImport({ table, mapping, answers: {}, defaults }) };
}

describe('the example lists', () => {
  test.each([
    ['parts-list.csv', 'part'],
    ['orders.csv', 'order-line'],
  ] as const)('%s is read whole, every column understood', async (name, fate) => {
    const { table, plan } = await planOf(name);
    expect(table.rows).toHaveLength(26);
    expect(
      plan.rows
        .filter((row) => row.fate !== fate && row.fate !== 'header')
        .map((row) => [row.row, row.fate, row.findings]),
    ).toEqual([]);
    expect(plan.ready, JSON.stringify(plan.questions)).toBe(true);
  });
});
