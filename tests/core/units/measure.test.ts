import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Dimension, dimensions } from '../../../core/units/dimensions.ts';
import { formatMeasure, fromSI, toSI, unitNamed, unitsOf } from '../../../core/units/measure.ts';
import { parseMeasure } from '../../../core/units/parse-measure.ts';

const every = Object.keys(dimensions) as Dimension[];

describe('units', () => {
  // Digits as printed in NIST SP 811, Appendix B (from memory, and equal to the products of the exact factors).
  it.each([
    ['length', 'in', 0.0254, 1e-12],
    ['torque', 'lbf*ft', 1.355818, 1e-6],
    ['torque', 'lbf*in', 0.1129848, 1e-6],
    ['force', 'lbf', 4.448222, 1e-6],
    ['pressure', 'psi', 6894.757, 1e-6],
    ['pressure', 'inHg', 3386.389, 1e-9],
    ['volume', 'gal', 3.785412e-3, 1e-6],
    ['volume', 'in3', 1.638706e-5, 1e-6],
    ['power', 'hp', 745.6999, 1e-6],
    ['power', 'PS', 735.4988, 1e-6],
    ['massFlow', 'lb/h', 1.259979e-4, 1e-6],
    ['massFlow', 'lb/min', 7.559873e-3, 1e-6],
    ['fuelConsumption', 'lb/hp/h', 1.689659e-7, 1e-6],
    ['density', 'lb/gal', 119.8264, 1e-6],
    ['energyPerMass', 'Btu/lb', 2326, 1e-9],
    ['speed', 'mph', 0.44704, 1e-9],
    ['viscosity', 'cP', 1e-3, 1e-12],
  ] as const)('of %s: 1 %s is %d in SI', (dimension, unit, si, tolerance) => {
    expect(Math.abs(toSI(1, unit, dimension) / si - 1)).toBeLessThanOrEqual(tolerance);
  });

  it.each(every)('%s: comes back from every unit', (dimension) => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitsOf(dimension)),
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        (unit, value) => {
          expect(fromSI(toSI(value, unit, dimension), unit, dimension)).toBeCloseTo(value, 6);
        },
      ),
    );
  });

  it.each(every)('%s: its SI unit counts as one, and no spelling means two units', (dimension) => {
    const { si, units } = dimensions[dimension];
    if (Object.hasOwn(units, si)) expect(toSI(1, si, dimension)).toBe(1);
    for (const [symbol, { also = [] }] of Object.entries(units)) {
      for (const spelling of [symbol, ...also]) expect(unitNamed(spelling, dimension)).toBe(symbol);
    }
  });
});

