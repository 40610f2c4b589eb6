/** How many requests a second are answered, and how many may come at once before that. */
export interface Rate {
  readonly perSecond: number;
  readonly burst: number;
}

const mostKeys = 1000;

/** Counts requests by key (a session, an address). A full allowance is given back at `perSecond`. */
export class RateLimit {
  readonly #rate: Rate;
  readonly #now: () => number;
  readonly #left = new Map<string, { allowance: number; at: number }>();

  constructor(rate: Rate, now: () => number = () => performance.now()) {
    this.#rate = rate;
    this.#now = now;
  }

  /** Takes one request from the key's allowance. Answers 0 if it may pass, else the whole seconds to wait. */
  wait(key: string): number {
    const now = this.#now();
    const before = this.#left.get(key) ?? { allowance: this.#rate.burst, at: now };
    const allowance = Math.min(this.#rate.burst, before.allowance + ((now - before.at) / 1000) * this.#rate.perSecond);
    if (!this.#left.has(key) && this.#left.size >= mostKeys) this.#left.clear();
    const passes = allowance >= 1;
    this.#left.set(key, { allowance: passes ? allowance - 1 : allowance, at: now });
    return passes ? 0 : Math.max(1, Math.ceil((1 - allowance) / this.#rate.perSecond));
  }
}
