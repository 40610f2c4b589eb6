import { calculator, warning } from '../calculator.ts';
import { dashTable } from './dash-table.ts';

const inch = 0.0254;

export const hoseBore = calculator({
  id: 'E1',
  slug: 'hose-bore',
  title: 'Hose inside diameter by dash size',
  about: 'Which bore a hose of a dash size has, in the two families of hose, and which fitting thread goes with it.',
  inputs: {
    dash: {
      kind: 'integer',
      label: 'Dash size',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      usual: { from: 2, to: 32 },
    },
  },
  outputs: {
    nominal_id: { label: 'Nominal inside diameter', hint: 'most hose families', dimension: 'length', unit: 'mm' },
    tube_equivalent_hose_id: {
      label: 'Inside diameter of tube-equivalent hose',
      hint: 'SAE J517 types 100R5 and 100R14',
      dimension: 'length',
      unit: 'mm',
    },
    fitting_thread: { kind: 'text', label: 'Thread of the 37° flare fitting' },
  },
  formula: 'nominal_id = dash · 1/16 in; tube_equivalent_hose_id and fitting_thread from the table',
  source:
    'SAE J517 hose tables as quoted in hose selection guidance (seen). Fitting threads: AS4395 / SAE J514 (from memory).',
  notes: [
    'Use the smaller bore when the hose family is unknown. The bore of a fitting can be smaller still.',
    'Never mate 37° and 45° flares: the threads of some sizes go together, and the seats leak.',
  ],
  example: { dash: { value: 6 } },
  compute: ({ dash }) => {
    const row = dashTable.get(dash);
    return {
      outputs: {
        nominal_id: (dash / 16) * inch,
        tube_equivalent_hose_id: row === undefined ? undefined : row.tubeEquivalentBore * inch,
        fitting_thread: row?.thread,
      },
      warnings:
        row === undefined
          ? [
              warning(
                `No tube-equivalent bore is on record for dash ${dash} (only for ${[...dashTable.keys()].join(', ')}): measure the hose.`,
              ),
            ]
          : [],
    };
  },
});