describe('parseMeasure', () => {
  it.each([
    ['3/8"', 'length', 0.375, 'in'],
    ['10 thou', 'length', 10, 'thou'],
    ['65 ft lb', 'torque', 65, 'lbf*ft'],
    ['65 lb-ft', 'torque', 65, 'lbf*ft'],
    ['88,1 Nm', 'torque', 88.1, 'N*m'],
    ['88.1 N·m', 'torque', 88.1, 'N*m'],
    ['1.2 bar gauge', 'pressureGauge', 1.2, 'bar'],
    ['22 psig', 'pressureGauge', 22, 'psi'],
    ['14.7 psia', 'pressureAbsolute', 14.7, 'psi'],
    ['250 kPa (abs)', 'pressureAbsolute', 250, 'kPa'],
    ['25,4mm', 'length', 25.4, 'mm'],
    ['0,375 in', 'length', 0.375, 'in'],
    ['1 1/2 in', 'length', 1.5, 'in'],
    ['1-1/2 in', 'length', 1.5, 'in'],
    ['1½ in', 'length', 1.5, 'in'],
    ['-5.5 °C', 'temperature', -5.5, 'degC'],
    ['−40 F', 'temperature', -40, 'degF'],
    ['.04 IN', 'length', 0.04, 'in'],
    ['1300 cc/min', 'volumeFlow', 1300, 'cc/min'],
    ['0.9 lb/(hp·h)', 'fuelConsumption', 0.9, 'lb/hp/h'],
    ['785 kg/m³', 'density', 785, 'kg/m3'],
    ['12 µm', 'length', 12, 'um'],
    ['1e5 Pa', 'pressure', 1e5, 'Pa'],
    ['85 %', 'fraction', 85, '%'],
    ['0.95', 'fraction', 0.95, '-'],
    ['7000', 'rotation', 7000, 'rpm'],
    ['7000 1/min', 'rotation', 7000, 'rpm'],
    ['3⁄8 inch', 'length', 0.375, 'in'],
    ['- 1/2 in', 'length', -0.5, 'in'],
    ['65 foot-pounds', 'torque', 65, 'lbf*ft'],
    ['120 inch pounds', 'torque', 120, 'lbf*in'],
    ['88 Newton metres', 'torque', 88, 'N*m'],
    ['86 millimetres', 'length', 86, 'mm'],
    ['10 thousandths', 'length', 10, 'thou'],
    ['-40 degrees F', 'temperature', -40, 'degF'],
    ['20 ℃', 'temperature', 20, 'degC'],
    ['1300 cc per minute', 'volumeFlow', 1300, 'cc/min'],
    ['255 litres per hour', 'volumeFlow', 255, 'L/h'],
    ['350 cubic inches', 'volume', 350, 'in3'],
    ['22 psi boost', 'pressureGauge', 22, 'psi'],
    ['1.2 bar-g', 'pressureGauge', 1.2, 'bar'],
    ['1.2 bar absolute', 'pressure', 1.2, 'bar'],
    ['43.5 psid', 'pressureDifference', 43.5, 'psi'],
    ['15 amps', 'current', 15, 'A'],
  ] as const)('reads %s as %s: %d %s', (text, dimension, value, unit) => {
    const read = parseMeasure(text, dimension);
    expect(read.unit).toBe(unit);
    expect(read.value).toBeCloseTo(value, 12);
  });

  it('takes the unit chosen beside the field, unless the text brings its own', () => {
    expect(parseMeasure('3/8', 'length', { unit: 'in' })).toEqual({ value: 0.375, unit: 'in' });
    expect(parseMeasure('9.5 mm', 'length', { unit: 'in' })).toEqual({ value: 9.5, unit: 'mm' });
  });

  it.each([
    ['25.4', 'length', /a unit of mm, in, thou/],
    ['ten mm', 'length', /a number such as/],
    ['1,300 cc/min', 'volumeFlow', /a number such as/],
    ['3/0 in', 'length', /a number such as/],
    ['NaN mm', 'length', /a number such as/],
    ['Infinity mm', 'length', /a number such as/],
    ['1e999 mm', 'length', /a number such as/],
    ['', 'length', /a number such as/],
    ['5 psi', 'length', /a unit of mm/],
    ['5 mPa', 'pressure', /kPa, bar, psi/],
    ['22 psig', 'pressureAbsolute', /absolute pressure/],
    ['22 psia', 'pressureGauge', /gauge pressure/],
    ['4 mm', 'number', /without a unit/],
    ['1 000 mm', 'length', /without grouping/],
    ['1.000,5 mm', 'length', /without grouping/],
    ['1,234.5 mm', 'length', /without grouping/],
    ['22 psi boost', 'pressureAbsolute', /absolute pressure/],
    ['3 bar abs', 'pressureDifference', /pressure difference/],
    ['5 psid', 'pressure', /a pressure in/],
    ['5 imperial gallons', 'volume', /a unit of cc, L/],
    ['65 lb', 'torque', /a unit of N\*m, lbf\*ft/],
    ['20°', 'temperature', /degC, degF/],
  ] as const)('refuses “%s” as %s, and lists what it accepts', (text, dimension, accepted) => {
    expect(() => parseMeasure(text, dimension, { field: 'bore' })).toThrow(
      expect.objectContaining({
        code: 'bad-input',
        field: 'bore',
        accepted: expect.stringMatching(accepted),
        message: expect.stringContaining('Nothing was changed.'),
      }),
    );
  });

  it('says which two numbers a comma may stand for', () => {
    expect(() => parseMeasure('1,300 cc/min', 'volumeFlow')).toThrow(/may be 1\.300 or 1300/);
  });

  it('reads back what formatMeasure writes', () => {
    fc.assert(
      fc.property(fc.constantFrom(...every), fc.integer({ min: 1, max: 999 }), (dimension, value) => {
        for (const unit of unitsOf(dimension)) {
          const text = formatMeasure({ value, unit }, dimension);
          expect(parseMeasure(text, dimension)).toEqual({ value, unit });
        }
      }),
    );
  });
});

describe('formatMeasure', () => {
  it.each([
    [{ value: 88.1281666, unit: 'N*m' }, 'torque', '88.128 N·m'],
    [{ value: 0.0508, unit: 'mm' }, 'length', '0.0508 mm'],
    [{ value: 1998.22886, unit: 'cc' }, 'volume', '1,998.2 cc'],
    [{ value: 20, unit: 'degC' }, 'temperature', '20 °C'],
    [{ value: 15, unit: 'deg' }, 'angle', '15°'],
    [{ value: 1.68604651, unit: '-' }, 'number', '1.686'],
    [{ value: 5.14204e304, unit: 'mm' }, 'length', '5.142e304 mm'],
    [{ value: -1e-300, unit: 'mm' }, 'length', '-1e-300 mm'],
    [{ value: 0, unit: 'mm' }, 'length', '0 mm'],
  ] as const)('writes %o of %s as %s', (measure, dimension, text) => {
    expect(formatMeasure(measure, dimension)).toBe(text);
  });
});
