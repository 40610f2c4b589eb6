/** Torque, mass flow, volume flow, power, length and temperature from one unit into another. */
import { makersValueGoverns } from '../cautions.ts';
import { converter } from './converter.ts';

export const torqueConversion = converter({
  id: 'A1',
  slug: 'torque-units',
  title: 'Torque',
  about: 'A torque in another unit.',
  label: 'Torque',
  hint: 'negative for loosening',
  dimension: 'torque',
  unit: 'N*m',
  usual: { from: -1e5, to: 1e5 },
  formula: '1 lbf·ft = 1.3558179483314004 N·m = 12 lbf·in; 1 kgf·m = 9.80665 N·m',
  notes: ['Pound-foot and foot-pound are written for the same torque; pound-inch is a twelfth of it.'],
  caution: makersValueGoverns,
  example: { value: 65, unit: 'lbf*ft' },
});

export const massFlowConversion = converter({
  id: 'A3',
  slug: 'mass-flow-units',
  title: 'Mass flow',
  about: 'A mass flow in another unit.',
  label: 'Mass flow',
  dimension: 'massFlow',
  unit: 'kg/s',
  must: { atLeast: 0 },
  formula: '1 lb/min = 0.45359237/60 kg/s; 1 lb/h = 0.45359237/3600 kg/s',
  notes: [],
  example: { value: 45, unit: 'lb/min' },
});

export const volumeFlowConversion = converter({
  id: 'A4',
  slug: 'volume-flow-units',
  title: 'Volume flow',
  about: 'A volume flow in another unit.',
  label: 'Volume flow',
  dimension: 'volumeFlow',
  unit: 'L/h',
  must: { atLeast: 0 },
  formula: '1 US gal = 3.785411784 L; 1 gal/h = 63.0901964 cc/min; 1 L/h = 16.6666667 cc/min',
  notes: ['Gallons are US gallons; an imperial gallon is 20 % larger.'],
  example: { value: 255, unit: 'L/h' },
});

export const powerConversion = converter({
  id: 'A6',
  slug: 'power-units',
  title: 'Power',
  about: 'A power in another unit.',
  label: 'Power',
  dimension: 'power',
  unit: 'kW',
  formula: '1 hp = 550 ft·lbf/s = 745.69987158 W; 1 PS = 75 kgf·m/s = 735.49875 W',
  notes: ['The mechanical horsepower (hp) and the metric one (PS) differ by 1.4 %.'],
  example: { value: 500, unit: 'hp' },
});

export const lengthConversion = converter({
  id: 'A7',
  slug: 'length-units',
  title: 'Length',
  about: 'A length in another unit.',
  label: 'Length',
  dimension: 'length',
  unit: 'mm',
  must: { atLeast: 0 },
  formula: '1 in = 25.4 mm; 1 thou = 0.001 in = 25.4 µm',
  notes: ['A thou (mil) is 0.0254 mm; it is not a millimetre.'],
  example: { value: 2, unit: 'thou' },
});

export const temperatureConversion = converter({
  id: 'A8',
  slug: 'temperature-units',
  title: 'Temperature',
  about: 'A temperature in another unit.',
  label: 'Temperature',
  dimension: 'temperature',
  unit: 'degC',
  formula: 'K = °C + 273.15; °F = 1.8 · °C + 32; °R = 1.8 · K',
  notes: ['A difference of temperatures has no offset: 1 K of it is 1.8 °F.'],
  example: { value: 68, unit: 'degF' },
});
