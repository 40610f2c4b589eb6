import { createRouterClient, type RouterClient } from '@orpc/server';
import type { ChangeNotice } from '../contract/index.ts';
import { Refusal } from '../refusal.ts';
import { readSettings } from '../workbook/store/connection.ts';
import type { Book, Context } from './context.ts';
import { fileActions } from './files.ts';
import { answering } from './handler.ts';
import { router } from './router.ts';
import { createRpc } from './rpc.ts';

export interface HostOptions {
  /** Folder in which workbooks are made and found by name. */
  readonly folder: string;
  /** Desktop: paths come from native dialogs, so any is allowed. Browser: only files of the folder. */
  readonly allowAnyPath: boolean;
  readonly now: () => Date;
  readonly log?: (line: string) => void;
}

export interface Host {
  /** Answers /api/**; anything else is 404. The change feed is GET /api/changes. */
  handle(request: Request): Promise<Response>;
  /** Opens a workbook file. @throws Refusal */
  openFile(path: string): void;
  current(): { readonly name: string; readonly path: string; readonly readOnly: boolean } | null;
  /** Calls in this process, without a server: the command line, the demo, tests. */
  readonly client: RouterClient<typeof router>;
  /** Makes the demo workbook at a path, by the acts that a person would do. @throws Refusal */
  makeDemo(path: string): Promise<void>;
  close(): void;
}

const twoDigits = (number: number): string => String(number).padStart(2, '0');

/** The calendar day of an instant by the local clock. */
export function localDay(instant: Date): string {
  return `${instant.getFullYear()}-${twoDigits(instant.getMonth() + 1)}-${twoDigits(instant.getDate())}`;
}

/** One open workbook at a time, and the procedures over it. */
export function createHost(options: HostOptions): Host {
  const log = options.log ?? (() => undefined);
  let book: Book | null = null;
  const listeners = new Set<(notice: ChangeNotice) => void>();

  const announce = (notice: ChangeNotice): void => {
    for (const listener of listeners) listener(notice);
  };
  const context: Context = {
    book() {
      if (book === null) {
        throw new Refusal('not-found', 'No workbook is open. Open one, make a new one, or start with the demo.', {
          accepted: 'an open workbook',
        });
      }
      return book;
    },
    current: () => book,
    settings: () => readSettings(context.book().connection),
    now: options.now,
    today: () => localDay(options.now()),
    announce,
    files: fileActions({
      folder: options.folder,
      allowAnyPath: options.allowAnyPath,
      now: options.now,
      current: () => book,
      become(next) {
        book = next;
        announce({ act: 0, label: '', parts: null });
      },
    }),
  };
  const rpc = createRpc(log);

  return {
    client: createRouterClient(router, { context, interceptors: [answering(log)] }),
    async handle(request) {
      const { pathname } = new URL(request.url);
      if (pathname === '/api/changes') return changeFeed(request, listeners);
      if (pathname.startsWith('/api/rpc/')) {
        const response = await rpc.handle(request, context);
        if (response !== undefined) return response;
      }
      return new Response('{"message":"There is nothing here."}', {
        status: 404,
        headers: { 'content-type': 'application/json' },
      });
    },
    async makeDemo(path) {
      const { makeDemo } = await import('./demo.ts');
      await makeDemo(context, path);
    },
    openFile: (path) => context.files.open(path, false),
    current: () => (book === null ? null : { name: book.name, path: book.path, readOnly: book.readOnly }),
    close() {
      book?.close();
      book = null;
    },
  };
}

/** Server-sent events: one message an act. A line every 20 s keeps the connection from being taken for dead. */
function changeFeed(request: Request, listeners: Set<(notice: ChangeNotice) => void>): Response {
  if (request.method !== 'GET') return new Response(null, { status: 405, headers: { allow: 'GET' } });
  const encoder = new TextEncoder();
  let stop = (): void => undefined;
  const stream = new ReadableStream<Uint8Array>({
    start(controller) {
      const send = (text: string): void => {
        try {
          controller.enqueue(encoder.encode(text));
        } catch {
          stop();
        }
      };
      const listener = (notice: ChangeNotice): void => send(`data: ${JSON.stringify(notice)}\n\n`);
      const beat = setInterval(() => send(': still here\n\n'), 20_000);
      beat.unref?.();
      stop = () => {
        listeners.delete(listener);
        clearInterval(beat);
      };
      listeners.add(listener);
      send(': listening\n\n');
      request.signal.addEventListener('abort', () => {
        stop();
        try {
          controller.close();
        } catch {
          // The reader is gone already.
        }
      });
    },
    cancel: () => stop(),
  });
  return new Response(stream, { headers: { 'content-type': 'text/event-stream', 'cache-control': 'no-store' } });
}
