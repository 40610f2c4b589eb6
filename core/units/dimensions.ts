/**
 * What calculators measure, and the units each is written in: the factor to SI, and for temperatures the shift of the
 * zero. A value in SI is `(value + shift) * factor`.
 *
 * Factors follow NIST SP 811, Appendix B. All of them are exact, being products of the exact inch (25.4 mm), pound
 * (0.45359237 kg), US gallon (231 in³), standard gravity (9.80665 m/s²) and the international table Btu, but for the
 * conventional inch of mercury (3386.389 Pa as printed there; at 32 °F it is 3386.38 and at 60 °F 3376.85).
 */
export interface UnitFacts {
  readonly factor: number;
  readonly shift?: number;
  /** As screens and paper show it, where that differs from the symbol. */
  readonly label?: string;
  /** Other ways people write it; separators (space, `*`, `-`, `.`, brackets) and capitals don't matter. */
  readonly also?: readonly string[];
  /** Capitals matter: MPa isn't mPa. */
  readonly exactCase?: true;
}

export interface DimensionFacts {
  /** As a message names it: "a torque". */
  readonly name: string;
  /** The symbol of the unit that SI values of this dimension are in. */
  readonly si: string;
  readonly units: Readonly<Record<string, UnitFacts>>;
  /** What a number without a unit is taken as, where that can't be mistaken. */
  readonly bare?: string;
  /** Nothing below this exists, in SI. */
  readonly floor?: number;
  /** Whether a pressure counts from vacuum, from the air outside or from another pressure, or may be either of the first two. */
  readonly pressure?: 'absolute' | 'gauge' | 'either' | 'difference';
}

const inch = 0.0254;
const foot = 0.3048;
const pound = 0.453_592_37;
const gravity = 9.806_65;
const poundForce = pound * gravity;
const gallon = 231 * inch ** 3;
const horsepower = 550 * foot * poundForce;
const metricHorsepower = 75 * gravity;
const psi = poundForce / inch ** 2;
const btu = 1055.055_852_62;

const pressureUnits: Readonly<Record<string, UnitFacts>> = {
  kPa: { factor: 1e3 },
  bar: { factor: 1e5 },
  psi: { factor: psi, also: ['lbf/in2', 'lb/in2'] },
  inHg: { factor: 3386.389 },
  MPa: { factor: 1e6, exactCase: true, also: ['N/mm2'] },
  Pa: { factor: 1 },
  mbar: { factor: 100, also: ['hPa'] },
};

