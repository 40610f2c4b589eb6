import type { Calculator, Input, Output } from '../../../core/calculators/calculator.ts';
import { type Dimension, dimensions } from '../../../core/units/dimensions.ts';
import { parseMeasure } from '../../../core/units/parse-measure.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';
import type { Typed } from './typed.ts';

type System = LocaleSettings['units'];

/** What stands for a unit in the other system. Units that the trade uses in both, such as cc/min, aren't here. */
const inInches: Readonly<Record<string, string>> = {
  mm: 'in',
  um: 'thou',
  m: 'ft',
  mm2: 'in2',
  cc: 'in3',
  L: 'gal',
  kPa: 'psi',
  bar: 'psi',
  MPa: 'psi',
  'N*m': 'lbf*ft',
  kN: 'lbf',
  degC: 'degF',
  dK: 'ddegF',
  'kg/s': 'lb/min',
  'L/h': 'gal/h',
  'L/min': 'gal/min',
  kW: 'hp',
  'm/s': 'ft/s',
  'm/s2': 'ft/s2',
  'km/h': 'mph',
  'g/kWh': 'lb/hp/h',
  'ohm/km': 'ohm/kft',
};
/** Rims and dash sizes are inches everywhere, so that `in` stays. */
const inMetres: Readonly<Record<string, string>> = {
  thou: 'um',
  psi: 'bar',
  'lbf*ft': 'N*m',
  'lb/min': 'kg/s',
  'lb/h': 'kg/h',
  hp: 'kW',
  mph: 'km/h',
  'lb/hp/h': 'g/kWh',
};

/** The unit that a declared one is shown in while no other is chosen: the workbook's own system, where it has one. */
export function standingUnit(unit: string, dimension: Dimension, system: System): string {
  const other = (system === 'inch' ? inInches : inMetres)[unit];
  return other !== undefined && Object.hasOwn(dimensions[dimension].units, other) ? other : unit;
}

/** The unit that a text brings along, as `65 ft lb` does; undefined where it is a bare number or can't be read. */
function unitWithin(text: string, input: Extract<Input, { readonly unit: string }>): string | undefined {
  if (input.kind === 'list' || withoutUnit(text) === text.trim()) return undefined;
  try {
    return parseMeasure(text, input.dimension).unit;
  } catch {
    return undefined;
  }
}

/** The number of a text without the unit behind it: `65` of `65 ft lb`. What doesn't begin with a number stays. */
export function withoutUnit(text: string): string {
  const number = /^\s*[+−-]?[\d\s.,/⁄½¼¾⅛⅜⅝⅞-]*(?:[eE][+-]?\d+)?/.exec(text)?.[0].trim() ?? '';
  return /[\d½¼¾⅛⅜⅝⅞]/.test(number) ? number : text.trim();
}

/** The unit of an input: as written with its number, or chosen; or as declared, once typed in; or the workbook's own. */
export function inputUnit(name: string, input: Input, typed: Typed, group: string, system: System): string | undefined {
  if (!('unit' in input)) return undefined;
  const within = unitWithin(typed.texts[name] ?? '', input);
  if (within !== undefined) return within;
  const chosen = typed.units[name];
  // A text in an address without a unit was typed in the declared one, whatever this workbook prefers.
  if (chosen !== undefined || (typed.texts[name] ?? '') !== '') return chosen ?? input.unit;
  return group === 'A' ? input.unit : standingUnit(input.unit, input.dimension, system);
}

/** The unit of every number that comes out: as chosen, or the workbook's own. Converters of units stay as declared. */
export function outputUnits({ outputs, group }: Calculator, typed: Typed, system: System): Typed['outputUnits'] {
  const unitOf = (name: string, output: Output): readonly [string, string][] =>
    'unit' in output && group !== 'A'
      ? [[name, typed.outputUnits[name] ?? standingUnit(output.unit, output.dimension, system)]]
      : [];
  return {
    ...typed.outputUnits,
    ...Object.fromEntries(Object.entries(outputs).flatMap(([name, output]) => unitOf(name, output))),
  };
}
