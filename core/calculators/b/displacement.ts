import { calculator, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { bore, boreArea, cylinders, stroke } from './cylinder.ts';

/** Mean piston speeds above which parts are asked much of [m/s]; common practice, no published source. */
const castPartsLimit = 20;
const streetLimit = 25;

/** Peak piston acceleration at top dead centre [m/s²], first two terms of the series in stroke/(2·rod). */
function peakAcceleration(strokeLength: number, rodLength: number, omega: number): number {
  return (strokeLength / 2) * omega ** 2 * (1 + strokeLength / (2 * rodLength));
}

export const displacement = calculator({
  id: 'B1',
  slug: 'displacement',
  title: 'Displacement, piston speed, rod ratio',
  about: 'What a bore, a stroke and a number of cylinders displace, and how hard the pistons work for it.',
  inputs: {
    bore,
    stroke,
    cylinders,
    rpm: {
      label: 'Engine speed',
      dimension: 'rotation',
      unit: 'rpm',
      must: { atLeast: 0 },
      usual: { to: 20_000 },
      optional: true,
    },
    rod_length: {
      label: 'Rod length',
      hint: 'centre to centre',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
      optional: true,
    },
  },
  outputs: {
    swept_volume: { label: 'Swept volume of one cylinder', dimension: 'volume', unit: 'cc' },
    displacement: { label: 'Displacement', dimension: 'volume', unit: 'cc' },
    mean_piston_speed: { label: 'Mean piston speed', dimension: 'speed', unit: 'm/s' },
    rod_ratio: { label: 'Rod ratio', dimension: 'number', unit: '-' },
    bore_stroke_ratio: { label: 'Bore to stroke', dimension: 'number', unit: '-' },
    peak_acceleration: { label: 'Peak piston acceleration', dimension: 'acceleration', unit: 'm/s2' },
  },
  formula:
    'swept_volume = π/4 · bore² · stroke; displacement = swept_volume · cylinders; mean_piston_speed = 2 · stroke · rpm/60; ' +
    'rod_ratio = rod_length/stroke; bore_stroke_ratio = bore/stroke; ' +
    'peak_acceleration = stroke/2 · ω² · (1 + stroke/(2 · rod_length))',
  source:
    'Definitions as in Heywood, Internal Combustion Engine Fundamentals, and Stone, Introduction to Internal Combustion ' +
    'Engines (from memory). Speed and rod-ratio limits: common practice, no published source.',
  notes: ['Peak acceleration is the first two terms of the series only, at top dead centre.'],
  example: {
    bore: { value: 86, unit: 'mm' },
    stroke: { value: 86, unit: 'mm' },
    cylinders: { value: 4 },
    rpm: { value: 7000, unit: 'rpm' },
    rod_length: { value: 145, unit: 'mm' },
  },
  compute: ({ bore: boreLength, stroke: strokeLength, cylinders: count, rpm: omega, rod_length: rodLength }) => {
    if (rodLength !== undefined && !exceeds(rodLength, strokeLength / 2)) {
      refuseInput('rod_length', 'The rod must be longer than half the stroke.', 'a length above half the stroke');
    }
    const sweptVolume = boreArea(boreLength) * strokeLength;
    // 2 · stroke · revolutions a second, ω/(2π) of them.
    const pistonSpeed = omega === undefined ? undefined : (strokeLength * omega) / Math.PI;
    const rodRatio = rodLength === undefined ? undefined : rodLength / strokeLength;
    const warnings: Warning[] = [];
    if (pistonSpeed !== undefined && exceeds(pistonSpeed, streetLimit)) {
      warnings.push(
        warning(`Mean piston speed is above ${streetLimit} m/s, beyond any street engine (common practice).`),
      );
    } else if (pistonSpeed !== undefined && exceeds(pistonSpeed, castPartsLimit)) {
      warnings.push(
        warning(`Mean piston speed is above ${castPartsLimit} m/s, much for cast parts (common practice).`),
      );
    }
    if (rodRatio !== undefined && (fallsShort(rodRatio, 1.4) || exceeds(rodRatio, 2.2))) {
      warnings.push(warning('The rod ratio is outside 1.4 to 2.2: check rod length and stroke (common practice).'));
    }
    return {
      outputs: {
        swept_volume: sweptVolume,
        displacement: sweptVolume * count,
        mean_piston_speed: pistonSpeed,
        rod_ratio: rodRatio,
        bore_stroke_ratio: boreLength / strokeLength,
        peak_acceleration:
          omega === undefined || rodLength === undefined ? undefined : peakAcceleration(strokeLength, rodLength, omega),
      },
      warnings,
    };
  },
});
