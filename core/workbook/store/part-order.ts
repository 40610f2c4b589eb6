import { all, type Connection } from './connection.ts';
import { remembered } from './remembered.ts';

/** Part lines of one system and phase: they stand together in the list, by number. */
interface Group {
  readonly system: number | null;
  readonly phase: number | null;
  readonly count: number;
}

const standing = (dropped: boolean): string => `p.gone = 0${dropped ? '' : ' AND p.retired_on IS NULL'}`;

/** The groups of a build's list in their order; read off the index `parts_in_order` alone. */
function groupsOf(connection: Connection, build: number, dropped: boolean): readonly Group[] {
  return remembered(connection, `part groups ${build} ${dropped}`, () =>
    all<Group>(
      connection,
      `SELECT g.system, g.phase, g.count FROM
       (SELECT p.system, p.phase, count(*) AS count FROM parts p WHERE p.build = ? AND ${standing(dropped)} GROUP BY p.system, p.phase) g
       LEFT JOIN systems s ON s.id = g.system LEFT JOIN phases f ON f.id = g.phase
       ORDER BY coalesce(s.sort, 1000000), g.system, coalesce(f.sort, 1000000), g.phase`,
      build,
    ),
  );
}

/** How many part lines a build's list has. */
export const countParts = (connection: Connection, build: number, dropped: boolean): number =>
  groupsOf(connection, build, dropped).reduce((sum, { count }) => sum + count, 0);

/**
 * Numbers of the part lines on one page of a build's list, in the order of system, phase and number. Sorting a hundred
 * thousand lines for each page would take longer than a person waits; a page touches one group or a few.
 */
export function pageOfParts(
  connection: Connection,
  build: number,
  dropped: boolean,
  from: number,
  count: number,
): number[] {
  const ids: number[] = [];
  let before = 0;
  for (const group of groupsOf(connection, build, dropped)) {
    if (ids.length >= count) break;
    const skipped = Math.max(0, from - before);
    if (skipped < group.count) {
      const own = all<{ id: number }>(
        connection,
        `SELECT p.id FROM parts p WHERE p.build = ? AND p.gone = 0 AND p.system IS ? AND p.phase IS ?${dropped ? '' : ' AND p.retired_on IS NULL'}
         ORDER BY p.id LIMIT ? OFFSET ?`,
        build,
        group.system,
        group.phase,
        count - ids.length,
        skipped,
      );
      for (const { id } of own) ids.push(id);
    }
    before += group.count;
  }
  return ids;
}
