import { calculator, refuseInput } from '../calculator.ts';
import { fallsShort } from '../limits.ts';
import { fastenerCaution, torque } from './fasteners.ts';

export const adapterTorque = calculator({
  id: 'F5',
  slug: 'adapter-torque',
  title: 'Wrench setting with a crowfoot or offset adapter',
  about: 'What to set a torque wrench to when an adapter makes it longer or shorter.',
  inputs: {
    target_torque: { ...torque, label: 'Torque wanted at the fastener' },
    wrench_length: {
      label: 'Wrench length',
      hint: 'centre of the grip to centre of the drive',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    adapter_length: {
      label: 'Adapter length',
      hint: 'centre of the drive to centre of the fastener',
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
    },
    angle: {
      label: 'Angle of the adapter',
      hint: '0 in line with the wrench, 90 square to it, 180 pointing back',
      dimension: 'angle',
      unit: 'deg',
      must: { atLeast: 0, atMost: 180 },
    },
  },
  outputs: { wrench_setting: { label: 'Wrench setting', dimension: 'torque', unit: 'N*m' } },
  formula: 'wrench_setting = target_torque · L/(L + E · cos(angle)), L wrench_length, E adapter_length',
  source: 'Lever equation; formula seen in several places, with a worked number.',
  notes: [
    'At 90 degrees no correction is needed, and that is the best way to work.',
    'A plain extension bar along the axis of the drive needs no correction.',
  ],
  caution: fastenerCaution,
  example: {
    target_torque: { value: 80, unit: 'N*m' },
    wrench_length: { value: 400, unit: 'mm' },
    adapter_length: { value: 50, unit: 'mm' },
    angle: { value: 0, unit: 'deg' },
  },
  compute: ({ target_torque: target, wrench_length: length, adapter_length: adapter, angle }) => {
    const reach = adapter * Math.cos(angle);
    if (!fallsShort(-reach, length)) {
      refuseInput(
        'adapter_length',
        'The adapter points back as far as the hand on the grip: no lever is left.',
        'a length that leaves the fastener ahead of the grip',
      );
    }
    return { outputs: { wrench_setting: (target * length) / (length + reach) } };
  },
});
