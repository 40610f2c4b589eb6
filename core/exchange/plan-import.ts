/**
 * From rows of text to what would be written, with every question and every remark, before anything is written.
 * Every file row has exactly one fate, and the counts of the fates add up to the rows of the file.
 */
import { answerTo, lineTotal, missingQuantity } from './batch-questions.ts';
import { plainWords } from './clean-text.ts';
import { DuplicateFinder } from './duplicates.ts';
import {
  type ImportAnswers,
  type ImportDefaults,
  type ImportPlan,
  type KnownRow,
  type Mapping,
  type PlannedRow,
  type RowFate,
  rowFates,
} from './import-types.ts';
import { readDates } from './plan-dates.ts';
import { readMoney } from './plan-money.ts';
import { type LineTotalAnswer, planOrderLine } from './plan-order-line.ts';
import { type LineWithCharges, ordersOfLines } from './plan-orders.ts';
import { planPart } from './plan-part.ts';
import { inSections, sectionsAbove } from './plan-sections.ts';
import { readStates } from './plan-states.ts';
import { RowNotes } from './row-notes.ts';
import { rowReader } from './row-reader.ts';
import { type RowShape, rowAnswer, shapeOf } from './row-shape.ts';
import { amountOf, type PlanContext } from './row-values.ts';
import { sectionTotals } from './section-totals.ts';
import { oneSpelling } from './spellings.ts';
import type { ImportFinding, Table, TableRow } from './table-types.ts';

export interface PlanInput {
  readonly table: Table;
  readonly mapping: Mapping;
  readonly answers: ImportAnswers;
  readonly defaults: ImportDefaults;
  /** Rows brought in before. */
  readonly known?: readonly KnownRow[];
}

/** Plans the import of one table. Bad rows are reported in the plan and never thrown. */
export function planImport({ table, mapping, answers, defaults, known = [] }: PlanInput): ImportPlan {
  const reader = rowReader(table, mapping);
  const shapes = new Map(table.rows.map((row) => [row.row, shapeOf(table, row, reader, answers)]));
  const shape = (row: TableRow): RowShape => shapes.get(row.row) ?? { shape: 'blank' };
  const lines = table.rows.filter((row) => shape(row).shape === 'line');
  const sections = sectionsAbove(table.rows, shape);
  const sectionNames = [...new Set(sections.values())];
  const systems = oneSpelling([...sectionNames, ...lines.map((row) => reader.text(row, 'system'))], 'no capitals');
  const vendors = oneSpelling(
    lines.map((row) => reader.text(row, 'vendor')),
    'first',
  );
  const dates = readDates(lines, reader, answers, defaults);
  const blankQuantities = lines.filter((row) => reader.text(row, 'quantity') === '').map((row) => row.row);
  const blankAnswer = answerTo(answers, 'missing-quantity', ['one', 'leave']);
  const context: PlanContext = {
    reader,
    money: readMoney(
      table.rows.filter((row) => ['line', 'total'].includes(shape(row).shape)),
      reader,
      answers,
      defaults,
    ),
    dates,
    states: readStates(lines, reader, dates, answers),
    defaults,
    blankIsOne: blankAnswer === null ? defaults.missingQuantityIsOne : blankAnswer === 'one',
    vendorName: (text) => vendors.get(plainWords(text)) ?? text,
    systemName: (text) => systems.get(plainWords(text)) ?? text,
    sectionOf: (row) => sections.get(row.row) ?? '',
  };
  const lineTotalAnswer = answerTo(answers, 'line-total', ['line-total', 'quantity-times-price']);
  const finder = new DuplicateFinder(known);
  const withCharges: LineWithCharges[] = [];
  const disagreeing: number[] = [];

  const planned = table.rows.map((row): PlannedRow => {
    const found = shape(row);
    const remarks = table.findings.filter((entry) => entry.row === row.row).map((entry) => entry.finding);
    if (found.shape !== 'line') {
      if (found.shape === 'section') remarks.push(note(`The rows below belong to “${found.name}”.`));
      if (found.shape === 'total') remarks.push(note('A total of the rows above; it is left out.'));
      return { row: row.row, fate: found.shape, findings: remarks };
    }
    const forced = rowAnswer(answers, row.row) === 'import';
    const notes = new RowNotes(row, reader, forced);
    notes.findings.push(...remarks, ...dates.findings.of(row.row));
    if (mapping.kind === 'parts') {
      const part = planPart(context, row, notes);
      const same = finder.place(part, forced);
      return { row: row.row, part, ...fateOf('part', same, notes.findings) };
    }
    const { line, disagrees } = planOrderLine(context, row, notes, lineTotalAnswer as LineTotalAnswer | null);
    if (disagrees) disagreeing.push(row.row);
    const charges = Object.fromEntries(
      (['shipping', 'tax', 'duty', 'discount', 'orderTotal'] as const).flatMap((field) => {
        const amount = amountOf(context, row, field, notes, true);
        return amount === undefined ? [] : [[field, amount]];
      }),
    );
    const same = finder.place(line, forced);
    const result = { row: row.row, orderLine: line, ...fateOf('order-line', same, notes.findings) };
    if (result.fate !== 'duplicate') withCharges.push({ line, charges });
    return result;
  });

  const { orders, findings: orderFindings } = ordersOfLines(withCharges);
  const rows = planned.map((row) => {
    const more = orderFindings.of(row.row);
    return more.length === 0 ? row : { ...row, findings: [...row.findings, ...more] };
  });
  const questions = [
    ...table.questions,
    ...dates.questions,
    ...context.money.questions,
    ...(blankQuantities.length > 0
      ? [missingQuantity(blankQuantities, defaults, blankAnswer, reader.title('quantity'))]
      : []),
    ...(disagreeing.length > 0 ? [lineTotal(disagreeing, lineTotalAnswer, reader.title('lineTotal'))] : []),
    ...context.states.questions,
  ];
  const findings = [
    ...table.findings.filter((entry) => entry.row === 0).map((entry) => entry.finding),
    ...context.money.findings,
  ];
  if (!reader.has('description') && !reader.has('partNumber')) {
    const message = 'No column says what the parts are.';
    findings.push({ severity: 'error', column: '', text: '', message, accepted: 'a column given to the description' });
  }
  const open = questions.some((question) => question.blocking && question.answer === null);
  const used = new Set(rows.flatMap((row) => row.part?.vendor ?? row.orderLine?.vendor ?? []).filter(Boolean));
  return {
    kind: mapping.kind,
    ready: !open && rows.every((row) => row.fate !== 'attention'),
    questions,
    rows,
    counts: countsOf(rows),
    systems: [...new Set(rows.flatMap((row) => row.part?.system ?? []))],
    vendors: [...used],
    orders,
    sectionTotals: sectionTotals(inSections(table.rows, rows, shape, context), defaultCurrency(rows, defaults)),
    findings,
  };
}

