import type { ImportChoices, ImportMatch } from '../contract/exchange.ts';
import { guessMapping } from '../exchange/guess-mapping.ts';
import { type ImportField, type ImportPlan, importFields, type Mapping } from '../exchange/import-types.ts';
import { matchOrdersToParts } from '../exchange/match-orders.ts';
import { planImport } from '../exchange/plan-import.ts';
import { readTables } from '../exchange/read-tables.ts';
import { type Encoding, encodings, type Table, type TableRead } from '../exchange/table-types.ts';
import { Refusal } from '../refusal.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { knownRows, partsForMatching, savedMapping } from '../workbook/store/imports.ts';
import type { Context } from './context.ts';

type Held = { readonly name: string; readonly bytes: Uint8Array };

/** So many files are held at a time; the oldest goes first. */
const mostHeld = 4;

/** Readings of a held file, by the encoding asked for: the same file is planned many times while it is looked at. */
const readings = new WeakMap<Held, Map<string, TableRead>>();

function encodingOf(text: string | undefined): Encoding | undefined {
  if (text === undefined || text === '') return undefined;
  const known = encodings.find((one) => one === text);
  if (known !== undefined) return known;
  throw new Refusal('bad-input', `“${text}” is not an encoding that can be read. Nothing was changed.`, {
    field: 'encoding',
    accepted: `one of ${encodings.join(', ')}`,
  });
}

async function readHeld(held: Held, encoding: string | undefined): Promise<TableRead> {
  const byEncoding = readings.get(held) ?? new Map<string, TableRead>();
  readings.set(held, byEncoding);
  const known = byEncoding.get(encoding ?? '');
  if (known !== undefined) return known;
  const chosen = encodingOf(encoding);
  const read = await readTables(held.bytes, held.name, chosen === undefined ? {} : { encoding: chosen });
  byEncoding.set(encoding ?? '', read);
  return read;
}

/** Reads a file and holds its bytes, so that nothing has to be sent twice. @throws Refusal `file-unreadable`. */
export async function holdFile(
  context: Context,
  file: File,
  encoding: string | undefined,
): Promise<{ token: string; read: TableRead }> {
  const held: Held = { name: file.name === '' ? 'list' : file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
  const read = await readHeld(held, encoding);
  const all = context.files.held;
  all.delete(read.sha256);
  all.set(read.sha256, held);
  for (const token of all.keys()) if (all.size > mostHeld) all.delete(token);
  return { token: read.sha256, read };
}

/** The mapping confirmed before for these headings, else our guess. */
export function mappingFor(connection: Connection | null, table: Table): Mapping {
  const saved = connection === null ? undefined : savedMapping(connection, table.fingerprint);
  return saved === undefined ? guessMapping(table) : checkedMapping(table, saved);
}

/** A mapping as this table takes it. @throws Refusal `bad-input` naming the column. */
function checkedMapping(table: Table, given: Mapping): Mapping {
  const taken = new Set<ImportField>();
  const columns = table.columns.map(({ index, title }) => {
    const asked = given.columns.find((column) => column.index === index);
    const field = asked?.field ?? null;
    if (field !== null && (!importFields.includes(field) || taken.has(field))) {
      throw new Refusal(
        'bad-input',
        taken.has(field)
          ? `Two columns are given to “${field}”. Nothing was changed.`
          : `“${String(field)}” is nothing that a column can hold. Nothing was changed.`,
        { field: title, accepted: taken.has(field) ? 'every field once' : importFields.join(', ') },
      );
    }
    if (field !== null) taken.add(field);
    return { index, title, field, because: asked?.because ?? ('nothing fits' as const) };
  });
  return { kind: given.kind === 'orders' ? 'orders' : 'parts', fingerprint: table.fingerprint, columns };
}

export interface PlannedImport {
  readonly held: Held;
  readonly read: TableRead;
  readonly mapping: Mapping;
  readonly plan: ImportPlan;
  readonly matches: readonly ImportMatch[];
}

/** What an import would do with the choices made so far. @throws Refusal `not-found` for a token that has gone. */
export async function planFor(context: Context, choices: ImportChoices): Promise<PlannedImport> {
  const { connection } = context.book();
  const held = context.files.held.get(choices.token);
  if (held === undefined) {
    throw new Refusal('not-found', 'The file is no longer at hand. Choose it again. Nothing was changed.', {
      field: 'token',
      accepted: 'a file that was just read',
    });
  }
  const read = await readHeld(held, choices.encoding ?? choices.answers['encoding']);
  const table = read.tables[choices.sheet];
  if (table === undefined) {
    throw new Refusal('bad-input', `The file has no sheet number ${choices.sheet + 1}. Nothing was changed.`, {
      field: 'sheet',
      accepted: `0 to ${read.tables.length - 1}`,
    });
  }
  const mapping =
    choices.mapping === undefined ? mappingFor(connection, table) : checkedMapping(table, choices.mapping);
  const { currency, dateOrder, decimalMark, paid, missingQuantityIsOne } = choices.defaults;
  const plan = planImport({
    table,
    mapping,
    answers: choices.answers,
    defaults: {
      currency,
      paid,
      missingQuantityIsOne,
      today: context.today(),
      ...(dateOrder === undefined ? {} : { dateOrder }),
      ...(decimalMark === undefined ? {} : { decimalMark }),
    },
    known: knownRows(connection, choices.build),
  });
  const matches = plan.kind === 'orders' ? matchesOf(connection, choices, plan) : [];
  return { held, read, mapping, plan, matches };
}

/** Which part line each order line is for: proposed by number and likeness, overruled by hand. */
function matchesOf(connection: Connection, choices: ImportChoices, plan: ImportPlan): ImportMatch[] {
  const parts = partsForMatching(connection, choices.build);
  const described = new Map(parts.map(({ id, description }) => [id, description]));
  const lines = plan.rows.flatMap(({ fate, orderLine }) =>
    orderLine === undefined || fate === 'duplicate' || fate === 'skipped' ? [] : [orderLine],
  );
  const proposed = matchOrdersToParts(
    lines,
    parts.map((part) => ({
      id: String(part.id),
      description: part.description,
      quantityMilli: part.needMilli,
      ...(part.partNumber === '' ? {} : { partNumber: part.partNumber }),
      ...(part.vendor === null ? {} : { vendor: part.vendor }),
      ...(part.orderedOn === null ? {} : { orderedOn: part.orderedOn }),
    })),
  );
  const describe = (id: number): string => described.get(id) ?? '';
  return proposed.map((match) => {
    const byHand = choices.matches?.[String(match.row)];
    const part = match.partId === null ? null : Number(match.partId);
    const alternatives = match.alternatives.map(({ partId, score }) => ({
      part: Number(partId),
      description: describe(Number(partId)),
      score,
    }));
    if (byHand === undefined) {
      const description = part === null ? '' : describe(part);
      return { row: match.row, part, how: match.how, score: match.score, description, alternatives };
    }
    if (byHand !== 0 && !described.has(byHand)) {
      throw new Refusal(
        'not-found',
        `Row ${match.row} is given to part line ${byHand}, which isn't on the list. Nothing was changed.`,
        {
          field: `matches.${match.row}`,
          accepted: 'a part line of this build, or 0 for a line of its own',
        },
      );
    }
    return {
      row: match.row,
      part: byHand === 0 ? null : byHand,
      how: 'by hand' as const,
      score: 1,
      description: byHand === 0 ? '' : describe(byHand),
      alternatives,
    };
  });
}
