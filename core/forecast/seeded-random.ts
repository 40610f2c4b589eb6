/**
 * Random numbers that are the same on every machine: the public SplitMix64 generator, and one stream for each trial and
 * element, so that a job added to the plan leaves the draws of all others as they were. 64-bit values are kept in two
 * halves of 32 bits, because big integers are some thirty times slower here.
 * Source: Steele, Lea & Flood 2014 (SplitMix64); FNV-1a of 64 bits as publicly described.
 */
import { Refusal } from '../refusal.ts';

/**
 * The last 64-bit result, in signed halves of 32 bits. A typed array, so that a draw allocates nothing: plain variables
 * would hold such numbers as objects in some engines.
 */
const state = new Int32Array(2);
const high = 0;
const low = 1;

/** The upper half of the lower 64 bits of (aHigh, aLow) times (bHigh, bLow); the lower half is a plain `Math.imul`. */
function upperProduct(aHigh: number, aLow: number, bHigh: number, bLow: number): number {
  const a0 = aLow & 0xffff;
  const a1 = aLow >>> 16;
  const b0 = bLow & 0xffff;
  const b1 = bLow >>> 16;
  const across = Math.imul(a0, b1);
  const over = Math.imul(a1, b0);
  const middle = (Math.imul(a0, b0) >>> 16) + (across & 0xffff) + (over & 0xffff);
  const carried = Math.imul(a1, b1) + (across >>> 16) + (over >>> 16) + (middle >>> 16);
  return (carried + Math.imul(aHigh, bLow) + Math.imul(aLow, bHigh)) | 0;
}

/** One step of SplitMix64 from the state in `state`, which then holds the result: the constant is added, the sum mixed. */
function advance(): void {
  const sum = ((state[low] as number) >>> 0) + 0x7f4a7c15;
  let h = ((state[high] as number) + 0x9e3779b9 + (sum > 0xffffffff ? 1 : 0)) | 0;
  let l = sum | 0;
  let x = h ^ (h >>> 30);
  let y = l ^ ((l >>> 30) | (h << 2));
  h = upperProduct(x, y, 0xbf58476d, 0x1ce4e5b9);
  l = Math.imul(y, 0x1ce4e5b9);
  x = h ^ (h >>> 27);
  y = l ^ ((l >>> 27) | (h << 5));
  h = upperProduct(x, y, 0x94d049bb, 0x133111eb);
  l = Math.imul(y, 0x133111eb);
  state[low] = l ^ ((l >>> 31) | (h << 1));
  state[high] = h ^ (h >>> 31);
}

/** `u = (x >> 11) * 2^-53` of the last result: 0 included, 1 excluded. */
function toUnit(): number {
  return (((state[high] as number) >>> 0) * 2097152 + ((state[low] as number) >>> 11)) / 9007199254740992;
}

/**
 * Hands a usable seed back.
 * @throws Refusal `bad-input` unless it is a whole number from 0 to 9007199254740991.
 */
export function requireSeed(seed: number): number {
  if (!Number.isSafeInteger(seed) || seed < 0) {
    throw new Refusal('bad-input', `The seed ${seed} is not a whole number from 0. Nothing was changed.`, {
      field: 'seed',
      accepted: 'a whole number from 0 to 9007199254740991',
    });
  }
  return seed;
}

/**
 * A plain stream of SplitMix64.
 * @returns the next 64-bit value (`next`) or the next number from 0 up to but not including 1 (`unit`).
 * @throws Refusal `bad-input` when the seed is not a whole number from 0.
 */
