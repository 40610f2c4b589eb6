import { existsSync } from 'node:fs';
import { dirname, isAbsolute, resolve } from 'node:path';
import type { Host } from '../../core/procedures/host.ts';
import { type Given, type Room, UsageError } from './verb.ts';

export const fullPath = (room: Room, path: string): string => (isAbsolute(path) ? path : resolve(room.cwd, path));

/** Opens the workbook named first, lets `work` use it, and closes it whatever happens. */
export async function withWorkbook<T>(given: Given, room: Room, work: (host: Host) => Promise<T>): Promise<T> {
  const path = fullPath(room, given.positionals[0] ?? '');
  const host = room.openHost(dirname(path));
  try {
    host.openFile(path);
    return await work(host);
  } finally {
    host.close();
  }
}

/** The build that `--build` names (by number or name), or the only one. */
export async function chooseBuild(host: Host, given: Given): Promise<number> {
  const builds = await host.client.builds.list();
  const asked = given.text('build');
  if (asked !== undefined) {
    const found = builds.find(({ id, name }) => String(id) === asked || name.toLowerCase() === asked.toLowerCase());
    if (found === undefined) {
      throw new UsageError(
        `--build ${asked}: there is no such build. This workbook has: ${builds.map(({ id, name }) => `${id} ${name}`).join(', ') || 'none'}.`,
      );
    }
    return found.id;
  }
  const [only] = builds;
  if (only === undefined) throw new UsageError('This workbook has no build yet. Make one with: new FILE --build NAME');
  if (builds.length > 1) {
    throw new UsageError(
      `This workbook has ${builds.length} builds; say which with --build: ${builds.map(({ id, name }) => `${id} ${name}`).join(', ')}.`,
    );
  }
  return only.id;
}

/** A day given as an option. @throws UsageError when it isn't YYYY-MM-DD. */
export function dayOption(given: Given, name: string): string | undefined {
  const text = given.text(name);
  if (text === undefined) return undefined;
  if (!/^\d{4}-\d\d-\d\d$/.test(text))
    throw new UsageError(`--${name} ${text}: a day is written YYYY-MM-DD, such as 2026-03-14.`);
  return text;
}

export function choiceOption<const T extends string>(given: Given, name: string, choices: readonly T[]): T | undefined {
  const text = given.text(name);
  if (text === undefined) return undefined;
  const found = choices.find((choice) => choice === text);
  if (found === undefined) throw new UsageError(`--${name} ${text}: one of ${choices.join(', ')}.`);
  return found;
}

export function needExisting(room: Room, path: string, what: string): string {
  const full = fullPath(room, path);
  if (!existsSync(full)) throw new UsageError(`${what} “${path}” does not exist.`);
  return full;
}

/** Lines of a table, columns padded, numbers to the right. */
export function table(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  right: ReadonlySet<number> = new Set(),
): string[] {
  const widths = headings.map((heading, index) =>
    Math.max(heading.length, ...rows.map((row) => (row[index] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, index) => (right.has(index) ? cell.padStart(widths[index] ?? 0) : cell.padEnd(widths[index] ?? 0)))
      .join('  ')
      .trimEnd();
  return [line(headings), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)];
}
