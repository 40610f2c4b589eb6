import { calculator, warning } from '../calculator.ts';

/** A dash number counts sixteenths of an inch [m]. */
const sixteenth = 0.0254 / 16;

export const dashSize = calculator({
  id: 'A9',
  slug: 'dash-size',
  title: 'Dash size and nominal sixteenths',
  about: 'What a dash number means in inches or millimetres, and which dash a nominal size is.',
  inputs: {
    dash: {
      kind: 'integer',
      label: 'Dash number',
      dimension: 'number',
      unit: '-',
      must: { atLeast: 1 },
      usual: { from: 2, to: 32 },
    },
    nominal: {
      label: 'Nominal size',
      dimension: 'length',
      unit: 'in',
      must: { above: 0 },
      usual: { from: 0.125, to: 2 },
    },
  },
  outputs: {
    nominal: { label: 'Nominal size', dimension: 'length', unit: 'in' },
    dash: { label: 'Dash number', dimension: 'number', unit: '-' },
    dash_below: { label: 'Next dash below', dimension: 'number', unit: '-' },
    dash_above: { label: 'Next dash above', dimension: 'number', unit: '-' },
  },
  formula: 'nominal = dash · 1/16 in',
  source: 'Definition of the dash number, exact',
  notes: [
    'The nominal size is the outside diameter of the rigid tube that the fitting was made for; the bore of the hose is smaller for some hose families (E1).',
  ],
  example: { dash: { value: 6 } },
  modes: [
    {
      name: 'nominal',
      title: 'size from dash',
      needs: ['dash'],
      compute: ({ dash }) => ({ outputs: { nominal: dash * sixteenth } }),
    },
    {
      name: 'dash',
      title: 'dash from size',
      needs: ['nominal'],
      compute: ({ nominal }) => {
        const exact = nominal / sixteenth;
        const nearest = Math.round(exact);
        // Metric entries of a whole dash (9.525 mm) come out a hair beside it.
        if (Math.abs(exact - nearest) <= 1e-9 * nearest) return { outputs: { dash: nearest } };
        const below = Math.floor(exact);
        return {
          outputs: { dash: exact, dash_below: below, dash_above: below + 1 },
          warnings: [warning(`No dash has this size: it lies between dash ${below} and dash ${below + 1}.`)],
        };
      },
    },
  ],
});
