import { calculator, graveWarning, type Values } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import {
  diameter,
  fastenerCaution,
  headFriction,
  headOutsideDiameter,
  holeDiameter,
  pitch,
  pitchDiameter,
  refuseCoarseThread,
  refuseNarrowHead,
  stressDiameter,
  threadFriction,
  torqueScatter,
} from './fasteners.ts';
import { headContactNote } from './head-contact.ts';
import { torqueParts } from './joint-torque.ts';
import { strengthClasses, strengthOf } from './strength-classes.ts';

const inputs = {
  diameter,
  pitch,
  yield_strength: { label: 'Yield strength', dimension: 'stress', unit: 'MPa', must: { above: 0 } },
  strength_class: {
    kind: 'choice',
    label: 'Strength class',
    hint: 'instead of the yield strength',
    choices: strengthClasses,
  },
  mu_thread: threadFriction,
  mu_head: headFriction,
  head_od: headOutsideDiameter,
  hole: holeDiameter,
  utilisation: {
    label: 'Share of the yield strength in use',
    dimension: 'number',
    unit: '-',
    must: { above: 0, atMost: 1 },
    default: 0.9,
    defaultSource: 'VDI 2230',
  },
  planned_preload: {
    label: 'Preload planned',
    hint: 'to be checked against the largest',
    dimension: 'force',
    unit: 'kN',
    must: { above: 0 },
    optional: true,
  },
} as const;

const needs = ['diameter', 'pitch', 'mu_thread', 'mu_head', 'head_od', 'hole'] as const;

/** Largest preload [N] before tension and the twist of tightening together reach the share of yield (VDI 2230). */
function largestPreload(d: number, p: number, muThread: number, stress: number): number {
  const d2 = pitchDiameter(d, p);
  const d0 = stressDiameter(d, p);
  const twist = 1.5 * (d2 / d0) * (p / (Math.PI * d2) + 1.155 * muThread);
  return (stress * (Math.PI / 4) * d0 ** 2) / Math.sqrt(1 + 3 * twist ** 2);
}

function compute(given: Omit<Values<typeof inputs>, 'yield_strength' | 'strength_class'>, yieldStrength: number) {
  const { diameter: d, pitch: p, mu_thread: muThread, head_od: headOutside, hole, planned_preload: planned } = given;
  refuseCoarseThread('pitch', d, p);
  refuseNarrowHead(headOutside, hole);
  const largest = largestPreload(d, p, muThread, given.utilisation * yieldStrength);
  const { sum } = torqueParts({
    pitch: p,
    pitchDiameter: pitchDiameter(d, p),
    threadFriction: muThread,
    headFriction: given.mu_head,
    headOutside,
    hole,
  });
  return {
    outputs: { max_preload: largest, torque: largest * sum },
    warnings:
      planned !== undefined && exceeds(planned, largest)
        ? [graveWarning('The preload planned is above the largest: the bolt yields as it is tightened.')]
        : [],
  };
}

export const yieldPreload = calculator({
  id: 'F4',
  slug: 'yield-preload',
  title: 'Largest preload by yield',
  about: 'How far a bolt can be tightened before tension and twist together reach its yield.',
  inputs,
  outputs: {
    max_preload: { label: 'Largest preload', dimension: 'force', unit: 'kN' },
    torque: { label: 'Torque at that preload', dimension: 'torque', unit: 'N*m' },
  },
  formula:
    'max_preload = utilisation · yield_strength · A0/√(1 + 3 · (1.5 · (d2/d0) · (P/(π d2) + 1.155 · mu_thread))²), ' +
    'd0 = (d2 + d3)/2, A0 = π/4 · d0²; torque = max_preload · (P/(2π) + 0.57735 · mu_thread · d2 + 0.5 · D_b · mu_head)',
  source:
    'VDI 2230 (table for fine threads of the 2001/2003 edition seen in reproduction; eight of its entries met within 0.4 % ' +
    'in force and 1 % in torque). ISO 16047 for the torque.',
  notes: ['Not for bolts with a reduced shank: the shank governs there.', torqueScatter, headContactNote],
  caution: fastenerCaution,
  example: {
    diameter: { value: 10, unit: 'mm' },
    pitch: { value: 1.25, unit: 'mm' },
    yield_strength: { value: 640, unit: 'MPa' },
    mu_thread: { value: 0.12 },
    mu_head: { value: 0.12 },
    utilisation: { value: 0.9 },
    head_od: { value: 14.63, unit: 'mm' },
    hole: { value: 11, unit: 'mm' },
  },
  modes: [
    {
      name: 'strength',
      title: 'by yield strength',
      needs: [...needs, 'yield_strength'],
      compute: (given) => compute(given, given.yield_strength),
    },
    {
      name: 'class',
      title: 'by strength class',
      needs: [...needs, 'strength_class'],
      compute: (given) =>
        compute(given, strengthOf(given.strength_class, given.diameter, 'strength_class').yieldStrength),
    },
  ],
});