export function splitMix64(seed: number): { next(): bigint; unit(): number } {
  let stateHigh = Math.floor(requireSeed(seed) / 4294967296);
  let stateLow = seed >>> 0;
  const next = (): void => {
    state[high] = stateHigh;
    state[low] = stateLow;
    advance();
    const sum = stateLow + 0x7f4a7c15;
    stateHigh = (stateHigh + 0x9e3779b9 + (sum > 0xffffffff ? 1 : 0)) >>> 0;
    stateLow = sum >>> 0;
  };
  return {
    next() {
      next();
      return (BigInt((state[high] as number) >>> 0) << 32n) | BigInt((state[low] as number) >>> 0);
    },
    unit() {
      next();
      return toUnit();
    },
  };
}

/** Draws one number for each (seed, trial, element): the first of that element's own stream. */
export interface TrialDraws {
  /**
   * Writes the number of every element, from 0 up to but not including 1, for a trial counted from 1: that of the
   * element at `index` goes to `into[from + index * step]`.
   */
  fill(trial: number, into: Float64Array, from: number, step: number): void;
}

/**
 * Draws for a list of elements. The stream of an element is SplitMix64 seeded with SplitMix64 of
 * `seed XOR fnv1a64("trial/element")`; the rule is this product's own.
 * @param elements ids, each once; a draw depends on the id alone, not on its place in the list.
 */
export function trialDraws(seed: number, elements: readonly string[]): TrialDraws {
  const seedHigh = Math.floor(requireSeed(seed) / 4294967296);
  const seedLow = seed >>> 0;
  // In order of their ids, so that each has most of its beginning in common with the one before: what was hashed of
  // that beginning is kept, letter by letter.
  const sorted = elements.map((id, index) => ({ id, index })).sort((a, b) => (a.id < b.id ? -1 : 1));
  const places = Int32Array.from(sorted, ({ index }) => index);
  const bytes = sorted.map(({ id }) => new TextEncoder().encode(id));
  const ends = Int32Array.from(bytes, ({ length }) => length);
  const common = Int32Array.from(bytes, (text, at) => sharedLength(bytes[at - 1], text));
  const starts = new Int32Array(elements.length + 1);
  bytes.forEach((text, at) => {
    starts[at + 1] = (starts[at] as number) + text.length;
  });
  const letters = new Uint8Array(starts[elements.length] as number);
  bytes.forEach((text, at) => {
    letters.set(text, starts[at]);
  });
  const longest = ends.reduce((most, length) => Math.max(most, length), 0);
  const highs = new Int32Array(longest + 1);
  const lows = new Int32Array(longest + 1);
  return {
    fill(trial, into, from, step) {
      let h = 0xcbf29ce4 | 0;
      let l = 0x84222325 | 0;
      for (const character of `${trial}/`) {
        l ^= character.charCodeAt(0);
        h = hashHigh(h, l);
        l = Math.imul(l, 0x1b3);
      }
      highs[0] = h;
      lows[0] = l;
      for (let at = 0; at < places.length; at += 1) {
        const start = starts[at] as number;
        const end = ends[at] as number;
        let length = common[at] as number;
        h = highs[length] as number;
        l = lows[length] as number;
        while (length < end) {
          l ^= letters[start + length] as number;
          h = hashHigh(h, l);
          l = Math.imul(l, 0x1b3);
          length += 1;
          highs[length] = h;
          lows[length] = l;
        }
        state[high] = seedHigh ^ h;
        state[low] = seedLow ^ l;
        advance();
        advance();
        into[from + (places[at] as number) * step] = toUnit();
      }
    },
  };
}

/** How many letters two ids have in common at their beginning. */
function sharedLength(before: Uint8Array | undefined, text: Uint8Array): number {
  let length = 0;
  while (before !== undefined && length < text.length && before[length] === text[length]) length += 1;
  return length;
}

/** The upper half of (h, l) times FNV's prime, 2^40 + 0x1b3. */
function hashHigh(h: number, l: number): number {
  const carry = (((l & 0xffff) * 0x1b3) >>> 16) + (l >>> 16) * 0x1b3;
  return (Math.imul(h, 0x1b3) + (carry >>> 16) + (l << 8)) | 0;
}
