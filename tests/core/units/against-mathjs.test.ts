import { all, create, type FactoryFunctionMap, type Unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { type Dimension, dimensions } from '../../../core/units/dimensions.ts';
import { toSI, unitsOf } from '../../../core/units/measure.ts';

/**
 * Every factor against an independent library of units. Where the library has the unit under another name, or only its
 * parts (lbf and ft, but no lbf·ft), the expression beside the symbol says so.
 */
const library = create(all as FactoryFunctionMap);

/** Our symbol in the library's words, where they differ. One symbol is one unit, whatever the dimension. */
const words: Readonly<Record<string, string>> = {
  '-': '1',
  '%': '1/100',
  um: 'micrometer',
  thou: 'mil',
  gn: '(9.80665 m)/s^2',
  rpm: 'cycle/minute',
  TPI: '1/in',
  in2: 'in^2',
  in3: 'in^3',
  cm2: 'cm^2',
  mm2: 'mm^2',
  m2: 'm^2',
  m3: 'm^3',
  L: 'litre',
  lb: 'lbm',
  'm/s2': 'm/s^2',
  'ft/s2': 'ft/s^2',
  'ft/min': 'ft/minute',
  'km/h': 'km/hour',
  mph: 'mile/hour',
  h: 'hour',
  min: 'minute',
  'N*m': 'N m',
  'lbf*ft': 'lbf ft',
  'lbf*in': 'lbf in',
  'kgf*m': 'kgf m',
  'lb/min': 'lbm/minute',
  'lb/h': 'lbm/hour',
  'kg/h': 'kg/hour',
  'L/h': 'litre/hour',
  'L/min': 'litre/minute',
  'cc/min': 'cc/minute',
  'gal/h': 'gal/hour',
  'gal/min': 'gal/minute',
  'm3/s': 'm^3/s',
  PS: '(75 kgf m)/s',
  ksi: '1000 psi',
  dK: 'K',
  // A step of one °F is a step of one °R.
  ddegF: 'degR',
  'kg/m3': 'kg/m^3',
  'lb/gal': 'lbm/gal',
  'mPa*s': 'mPa s',
  'Pa*s': 'Pa s',
  'g/kWh': 'g/(kW hour)',
  'lb/hp/h': 'lbm/(hp hour)',
  'Btu/lb': 'BTU/lbm',
  'MJ/L': 'MJ/litre',
  'J/m3': 'J/m^3',
  'J/kg/K': 'J/(kg K)',
  'kJ/kg/K': 'kJ/(kg K)',
  'um/m/K': '(micrometer/m)/K',
  'ohm/kft': 'ohm/(1000 ft)',
  mohm: 'milliohm',
};

/** What the library lacks even in parts, and what stands behind the factor instead. */
const lacking: Readonly<Record<string, string>> = {
  inHg: 'conventional inch of mercury, NIST SP 811 Appendix B: 3386.389 Pa',
  cP: 'centipoise, NIST SP 811 Appendix B: 0.001 Pa·s',
  degCam: 'an angle on the camshaft, which is no unit but a count of its own',
};

const every = Object.keys(dimensions) as Dimension[];
const wordFor = (unit: string): string => words[unit] ?? unit;

/** The value in SI base units that the library gives to an expression. */
function libraryValue(expression: string): number {
  const value: unknown = library.evaluate(expression.startsWith('1') ? expression : `1 (${expression})`);
  if (typeof value === 'number') return value;
  return (value as Unit).toSI().toJSON().value;
}

/** One degree as a step; the library reads `2 degC` as a place on the scale. */
const stepOf = (unit: string): number => library.unit(2, unit).toNumber('K') - library.unit(1, unit).toNumber('K');

describe('factors against an independent library', () => {
  const compared = every.flatMap((dimension) =>
    unitsOf(dimension)
      .filter((unit) => !Object.hasOwn(lacking, unit))
      .map((unit) => ({ dimension, unit })),
  );
  it.each(compared)('$dimension: $unit', ({ dimension, unit }) => {
    const ours = toSI(2, unit, dimension) - toSI(1, unit, dimension);
    const theirs = dimension === 'temperature' ? stepOf(unit) : libraryValue(wordFor(unit));
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-9);
  });

  it.each([
    ['degC', -40],
    ['degC', 0],
    ['degF', -40],
    ['degF', 212],
    ['degR', 491.67],
    ['K', 300],
  ] as const)('the zero of %s, at %d', (unit, value) => {
    expect(toSI(value, unit, 'temperature')).toBeCloseTo(library.unit(value, unit).toNumber('K'), 9);
  });

  it('has no unit that is compared and listed as lacking, and lacks only what it lists', () => {
    for (const [unit, because] of Object.entries(lacking)) {
      expect(because.length).toBeGreaterThan(10);
      expect(() => library.unit(1, unit), unit).toThrow();
      expect(
        every.some((dimension) => unitsOf(dimension).includes(unit)),
        unit,
      ).toBe(true);
    }
    for (const unit of Object.keys(words)) {
      expect(
        every.some((dimension) => unitsOf(dimension).includes(unit)),
        unit,
      ).toBe(true);
    }
  });
});
