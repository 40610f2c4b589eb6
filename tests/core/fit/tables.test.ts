import { describe, expect, it } from 'vitest';
import { dashSizes } from '../../../core/fit/dash.ts';
import { lookalikeRow, nearlyAlike } from '../../../core/fit/near-threads.ts';
import { dashKinds } from '../../../core/fit/port.ts';
import {
  flareToBanjo,
  flareToBsp,
  flareToMetric,
  flareToNpt,
  flareToOringStud,
} from '../../../core/fit/tables/adapter-sizes.ts';
import { listedAlike, lookalikeThreads } from '../../../core/fit/tables/lookalike-threads.ts';
import { lookalikes } from '../../../core/fit/tables/lookalikes.ts';
import { coarseThreads, fineThreads } from '../../../core/fit/tables/metric-threads.ts';
import { inchBores, quickConnectSizes, splitFlangeSizes } from '../../../core/fit/tables/other-ends.ts';
import { bspThreads, nptThreads } from '../../../core/fit/tables/pipe-threads.ts';
import { sameThreadPairs } from '../../../core/fit/tables/same-thread.ts';
import { unifiedFittingThreads, unifiedThreads } from '../../../core/fit/tables/unified-threads.ts';
import { everyThread, nptThread, sameThread, threadOfTable, unifiedRows } from '../../../core/fit/thread.ts';
import { lookalikePairs } from './lookalike-pairs.ts';

const inches = (mixed: string): number => {
  const parts = mixed.split('-').map((part) => {
    const [top = 0, bottom = 1] = part.split('/').map(Number);
    return top / bottom;
  });
  return parts.reduce((sum, part) => sum + part, 0);
};

/** Rounding of a table that gives three significant digits. */
const threeDigits = (value: number): number => Number(value.toPrecision(3));

describe('the thread tables, against the formulas they come from', () => {
  it.each([...coarseThreads, ...fineThreads])('M$diameter x $pitch', (row) => {
    const { diameter: d, pitch: p } = row;
    // ISO 68-1 / ISO 724: d2 = d - 0.649519 P, d3 = d - 1.226869 P, D1 = d - 1.082532 P.
    expect(Math.abs(row.pitchDiameter - (d - 0.649519 * p))).toBeLessThan(0.00051);
    expect(Math.abs(row.outsideMinor - (d - 1.226869 * p))).toBeLessThan(0.00051);
    expect(Math.abs(row.insideMinor - (d - 1.082532 * p))).toBeLessThan(0.00051);
    // ISO 898-1: As = pi/4 ((d2 + d3)/2)^2, tabulated to three digits.
    const mean = (d - 0.649519 * p + d - 1.226869 * p) / 2;
    expect(Math.abs(row.stressArea / threeDigits((Math.PI / 4) * mean ** 2) - 1)).toBeLessThan(0.006);
    // Practice of ISO 2306: diameter less pitch, to the next drill of a tenth.
    expect(Math.abs(row.tapDrill - (d - p))).toBeLessThanOrEqual(0.0501);
  });

  it('has each metric thread once, and one coarse pitch a diameter', () => {
    const all = [...coarseThreads, ...fineThreads].map(({ diameter, pitch }) => `${diameter}x${pitch}`);
    expect(new Set(all).size).toBe(all.length);
    expect(new Set(coarseThreads.map(({ diameter }) => diameter)).size).toBe(coarseThreads.length);
    for (const fine of fineThreads) {
      const coarse = coarseThreads.find(({ diameter }) => diameter === fine.diameter);
      if (coarse !== undefined) expect(fine.pitch).toBeLessThan(coarse.pitch);
    }
  });

  // ASME B1.1: number sizes are 0.060 + 0.013 n inch; As = pi/4 (d - 0.974279/n)^2.
  it.each([...unifiedThreads, ...unifiedFittingThreads])('$size-$tpi $series', (row) => {
    const number = /^#(\d+)$/.exec(row.size);
    expect(row.majorInch).toBeCloseTo(number === null ? inches(row.size) : 0.06 + 0.013 * Number(number[1]), 6);
    if (row.stressAreaInch === undefined) return;
    const area = (Math.PI / 4) * (row.majorInch - 0.974279 / row.tpi) ** 2;
    expect(Math.abs(row.stressAreaInch / area - 1)).toBeLessThan(0.0012);
    // Shop practice: drills leave 55 to 85 % of the full thread height (1.299 P on the diameter).
    const share = (row.majorInch * 25.4 - (row.tapDrill ?? 0)) / (1.299038 * (25.4 / row.tpi));
    expect(share).toBeGreaterThan(0.55);
    expect(share).toBeLessThan(0.86);
  });

  it('has each unified size and count of threads once', () => {
    const all = unifiedRows.map(({ size, tpi }) => `${size}-${tpi}`);
    expect(new Set(all).size).toBe(all.length);
  });

  // ASME B1.20.1: E0 = D - (0.05 D + 1.1)/n, E1 = E0 + L1/16, in inches.
  it.each(nptThreads)('NPT $size', ({ tpi, pipeOutside, e1Inch, handTightInch }) => {
    const d = pipeOutside / 25.4;
    expect(e1Inch).toBeCloseTo(d - (0.05 * d + 1.1) / tpi + handTightInch / 16, 4);
  });

  // ISO 228-1 / ISO 7-1: depth of the thread 0.640327 P on each side.
  it.each(bspThreads)('BSP $size', ({ tpi, major, minor }) => {
    expect(Math.abs(minor - (major - 1.280654 * (25.4 / tpi)))).toBeLessThan(0.0015);
  });
});

