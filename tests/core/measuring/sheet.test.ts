import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCalculator } from '../../../core/calculators/index.ts';
import { runCalculator } from '../../../core/calculators/run.ts';
import { lengthAt20, readingUncertainty, type SheetSetup, workOutSheet } from '../../../core/measuring/sheet.ts';

const none = { least: null, most: null, source: '' };
const setup = (more: Partial<SheetSetup> = {}): SheetSetup => ({
  title: 'Bores',
  quantity: 'bore',
  unit: 'mm',
  places: ['Cylinder 1'],
  readings: ['top thrust', 'top across', 'bottom thrust', 'bottom across'],
  limits: none,
  clearance: none,
  resolution: null,
  uncertainty: null,
  expansionPpm: null,
  ...more,
});
const reading = (place: string, name: string, value: number, temperatureC: number | null = null) => ({
  place,
  name,
  value,
  temperatureC,
});

describe('statistics of a place', () => {
  // Taper is the difference of the means of the levels, out-of-round the largest difference across one: derived by hand.
  it('tells taper from out-of-round by the levels that the readings name', () => {
    const result = workOutSheet(setup(), [
      reading('Cylinder 1', 'top thrust', 86.02),
      reading('Cylinder 1', 'top across', 86.01),
      reading('Cylinder 1', 'bottom thrust', 86.0),
      reading('Cylinder 1', 'bottom across', 85.998),
    ]);
    const [place] = result.places;
    expect(place?.outOfRound).toBeCloseTo(0.01, 9);
    // Means 86.015 and 85.999.
    expect(place?.taper).toBeCloseTo(0.016, 9);
    expect(place?.mean).toBeCloseTo(86.007, 9);
    expect(result.range).toBeCloseTo(0.022, 9);
  });

  it('gives the sample standard deviation', () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.6, gives s with n − 1; the figure of 2, 4, 4, 4, 5, 5, 7, 9
    // is √(32/7), worked by hand.
    const values = [2, 4, 4, 4, 5, 5, 7, 9];
    const names = values.map((_, index) => `r${index}`);
    const result = workOutSheet(
      setup({ readings: names }),
      values.map((value, index) => reading('Cylinder 1', `r${index}`, value)),
    );
    expect(result.deviation).toBeCloseTo(Math.sqrt(32 / 7), 12);
  });
});

describe('temperature', () => {
  it('corrects to 20 °C as calculator G7 does', () => {
    const calculator = findCalculator('G7');
    if (calculator === undefined) throw new Error('no G7');
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: -10, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (size, temperature, ppm) => {
          const answer = runCalculator(calculator, {
            inputs: {
              reading: { value: size, unit: 'mm' },
              part_temp: { value: temperature, unit: 'degC' },
              gauge_temp: { value: temperature, unit: 'degC' },
              part_alpha: { value: ppm, unit: 'um/m/K' },
              gauge_alpha: { value: 11.5, unit: 'um/m/K' },
            },
          });
          expect(lengthAt20(size, temperature, ppm)).toBeCloseTo(Number(answer.outputs['length_at_20C']?.value), 9);
        },
      ),
    );
  });

  it('leaves a reading at 20 °C, or without a temperature, as it is', () => {
    // ISO 1: the reference temperature is 20 °C.
    expect(lengthAt20(86, 20, 23)).toBe(86);
    expect(lengthAt20(86, null, 23)).toBe(86);
    expect(lengthAt20(86, 30, null)).toBe(86);
  });
});

describe('uncertainty', () => {
  it('adds half the expanded uncertainty and the step over √12 by squares', () => {
    // JCGM 100:2008 (GUM) 4.3.4 and F.2.2.1: a step δx has a standard uncertainty of 0.29 δx. (0.003² + 0.00029²)^½.
    expect(readingUncertainty(0.006, 0.001)).toBeCloseTo(Math.hypot(0.003, 0.001 / Math.sqrt(12)), 12);
    expect(readingUncertainty(null, 0.01)).toBeCloseTo(0.0029, 4);
    expect(readingUncertainty(null, null)).toBeNull();
  });

  it('gives a clearance the uncertainty of both sheets', () => {
    const shaft = setup({ title: 'Journals', readings: ['r'], uncertainty: 0.003 });
    const housing = setup({
      readings: ['r'],
      uncertainty: 0.004,
      clearance: { least: 0.04, most: 0.06, source: 'maker' },
    });
    const taken = workOutSheet(shaft, [reading('Cylinder 1', 'r', 59.748)]);
    const result = workOutSheet(housing, [reading('Cylinder 1', 'r', 59.797)], { setup: shaft, places: taken.places });
    const [place] = result.places;
    expect(place?.clearance).toBeCloseTo(0.049, 9);
    // Root of the sum of squares of 0.003 and 0.004, the 3-4-5 triangle.
    expect(place?.clearanceUncertainty).toBeCloseTo(0.005, 12);
    expect(place?.clearanceVerdict).toBe('pass');
    expect(result.standing).toBe('in limits');
  });
});

describe('limits', () => {
  const gap = setup({
    quantity: 'ring gap',
    readings: ['gap'],
    places: ['1', '2'],
    limits: { least: 0.4, most: 0.5, source: 'maker' },
    uncertainty: 0.02,
  });

  it.each([
    [0.45, 'pass'],
    [0.41, 'at limit'],
    [0.4, 'at limit'],
    [0.399, 'out'],
    [0.5, 'at limit'],
    [0.501, 'out'],
  ])('calls %d %s', (value, verdict) => {
    expect(workOutSheet(gap, [reading('1', 'gap', value)]).places[0]?.verdict).toBe(verdict);
  });

  it('says which places are out and which are missing', () => {
    const result = workOutSheet(gap, [reading('1', 'gap', 0.3)]);
    expect(result.standing).toBe('out');
    expect(result.says).toBe('Outside 0.4 to 0.5 mm: 1. Not measured: 2.');
  });

  it('counts a sum of binary fractions that equals the limit as inside', () => {
    const wide = setup({ readings: ['r'], limits: { least: null, most: 0.3, source: '' } });
    expect(workOutSheet(wide, [reading('Cylinder 1', 'r', 0.1 + 0.2)]).places[0]?.verdict).toBe('at limit');
  });

  it('asks for the other sheet where a clearance lacks it', () => {
    const result = workOutSheet(gap, [reading('1', 'gap', 0.45), reading('2', 'gap', 0.45)], {
      setup: gap,
      places: [{ mean: 0.4 }, { mean: null }],
    });
    expect(result.standing).toBe('missing');
    expect(result.says).toContain('2');
  });
});
