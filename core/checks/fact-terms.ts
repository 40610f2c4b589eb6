/** What facts of parts are called, and what each measures. One word means one thing, whatever part says it. */
import { type Dimension, dimensions } from '../units/dimensions.ts';
import { unitsOf } from '../units/measure.ts';

export interface FactTerm {
  readonly key: string;
  readonly label: string;
  readonly hint: string;
  /** What it measures; `word` for a text such as a thread or a class. */
  readonly dimension: Dimension | 'word';
  /** The unit that is offered first; empty for a word. */
  readonly unit: string;
}

const term = (key: string, dimension: Dimension | 'word', unit = '', hint = ''): FactTerm => ({
  key,
  label: key.charAt(0).toUpperCase() + key.slice(1),
  hint,
  dimension,
  unit: unit === '' && dimension !== 'word' ? '-' : unit,
});

const list = [
  term('bore', 'length', 'mm', 'of the cylinder, finished'),
  term('stroke', 'length', 'mm'),
  term('cylinders', 'number'),
  term('deck clearance', 'length', 'mm', 'piston below the deck at the top; negative when it stands proud'),
  term('chamber volume', 'volume', 'cc', 'of one combustion chamber in the head'),
  term('gasket bore', 'length', 'mm'),
  term('gasket thickness', 'length', 'mm', 'compressed'),
  term('piston dish', 'volume', 'cc', 'a dome is negative'),
  term('piston diameter', 'length', 'mm', 'measured where the maker says'),
  term('compression height', 'length', 'mm'),
  term('pin diameter', 'length', 'mm'),
  term('rod length', 'length', 'mm', 'centre to centre'),
  term('main journal', 'length', 'mm'),
  term('big end journal', 'length', 'mm'),
  term('bearing bore', 'length', 'mm', 'with the shells in and the cap at its torque'),
  term('journal', 'length', 'mm', 'that runs in these shells, measured'),
  term('least clearance', 'length', 'mm', 'by the maker'),
  term('most clearance', 'length', 'mm', 'by the maker'),
  term('gap to bore', 'number', '-', 'by the ring maker, such as 0.0045'),
  term('ring gap', 'length', 'mm', 'smallest measured'),
  term('injector flow', 'volumeFlow', 'cc/min', 'of one injector, held open, at its rated pressure'),
  term('rated pressure', 'pressureDifference', 'bar', 'across the injector, of the flow stated'),
  term('dead time', 'time', 'ms', 'at running voltage and pressure, from the data sheet'),
  term('resistance', 'resistance', 'ohm'),
  term('pump flow', 'volumeFlow', 'L/h', 'at the pump pressure stated'),
  term('pump pressure', 'pressureGauge', 'bar', 'of the pump flow stated'),
  term('second pump flow', 'volumeFlow', 'L/h', 'another point of the pump’s curve'),
  term('second pump pressure', 'pressureGauge', 'bar', 'of the second pump flow'),
  term('current', 'current', 'A', 'running, at the pressure or load of its work'),
  term('inside diameter', 'length', 'mm'),
  term('outside diameter', 'length', 'mm'),
  term('wall thickness', 'length', 'mm'),
  term('dash size', 'number', '-', 'nominal sixteenths of an inch'),
  term('length', 'length', 'm'),
  term('working pressure', 'pressureGauge', 'bar', 'most, by the maker'),
  term('slope', 'angle', 'deg', 'smallest anywhere, below horizontal'),
  term('base pressure', 'pressureGauge', 'bar', 'with the engine off'),
  term('full scale', 'pressureAbsolute', 'kPa', 'largest pressure of the data sheet, absolute'),
  term('least reading', 'pressureAbsolute', 'kPa', 'smallest pressure of the data sheet, absolute'),
  term('turbine flange', 'word'),
  term('compressor inducer', 'length', 'mm'),
  term('most airflow', 'massFlow', 'lb/min', 'at the edge of the compressor’s map'),
  term('most pressure ratio', 'number', '-', 'of the compressor’s map'),
  term('compressor efficiency', 'fraction', '%', 'where the engine will run on the map'),
  term('effectiveness', 'fraction', '%', 'of the charge-air cooler at this flow'),
  term('opening temperature', 'temperature', 'degC'),
  term('opening pressure', 'pressureGauge', 'bar'),
  term('coolant flow', 'volumeFlow', 'L/min', 'at the speed of the power target'),
  term('oil flow', 'volumeFlow', 'L/min'),
  term('rated heat', 'power', 'kW'),
  term('thread', 'word', '', 'such as M10x1.25 or 3/8-16 UNC'),
  term('nominal diameter', 'length', 'mm'),
  term('pitch', 'length', 'mm'),
  term('bolt length', 'length', 'mm', 'under the head'),
  term('strength class', 'word', '', 'such as 8.8 or 10.9'),
  term('bolt strength', 'stress', 'MPa', 'tensile, of the bolt'),
  term('hole strength', 'stress', 'MPa', 'tensile, of the material with the thread in it'),
  term('engagement', 'length', 'mm', 'of full threads'),
  term('cross-section', 'area', 'mm2'),
  term('wire gauge', 'number', '-', 'AWG'),
  term('wire length', 'length', 'm', 'one way, battery to consumer'),
  term('wire rating', 'current', 'A', 'by the wire’s maker at the real temperature and bundle'),
  term('fuse', 'current', 'A'),
  term('crank teeth', 'number'),
  term('cam teeth', 'number'),
  term('belt teeth', 'number'),
  term('lift', 'length', 'mm'),
  term('duration', 'angle', 'deg'),
  term('lobe separation', 'camAngle', 'degCam'),
  term('diameter', 'length', 'mm'),
  term('ribs', 'number'),
] as const;

export const factTerms: ReadonlyMap<string, FactTerm> = new Map(list.map((one) => [one.key, one]));

/** Keys are the same whatever their capitals and spaces. */
export const plainKey = (key: string): string => key.trim().toLowerCase().replace(/\s+/g, ' ');

/** Symbols of the units accepted for a term; empty for a word or a plain count. */
export const unitsOfTerm = ({ dimension }: FactTerm): readonly string[] =>
  dimension === 'word' ? [] : unitsOf(dimension).filter((unit) => unit !== '-');

/** What a value of the term must be, in words. */
export function acceptedForTerm({ dimension, unit, hint }: FactTerm): string {
  if (dimension === 'word') return hint === '' ? 'a word' : hint;
  const units = unitsOf(dimension).filter((one) => one !== '-');
  const { name } = dimensions[dimension];
  return units.length === 0
    ? 'a number such as 2.5'
    : `${name}: a number with a unit of ${units.join(', ')}, such as 2.5 ${unit}`;
}