describe('the tables, against each other', () => {
  it('name only threads that are listed, by dash in rising order', () => {
    for (const kind of dashKinds) {
      const rows = dashSizes[kind];
      for (const row of rows) expect(() => threadOfTable(row.thread)).not.toThrow();
      expect(rows.map(({ dash }) => dash)).toEqual(rows.map(({ dash }) => dash).toSorted((one, other) => one - other));
      const diameters = rows.map(({ thread }) => threadOfTable(thread).diameter);
      expect(diameters).toEqual(diameters.toSorted((one, other) => one - other));
    }
  });

  it('size a dash by the tube: sixteenths of an inch', () => {
    for (const row of dashKinds.flatMap((kind) => dashSizes[kind])) {
      if (row.tubeInch !== undefined) expect(inches(row.tubeInch) * 16).toBe(row.dash);
    }
  });

  it('give an O-ring boss the thread of the 37° flare and the O-ring 900 + dash', () => {
    // SAE J1926-1 and J514: identical in every dash that both list; AS568 numbers 902 to 924.
    for (const { dash, thread, oRing } of dashSizes.orb) {
      expect(oRing).toBe(String(900 + dash));
      const flare = dashSizes.flare37.find((row) => row.dash === dash);
      if (flare !== undefined) expect(flare.thread).toBe(thread);
    }
  });

  it('share 37° and 45° threads at -2, -3, -4, -5, -8 and -10 only', () => {
    // SAE J514 against J512/J513.
    const shared = dashSizes.flare45.filter(({ dash, thread }) =>
      dashSizes.flare37.some((row) => row.dash === dash && row.thread === thread),
    );
    expect(shared.map(({ dash }) => dash)).toEqual([2, 3, 4, 5, 8, 10]);
  });

  it('name only look-alikes of the catalogue, and threads that exist', () => {
    const names = new Set([...everyThread().map(({ name }) => name), ...bspThreads.map(({ size }) => `R ${size}`)]);
    for (const [one, other, id] of lookalikeThreads) {
      expect(lookalikeRow(id)).toBeDefined();
      expect([names.has(one), names.has(other)]).toEqual([true, true]);
    }
    for (const pair of listedAlike) for (const name of pair) expect(names.has(name)).toBe(true);
    for (const { lookalike, verdict } of sameThreadPairs) {
      if (verdict === 'lookalike') expect(lookalikeRow(lookalike ?? '')).toBeDefined();
      else expect(lookalike).toBeUndefined();
    }
    expect(new Set(lookalikes.map(({ id }) => id)).size).toBe(lookalikes.length);
  });

  it('judge two kinds alike whichever of them is male, but for plain threads and banjos', () => {
    // Rule of this program; R and G differ by design (ISO 7-1, ISO 228-1).
    for (const row of sameThreadPairs) {
      if (row.male === 'banjo' || [row.male, row.female].some((kind) => kind === 'r' || kind === 'g')) continue;
      const back = sameThreadPairs.find(({ male, female }) => male === row.female && female === row.male);
      expect(back?.verdict).toBe(row.verdict);
    }
  });

  it('size adapters by ends that exist', () => {
    for (const { usual, lessUsual } of flareToNpt)
      for (const size of [...usual, ...lessUsual]) expect(nptThread(size)).toBeDefined();
    for (const { usual } of flareToBsp)
      for (const size of usual) expect(bspThreads.some((row) => row.size === size)).toBe(true);
    const names = everyThread().map(({ name }) => name.replace(/ UN\w*$/, ''));
    for (const { usual, lessUsual } of [...flareToMetric, ...flareToOringStud, ...flareToBanjo]) {
      for (const thread of [...usual, ...lessUsual]) expect(names).toContain(thread);
    }
    for (const { dash } of [...flareToNpt, ...flareToMetric, ...flareToOringStud, ...flareToBsp, ...flareToBanjo]) {
      expect(dashSizes.flare37.some((row) => row.dash === dash)).toBe(true);
    }
  });

  it('have inch bores within a tenth of a millimetre of their fraction', () => {
    for (const { inch, mm } of inchBores) expect(Math.abs(mm - inches(inch) * 25.4)).toBeLessThan(0.0751);
    // SAE J2044 nominals lie a little under their trade inch.
    for (const { inch, mm } of quickConnectSizes) expect(Math.abs(mm - inches(inch) * 25.4)).toBeLessThan(1);
  });

  it('space code 62 wider than code 61 of the same dash', () => {
    // ISO 6162-1 and -2.
    for (const light of splitFlangeSizes.filter(({ code }) => code === 61)) {
      const heavy = splitFlangeSizes.find(({ code, dash }) => code === 62 && dash === light.dash);
      expect(heavy?.longMm).toBeGreaterThan(light.longMm);
      expect(heavy?.shortMm).toBeGreaterThan(light.shortMm);
    }
  });
});

