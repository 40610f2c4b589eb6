import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { guessMapping } from '../../../core/exchange/guess-mapping.ts';
import { importFields, type Mapping, rowFates } from '../../../core/exchange/import-types.ts';
import { planImport } from '../../../core/exchange/plan-import.ts';
import { readTables } from '../../../core/exchange/read-tables.ts';
import type { Table } from '../../../core/exchange/table-types.ts';
import { Refusal } from '../../../core/refusal.ts';
import { defaults, sampleBytes, tableOf } from './samples.ts';

/** FUZZ_SCALE=50 makes a long run of the same tests. */
const scale = Number(process.env['FUZZ_SCALE'] ?? 1);

/** Every row has one fate, the counts add up, and no text of a line is lost. */
function check(table: Table, mapping: Mapping, answers: Record<string, string> = {}): void {
  const plan = planImport({ table, mapping, answers, defaults });
  expect(plan.rows.map((row) => row.row)).toEqual(table.rows.map((row) => row.row));
  const sum = rowFates.reduce((all, fate) => all + plan.counts[fate], 0);
  expect(sum).toBe(table.rows.length);
  expect(plan.counts.rowsInFile).toBe(table.rows.length);
  for (const row of plan.rows) {
    if (row.fate === 'part') expect(row.part).toBeDefined();
    if (row.fate === 'order-line') expect(row.orderLine).toBeDefined();
    if (row.fate === 'attention') expect(row.findings.some((finding) => finding.severity === 'error')).toBe(true);
    if (row.fate === 'part') expect(row.part?.quantityMilli).toBeGreaterThan(0);
    // What people wrote stands in quotes; the rest is ours.
    for (const { message } of row.findings)
      expect(message.replace(/“[^”]*”/g, '')).not.toMatch(/undefined|NaN|\[object/);
  }
  for (const { differences, ourTotalMinor, fileTotalMinor } of plan.sectionTotals) {
    expect(differences.reduce((all, line) => all + line.amountMinor, 0)).toBe(ourTotalMinor - fileTotalMinor);
  }
  if (plan.ready) expect(plan.questions.every((question) => !question.blocking || question.answer !== null)).toBe(true);
}

async function readAndCheck(bytes: Uint8Array): Promise<void> {
  let tables: readonly Table[];
  try {
    tables = (await readTables(bytes, 'list')).tables;
  } catch (error) {
    expect(error).toBeInstanceOf(Refusal);
    expect((error as Refusal).message).not.toMatch(/undefined|NaN|\n\s+at /);
    return;
  }
  for (const table of tables) check(table, guessMapping(table));
}

const mutation = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  how: fc.constantFrom('change', 'delete', 'insert', 'cut'),
  bytes: fc.uint8Array({ minLength: 1, maxLength: 6 }),
});

function mutate(source: Uint8Array, changes: readonly { at: number; how: string; bytes: Uint8Array }[]): Uint8Array {
  let result = source;
  for (const { at, how, bytes } of changes) {
    const place = Math.floor(at * result.length);
    const before = result.subarray(0, place);
    const after = how === 'insert' ? result.subarray(place) : result.subarray(place + bytes.length);
    if (how === 'cut') result = before;
    else result = Uint8Array.from([...before, ...(how === 'delete' ? [] : bytes), ...after]);
  }
  return result;
}

describe('a file with bytes changed, lost or added', () => {
  it.each([
    ['garage-eu.csv', 150],
    ['drover-orders.csv', 15],
    ['drover-parts.csv', 15],
    ['drover-parts.xlsx', 20],
  ])('is planned or refused, never half read: %s', async (name, numRuns) => {
    const source = sampleBytes(name);
    await fc.assert(
      fc.asyncProperty(fc.array(mutation, { minLength: 1, maxLength: 5 }), (changes) =>
        readAndCheck(mutate(source, changes)),
      ),
      { numRuns: numRuns * scale },
    );
  });

  it('and so is a workbook with damage inside its archive', async () => {
    const parts = unzipSync(sampleBytes('drover-parts.xlsx'));
    const names = fc.constantFrom(
      'xl/worksheets/sheet1.xml',
      'xl/sharedStrings.xml',
      'xl/styles.xml',
      'xl/workbook.xml',
    );
    await fc.assert(
      fc.asyncProperty(names, fc.array(mutation, { minLength: 1, maxLength: 3 }), async (name, changes) => {
        const damaged = { ...parts, [name]: mutate(parts[name] ?? new Uint8Array(), changes) };
        await readAndCheck(zipSync(damaged, { level: 1 }));
      }),
      { numRuns: 30 * scale },
    );
  });

  it('and so is any heap of bytes or text', async () => {
    await fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), readAndCheck), { numRuns: 100 * scale });
    const text = fc.string({ unit: 'grapheme', maxLength: 200 }).map((all) => new TextEncoder().encode(all));
    await fc.assert(fc.asyncProperty(text, readAndCheck), { numRuns: 100 * scale });
  });
});

