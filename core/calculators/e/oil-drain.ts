import { calculator, graveWarning, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { density, flow, insideDiameter, pipeVelocity, reynoldsNumber, viscosity } from './pipe.ts';

/** Standard gravity, ISO 2533 [m/s²]. */
const gravity = 9.806_65;
const degree = Math.PI / 180;

/** A half-full laminar pipe carries half of what a full one does, by symmetry. */
const halfFull = 0.5;
const laminarUpTo = 2000;
/** Smallest bore of a turbocharger drain [m]. */
const leastTurboDrain = 0.0127;

export const oilDrain = calculator({
  id: 'E4',
  slug: 'oil-drain',
  title: 'Gravity oil drain',
  about: 'Whether oil runs off by its own weight without filling the drain, and which bore would do.',
  inputs: {
    flow,
    inside_diameter: insideDiameter,
    slope: {
      label: 'Smallest slope below horizontal',
      hint: 'of the flattest part of the run',
      dimension: 'angle',
      unit: 'deg',
      must: { above: 0, atMost: 90 },
    },
    density,
    viscosity,
    aeration: {
      label: 'Aeration',
      hint: 'volume of the foam over that of its oil',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      usual: { from: 1, to: 4 },
      default: 2,
      defaultSource: 'an assumption of this calculator, no published source',
    },
    turbocharger_drain: {
      kind: 'yes-no',
      label: 'Drain of a turbocharger',
      default: true,
      defaultSource: 'the usual case',
    },
    port_angle: {
      label: 'Drain port, angle from straight down',
      dimension: 'angle',
      unit: 'deg',
      must: { atLeast: 0, atMost: 180 },
      optional: true,
    },
    port_diameter: {
      label: 'Diameter of the drain port',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
      optional: true,
    },
    entry_below_oil: {
      kind: 'yes-no',
      label: 'Entry to the pan lies below the oil level',
      default: false,
      defaultSource: 'the entry should lie above it',
    },
  },
  outputs: {
    full_bore_capacity: { label: 'Capacity, bore full', dimension: 'volumeFlow', unit: 'L/min' },
    capacity_ratio: { label: 'Share of that in use', dimension: 'fraction', unit: '-' },
    min_inside_diameter: { label: 'Smallest inside diameter', dimension: 'length', unit: 'mm' },
    reynolds: { label: 'Reynolds number', dimension: 'number', unit: '-' },
    ok: { kind: 'yes-no', label: 'Runs no more than half full' },
  },
  formula:
    'full_bore_capacity = π · density · g · sin(slope) · d⁴/(128 · viscosity); capacity_ratio = aeration · flow/' +
    'full_bore_capacity; ok = capacity_ratio ≤ 0.5; min_inside_diameter from the same rule; reynolds = 4 · density · flow/(π · d · viscosity)',
  source:
    'Hagen-Poiseuille with the slope as the pressure gradient; derived by hand. Port angle of 15°: published turbocharger ' +
    'installation guidance (seen); 35°: from memory. Bore of 12.7 mm: common practice, no published source.',
  notes: ['Passing this does not excuse a bore smaller than the port.', 'Any flat or rising part traps oil.'],
  caution: 'A planning figure: where the maker of the turbocharger or engine says how oil must drain, that governs.',
  example: {
    flow: { value: 2, unit: 'L/min' },
    inside_diameter: { value: 12.7, unit: 'mm' },
    slope: { value: 60, unit: 'deg' },
    density: { value: 830, unit: 'kg/m3' },
    viscosity: { value: 10, unit: 'mPa*s' },
    aeration: { value: 2 },
  },
  compute: (given) => {
    const { flow: oil, inside_diameter: d, density: rho, viscosity: mu, aeration } = given;
    // Capacity over the fourth power of the bore.
    const drive = (Math.PI * rho * gravity * Math.sin(given.slope)) / (128 * mu);
    const capacity = drive * d ** 4;
    const ratio = (aeration * oil) / capacity;
    const ok = !exceeds(ratio, halfFull);
    const reynolds = reynoldsNumber(rho, pipeVelocity(oil, d), d, mu);
    return {
      outputs: {
        full_bore_capacity: capacity,
        capacity_ratio: ratio,
        min_inside_diameter: ((aeration * oil) / (halfFull * drive)) ** 0.25,
        reynolds,
        ok,
      },
      warnings: [
        ...(ok ? [] : [warning('The drain runs more than half full: oil backs up into the part that it drains.')]),
        ...(exceeds(reynolds, laminarUpTo)
          ? [warning('Above Reynolds 2000 the formula is optimistic: the drain carries less than it says.')]
          : []),
        ...(given.turbocharger_drain && fallsShort(d, leastTurboDrain)
          ? [warning('A turbocharger drain has at least 12.7 mm (1/2 in) of bore (common practice).')]
          : []),
        ...portWarnings(d, given.port_diameter, given.port_angle),
        ...(given.entry_below_oil ? [warning('The drain enters the pan below the oil level: oil stands in it.')] : []),
      ],
    };
  },
});

function portWarnings(bore: number, port: number | undefined, angle: number | undefined): readonly Warning[] {
  const warnings: Warning[] = [];
  if (port !== undefined && fallsShort(bore, port)) {
    warnings.push(warning('The bore is smaller than the drain port, and no formula excuses that.'));
  }
  if (angle !== undefined && exceeds(angle, 35 * degree)) {
    warnings.push(graveWarning('The drain port is more than 35° from straight down: oil passes the seals. Turn it.'));
  } else if (angle !== undefined && exceeds(angle, 15 * degree)) {
    warnings.push(warning('The drain port is more than 15° from straight down (installation guidance).'));
  }
  return warnings;
}
