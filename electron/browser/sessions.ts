import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A link's secret is good until `expires`; one that a program's arguments may have shown to others works once. */
interface Link {
  readonly digest: Buffer;
  readonly expires: number;
  readonly once: boolean;
}

const openingLife = 60_000;
const mostSessions = 64;

/**
 * Who may ask the host. A link carries a 256-bit secret; the page trades it for a 256-bit session in a cookie that
 * scripts can't read. Only SHA-256 digests are kept, and they are compared in constant time.
 */
export class Sessions {
  readonly cookieName: string;
  readonly #now: () => number;
  #links: Link[] = [];
  #sessions: Buffer[] = [];

  /** Cookies don't know ports, so the name does: two workbooks open at once don't sign each other out. */
  constructor(port: number, now: () => number = Date.now) {
    this.cookieName = `hoistday-${port}`;
    this.#now = now;
  }

  /** A secret for the link that is printed: good as long as this host runs. */
  newLink(): string {
    return this.#mint(Number.POSITIVE_INFINITY, false);
  }

  /** A secret for the link that is handed to the browser as a program's argument: good once, within a minute. */
  newOpeningLink(): string {
    return this.#mint(this.#now() + openingLife, true);
  }

  /** Trades a link's secret for a session. Answers the value of the Set-Cookie header, or null. */
  exchange(secret: string): string | null {
    const digest = sha256(secret);
    const now = this.#now();
    this.#links = this.#links.filter((link) => link.expires > now);
    const found = this.#links.filter((link) => timingSafeEqual(link.digest, digest))[0];
    if (found === undefined) return null;
    if (found.once) this.#links = this.#links.filter((link) => link !== found);
    const session = randomBytes(32).toString('base64url');
    this.#sessions = [...this.#sessions, sha256(session)].slice(-mostSessions);
    return `${this.cookieName}=${session}; Path=/; HttpOnly; SameSite=Strict`;
  }

  /** The key of the session in a Cookie header (for counting its requests), or null if there is no such session. */
  signedIn(cookieHeader: string | undefined): string | null {
    const value = cookieValue(cookieHeader, this.cookieName);
    if (value === null) return null;
    const digest = sha256(value);
    let known = false;
    for (const session of this.#sessions) known = timingSafeEqual(session, digest) || known;
    return known ? digest.toString('hex') : null;
  }

  #mint(expires: number, once: boolean): string {
    const secret = randomBytes(32).toString('base64url');
    this.#links.push({ digest: sha256(secret), expires, once });
    return secret;
  }
}

function sha256(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}

function cookieValue(header: string | undefined, name: string): string | null {
  for (const pair of header?.split(';') ?? []) {
    const at = pair.indexOf('=');
    if (at > 0 && pair.slice(0, at).trim() === name) return pair.slice(at + 1).trim();
  }
  return null;
}