describe('cells of any content under any mapping', () => {
  const cell = fc.oneof(
    fc.constantFrom(
      '',
      '',
      'x14',
      '2 off',
      '?',
      '~9.8',
      '$1,234',
      '1.234',
      '9,80 €',
      '-5',
      '(5.00)',
      'yes',
      'no',
      'back order',
      'box 3',
      'borrowed',
      '2026-02-30',
      '03/04/26',
      '25/03/2026',
      '03/25/2026',
      'TOTAL',
      '--- BLOCK ---',
      'Fuel:',
      '99999999999999999',
      '0.00001',
      '1e5',
      '#REF!',
      '=1+1',
      "'=1+1",
      'constructor',
      '__proto__',
      'pair',
      '1/2',
      'NaN',
      'Infinity',
    ),
    fc.string({ unit: 'grapheme', maxLength: 10 }),
    fc.integer({ min: -5, max: 2000 }).map(String),
  );
  const grid = fc.array(fc.array(cell, { minLength: 1, maxLength: 7 }), { minLength: 1, maxLength: 12 });
  const fields = fc.array(fc.option(fc.constantFrom(...importFields), { nil: null }), { minLength: 7, maxLength: 7 });
  const answers = fc.dictionary(
    fc.oneof(
      fc.constantFrom('missing-quantity', 'line-total', 'date-order:1', 'decimal-mark:2', 'state:yes', '__proto__'),
      fc.integer({ min: 1, max: 12 }).map((row) => `row:${row}`),
    ),
    fc.constantFrom('skip', 'import', 'one', 'leave', 'line-total', 'day-first', '.', ',', 'fitted', 'nonsense'),
  );

  it('have one fate each, and everything said about them makes sense', async () => {
    await fc.assert(
      fc.asyncProperty(grid, fields, fc.constantFrom('parts', 'orders'), answers, async (rows, given, kind, said) => {
        const quoted = rows.map((row) => row.map((text) => `"${text.replaceAll('"', '""')}"`).join(',')).join('\n');
        let table: Table;
        try {
          table = await tableOf(`${quoted}\n`, { separator: ',' });
        } catch (error) {
          expect(error).toBeInstanceOf(Refusal);
          return;
        }
        const columns = table.columns.map(({ index, title }) => ({
          index,
          title,
          field: given[index] ?? null,
          because: 'user' as const,
        }));
        check(table, { kind, fingerprint: table.fingerprint, columns }, said);
      }),
      { numRuns: 500 * scale },
    );
  });
});

describe('a cell as long as cells may be', () => {
  it('keeps no pattern busy', async () => {
    const runs = ['-', ' ', '?', ',', '1', "'", '=', '(', 'a ', 'x1', '1,', '- ', '. ', 'box ', 'from ', '~', '–'];
    for (const run of runs) {
      for (const end of ['', 'x']) {
        const long = run.repeat(Math.floor(32_000 / run.length)) + end;
        const table = await tableOf(`a,b\n"${long}",1\n`, { separator: ',' });
        for (const field of importFields) {
          const columns = [{ index: 0, title: 'a', field, because: 'user' as const }];
          planImport({ table, mapping: { kind: 'parts', fingerprint: '', columns }, answers: {}, defaults });
        }
      }
    }
  });
});

describe('every text of a row', () => {
  it('is found again somewhere in its part', async () => {
    // Words that mean nothing to any reader, one for each cell of a row.
    const word = fc.stringMatching(/^[bcdfghjklmpqrtvwz]{5,9}$/);
    await fc.assert(
      fc.asyncProperty(fc.array(word, { minLength: 12, maxLength: 12 }), async (words) => {
        const headings = 'part,part no,maker,vendor,link,qty,price,status,ordered,arrived,notes,Thread';
        const cells = words.map((text, index) => (index === 5 ? '4' : text));
        const table = await tableOf(`${headings}\n${cells.join(',')}\n`);
        const plan = planImport({ table, mapping: guessMapping(table), answers: {}, defaults });
        const kept = JSON.stringify(plan.rows[1]?.part);
        cells.forEach((text) => {
          expect(kept).toContain(text);
        });
      }),
      { numRuns: 100 * scale },
    );
  });
});