function fateOf(
  good: 'part' | 'order-line',
  same: ReturnType<DuplicateFinder['place']>,
  findings: readonly ImportFinding[],
): Pick<PlannedRow, 'fate' | 'key' | 'content' | 'findings'> & { duplicateOf?: string } {
  const { key, content } = same;
  const bad = findings.some((finding) => finding.severity === 'error');
  if (same.kind === 'new') return { fate: bad ? 'attention' : good, key, content, findings };
  if (same.kind === 'duplicate') {
    const more = [...findings, note(`The same as ${same.of}; it is left out.`)];
    return { fate: 'duplicate', key, content, duplicateOf: same.of, findings: more };
  }
  const conflict: ImportFinding = {
    severity: 'error',
    column: '',
    text: '',
    message: `Stands for the same line as ${same.of}, but says something else. Nothing is overwritten.`,
    accepted: 'skip the row, or bring it in as a line of its own',
  };
  return { fate: 'attention', key, content, duplicateOf: same.of, findings: [...findings, conflict] };
}

function note(message: string): ImportFinding {
  return { severity: 'note', column: '', text: '', message };
}

/** The currency that most lines are in. */
function defaultCurrency(rows: readonly PlannedRow[], defaults: ImportDefaults): string {
  const counts = new Map<string, number>();
  for (const { part, orderLine } of rows) {
    const code = part?.currency ?? orderLine?.currency;
    if (code !== undefined) counts.set(code, (counts.get(code) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? defaults.currency;
}

function countsOf(rows: readonly PlannedRow[]): ImportPlan['counts'] {
  const counts = Object.fromEntries(rowFates.map((fate) => [fate, 0])) as Record<RowFate, number>;
  for (const { fate } of rows) counts[fate] += 1;
  return { ...counts, rowsInFile: rows.length };
}