// Computed from the thread tables with this program's rule for near threads, separately from its code.
describe('threads that look alike', () => {
  const all = everyThread();
  const named = (name: string) => {
    const found = all.find((thread) => thread.name === name);
    if (found === undefined) throw new Error(`${name} is not listed.`);
    return found;
  };

  it.each(lookalikePairs)('%s and %s by rule %s', (one, other, rule) => {
    expect(nearlyAlike(named(one), named(other))).toBe(rule);
    expect(nearlyAlike(named(other), named(one))).toBe(rule);
  });

  it('are no more than these among the threads they name', () => {
    const names = [...new Set(lookalikePairs.flatMap((pair) => pair.slice(0, 2)))];
    const found = names.flatMap((one, at) =>
      names
        .slice(at + 1)
        .filter((other) => nearlyAlike(named(one), named(other)) !== undefined)
        .map((other) => `${one} ~ ${other}`),
    );
    const known = new Set(lookalikePairs.flatMap(([one, other]) => [`${one} ~ ${other}`, `${other} ~ ${one}`]));
    expect(found.filter((pair) => !known.has(pair))).toEqual([]);
  });

  it('are never the same thread', () => {
    for (const one of all) expect(nearlyAlike(one, one)).toBeUndefined();
    const twins = all.flatMap((one, at) => all.slice(at + 1).filter((other) => sameThread(one, other)));
    expect(twins).toEqual([]);
  });
});
