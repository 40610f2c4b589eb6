import { readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Mapping } from '../../core/exchange/import-types.ts';
import type { ImportQuestion } from '../../core/exchange/table-types.ts';
import { localDay } from '../../core/procedures/host.ts';
import { choiceOption, chooseBuild, dayOption, fullPath, needExisting, withWorkbook } from './open.ts';
import { exitCodes, type Given, type Room, UsageError, type Verb } from './verb.ts';

const importOptions = {
  build: { type: 'string' },
  sheet: { type: 'string' },
  mapping: { type: 'string' },
  'save-mapping': { type: 'string' },
  answer: { type: 'string', multiple: true },
  paid: { type: 'string' },
  'date-order': { type: 'string' },
  'decimal-mark': { type: 'string' },
  encoding: { type: 'string' },
  'missing-quantity-is-one': { type: 'boolean' },
  'skip-unclear': { type: 'boolean' },
  'dry-run': { type: 'boolean' },
  again: { type: 'boolean' },
  on: { type: 'string' },
} as const;

/** A mapping saved before. @throws UsageError when the file can't be read as one. */
function savedMapping(given: Given, room: Room): Mapping | undefined {
  const name = given.text('mapping');
  if (name === undefined) return undefined;
  const text = readFileSync(needExisting(room, name, 'The mapping'), 'utf8');
  const wanted = `--mapping ${name}: this is not a mapping; name a file that --save-mapping wrote.`;
  try {
    const mapping = JSON.parse(text) as Mapping | null;
    if (mapping !== null && typeof mapping === 'object' && 'columns' in mapping) return mapping;
  } catch {
    throw new UsageError(wanted);
  }
  throw new UsageError(wanted);
}

const fateWords: Readonly<Record<string, string>> = {
  part: 'part lines',
  'order-line': 'order lines',
  section: 'headings between',
  total: 'totals left out',
  blank: 'blank rows',
  header: 'header rows',
  duplicate: 'said twice',
  attention: 'need attention',
  skipped: 'left out',
  rowsInFile: 'rows in the file',
};

