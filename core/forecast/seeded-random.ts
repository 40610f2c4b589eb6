/**
 * Random numbers that are the same on every machine: the public SplitMix64 generator, and one stream for each trial and
 * element, so that a job added to the plan leaves the draws of all others as they were. 64-bit values are kept in two
 * halves of 32 bits, because big integers are some thirty times slower here.
 * Source: Steele, Lea & Flood 2014 (SplitMix64); FNV-1a of 64 bits as publicly described.
 */
import { Refusal } from '../refusal.ts';

/** The last 64-bit result, in signed halves of 32 bits: small whole numbers, so that a draw allocates nothing. */
let high = 0;
let low = 0;

/** SplitMix64's finalizer on (stateHigh, stateLow), which already holds the added constant. */
function mix(stateHigh: number, stateLow: number): void {
  multiply(stateHigh ^ (stateHigh >>> 30), stateLow ^ ((stateLow >>> 30) | (stateHigh << 2)), 0xbf58476d, 0x1ce4e5b9);
  multiply(high ^ (high >>> 27), low ^ ((low >>> 27) | (high << 5)), 0x94d049bb, 0x133111eb);
  low = low ^ ((low >>> 31) | (high << 1));
  high = high ^ (high >>> 31);
}

/** The lower 64 bits of a product, into `high` and `low`. */
function multiply(aHigh: number, aLow: number, bHigh: number, bLow: number): void {
  const a0 = aLow & 0xffff;
  const a1 = aLow >>> 16;
  const b0 = bLow & 0xffff;
  const b1 = bLow >>> 16;
  const across = Math.imul(a0, b1);
  const over = Math.imul(a1, b0);
  const middle = (Math.imul(a0, b0) >>> 16) + (across & 0xffff) + (over & 0xffff);
  low = Math.imul(aLow, bLow);
  high =
    (Math.imul(a1, b1) +
      (across >>> 16) +
      (over >>> 16) +
      (middle >>> 16) +
      Math.imul(aHigh, bLow) +
      Math.imul(aLow, bHigh)) |
    0;
}

/** One step of SplitMix64 from a state: the constant is added, the sum mixed. */
function step(stateHigh: number, stateLow: number): void {
  const sum = (stateLow >>> 0) + 0x7f4a7c15;
  mix((stateHigh + 0x9e3779b9 + (sum > 0xffffffff ? 1 : 0)) | 0, sum | 0);
}

/** `u = (x >> 11) * 2^-53` of the last result: 0 included, 1 excluded. */
function toUnit(): number {
  return ((high >>> 0) * 2097152 + (low >>> 11)) / 9007199254740992;
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
  const advance = (): void => {
    step(stateHigh, stateLow);
    const sum = stateLow + 0x7f4a7c15;
    stateHigh = (stateHigh + 0x9e3779b9 + (sum > 0xffffffff ? 1 : 0)) >>> 0;
    stateLow = sum >>> 0;
  };
  return {
    next() {
      advance();
      return (BigInt(high >>> 0) << 32n) | BigInt(low >>> 0);
    },
    unit() {
      advance();
      return toUnit();
    },
  };
}

/** Draws one number for (seed, trial, element): the first of that element's own stream. */
export interface TrialDraws {
  /** Opens a trial, counted from 1. */
  beginTrial(trial: number): void;
  /** The number of the element at `index`, from 0 up to but not including 1. */
  unit(index: number): number;
}

/**
 * Draws for a list of elements. The stream of an element is SplitMix64 seeded with SplitMix64 of
 * `seed XOR fnv1a64("trial/element")`; the rule is this product's own.
 * @param elements ids, each once; a draw depends on the id alone, not on its place in the list.
 */
export function trialDraws(seed: number, elements: readonly string[]): TrialDraws {
  const seedHigh = Math.floor(requireSeed(seed) / 4294967296);
  const seedLow = seed >>> 0;
  const bytes = elements.map((id) => new TextEncoder().encode(id));
  const starts = new Int32Array(elements.length + 1);
  bytes.forEach((text, index) => {
    starts[index + 1] = (starts[index] as number) + text.length;
  });
  const all = new Uint8Array(starts[elements.length] as number);
  bytes.forEach((text, index) => {
    all.set(text, starts[index]);
  });
  let trialHigh = 0;
  let trialLow = 0;
  return {
    beginTrial(trial) {
      let h = 0xcbf29ce4 | 0;
      let l = 0x84222325 | 0;
      for (const character of `${trial}/`) {
        l ^= character.charCodeAt(0);
        h = hashHigh(h, l);
        l = Math.imul(l, 0x1b3);
      }
      trialHigh = h;
      trialLow = l;
    },
    unit(index) {
      let h = trialHigh;
      let l = trialLow;
      for (let at = starts[index] as number, end = starts[index + 1] as number; at < end; at += 1) {
        l ^= all[at] as number;
        h = hashHigh(h, l);
        l = Math.imul(l, 0x1b3);
      }
      step(seedHigh ^ h, seedLow ^ l);
      step(high, low);
      return toUnit();
    },
  };
}

/** The upper half of (h, l) times FNV's prime, 2^40 + 0x1b3. */
function hashHigh(h: number, l: number): number {
  const carry = (((l & 0xffff) * 0x1b3) >>> 16) + (l >>> 16) * 0x1b3;
  return (Math.imul(h, 0x1b3) + (carry >>> 16) + (l << 8)) | 0;
}
