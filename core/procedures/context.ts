import { implement, ORPCError } from '@orpc/server';
import type { ActResult, RefusalData } from '../contract/common.ts';
import { type ChangeNotice, contract } from '../contract/index.ts';
import type { Settings } from '../contract/workbook.ts';
import { daysBetween } from '../dates/calendar-date.ts';
import { Refusal } from '../refusal.ts';
import { type ActWriter, doneBefore, runAct } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { readSettings } from '../workbook/store/connection.ts';
import { needRecord } from '../workbook/store/record-tables.ts';

/** The open workbook as procedures see it. */
export interface Book {
  readonly connection: Connection;
  readonly path: string;
  readonly name: string;
  readonly readOnly: boolean;
  readonly notices: readonly string[];
  close(): void;
}

/** What every procedure is given. The clock and the disk are here and nowhere deeper. */
export interface Context {
  /** The open workbook. @throws Refusal `not-found` when none is open. */
  book(): Book;
  current(): Book | null;
  now(): Date;
  /** The open workbook's settings. */
  settings(): Settings;
  /** Today by the local clock, YYYY-MM-DD. */
  today(): string;
  /** Tells every open window what changed. */
  announce(notice: ChangeNotice): void;
  readonly files: FileActions;
}

/** Opening, making and copying workbook files: given by the host, which knows where files may lie. */
export interface FileActions {
  readonly folder: string;
  find(): { name: string; path: string; changedAt: string; bytes: number }[];
  create(name: string, path: string | undefined): void;
  open(path: string, readOnly: boolean): void;
  close(): void;
  /** Path for a new workbook of this name, checked. */
  pathFor(name: string): string;
  /** Before something large is written: a backup, when there is anything to lose. */
  backUpIfWritten(): void;
  backUp(): { file: string; bytes: number };
  backups(): { file: string; madeAt: string; bytes: number; verified: boolean }[];
  restore(file: string): void;
  /** Bytes of files that were read for an import and not yet brought in, by token. */
  readonly held: Map<string, { readonly name: string; readonly bytes: Uint8Array }>;
}

export function refusalData(refusal: Refusal): RefusalData {
  return {
    code: refusal.code,
    message: refusal.message,
    ...(refusal.field === undefined ? {} : { field: refusal.field }),
    ...(refusal.accepted === undefined ? {} : { accepted: refusal.accepted }),
    detail: Object.fromEntries(
      Object.entries(refusal.detail).map(([key, value]) => [key, Array.isArray(value) ? [...value] : value]),
    ) as RefusalData['detail'],
  };
}

export const refused = (data: RefusalData): ORPCError<'REFUSED', RefusalData> =>
  new ORPCError('REFUSED', { status: 409, defined: true, message: data.message, data });

/** The contract, ready to be answered: `procedures.parts.rows.handler(({ input, context }) => …)`. */
export const procedures = implement(contract)
  .$context<Context>()
  .use(({ context, next, path }, input, output) => {
    // A request that was sent again is answered as before, ahead of every check: what it asked for has been done. (An
    // import answers with its report, which it finds by itself.)
    const key = (input as { key?: unknown } | null | undefined)?.key;
    const book = context.current();
    if (typeof key === 'string' && book !== null && path[0] !== 'exchange' && path[0] !== 'workbook') {
      const done = doneBefore(book.connection, key);
      if (done !== undefined) return output(done);
    }
    return next();
  });

export interface ActInput {
  readonly key: string;
  readonly on: string;
}

/**
 * Does one act: refuses on a workbook that is open for reading, names who did it, notes a day in the future, writes
 * all entries in one transaction and tells every window.
 * @param label What was done, such as "Receipt of 12 lines"; `work` may return a better one.
 */
export function act(
  context: Context,
  input: ActInput,
  label: string,
  work: (writer: ActWriter) => string | undefined,
): ActResult {
  const book = context.book();
  if (book.readOnly) {
    throw new Refusal('read-only', 'This workbook is open for reading only. Nothing was changed.', {
      accepted: 'a workbook that this program may write',
    });
  }
  const author = readSettings(book.connection).author;
  const result = runAct(
    book.connection,
    { key: input.key, label, author, recordedAt: context.now().toISOString() },
    (writer) => {
      const ahead = daysBetween(context.today(), input.on);
      if (ahead > 0) writer.notices.push(`The day ${input.on} is ${ahead} days ahead of today.`);
      return work(writer);
    },
  );
  context.announce({ act: result.act, label: result.label, parts: result.parts.length > 2000 ? null : result.parts });
  return result;
}

/** The build, or a refusal naming the field. */
export function needBuild(context: Context, build: number): { readonly id: number; readonly name: string } {
  const record = needRecord(context.book().connection, 'builds', build, 'build');
  return { id: record.id, name: String(record['name']) };
}

/** "1 line", "12 lines". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
