import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Refusal } from '../../core/refusal.ts';
import type { HostLike } from '../host-like.ts';
import { loadBundle } from '../page/bundle.ts';
import { Desk } from './desk.ts';
import { allowedHosts } from './gate.ts';
import type { Rate } from './rate.ts';
import { refuseUnreadable } from './replies.ts';
import { Sessions } from './sessions.ts';

/** Times in milliseconds and counts that a client has to stay within. */
interface Limits {
  readonly headersTimeout: number;
  readonly requestTimeout: number;
  readonly keepAliveTimeout: number;
  readonly checkingInterval: number;
  readonly maxConnections: number;
  readonly rate: Rate;
}

const defaultLimits: Limits = {
  headersTimeout: 5_000,
  requestTimeout: 30_000,
  keepAliveTimeout: 5_000,
  checkingInterval: 1_000,
  maxConnections: 64,
  rate: { perSecond: 100, burst: 400 },
};

/** What the shell serves and where; `port` 0 or absent takes a free one. */
export interface BrowserShellOptions {
  readonly host: HostLike;
  readonly rendererFolder: string;
  readonly port?: number;
  readonly limits?: Partial<Limits>;
  readonly log?: (line: string) => void;
}

/** A running shell. `url` is the link for people; it works as long as the shell runs. */
export interface BrowserShell {
  readonly url: string;
  readonly port: number;
  /** A link that works once, within a minute: for handing to another program, whose arguments others may see. */
  openingUrl(): string;
  /** Ends every connection, streams too, and frees the port. The host stays open. */
  close(): Promise<void>;
}

const addressOnly = '127.0.0.1';

/**
 * Serves the page and the host's /api on this machine's own address, which no other machine reaches. Throws a `Refusal`
 * when the page isn't built or the port is taken; it never falls back to another address.
 */
export async function startBrowserShell(options: BrowserShellOptions): Promise<BrowserShell> {
  const bundle = loadBundle(options.rendererFolder);
  const limits = { ...defaultLimits, ...options.limits };
  const server = createServer({
    headersTimeout: limits.headersTimeout,
    requestTimeout: limits.requestTimeout,
    keepAliveTimeout: limits.keepAliveTimeout,
    connectionsCheckingInterval: limits.checkingInterval,
    maxHeaderSize: 16 * 1024,
    requireHostHeader: true,
  });
  server.maxConnections = limits.maxConnections;
  const port = await listen(server, options.port ?? 0);
  const sessions = new Sessions(port);
  const desk = new Desk({
    host: options.host,
    bundle,
    sessions,
    rate: limits.rate,
    origin: `http://${addressOnly}:${port}`,
    hosts: allowedHosts(port),
    log: options.log ?? (() => undefined),
  });
  server.on('request', (request, response) => void desk.answer(request, response));
  server.on('checkContinue', (request, response) => void desk.answer(request, response));
  server.on('upgrade', (_request, socket) => socket.destroy());
  server.on('connect', (_request, socket) => socket.destroy());
  server.on('clientError', refuseUnreadable);
  const link = (secret: string) => `http://${addressOnly}:${port}/#t=${secret}`;
  return {
    url: link(sessions.newLink()),
    port,
    openingUrl: () => link(sessions.newOpeningLink()),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (failure: NodeJS.ErrnoException) => reject(portRefusal(failure, port)));
    server.listen({ host: addressOnly, port, exclusive: true }, () => resolve((server.address() as AddressInfo).port));
  });
}

function portRefusal(failure: NodeJS.ErrnoException, port: number): Error {
  const why: Readonly<Record<string, string>> = {
    EADDRINUSE: 'is used by another program',
    EACCES: 'may not be used by this account',
    EADDRNOTAVAIL: 'can’t be had: this machine’s own address is missing',
  };
  const reason = why[failure.code ?? ''];
  if (reason === undefined) return failure;
  return new Refusal('bad-input', `Port ${port} ${reason}. Nothing was changed.`, {
    field: 'port',
    accepted: 'another number from 1024 to 65535, or none for a free one',
  });
}
