import { calculator } from '../calculator.ts';
import {
  fastenerCaution,
  headFriction,
  headOutsideDiameter,
  holeDiameter,
  pitch,
  preload,
  refuseNarrowHead,
  threadFriction,
  torque,
  torqueScatter,
} from './fasteners.ts';
import { headContactNote } from './head-contact.ts';
import { type FrictionJoint, torqueParts } from './joint-torque.ts';

/** The terms of the equation in the names of the inputs. */
function jointOf(given: {
  readonly pitch: number;
  readonly pitch_diameter: number;
  readonly mu_thread: number;
  readonly mu_head: number;
  readonly head_od: number;
  readonly hole: number;
}): FrictionJoint {
  refuseNarrowHead(given.head_od, given.hole);
  return {
    pitch: given.pitch,
    pitchDiameter: given.pitch_diameter,
    threadFriction: given.mu_thread,
    headFriction: given.mu_head,
    headOutside: given.head_od,
    hole: given.hole,
  };
}

function sharesOf(joint: FrictionJoint) {
  const { stretch, thread, head, sum } = torqueParts(joint);
  return { share_pitch: stretch / sum, share_thread: thread / sum, share_head: head / sum };
}

const needs = ['pitch', 'pitch_diameter', 'mu_thread', 'mu_head', 'head_od', 'hole'] as const;

export const frictionTorque = calculator({
  id: 'F3',
  slug: 'friction-torque',
  title: 'Torque with thread and head friction',
  about: 'What torque gives a preload, or the other way round, with friction in the thread and under the head apart.',
  inputs: {
    pitch,
    pitch_diameter: { label: 'Pitch diameter', dimension: 'length', unit: 'mm', must: { above: 0 } },
    mu_thread: threadFriction,
    mu_head: headFriction,
    head_od: headOutsideDiameter,
    hole: holeDiameter,
    preload,
    torque,
  },
  outputs: {
    torque: { label: 'Torque', dimension: 'torque', unit: 'N*m' },
    preload: { label: 'Preload', dimension: 'force', unit: 'kN' },
    share_pitch: { label: 'Share that stretches the bolt', dimension: 'fraction', unit: '%' },
    share_thread: { label: 'Share of friction in the thread', dimension: 'fraction', unit: '%' },
    share_head: { label: 'Share of friction under the head', dimension: 'fraction', unit: '%' },
  },
  formula:
    'torque = preload · (P/(2π) + 0.57735 · mu_thread · d2 + 0.5 · D_b · mu_head), D_b = (head_od + hole)/2; the shares are ' +
    'each term over the sum',
  source:
    'ISO 16047 (equation from memory; the same form seen in JIS B 1083 and DIN 946). VDI 2230 rounds the first two factors ' +
    'to 0.16 and 0.58.',
  notes: ['About 10 to 15 % of the torque stretches the bolt.', torqueScatter, headContactNote],
  caution: fastenerCaution,
  example: {
    pitch: { value: 1.25, unit: 'mm' },
    pitch_diameter: { value: 9.188, unit: 'mm' },
    mu_thread: { value: 0.12 },
    mu_head: { value: 0.12 },
    head_od: { value: 14.63, unit: 'mm' },
    hole: { value: 11, unit: 'mm' },
    preload: { value: 31.63, unit: 'kN' },
  },
  modes: [
    {
      name: 'torque',
      title: 'torque from preload',
      needs: [...needs, 'preload'],
      compute: (given) => {
        const joint = jointOf(given);
        return { outputs: { torque: given.preload * torqueParts(joint).sum, ...sharesOf(joint) } };
      },
    },
    {
      name: 'preload',
      title: 'preload from torque',
      needs: [...needs, 'torque'],
      compute: (given) => {
        const joint = jointOf(given);
        return { outputs: { preload: given.torque / torqueParts(joint).sum, ...sharesOf(joint) } };
      },
    },
  ],
});
