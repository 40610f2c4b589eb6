import { existsSync, openAsBlob, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { exportTables } from '../../core/contract/exchange.ts';
import { isCurrency } from '../../core/money/currency.ts';
import { localDay } from '../../core/procedures/host.ts';
import { choiceOption, chooseBuild, dayOption, fullPath, needExisting, table, withWorkbook } from './open.ts';
import { type Given, type Room, type Said, UsageError, type Verb } from './verb.ts';

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

/** A workbook out of an exported one: everything in it is as it was, entry by entry. */
async function createFrom(given: Given, room: Room, path: string): Promise<Said> {
  const from = given.text('from') ?? '';
  const other = Object.keys(create.options).find((name) => name !== 'from' && given.text(name) !== undefined);
  if (other !== undefined) {
    throw new UsageError(
      `--from brings everything along: leave out --${other}, and change it in the workbook afterwards.`,
    );
  }
  const blob = await openAsBlob(needExisting(room, from, 'The exported workbook'));
  const host = room.openHost(dirname(path));
  try {
    const file = new File([blob], basename(from));
    const made = await host.client.exchange.importWorkbook({ file, name: plainName(path) });
    return { data: made, lines: [`Made ${made.path} from ${basename(from)}, with ${made.entries} entries.`] };
  } finally {
    host.close();
  }
}

export const create: Verb = {
  name: 'new',
  summary: 'make an empty workbook with one build, or one from an export',
  usage: 'FILE',
  takes: [1, 1],
  options: {
    currency: { type: 'string' },
    build: { type: 'string' },
    car: { type: 'string' },
    engine: { type: 'string' },
    started: { type: 'string' },
    from: { type: 'string' },
  },
  optionHelp: [
    ['--currency CODE', 'base currency, ISO 4217 (USD unless said)'],
    ['--build NAME', 'name of the build (the file’s name unless said)'],
    ['--car TEXT', 'the car'],
    ['--engine TEXT', 'the engine'],
    ['--started DAY', 'first day of the build, YYYY-MM-DD (today unless said)'],
    ['--from JSONL', 'make it from a whole workbook written by: export FILE workbook (no other option then)'],
  ],
  examples: [`new drover${ending} --currency EUR --build "Drover six"`, `new again${ending} --from drover.json`],
  async run(given, room) {
    const path = fullPath(room, given.positionals[0] ?? '');
    if (given.text('from') !== undefined) return createFrom(given, room, path);
    const currency = given.text('currency') ?? 'USD';
    if (!isCurrency(currency)) throw new UsageError(`--currency ${currency}: three letters of ISO 4217, such as EUR.`);
    // Everything that can be wrong with the command line is said before a file is made.
    const on = dayOption(given, 'started') ?? localDay(room.now());
    const host = room.openHost(dirname(path));
    try {
      await host.client.workbook.create({ name: plainName(path), currency, path });
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
  examples: ['demo', `demo ours${ending}`],
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

export const exportOut: Verb = {
  name: 'export',
  summary: 'write a table as CSV or XLSX, or the whole workbook as JSON Lines',
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
