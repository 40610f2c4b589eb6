import { calculator, refuseInput } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { crevice, ratioSource, spaceInputs, spaceWarnings, volumesOf } from './compression.ts';

export const compressionRatio = calculator({
  id: 'B2',
  slug: 'compression-ratio',
  title: 'Static compression ratio',
  about: 'The compression ratio that chamber, gasket, deck and piston give together.',
  inputs: {
    ...spaceInputs,
    chamber: { label: 'Chamber', dimension: 'volume', unit: 'cc', must: { atLeast: 0 }, usual: { from: 5, to: 300 } },
  },
  outputs: {
    compression_ratio: { label: 'Compression ratio', dimension: 'number', unit: '-' },
    swept_volume: { label: 'Swept volume of one cylinder', dimension: 'volume', unit: 'cc' },
    clearance_volume: { label: 'Clearance volume', dimension: 'volume', unit: 'cc' },
    gasket_volume: { label: 'Gasket volume', dimension: 'volume', unit: 'cc' },
    deck_volume: { label: 'Deck volume', dimension: 'volume', unit: 'cc' },
    squish: { label: 'Squish', hint: 'gasket thickness and deck clearance', dimension: 'length', unit: 'mm' },
  },
  formula:
    'clearance_volume = chamber + π/4 · gasket_bore² · gasket_thickness + π/4 · bore² · deck_clearance + piston_dish; ' +
    'compression_ratio = (swept_volume + clearance_volume)/clearance_volume',
  source: ratioSource,
  notes: [crevice],
  caution: makersValueGoverns,
  example: {
    bore: { value: 86, unit: 'mm' },
    stroke: { value: 86, unit: 'mm' },
    chamber: { value: 47, unit: 'cc' },
    gasket_bore: { value: 87, unit: 'mm' },
    gasket_thickness: { value: 1.2, unit: 'mm' },
    deck_clearance: { value: 0.2, unit: 'mm' },
    piston_dish: { value: 5, unit: 'cc' },
  },
  compute: ({ chamber, ...space }) => {
    const { swept, gasket, deck, besideChamber, squish } = volumesOf(space);
    const clearance = chamber + besideChamber;
    if (clearance <= 0) {
      refuseInput(
        'chamber',
        'Chamber, gasket, deck and piston leave no volume at top dead centre.',
        'a chamber larger than what dome and deck take from it',
      );
    }
    const ratio = (swept + clearance) / clearance;
    return {
      outputs: {
        compression_ratio: ratio,
        swept_volume: swept,
        clearance_volume: clearance,
        gasket_volume: gasket,
        deck_volume: deck,
        squish,
      },
      warnings: spaceWarnings(space, ratio),
    };
  },
});
