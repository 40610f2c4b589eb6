/** What the calculators of this group ask for alike, and the ISO thread geometry that they rest on. All in SI. */
import { type NumberInput, refuseInput, type YesNoInput } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';

/** Stands beside every figure of this group. */
export const fastenerCaution =
  "The engine maker's torque, sequence and “replace after use” rules govern; these values are for fasteners without a published torque.";

/** Stands beside every figure that ties a torque to a preload. */
export const torqueScatter =
  'Torque is an indirect measure of preload: with hand tools expect about ±25 to 35 % scatter.';

export const diameter = {
  label: 'Nominal diameter',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
} as const satisfies NumberInput;

export const pitch = {
  label: 'Pitch',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
  usual: { from: 0.2, to: 6 },
} as const satisfies NumberInput;

/** Both are shown alike; 0.04 to 0.40 is the span of the friction classes of VDI 2230 (from memory). */
const friction = { dimension: 'number', unit: '-', must: { above: 0 }, usual: { from: 0.04, to: 0.4 } } as const;
const frictionHint = 'oiled 0.12 to 0.16, moly paste 0.08 to 0.10, dry plated 0.16 to 0.24';

export const threadFriction = {
  label: 'Friction in the thread',
  hint: frictionHint,
  ...friction,
} as const satisfies NumberInput;

export const headFriction = {
  label: 'Friction under the head',
  hint: frictionHint,
  ...friction,
} as const satisfies NumberInput;

export const headOutsideDiameter = {
  label: 'Outside diameter of the head contact',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
} as const satisfies NumberInput;

export const holeDiameter = {
  label: 'Diameter of the hole',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
} as const satisfies NumberInput;

export const preload = {
  label: 'Preload',
  dimension: 'force',
  unit: 'kN',
  must: { above: 0 },
} as const satisfies NumberInput;

export const torque = {
  label: 'Torque',
  dimension: 'torque',
  unit: 'N*m',
  must: { above: 0 },
} as const satisfies NumberInput;

export const dryTorque = {
  kind: 'yes-no',
  label: 'The torque comes from a list for dry threads',
  default: false,
  defaultSource: 'a torque meant for the surface as it is',
} as const satisfies YesNoInput;

/** Refuses a pitch that no thread of that diameter has. */
export function refuseCoarseThread(field: 'pitch' | 'tpi', threadDiameter: number, threadPitch: number): void {
  if (!fallsShort(threadPitch, threadDiameter / 2)) {
    refuseInput(
      field,
      'The pitch is half the diameter or more: no such thread exists.',
      'a pitch below half the diameter',
    );
  }
}

/** Refuses a head that would pass through its hole. */
export function refuseNarrowHead(headOutside: number, hole: number): void {
  if (!exceeds(headOutside, hole)) {
    refuseInput('head_od', 'The head is no wider than the hole under it.', 'a diameter above that of the hole');
  }
}

/** Pitch diameter d2 = d - 0.649519 P of the ISO thread (ISO 68-1). */
export function pitchDiameter(threadDiameter: number, threadPitch: number): number {
  return threadDiameter - 0.649_519 * threadPitch;
}

/** Mean of pitch diameter and root diameter d3 = d - 1.226869 P (ISO 898-1). */
export function stressDiameter(threadDiameter: number, threadPitch: number): number {
  return (pitchDiameter(threadDiameter, threadPitch) + threadDiameter - 1.226_869 * threadPitch) / 2;
}

/** Stress area of a metric thread, (π/4) · ((d2 + d3)/2)² (ISO 898-1). */
export function stressArea(threadDiameter: number, threadPitch: number): number {
  return (Math.PI / 4) * stressDiameter(threadDiameter, threadPitch) ** 2;
}
