import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { exportTables } from '../../core/contract/exchange.ts';
import type { Mapping } from '../../core/exchange/import-types.ts';
import { isCurrency } from '../../core/money/currency.ts';
import { localDay } from '../../core/procedures/host.ts';
import { choiceOption, chooseBuild, dayOption, fullPath, needExisting, table, withWorkbook } from './open.ts';
import { exitCodes, type Given, type Room, UsageError, type Verb } from './verb.ts';

const ending = '.hoistday';
const plainName = (path: string): string => basename(path, ending);

const actKey = (): string => crypto.randomUUID();

function writeOut(room: Room, given: Given, bytes: Uint8Array, fallback: string): string {
  const path = fullPath(room, given.text('out') ?? fallback);
  if (existsSync(path) && !given.flag('overwrite')) {
    throw new UsageError(`“${path}” is there already; name another with --out, or say --overwrite.`);
  }
  writeFileSync(path, bytes);
  return path;
}

export const create: Verb = {
  name: 'new',
  summary: 'make an empty workbook with one build',
  usage: 'FILE',
  takes: [1, 1],
  options: {
    currency: { type: 'string' },
    build: { type: 'string' },
    car: { type: 'string' },
    engine: { type: 'string' },
    started: { type: 'string' },
  },
  optionHelp: [
    ['--currency CODE', 'base currency, ISO 4217 (USD unless said)'],
    ['--build NAME', 'name of the build (the file’s name unless said)'],
    ['--car TEXT', 'the car'],
    ['--engine TEXT', 'the engine'],
    ['--started DAY', 'first day of the build, YYYY-MM-DD (today unless said)'],
  ],
  examples: [`new drover${ending} --currency EUR --build "Drover six"`],
  async run(given, room) {
    const path = fullPath(room, given.positionals[0] ?? '');
    const currency = given.text('currency') ?? 'USD';
    if (!isCurrency(currency)) throw new UsageError(`--currency ${currency}: three letters of ISO 4217, such as EUR.`);
    const host = room.openHost(dirname(path));
    try {
      await host.client.workbook.create({ name: plainName(path), currency, path });
      const on = dayOption(given, 'started') ?? localDay(room.now());
      const values = {
        name: given.text('build') ?? plainName(path),
        car: given.text('car') ?? '',
        engine: given.text('engine') ?? '',
        startedOn: on,
      };
      const { made } = await host.client.builds.create({ key: actKey(), on, values });
      return {
        data: { path, build: made[0], currency },
        lines: [`Made ${path} with the build “${values.name}”, in ${currency}.`],
      };
    } finally {
      host.close();
    }
  },
};

export const demo: Verb = {
  name: 'demo',
  summary: 'make the demo workbook: one builder, nine months',
  usage: '[FILE]',
  takes: [0, 1],
  options: {},
  optionHelp: [],
  examples: ['demo', `demo /tmp/demo${ending}`],
  async run(given, room) {
    const asked = given.positionals[0];
    const host = room.openHost(asked === undefined ? room.cwd : dirname(fullPath(room, asked)));
    try {
      if (asked === undefined) {
        const { open } = await host.client.workbook.demo();
        return { data: { path: open?.path }, lines: [`The demo is in ${open?.path ?? ''}.`] };
      }
      const path = fullPath(room, asked);
      if (existsSync(path)) throw new UsageError(`“${asked}” is there already; name another file.`);
      await host.makeDemo(path);
      return { data: { path }, lines: [`The demo is in ${path}.`] };
    } finally {
      host.close();
    }
  },
};

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
    `import drover${ending} drover-parts.csv --paid not-recorded`,
    `import drover${ending} drover-parts.csv --dry-run --json`,
  ],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const build = await chooseBuild(host, given);
      const list = needExisting(room, given.positionals[1] ?? '', 'The list');
      const file = new File([new Uint8Array(readFileSync(list))], basename(list));
      const encoding = given.text('encoding');
      const read = await host.client.exchange.read({ file, ...(encoding === undefined ? {} : { encoding }) });
      const sheet = Number(given.text('sheet') ?? '1') - 1;
      if (!Number.isInteger(sheet) || read.mappings[sheet] === undefined) {
        throw new UsageError(`--sheet ${given.text('sheet')}: this file has ${read.mappings.length}.`);
      }
      const savedMapping = given.text('mapping');
      const mapping =
        savedMapping === undefined
          ? undefined
          : (JSON.parse(readFileSync(needExisting(room, savedMapping, 'The mapping'), 'utf8')) as Mapping);
      const { currency } = await host.client.workbook.settings();
      const dateOrder = choiceOption(given, 'date-order', ['day-first', 'month-first']);
      const decimalMark = choiceOption(given, 'decimal-mark', ['.', ',']);
      const answers = Object.fromEntries(
        given.list('answer').map((pair) => {
          const at = pair.lastIndexOf('=');
          if (at < 1) throw new UsageError(`--answer ${pair}: written as ID=VALUE.`);
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
        const asked = open.map(
          ({ id, text, choices: offered }) => `${text}  --answer ${id}=${offered.map(({ value }) => value).join('|')}`,
        );
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
              .map(([fate, count]) => `${fate}: ${count}`),
            ...asked,
            ...unclear.map(({ row, findings }) => `row ${row}: ${findings.map(({ message }) => message).join(' ')}`),
          ],
        };
      }
      const on = dayOption(given, 'on') ?? localDay(room.now());
      const report = await host.client.exchange.bringIn({ ...used, key: actKey(), on, again: given.flag('again') });
      return {
        data: report,
        lines: [
          report.summary,
          ...report.rows.filter(({ text }) => text !== '').map(({ row, fate, text }) => `row ${row}: ${fate}: ${text}`),
        ],
      };
    }),
};

