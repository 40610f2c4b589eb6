import { existsSync } from 'node:fs';
import { dirname, isAbsolute, resolve } from 'node:path';
import { firstYear, isDate, lastYear } from '../../core/dates/calendar-date.ts';
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

/** A day given as an option. @throws UsageError when it isn't a day of the calendar written YYYY-MM-DD. */
export function dayOption(given: Given, name: string): string | undefined {
  const text = given.text(name);
  if (text === undefined) return undefined;
  if (!isDate(text)) {
    throw new UsageError(
      `--${name} ${text}: a day of the calendar, written YYYY-MM-DD, from ${firstYear} to ${lastYear}, such as 2026-03-14.`,
    );
  }
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
  if (!existsSync(full)) throw new UsageError(`${what} “${path}” does not exist: name a file that is there.`);
  return full;
}

/** A text in lines of at most `width` letters, broken at blanks; a longer word is broken where it must be. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    let rest = word;
    if (line !== '' && line.length + 1 + rest.length > width) {
      lines.push(line);
      line = '';
    }
    for (; rest.length > width; rest = rest.slice(width)) lines.push(rest.slice(0, width));
    line = line === '' ? rest : `${line} ${rest}`;
  }
  return [...lines, line];
}

/**
 * Lines of a table, columns padded.
 * @param right columns of numbers, by index from 0.
 * @param widest columns of text that are wrapped at so many letters: no word is lost, and a row stays on the screen.
 */
export function table(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  right: ReadonlySet<number> = new Set(),
  widest: Readonly<Record<number, number>> = {},
): string[] {
  const cells = rows.map((row) =>
    headings.map((_, index) => {
      const text = row[index] ?? '';
      const most = widest[index];
      return most === undefined ? [text] : wrapped(text, most);
    }),
  );
  // Not Math.max over a spread: a table may have more rows than a call may have arguments.
  const widths = headings.map((heading, index) =>
    cells.reduce(
      (most, row) => (row[index] ?? []).reduce((own, text) => Math.max(own, text.length), most),
      heading.length,
    ),
  );
  const line = (texts: readonly string[]): string =>
    widths
      .map((width, index) =>
        right.has(index) ? (texts[index] ?? '').padStart(width) : (texts[index] ?? '').padEnd(width),
      )
      .join('  ')
      .trimEnd();
  return [
    line(headings),
    line(widths.map((width) => '-'.repeat(width))),
    ...cells.flatMap((row) => {
      const high = row.reduce((most, cell) => Math.max(most, cell.length), 1);
      return Array.from({ length: high }, (_, index) => line(row.map((cell) => cell[index] ?? '')));
    }),
  ];
}
