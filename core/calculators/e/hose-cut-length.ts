import { calculator, refuseInput, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';

export const hoseCutLength = calculator({
  id: 'E5',
  slug: 'hose-cut-length',
  title: 'Hose cut length',
  about: 'How long to cut a hose so that it is right with its two fittings on.',
  inputs: {
    assembly_length: {
      label: 'Assembly length',
      hint: 'centre to centre, along the route',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    cutoff_1: {
      label: 'Cutoff of the first fitting',
      hint: "from its reference centre to where the hose seats: maker's drawing, or measured on an empty fitting",
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
    },
    cutoff_2: {
      label: 'Cutoff of the second fitting',
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
    },
    slack: {
      label: 'Slack',
      hint: '2 to 4 % is advised',
      dimension: 'fraction',
      unit: '%',
      must: { atLeast: 0 },
      usual: { to: 10 },
      default: 0,
      defaultSource: 'none unless asked for; 2 to 4 % is advised',
    },
    min_hose_length: {
      label: 'Smallest hose length for the bend',
      hint: 'from the bend radius calculator',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
      optional: true,
    },
  },
  outputs: { cut_length: { label: 'Cut length', dimension: 'length', unit: 'mm' } },
  formula: 'cut_length = assembly_length · (1 + slack) - cutoff_1 - cutoff_2',
  source:
    'Derived by hand. Slack of 2 to 4 %: hydraulic hose changes length under pressure, SAE J517 allows about +2 to -4 % ' +
    '(from memory).',
  notes: ['With two angled ends, mark how they are clocked to each other before cutting.'],
  example: {
    assembly_length: { value: 600, unit: 'mm' },
    cutoff_1: { value: 25, unit: 'mm' },
    cutoff_2: { value: 32, unit: 'mm' },
  },
  compute: ({ assembly_length: assembly, cutoff_1: first, cutoff_2: second, slack, min_hose_length: least }) => {
    const route = assembly * (1 + slack);
    if (!exceeds(route, first + second)) {
      refuseInput(
        'assembly_length',
        'The two cutoffs are as long as the assembly, so that no hose is left.',
        'a length above the sum of the two cutoffs',
      );
    }
    const cut = route - first - second;
    return {
      outputs: { cut_length: cut },
      warnings:
        least !== undefined && fallsShort(cut, least)
          ? [warning('The hose is shorter than its bend needs: it kinks, or pulls at the fittings.')]
          : [],
    };
  },
});
