import { randomBytes } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Refusal } from '../../core/refusal.ts';

/** One file of the built page, ready to send. */
export interface PageFile {
  readonly type: string;
  readonly body: Uint8Array<ArrayBuffer>;
  readonly cacheControl: string;
}

/** The built page: every file by the path that asks for it, and the start page with a nonce of its own each time. */
export interface Bundle {
  /** The file that a request's path names, or null. The path is compared whole, never joined to a folder. */
  find(pathname: string): PageFile | null;
  /** The start page, with the nonce that its run-time styles carry. */
  startPage(): { readonly file: PageFile; readonly styleNonce: string };
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.ico': 'image/x-icon',
  '.webp': 'image/webp',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/** The bundler puts a hash of the content into these names, so what a name stands for never changes. */
const hashedName = /^\/assets\/.*-[\w-]{8,}\.\w+$/;

/**
 * Reads the built page (a few megabytes) into memory. Requests are then looked up in a fixed list, so there is no path
 * from a request to the disk and nothing to climb out of; links in the folder are left out for the same reason.
 * Throws a `Refusal` when the folder has no start page.
 */
export function loadBundle(folder: string): Bundle {
  const files = new Map<string, PageFile>();
  for (const [pathname, file] of filesIn(folder, '')) files.set(pathname, file);
  const start = files.get('/index.html');
  if (start === undefined) {
    throw new Refusal('not-found', 'The page has not been built, so there is nothing to show. Nothing was changed.', {
      field: 'dist/renderer',
      accepted: 'run "npm run build" first',
    });
  }
  files.delete('/index.html');
  const html = Buffer.from(start.body).toString('utf8');
  return {
    find: (pathname) => files.get(pathname) ?? null,
    startPage() {
      const styleNonce = randomBytes(18).toString('base64');
      const tag = `<meta name="style-nonce" content="${styleNonce}">`;
      const page = html.includes('<head>') ? html.replace('<head>', `<head>${tag}`) : `${tag}${html}`;
      return { file: { ...start, body: new TextEncoder().encode(page) }, styleNonce };
    },
  };
}

function* filesIn(folder: string, under: string): Generator<[string, PageFile]> {
  for (const entry of readable(folder)) {
    const pathname = `${under}/${entry.name}`;
    if (entry.isDirectory()) yield* filesIn(path.join(folder, entry.name), pathname);
    if (!entry.isFile() || entry.name.startsWith('.') || entry.name.endsWith('.map')) continue;
    yield [
      pathname,
      {
        type: types[path.extname(entry.name).toLowerCase()] ?? 'application/octet-stream',
        body: new Uint8Array(readFileSync(path.join(folder, entry.name))),
        cacheControl: hashedName.test(pathname)
          ? 'public, max-age=31536000, immutable'
          : pathname === '/index.html'
            ? 'no-store'
            : 'no-cache',
      },
    ];
  }
}

function readable(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return [];
  }
}