export const exportOut: Verb = {
  name: 'export',
  summary: 'write a table as CSV or XLSX, or the whole workbook as JSON',
  usage: 'FILE TABLE',
  takes: [2, 2],
  options: {
    build: { type: 'string' },
    'as-of': { type: 'string' },
    format: { type: 'string' },
    out: { type: 'string' },
    overwrite: { type: 'boolean' },
  },
  optionHelp: [
    ['TABLE', `workbook, or one of: ${exportTables.join(', ')}`],
    ['--format F', 'csv (the default) or xlsx'],
    ['--out PATH', 'the file to write'],
    ['--overwrite', 'replace a file that is there'],
    ['--build NAME', 'the build, by number or name, when there are several'],
    ['--as-of DAY', 'as it stood at the end of that day'],
  ],
  examples: [
    `export drover${ending} parts --format xlsx`,
    `export drover${ending} "hoist check" --out check.csv`,
    `export drover${ending} workbook --out drover.json`,
  ],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const name = given.positionals[1] ?? '';
      const base = plainName(given.positionals[0] ?? '');
      if (name === 'workbook') {
        const file = await host.client.exchange.exportWorkbook();
        const path = writeOut(room, given, new Uint8Array(await file.arrayBuffer()), `${base}.json`);
        return { data: { path, bytes: file.size }, lines: [`Wrote ${path}.`] };
      }
      const asked = exportTables.find((one) => one === name);
      if (asked === undefined) throw new UsageError(`TABLE ${name}: workbook, or one of ${exportTables.join(', ')}.`);
      const build = await chooseBuild(host, given);
      const format = choiceOption(given, 'format', ['csv', 'xlsx']) ?? 'csv';
      const asOf = dayOption(given, 'as-of');
      const file = await host.client.exchange.exportTable({
        build,
        table: asked,
        format,
        ...(asOf === undefined ? {} : { asOf }),
      });
      const path = writeOut(room, given, new Uint8Array(await file.arrayBuffer()), `${base} ${asked}.${format}`);
      return { data: { path, bytes: file.size }, lines: [`Wrote ${path}.`] };
    }),
};

export const backup: Verb = {
  name: 'backup',
  summary: 'make a verified backup beside the workbook; --list shows them',
  usage: 'FILE',
  takes: [1, 1],
  options: { list: { type: 'boolean' } },
  optionHelp: [['--list', 'list the backups instead of making one']],
  examples: [`backup drover${ending}`, `backup drover${ending} --list`],
  run: (given, room) =>
    withWorkbook(given, room, async ({ client }) => {
      if (given.flag('list')) {
        const list = await client.workbook.backups();
        const rows = list.map(({ file, madeAt, bytes, verified }) => [
          file,
          madeAt,
          String(bytes),
          verified ? 'verified' : 'DAMAGED',
        ]);
        return {
          data: list,
          lines:
            list.length === 0 ? ['No backups yet.'] : table(['file', 'made', 'bytes', 'state'], rows, new Set([2])),
        };
      }
      const made = await client.workbook.backUp();
      return { data: made, lines: [`Backed up as ${made.file} (${made.bytes} bytes), read back and checked.`] };
    }),
};

export const restore: Verb = {
  name: 'restore',
  summary: 'put a backup in the workbook’s place; the present file is kept',
  usage: 'FILE BACKUP',
  takes: [2, 2],
  options: {},
  optionHelp: [['BACKUP', 'a name from: backup FILE --list']],
  examples: [`restore drover${ending} drover.000012.2026-03-04T05-06-07Z.3fa9c2d1e0b7a8c4${ending}`],
  run: (given, room) =>
    withWorkbook(given, room, async ({ client }) => {
      const status = await client.workbook.restore({ file: basename(given.positionals[1] ?? '') });
      return { data: status, lines: [`Restored ${given.positionals[1]}; the file that was there is kept beside it.`] };
    }),
};
