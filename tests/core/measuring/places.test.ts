import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitWords, type SheetSetup, workOutSheet } from '../../../core/measuring/sheet.ts';

const none = { least: null, most: null, source: '' };
const sheet = (more: Partial<SheetSetup> = {}): SheetSetup => ({
  title: 'Main bores',
  quantity: 'bore',
  unit: 'mm',
  places: ['Main 1', 'Main 2'],
  readings: ['upright', 'across'],
  limits: none,
  clearance: none,
  resolution: null,
  uncertainty: null,
  expansionPpm: null,
  ...more,
});
const at = (place: string, name: string, value: number, temperatureC: number | null = null) => ({
  place,
  name,
  value,
  temperatureC,
});

describe('a place of which something is still to be read', () => {
  const limited = sheet({ places: ['Main 1'], limits: { least: 60.02, most: 60.05, source: 'manual' } });

  it('is missing though what was read is inside', () => {
    const result = workOutSheet(limited, [at('Main 1', 'upright', 60.03)]);
    expect(result.places[0]?.verdict).toBe('missing');
    expect(result.standing).toBe('missing');
    expect(result.says).toBe('Not measured: Main 1 (across).');
  });

  it('is out as soon as one reading is', () => {
    const result = workOutSheet(limited, [at('Main 1', 'upright', 60.06)]);
    expect(result.places[0]?.verdict).toBe('out');
    expect(result.standing).toBe('out');
    expect(result.says).toBe('Outside 60.02 to 60.05 mm: Main 1. Not measured: Main 1 (across).');
  });

  it('is missing where no limits are written down, too', () => {
    expect(workOutSheet(sheet(), [at('Main 1', 'upright', 60.06)]).places[0]?.verdict).toBe('missing');
  });

  it('counts its mean by what was read', () => {
    const [place] = workOutSheet(limited, [at('Main 1', 'upright', 60.03)]).places;
    expect(place?.mean).toBe(60.03);
    expect(place?.outOfRound).toBeNull();
  });
});

describe('worked examples', () => {
  it('bore map of three depths and two directions', () => {
    // Derived by hand, recomputed independently: case of calculator G6, out of round 6 µm, taper 8 µm, mean 86.0113333.
    const names = ['top along', 'top across', 'middle along', 'middle across', 'bottom along', 'bottom across'];
    const values = [86.012, 86.018, 86.01, 86.014, 86.005, 86.009];
    const result = workOutSheet(
      sheet({ places: ['1'], readings: names }),
      values.map((value, index) => at('1', names[index] ?? '', value)),
    );
    expect(result.places[0]?.outOfRound).toBeCloseTo(0.006, 9);
    expect(result.places[0]?.taper).toBeCloseTo(0.008, 9);
    expect(result.mean).toBeCloseTo(86.0113333, 6);
  });

  it('four readings of a journal', () => {
    // Derived by hand: case of calculator G6, mean 59.993, range 4 µm, deviation 1.82574186 µm.
    const values = [59.992, 59.994, 59.991, 59.995];
    const names = values.map((_, index) => `turn ${index + 1}`);
    const result = workOutSheet(
      sheet({ quantity: 'journal', places: ['1'], readings: names }),
      values.map((value, index) => at('1', names[index] ?? '', value)),
    );
    expect(result.mean).toBeCloseTo(59.993, 9);
    expect(result.range).toBeCloseTo(0.004, 9);
    expect(result.deviation).toBeCloseTo(0.001_825_741_86, 11);
  });

  it('an aluminium piston read at 30 °C with a steel micrometer', () => {
    // ISO 1 reference temperature 20 °C; linear expansion; derived by hand: case of calculator G7, 86.4226549 mm.
    const result = workOutSheet(sheet({ places: ['1'], readings: ['skirt'], expansionPpm: 20 }), [
      at('1', 'skirt', 86.43, 30),
    ]);
    expect(result.mean).toBeCloseTo(86.422_654_9, 6);
  });

  it('a main bearing: bore less journal', () => {
    // Derived by hand: case of calculator G1, clearance 0.053 mm.
    const journals = sheet({ quantity: 'journal', places: ['1'], readings: ['d'] });
    const shells = sheet({ places: ['1'], readings: ['d'], clearance: { least: 0.03, most: 0.065, source: 'manual' } });
    const taken = workOutSheet(journals, [at('1', 'd', 59.992)]);
    const [place] = workOutSheet(shells, [at('1', 'd', 60.045)], { setup: journals, places: taken.places }).places;
    expect(place?.clearance).toBeCloseTo(0.053, 9);
    expect(place?.clearanceVerdict).toBe('pass');
  });

  it('a clearance within its uncertainty of the limit is at the limit', () => {
    // JCGM 100:2008 5.1.2 by hand: √((0.004/2)² + (0.003/2)²) = 0.0025, doubled 0.005; 0.065 − 0.061 = 0.004 is less.
    const journals = sheet({ quantity: 'journal', places: ['1'], readings: ['d'], uncertainty: 0.003 });
    const shells = sheet({
      places: ['1'],
      readings: ['d'],
      uncertainty: 0.004,
      clearance: { least: 0.03, most: 0.065, source: 'manual' },
    });
    const taken = workOutSheet(journals, [at('1', 'd', 59.984)]);
    const result = workOutSheet(shells, [at('1', 'd', 60.045)], { setup: journals, places: taken.places });
    expect(result.places[0]?.clearanceUncertainty).toBeCloseTo(0.005, 12);
    expect(result.places[0]?.clearanceVerdict).toBe('at limit');
    expect(result.standing).toBe('in limits');
    expect(result.says).toContain('Within the uncertainty of a limit: 1.');
  });
});

