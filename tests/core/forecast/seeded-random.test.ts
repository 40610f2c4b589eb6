import { expect, test } from 'vitest';
import { quantile } from '../../../core/forecast/distribution.ts';
import { splitMix64, trialDraws } from '../../../core/forecast/seeded-random.ts';

test('D51: SplitMix64 from seed 1234567', () => {
  // Source: published test vector of a public programming-task site; recomputed.
  const stream = splitMix64(1234567);
  expect(Array.from({ length: 5 }, () => stream.next())).toEqual([
    6457827717110365317n,
    3203168211198807973n,
    9817491932198370423n,
    4593380528125082431n,
    16408922859458223821n,
  ]);
});

test('D52: uniform and triangular draws from seed 42', () => {
  // Source: computed from the published algorithm, u = (x >> 11) * 2^-53.
  const stream = splitMix64(42);
  const units = [stream.unit(), stream.unit(), stream.unit()];
  expect(units.map((u) => u.toFixed(12))).toEqual(['0.741564878772', '0.159910392877', '0.278601130255']);
  const draws = units.map((u) => quantile({ kind: 'triangular', low: 2, likely: 5, high: 14 }, u));
  [8.716914434, 4.399327852, 5.17327479].forEach((wanted, index) => {
    expect(draws[index]).toBeCloseTo(wanted, 8);
  });
});

const mask = (1n << 64n) - 1n;

function mixed(state: bigint): bigint {
  let z = (state + 0x9e3779b97f4a7c15n) & mask;
  z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & mask;
  z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & mask;
  return z ^ (z >> 31n);
}

function fnv1a(text: string): bigint {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & mask;
  return hash;
}

test('draws for (seed, trial, element) follow the stream rule, reckoned here in big integers', () => {
  // Source: the rule SM64(seed XOR fnv1a64("trial/element")), recomputed here with the language's own 64-bit integers.
  // FNV-1a's published check value for "a" keeps the reference itself honest.
  expect(fnv1a('a')).toBe(0xaf63dc4c8601ec8cn);
  for (const seed of [0, 1, 42, 2 ** 40 + 7, Number.MAX_SAFE_INTEGER]) {
    const elements = ['job:1', 'job:217', 'part:ñ', '', 'job:21', 'job:2'];
    const draws = trialDraws(seed, elements);
    for (const trial of [1, 9, 10_000]) {
      const drawn = new Float64Array(elements.length);
      draws.fill(trial, drawn, 0, 1);
      elements.forEach((element, index) => {
        const wanted = Number(mixed(mixed(BigInt(seed) ^ fnv1a(`${trial}/${element}`))) >> 11n) * 2 ** -53;
        expect(drawn[index]).toBe(wanted);
      });
    }
  }
});

test('adding an element leaves the draws of the others as they were', () => {
  const few = trialDraws(7, ['a', 'b']);
  const many = trialDraws(7, ['new', 'b', 'a']);
  const [fewer, more] = [new Float64Array(2), new Float64Array(3)];
  few.fill(3, fewer, 0, 1);
  many.fill(3, more, 0, 1);
  expect([...fewer]).toEqual([more[2], more[1]]);
});

test('refuses a seed that is not a whole number from 0', () => {
  for (const seed of [-1, 1.5, Number.NaN, 2 ** 53]) expect(() => splitMix64(seed)).toThrow(/seed/);
});