const facts = {
  number: { name: 'a number', si: '-', bare: '-', units: { '-': { factor: 1, label: '' } } },
  fraction: {
    name: 'a fraction',
    si: '-',
    bare: '-',
    units: { '-': { factor: 1, label: '' }, '%': { factor: 0.01, also: ['percent', 'pct'] } },
  },
  length: {
    name: 'a length',
    si: 'm',
    units: {
      mm: { factor: 1e-3, also: ['millimetre', 'millimeter'] },
      in: { factor: inch, also: ['"', 'inch', 'inches', "''"] },
      thou: { factor: inch / 1000, also: ['mil', 'mils', '0.001 in'] },
      um: { factor: 1e-6, label: 'µm', also: ['micron', 'microns'] },
      cm: { factor: 1e-2 },
      m: { factor: 1 },
      ft: { factor: foot, also: ["'", 'foot', 'feet'] },
      km: { factor: 1e3 },
    },
  },
  area: {
    name: 'an area',
    si: 'm2',
    units: {
      mm2: { factor: 1e-6, label: 'mm²' },
      cm2: { factor: 1e-4, label: 'cm²' },
      m2: { factor: 1, label: 'm²' },
      in2: { factor: inch ** 2, label: 'in²', also: ['sq in'] },
    },
  },
  volume: {
    name: 'a volume',
    si: 'm3',
    units: {
      cc: { factor: 1e-6, also: ['cm3', 'ccm', 'mL'] },
      L: { factor: 1e-3, also: ['litre', 'litres', 'liter', 'liters'] },
      in3: { factor: inch ** 3, label: 'in³', also: ['cu in', 'ci', 'cid'] },
      gal: { factor: gallon, label: 'US gal', also: ['US gal', 'gal US'] },
      m3: { factor: 1, label: 'm³' },
    },
  },
  mass: {
    name: 'a mass',
    si: 'kg',
    units: { kg: { factor: 1 }, g: { factor: 1e-3 }, lb: { factor: pound, also: ['lbs'] }, oz: { factor: pound / 16 } },
  },
  time: {
    name: 'a time',
    si: 's',
    units: { ms: { factor: 1e-3 }, s: { factor: 1 }, min: { factor: 60 }, h: { factor: 3600 } },
  },
  speed: {
    name: 'a speed',
    si: 'm/s',
    units: {
      'm/s': { factor: 1 },
      'ft/s': { factor: foot, also: ['fps'] },
      'ft/min': { factor: foot / 60, also: ['fpm'] },
      'km/h': { factor: 1 / 3.6, also: ['kph', 'kmh'] },
      mph: { factor: (foot * 5280) / 3600, also: ['mi/h'] },
    },
  },
  acceleration: {
    name: 'an acceleration',
    si: 'm/s2',
    units: {
      'm/s2': { factor: 1, label: 'm/s²' },
      'ft/s2': { factor: foot, label: 'ft/s²' },
      gn: { factor: gravity, label: 'g' },
    },
  },
  rotation: {
    name: 'a speed of rotation',
    si: 'rad/s',
    bare: 'rpm',
    units: {
      rpm: { factor: Math.PI / 30, also: ['1/min', 'r/min', 'rev/min', 'revs', 'min-1'] },
      'rad/s': { factor: 1 },
    },
  },
  angle: {
    name: 'an angle',
    si: 'rad',
    bare: 'deg',
    units: {
      deg: { factor: Math.PI / 180, label: '°', also: ['degree', 'degrees', 'crank deg', 'deg crank'] },
      rad: { factor: 1 },
    },
  },
  camAngle: {
    name: 'an angle in cam degrees',
    si: 'degCam',
    bare: 'degCam',
    units: { degCam: { factor: 1, label: '° cam', also: ['cam deg', 'cam degrees'] } },
  },
  threadDensity: {
    name: 'a number of threads per inch',
    si: '1/m',
    bare: 'TPI',
    units: { TPI: { factor: 1 / inch, also: ['1/in', 'threads per inch'] } },
  },
  force: {
    name: 'a force',
    si: 'N',
    units: {
      N: { factor: 1 },
      kN: { factor: 1e3 },
      lbf: { factor: poundForce, also: ['lb', 'lbs'] },
      kgf: { factor: gravity },
    },
  },
  torque: {
    name: 'a torque',
    si: 'N*m',
    units: {
      'N*m': { factor: 1, label: 'N·m' },
      'lbf*ft': { factor: poundForce * foot, label: 'lbf·ft', also: ['ft lb', 'lb ft', 'ft lbf', 'ft lbs', 'lbs ft'] },
      'lbf*in': { factor: poundForce * inch, label: 'lbf·in', also: ['in lb', 'lb in', 'in lbf', 'in lbs', 'lbs in'] },
      'kgf*m': { factor: gravity, label: 'kgf·m', also: ['kg m', 'm kg', 'm kgf'] },
    },
  },
  pressure: { name: 'a pressure', si: 'Pa', pressure: 'either', units: pressureUnits },
  pressureAbsolute: { name: 'an absolute pressure', si: 'Pa', pressure: 'absolute', floor: 0, units: pressureUnits },
  pressureGauge: { name: 'a gauge pressure', si: 'Pa', pressure: 'gauge', units: pressureUnits },
  pressureDifference: { name: 'a pressure difference', si: 'Pa', units: pressureUnits, pressure: 'difference' },
  stress: {
    name: 'a stress',
    si: 'Pa',
    units: {
      MPa: { factor: 1e6, exactCase: true, also: ['N/mm2'] },
      GPa: { factor: 1e9 },
      psi: { factor: psi },
      ksi: { factor: 1000 * psi },
      Pa: { factor: 1 },
    },
  },
  massFlow: {
    name: 'a mass flow',
    si: 'kg/s',
    units: {
      'kg/s': { factor: 1 },
      'g/s': { factor: 1e-3 },
      'lb/min': { factor: pound / 60, also: ['lbs/min'] },
      'lb/h': { factor: pound / 3600, also: ['lb/hr', 'lbs/h', 'lbs/hr', 'pph'] },
      'kg/h': { factor: 1 / 3600, also: ['kg/hr'] },
    },
  },
  volumeFlow: {
    name: 'a volume flow',
    si: 'm3/s',
    units: {
      'L/h': { factor: 1e-3 / 3600, also: ['L/hr', 'lph'] },
      'L/min': { factor: 1e-3 / 60, also: ['lpm'] },
      'cc/min': { factor: 1e-6 / 60, also: ['ccm', 'cm3/min', 'mL/min'] },
      'gal/h': { factor: gallon / 3600, label: 'US gal/h', also: ['gal/hr', 'gph', 'US gal/h'] },
      'gal/min': { factor: gallon / 60, label: 'US gal/min', also: ['gpm', 'US gal/min'] },
      'm3/s': { factor: 1, label: 'm³/s' },
    },
  },
  power: {
    name: 'a power',
    si: 'W',
    units: {
      kW: { factor: 1e3 },
      hp: { factor: horsepower, also: ['bhp'] },
      PS: { factor: metricHorsepower, also: ['metric hp'] },
      W: { factor: 1 },
    },
  },
  temperature: {
    name: 'a temperature',
    si: 'K',
    floor: 0,
    units: {
      degC: { factor: 1, shift: 273.15, label: '°C', also: ['C', 'celsius'] },
      degF: { factor: 5 / 9, shift: 459.67, label: '°F', also: ['F', 'fahrenheit'] },
      K: { factor: 1, also: ['kelvin'] },
      degR: { factor: 5 / 9, label: '°R', also: ['R', 'rankine'] },
    },
  },
  temperatureDifference: {
    name: 'a temperature difference',
    si: 'dK',
    units: {
      dK: { factor: 1, label: 'K', also: ['K', 'C', 'degC'] },
      ddegF: { factor: 5 / 9, label: '°F', also: ['F', 'degF', 'dF'] },
    },
  },
  density: {
    name: 'a density',
    si: 'kg/m3',
    units: {
      'kg/m3': { factor: 1, label: 'kg/m³' },
      'g/cc': { factor: 1e3, also: ['g/cm3', 'kg/L', 'g/mL'] },
      'lb/gal': { factor: pound / gallon, label: 'lb/US gal' },
    },
  },
  viscosity: {
    name: 'a dynamic viscosity',
    si: 'Pa*s',
    units: {
      'mPa*s': { factor: 1e-3, label: 'mPa·s', exactCase: true },
      cP: { factor: 1e-3 },
      'Pa*s': { factor: 1, label: 'Pa·s' },
    },
  },
  fuelConsumption: {
    name: 'a specific fuel consumption',
    si: 'kg/J',
    units: {
      'g/kWh': { factor: 1e-3 / 3.6e6 },
      'lb/hp/h': { factor: pound / (horsepower * 3600), label: 'lb/(hp·h)', also: ['lb/hph', 'lb/hp hr', 'lb/hp/hr'] },
    },
  },
  energyPerMass: {
    name: 'an energy per mass',
    si: 'J/kg',
    units: {
      'MJ/kg': { factor: 1e6, exactCase: true },
      'kJ/kg': { factor: 1e3 },
      'Btu/lb': { factor: btu / pound },
      'J/kg': { factor: 1 },
    },
  },
  energyPerVolume: {
    name: 'an energy per volume',
    si: 'J/m3',
    units: { 'MJ/L': { factor: 1e9, exactCase: true }, 'J/m3': { factor: 1, label: 'J/m³' } },
  },
  heatCapacity: {
    name: 'a heat capacity per mass',
    si: 'J/kg/K',
    units: {
      'J/kg/K': { factor: 1, label: 'J/(kg·K)', also: ['J/kg K'] },
      'kJ/kg/K': { factor: 1e3, label: 'kJ/(kg·K)', also: ['kJ/kg K'] },
    },
  },
  expansion: {
    name: 'a coefficient of expansion',
    si: '1/K',
    units: { '1/K': { factor: 1 }, 'um/m/K': { factor: 1e-6, label: 'µm/(m·K)', also: ['um/m K', 'ppm/K'] } },
  },
  current: { name: 'a current', si: 'A', units: { A: { factor: 1 }, mA: { factor: 1e-3 } } },
  voltage: { name: 'a voltage', si: 'V', units: { V: { factor: 1 }, mV: { factor: 1e-3 } } },
  resistance: {
    name: 'a resistance',
    si: 'ohm',
    units: { ohm: { factor: 1, label: 'Ω', also: ['ohms'] }, mohm: { factor: 1e-3, label: 'mΩ' } },
  },
  resistancePerLength: {
    name: 'a resistance per length',
    si: 'ohm/m',
    units: {
      'ohm/km': { factor: 1e-3, label: 'Ω/km' },
      'ohm/kft': { factor: 1e-3 / foot, label: 'Ω/1000 ft' },
      'ohm/m': { factor: 1, label: 'Ω/m' },
    },
  },
} as const satisfies Record<string, DimensionFacts>;

export type Dimension = keyof typeof facts;

/** Every dimension with its units, in the order in which they are offered. */
export const dimensions: Readonly<Record<Dimension, DimensionFacts>> = facts;
