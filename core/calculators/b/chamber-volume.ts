import { calculator, refuseInput } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { crevice, ratioSource, spaceInputs, spaceWarnings, volumesOf } from './compression.ts';

export const chamberVolume = calculator({
  id: 'B3',
  slug: 'chamber-volume',
  title: 'Chamber volume for a target ratio',
  about: 'The chamber that gives a wanted compression ratio with these parts.',
  inputs: {
    ...spaceInputs,
    target_ratio: {
      label: 'Target ratio',
      dimension: 'number',
      unit: '-',
      must: { above: 1 },
    },
    present_chamber: {
      label: 'Present chamber',
      hint: 'to see how far it is off',
      dimension: 'volume',
      unit: 'cc',
      must: { atLeast: 0 },
      optional: true,
    },
  },
  outputs: {
    chamber: { label: 'Chamber', dimension: 'volume', unit: 'cc' },
    clearance_volume: { label: 'Clearance volume', dimension: 'volume', unit: 'cc' },
    chamber_change: {
      label: 'Change from the present chamber',
      hint: 'positive: the chamber has to grow',
      dimension: 'volume',
      unit: 'cc',
    },
  },
  formula:
    'clearance_volume = swept_volume/(target_ratio − 1); chamber = clearance_volume − gasket volume − deck volume − piston_dish',
  source: ratioSource,
  notes: [crevice],
  caution: makersValueGoverns,
  example: {
    bore: { value: 86, unit: 'mm' },
    stroke: { value: 86, unit: 'mm' },
    target_ratio: { value: 9 },
    gasket_bore: { value: 87, unit: 'mm' },
    gasket_thickness: { value: 1.2, unit: 'mm' },
    deck_clearance: { value: 0.2, unit: 'mm' },
    piston_dish: { value: 5, unit: 'cc' },
  },
  compute: ({ target_ratio, present_chamber, ...space }) => {
    const { swept, besideChamber } = volumesOf(space);
    const clearance = swept / (target_ratio - 1);
    const chamber = clearance - besideChamber;
    if (chamber <= 0) {
      refuseInput(
        'target_ratio',
        'No chamber is left at this ratio: gasket, deck and piston take all of the clearance volume.',
        'a lower ratio, a thinner gasket or a smaller dish',
      );
    }
    return {
      outputs: {
        chamber,
        clearance_volume: clearance,
        chamber_change: present_chamber === undefined ? undefined : chamber - present_chamber,
      },
      warnings: spaceWarnings(space, target_ratio),
    };
  },
});
