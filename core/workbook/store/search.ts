import type { SearchHit } from '../../contract/journal.ts';
import { all, type Connection } from './connection.ts';
import { foldText } from './folded-text.ts';

/** At most so many hits, the best first. */
export const mostHits = 40;

interface Found {
  readonly id: number;
  readonly title: string;
  readonly detail: string;
  readonly build: number | null;
}

/** A kind of record with the texts that are looked through besides its title. */
const record = (kind: SearchHit['kind'], table: string, title: string, detail: string, more = detail) => ({
  kind,
  sql: `SELECT id, ${title} AS title, ${detail} AS detail, build, ${more} AS more FROM ${table}
    WHERE gone = 0 AND retired_on IS NULL`,
});

/** Kinds with so few records that they are compared here, where letters with accents can be folded. */
const places = [
  {
    kind: 'order' as const,
    sql: `SELECT o.id, CASE o.number WHEN '' THEN 'Order at ' || v.name ELSE o.number END AS title,
      v.name || ', ' || o.ordered_on AS detail, o.build, o.note AS more
      FROM orders o JOIN vendors v ON v.id = o.vendor WHERE o.gone = 0`,
  },
  record('vendor', 'vendors', 'name', 'site', 'contact'),
  record('bin', 'bins', 'name', 'place'),
  record('system', 'systems', 'name', "''"),
  record('phase', 'phases', 'name', 'gate'),
  record('job', 'jobs', 'title', 'substr(note, 1, 120)', 'note'),
  record('tool', 'tools', 'name', 'whereabouts'),
  record('decision', 'decisions', 'title', 'owner', 'note'),
  record('boltGroup', 'bolt_groups', 'name', 'source', 'note'),
  record('check', 'checks', 'title', 'calculator', 'note'),
  record('measuringSheet', 'measuring_sheets', 'title', 'quantity', 'note'),
  record('port', 'ports', 'name', "trim(designation || ' ' || place)", 'note'),
  record('connection', 'connections', 'title', 'medium', 'note'),
  record('hoseLine', 'hose_lines', 'name', "''", 'note'),
  record('person', 'people', 'name', "''", 'note'),
  record('savedCase', 'saved_cases', 'title', 'calculator', 'note'),
  record('build', 'builds', 'name', "trim(car || ' ' || engine)"),
];

/**
 * Part lines carry their folded text, so that a hundred thousand of them are looked through in one scan. The plus keeps
 * SQLite from gathering the whole build by its index first: in the order of the table it can stop at the limit.
 */
const partsSql = (where: string, ofBuild: boolean): string =>
  `SELECT id, description AS title, trim(part_number || ' ' || maker) AS detail, build FROM parts
   WHERE gone = 0 AND retired_on IS NULL AND ${where}${ofBuild ? ' AND +build = ?' : ''} ORDER BY id LIMIT ${mostHits}`;

/**
 * Part lines that hold every word. Where more do than can be shown, those whose text begins with the words come first,
 * so that the limit never hides them behind older lines; neither query sorts what it leaves out.
 */
function findParts(connection: Connection, words: readonly string[], wanted: string, build?: number): Found[] {
  const own = build === undefined ? [] : [build];
  const holding = words.map(() => 'instr(folded, ?) > 0').join(' AND ');
  const found = all<Found>(connection, partsSql(holding, own.length > 0), ...words, ...own);
  if (found.length < mostHits) return found;
  const starting = 'substr(folded, 1, length(?)) = ?';
  const begun = all<Found>(connection, partsSql(starting, own.length > 0), wanted, wanted, ...own);
  const first = new Set(begun.map(({ id }) => id));
  return [...begun, ...found.filter(({ id }) => !first.has(id))].slice(0, mostHits);
}

/** How well a title answers: the whole of it, its beginning, beginnings of its words, somewhere, or only the rest. */
function rank(title: string, wanted: string, words: readonly string[]): number {
  const folded = foldText(title);
  if (folded === wanted) return 0;
  if (folded.startsWith(wanted)) return 1;
  if (words.every((word) => ` ${folded}`.includes(` ${word}`))) return 2;
  return words.every((word) => folded.includes(word)) ? 3 : 4;
}

/**
 * Everything of a workbook (or of one build and what all builds share) whose text holds every word, the best first.
 * Text without a word finds nothing.
 */
export function searchWorkbook(connection: Connection, text: string, build?: number): SearchHit[] {
  const wanted = foldText(text);
  const words = wanted.split(' ').filter((word) => word !== '');
  if (words.length === 0) return [];
  const parts = findParts(connection, words, wanted, build).map((row) => ({ kind: 'part' as const, row, order: 0 }));
  const others = places.flatMap(({ kind, sql }, order) =>
    all<Found & { more: string }>(connection, sql)
      .filter((row) => kind === 'build' || build === undefined || row.build === null || row.build === build)
      .filter((row) => {
        const folded = foldText(`${row.title} ${row.detail} ${row.more}`);
        return words.every((word) => folded.includes(word));
      })
      .map((row) => ({ kind, row, order: order + 1 })),
  );
  return [...parts, ...others]
    .map((hit) => ({ ...hit, rank: rank(hit.row.title, wanted, words) }))
    .sort((a, b) => a.rank - b.rank || a.order - b.order || a.row.id - b.row.id)
    .slice(0, mostHits)
    .map(({ kind, row }) => ({ kind, id: row.id, title: row.title, detail: row.detail, build: row.build }));
}
