import { readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { workbookExtension } from './dialogs.ts';

const mostRecent = 8;

/**
 * The workbook files among a program's arguments: existing files with our extension. Switches, and whatever else an
 * operating system puts there, are passed over.
 */
export function workbooksIn(args: readonly unknown[], from: string): string[] {
  return args.flatMap((text) => {
    if (typeof text !== 'string' || text.startsWith('-') || text.includes('\0')) return [];
    if (path.extname(text).toLowerCase() !== `.${workbookExtension}`) return [];
    const file = path.resolve(from, text);
    return statSync(file, { throwIfNoEntry: false })?.isFile() ? [file] : [];
  });
}

/** The workbooks opened lately, newest first, kept in a file of their own. */
export class RecentFiles {
  readonly #file: string;
  #list: readonly string[];

  constructor(file: string) {
    this.#file = file;
    this.#list = readList(file).slice(0, mostRecent);
  }

  /** Newest first. A file that is gone is still listed: opening it says so. */
  list(): readonly string[] {
    return this.#list;
  }

  /** Puts a workbook on top. True if the list is another one now. */
  note(workbook: string): boolean {
    if (this.#list[0] === workbook) return false;
    this.#keep([workbook, ...this.#list.filter((other) => other !== workbook)].slice(0, mostRecent));
    return true;
  }

  clear(): void {
    this.#keep([]);
  }

  #keep(list: readonly string[]): void {
    this.#list = list;
    try {
      writeFileSync(`${this.#file}.new`, JSON.stringify(list));
      renameSync(`${this.#file}.new`, this.#file);
    } catch {
      // The list lasts until the program is closed.
    }
  }
}

function readList(file: string): string[] {
  try {
    const read: unknown = JSON.parse(readFileSync(file, 'utf8'));
    return Array.isArray(read) ? read.filter((entry) => typeof entry === 'string' && path.isAbsolute(entry)) : [];
  } catch {
    return [];
  }
}