/** Quoted for a shell when it has to be. */
const shellWord = (text: string): string => (/^[\w:.,=/-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`);

/** A question of the import with every answer as it would be typed. */
function questionLines(question: ImportQuestion): string[] {
  const { id, text, choices, guess } = question;
  const typed = choices.map(({ value, label, preview }) => ({
    option: `--answer ${shellWord(`${id}=${value}`)}`,
    says: `${label}${preview === undefined ? '' : `: ${preview}`}${value === guess ? ' (likely)' : ''}`,
  }));
  const width = typed.reduce((most, { option }) => Math.max(most, option.length), 0);
  return ['', text, ...typed.map(({ option, says }) => `  ${option.padEnd(width)}  ${says}`)];
}

export const bringIn: Verb = {
  name: 'import',
  summary: 'bring in a parts or orders list (CSV, TSV, XLSX)',
  usage: 'FILE LIST',
  takes: [2, 2],
  options: importOptions,
  optionHelp: [
    ['--build NAME', 'the build, by number or name, when there are several'],
    ['--sheet N', 'which sheet of a spreadsheet, counted from 1'],
    ['--mapping JSON', 'a mapping saved before; otherwise columns are guessed'],
    ['--save-mapping JSON', 'write the mapping used to this file'],
    ['--answer ID=VALUE', 'answer a question that the import asked; may be repeated'],
    ['--paid STATE', 'paid, not-paid or not-recorded (the default): what is known of payments'],
    ['--date-order ORDER', 'day-first or month-first, where a column doesn’t tell'],
    ['--decimal-mark MARK', '. or , where a column doesn’t tell'],
    ['--encoding NAME', 'letters of a text file, when they can’t be told'],
    ['--missing-quantity-is-one', 'a blank quantity counts as one'],
    ['--skip-unclear', 'leave rows out that need attention; they are listed'],
    ['--dry-run', 'say what would be written and stop'],
    ['--again', 'bring the same file in a second time'],
    ['--on DAY', 'day of the entries that the list gives no date for (today unless said)'],
  ],
  examples: [
    `import drover.hoistday drover-parts.csv --paid not-recorded`,
    `import drover.hoistday drover-parts.csv --dry-run --json`,
  ],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const on = dayOption(given, 'on') ?? localDay(room.now());
      const build = await chooseBuild(host, given);
      const list = needExisting(room, given.positionals[1] ?? '', 'The list');
      const file = new File([new Uint8Array(readFileSync(list))], basename(list));
      const encoding = given.text('encoding');
      const read = await host.client.exchange.read({ file, ...(encoding === undefined ? {} : { encoding }) });
      const sheet = Number(given.text('sheet') ?? '1') - 1;
      if (!Number.isInteger(sheet) || read.mappings[sheet] === undefined) {
        throw new UsageError(`--sheet ${given.text('sheet')}: a whole number from 1 to ${read.mappings.length}.`);
      }
      const mapping = savedMapping(given, room);
      const { currency } = await host.client.workbook.settings();
      const dateOrder = choiceOption(given, 'date-order', ['day-first', 'month-first']);
      const decimalMark = choiceOption(given, 'decimal-mark', ['.', ',']);
      const answers = Object.fromEntries(
        given.list('answer').map((pair) => {
          const at = pair.lastIndexOf('=');
          if (at < 1) throw new UsageError(`--answer ${pair}: written as ID=VALUE, both as the question names them.`);
          return [pair.slice(0, at), pair.slice(at + 1)];
        }),
      );
      const choices = {
        token: read.token,
        sheet,
        ...(mapping === undefined ? {} : { mapping }),
        answers,
        defaults: {
          currency,
          ...(dateOrder === undefined ? {} : { dateOrder }),
          ...(decimalMark === undefined ? {} : { decimalMark }),
          paid: choiceOption(given, 'paid', ['paid', 'not-paid', 'not-recorded']) ?? 'not-recorded',
          missingQuantityIsOne: given.flag('missing-quantity-is-one'),
        },
        build,
        ...(encoding === undefined ? {} : { encoding }),
      } as const;
      let planned = await host.client.exchange.plan(choices);
      let used: Parameters<typeof host.client.exchange.plan>[0] = choices;
      if (given.flag('skip-unclear')) {
        const skip = Object.fromEntries(
          planned.plan.rows.filter(({ fate }) => fate === 'attention').map(({ row }) => [`row:${row}`, 'skip']),
        );
        used = { ...choices, answers: { ...skip, ...answers } };
        planned = await host.client.exchange.plan(used);
      }
      const saveTo = given.text('save-mapping');
      if (saveTo !== undefined) writeFileSync(fullPath(room, saveTo), `${JSON.stringify(planned.mapping, null, 2)}\n`);
      const { plan } = planned;
      const open = plan.questions.filter(({ answer, blocking }) => blocking && answer === null);
      if (given.flag('dry-run') || !plan.ready) {
        const unclear = plan.rows.filter(({ fate }) => fate === 'attention');
        return {
          data: {
            ready: plan.ready,
            counts: plan.counts,
            questions: plan.questions,
            rows: plan.rows,
            sectionTotals: plan.sectionTotals,
            matches: planned.matches,
          },
          exit: plan.ready ? exitCodes.done : exitCodes.refused,
          lines: [
            plan.ready ? 'Ready; nothing was written.' : 'Not ready; nothing was written.',
            ...Object.entries(plan.counts)
              .filter(([, count]) => count > 0)
              .map(([fate, count]) => `${(fateWords[fate] ?? fate).padEnd(18)} ${String(count).padStart(6)}`),
            ...open.flatMap(questionLines),
            ...unclear.map(({ row, findings }) => `row ${row}: ${findings.map(({ message }) => message).join(' ')}`),
          ],
        };
      }
      const report = await host.client.exchange.bringIn({
        ...used,
        key: crypto.randomUUID(),
        on,
        again: given.flag('again'),
      });
      return {
        data: report,
        lines: [
          report.summary,
          ...report.rows.filter(({ text }) => text !== '').map(({ row, text }) => `row ${row}: ${text}`),
        ],
      };
    }),
};
