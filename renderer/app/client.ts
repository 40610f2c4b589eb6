import { createORPCClient, isDefinedError } from '@orpc/client';
import { RPCLink } from '@orpc/client/fetch';
import type { ContractRouterClient } from '@orpc/contract';
import type { RefusalData } from '../../core/contract/common.ts';
import type { ChangeNotice, Contract } from '../../core/contract/index.ts';

/** The one data client. The same address on every shell: the page's own origin. */
const link = new RPCLink({ url: () => new URL('/api/rpc', globalThis.location.href).href });

export const api: ContractRouterClient<Contract> = createORPCClient(link);

/** What went wrong, in the one shape that screens show. Anything that isn't a refusal is said to be our fault. */
export function refusalOf(error: unknown): RefusalData {
  if (error instanceof Error && isDefinedError(error)) return (error as unknown as { data: RefusalData }).data;
  const offline = error instanceof TypeError;
  return {
    code: 'bad-input',
    message: offline
      ? 'The workbook does not answer: its program was closed or is starting. What you typed is kept here; nothing was changed.'
      : 'Something went wrong inside the program. Nothing was changed; what you typed is kept here.',
    detail: {},
  };
}

/** A new idempotency key: one for each thing that the user does, kept when the same request is sent again. */
export function actKey(): string {
  return crypto.randomUUID();
}

const hearing = new Set<(notice: ChangeNotice) => void>();
let feed: EventSource | null = null;

/**
 * Calls `heard` for every act made in any window. Reconnects by itself; returns a function that stops it. However many
 * listen, the window holds one connection: a browser allows only six to one place, over all its windows.
 */
export function listenForChanges(heard: (notice: ChangeNotice) => void): () => void {
  hearing.add(heard);
  if (feed === null) {
    feed = new EventSource(new URL('/api/changes', globalThis.location.href).href);
    feed.onmessage = (event: MessageEvent<string>) => {
      const notice = JSON.parse(event.data) as ChangeNotice;
      for (const each of hearing) each(notice);
    };
  }
  return () => {
    hearing.delete(heard);
    if (hearing.size > 0) return;
    feed?.close();
    feed = null;
  };
}