describe('what is not made up', () => {
  it('a clearance has no uncertainty while one instrument’s is unknown', () => {
    const journals = sheet({ quantity: 'journal', places: ['1'], readings: ['d'] });
    const shells = sheet({ places: ['1'], readings: ['d'], uncertainty: 0.004 });
    const taken = workOutSheet(journals, [at('1', 'd', 59.992)]);
    const result = workOutSheet(shells, [at('1', 'd', 60.045)], { setup: journals, places: taken.places });
    expect(result.places[0]?.clearanceUncertainty).toBeNull();
  });

  it('a volume is not corrected as if it were a length', () => {
    const chamber = sheet({ quantity: 'volume', unit: 'cc', places: ['1'], readings: ['v'], expansionPpm: 23 });
    expect(workOutSheet(chamber, [at('1', 'v', 52.4, 35)]).mean).toBe(52.4);
  });

  it('one reading has no deviation, and none has no mean', () => {
    const one = sheet({ places: ['1'], readings: ['d'] });
    expect(workOutSheet(one, [at('1', 'd', 60)]).deviation).toBeNull();
    expect(workOutSheet(one, [])).toMatchObject({ count: 0, mean: null, range: null, standing: 'missing' });
  });

  it('without limits it is said that there are none', () => {
    const result = workOutSheet(sheet({ places: ['1'], readings: ['d'] }), [at('1', 'd', 60)]);
    expect(result.says).toBe('All measured; no limits are written down.');
    expect(limitWords(none, 'mm')).toBe('no limits');
  });
});

describe('properties', () => {
  const readings = fc.array(fc.integer({ min: 59_900, max: 60_100 }), { minLength: 2, maxLength: 8 });

  it('does not depend on the order in which readings were written down', () => {
    fc.assert(
      fc.property(readings, (list) => {
        const names = list.map((_, index) => `r${index}`);
        const setup = sheet({ places: ['1'], readings: names, limits: { least: 59.95, most: 60.05, source: '' } });
        const written = list.map((value, index) => at('1', names[index] ?? '', value / 1000));
        expect(workOutSheet(setup, written.toReversed())).toEqual(workOutSheet(setup, written));
      }),
    );
  });

  it('a wider limit never makes a verdict worse', () => {
    const rank = { out: 0, 'at limit': 1, pass: 2, missing: -1, 'no limits': 3 } as const;
    fc.assert(
      fc.property(
        fc.integer({ min: 59_900, max: 60_100 }),
        fc.integer({ min: 0, max: 80 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 20 }),
        (value, half, wider, unsure) => {
          const verdict = (width: number) =>
            workOutSheet(
              sheet({
                places: ['1'],
                readings: ['d'],
                uncertainty: unsure / 1000,
                limits: { least: (60_000 - width) / 1000, most: (60_000 + width) / 1000, source: '' },
              }),
              [at('1', 'd', value / 1000)],
            ).places[0]?.verdict ?? 'missing';
          expect(rank[verdict(half + wider)]).toBeGreaterThanOrEqual(rank[verdict(half)]);
        },
      ),
    );
  });
});
