import type { z } from 'zod';
import type { ActResult } from '../contract/common.ts';
import type { exchangeContract, ImportReport } from '../contract/exchange.ts';
import type { ImportPlan, PlannedRow } from '../exchange/import-types.ts';
import { Refusal } from '../refusal.ts';
import { first } from '../workbook/store/connection.ts';
import { importOfAct, type KeptImport, keepImport, standingImports } from '../workbook/store/imports.ts';
import { act, type Context, counted } from './context.ts';
import { ImportBatch } from './import-batch.ts';
import { writeOrders } from './import-order-file.ts';
import { writeParts } from './import-parts.ts';
import { planFor } from './import-reading.ts';

export type BringInInput = z.infer<NonNullable<(typeof exchangeContract.bringIn)['~orpc']['inputSchema']>>;

/** Why a plan can't be written: the first row and column that stand in the way, and how many more do. */
function notReady(plan: ImportPlan): Refusal {
  const rows = plan.rows.filter(({ fate }) => fate === 'attention');
  const problems = rows.map(({ row, findings }) => {
    const finding = findings.find(({ severity }) => severity === 'error') ?? findings[0];
    return { row, column: finding?.column ?? '', message: finding?.message ?? '', accepted: finding?.accepted ?? '' };
  });
  const [worst] = problems;
  const open = plan.questions.filter(({ blocking, answer }) => blocking && answer === null);
  const [question] = open;
  if (question !== undefined) {
    const where = question.column === '' ? '' : `Column “${question.column}”: `;
    return new Refusal('bad-input', `${where}${question.text} Answer it first. Nothing was changed.`, {
      field: question.id,
      accepted: question.choices.map(({ value }) => value).join(', '),
      detail: { questions: open.map(({ id }) => id), rows: [...question.rowsConcerned] },
    });
  }
  const more = problems.length > 1 ? ` ${counted(problems.length - 1, 'more row')} can’t be used either.` : '';
  const column = worst === undefined || worst.column === '' ? '' : `, column “${worst.column}”`;
  return new Refusal(
    'bad-input',
    `Row ${worst?.row ?? 0}${column}: ${worst?.message ?? ''}${more} Nothing was changed.`,
    {
      field: worst?.column ?? '',
      accepted: worst?.accepted || 'mend the file, skip the row, or bring it in as it is',
      detail: {
        rows: problems.map(({ row }) => row),
        problems: problems.slice(0, 50).map(({ row, column: at, message }) => `row ${row}, ${at}: ${message}`),
      },
    },
  );
}

const fateWords: Partial<Record<PlannedRow['fate'], string>> = {
  section: 'names the system of the rows below',
  total: 'a total of the rows above, left out',
  blank: 'blank',
  header: 'the headings',
  skipped: 'skipped, as you chose',
};

function summaryOf(plan: ImportPlan, paid: BringInInput['defaults']['paid']): string {
  const { counts } = plan;
  const lines = counts.part + counts['order-line'];
  const what = plan.kind === 'parts' ? 'part line' : 'order line';
  const out = [
    counts.duplicate === 0 ? '' : `${counted(counts.duplicate, 'row')} known already`,
    counts.skipped === 0 ? '' : `${counts.skipped} skipped`,
    counts.total === 0 ? '' : `${counted(counts.total, 'total')} left out`,
    counts.section === 0 ? '' : counted(counts.section, 'heading'),
    counts.blank === 0 ? '' : `${counts.blank} blank`,
  ].filter((text) => text !== '');
  const money = {
    paid: 'What was ordered counts as paid on the day of its order.',
    'not-paid': 'What was ordered counts as not paid yet.',
    'not-recorded': 'Payments were not recorded, so what was ordered stands as still to pay until you enter them.',
  }[paid];
  return `${counts.rowsInFile} rows: ${counted(lines, what)}${out.length === 0 ? '' : `; ${out.join(', ')}`}. ${money}`;
}

/** Writes a planned list as one act: all of it or nothing. */
export async function bringIn(context: Context, input: BringInInput): Promise<ImportReport> {
  const { connection } = context.book();
  const before = first<{ id: number }>(connection, 'SELECT id FROM acts WHERE idempotency_key = ?', input.key);
  if (before !== undefined) return reportOf(context, before.id);
  const planned = await planFor(context, input);
  const { held, read, plan, mapping, matches } = planned;
  if (input.again !== true) {
    const known = standingImports(connection, read.sha256).find(
      ({ build, sheet }) => build === input.build && sheet === input.sheet,
    );
    if (known !== undefined) {
      throw new Refusal('file-known', `${held.name} was brought in on ${known.on} already. Nothing was changed.`, {
        field: 'token',
        accepted: 'another file, or the wish to bring this one in again',
        detail: { act: known.act, on: known.on },
      });
    }
  }
  if (!plan.ready) throw notReady(plan);
  const lines = plan.counts.part + plan.counts['order-line'];
  if (lines === 0) {
    throw new Refusal(
      plan.counts.duplicate > 0 ? 'file-known' : 'bad-input',
      plan.counts.duplicate > 0
        ? `Every line of ${held.name} is in the workbook already. Nothing was changed.`
        : `${held.name} has no line to bring in. Nothing was changed.`,
      { field: 'token', accepted: 'a file with at least one new line' },
    );
  }
  const label = `Bringing in ${held.name}: ${counted(lines, plan.kind === 'parts' ? 'part line' : 'order line')}`;
  const result = act(context, input, label, (writer) => {
    writer.post({
      kind: 'imported',
      on: input.on,
      build: input.build,
      payload: { file: held.name, rows: plan.rows.length, sha256: read.sha256 },
    });
    const batch = new ImportBatch(writer, input.build, input.on, context.settings().currency);
    if (plan.kind === 'parts') writeParts(batch, plan);
    else writeOrders(batch, plan, matches);
    keepImport(connection, {
      act: writer.act,
      build: input.build,
      fileName: held.name,
      sha256: read.sha256,
      bytes: held.bytes,
      sheet: input.sheet,
      mapping,
      answers: input.answers,
      report: plan.rows.map((row) => ({ row: row.row, fate: row.fate, ...told(batch, row) })),
      summary: summaryOf(plan, input.defaults.paid),
    });
    return undefined;
  });
  return reportOf(context, result.act);
}

/** What became of a row, with the remarks that were made on it. */
function told(batch: ImportBatch, row: PlannedRow): { text: string; part: number | null } {
  const { text, part } = batch.fateOf(row.row);
  const remarks = row.findings.map(({ message }) => message);
  const own = text === '' ? (fateWords[row.fate] ?? '') : text;
  const said =
    row.fate === 'duplicate' && row.duplicateOf !== undefined ? `the same as ${row.duplicateOf}, left out` : own;
  const extra = row.fate === 'part' || row.fate === 'order-line' ? remarks : [];
  return { text: [said, ...extra].filter((each) => each !== '').join('. '), part };
}

/** The report of an import that was made before. @throws Refusal `not-found`. */
export function reportOf(context: Context, id: number): ImportReport {
  const kept = importOfAct(context.book().connection, id);
  if (kept === undefined) {
    throw new Refusal('not-found', `Act ${id} did not bring in a file. Nothing was changed.`, {
      field: 'act',
      accepted: 'an act that brought in a file',
    });
  }
  return {
    ...(JSON.parse(kept.result) as ActResult),
    rows: kept.report.map((row) => ({ ...row })),
    counts: countsOf(kept),
    summary: kept.summary,
  };
}

export function countsOf(kept: KeptImport): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { fate } of kept.report) counts[fate] = (counts[fate] ?? 0) + 1;
  return counts;
}
