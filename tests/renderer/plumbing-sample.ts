import type { LineDetail, LineNeedRow, LineRow, PlumbingView } from '../../core/contract/plumbing.ts';

/** Lines as the workbook would answer, for the screens that show them. */
export const lineRow = (change: Partial<LineRow> = {}): LineRow => ({
  id: 1,
  revision: 1,
  name: 'Turbo drain',
  fluid: 'engine oil',
  service: 'drain',
  from: { port: 11, part: 4, whose: 'Turbocharger, oil drain', text: 'JIC -10 male' },
  to: { port: null, part: null, whose: '', text: '' },
  hose: '100R5 -10',
  cutMm: 270,
  toleranceMm: 3.2,
  problem: null,
  quantity: 1,
  verdict: 'pass',
  says: '100R5 -10, cut 270 mm ± 3.2 mm.',
  stepsDone: 0,
  stepsTotal: 3,
  standing: 'not made',
  system: null,
  job: null,
  beforeGate: true,
  ...change,
});

export const lineNeed = (change: Partial<LineNeedRow> = {}): LineNeedRow => ({
  key: 'hose end straight',
  kind: 'hose-end',
  text: 'Hose end straight',
  unit: 'piece',
  neededMilli: 4000,
  part: null,
  onListMilli: 0,
  inStockMilli: 2000,
  toAddMilli: 4000,
  toOrderMilli: 2000,
  lines: ['Turbo drain'],
  ...change,
});

const step = (id: string, title: string, caution = ''): LineDetail['making'][number] => ({
  id,
  title,
  text: `${title}, as its maker says.`,
  caution,
  done: [null],
});

export const lineDetail = (change: Partial<LineDetail> = {}): LineDetail => ({
  row: lineRow(),
  values: {
    name: 'Turbo drain',
    from: 11,
    to: null,
    system: null,
    job: null,
    definition: { fluid: 'engine oil', service: 'drain', route: 'measured', length: 355 },
    beforeGate: true,
    note: '',
  },
  lengths: [{ label: 'Cut', value: '270 mm ± 3.2 mm', how: 'next 5 mm up' }],
  checks: [
    {
      id: 'bend',
      title: 'Bend radius',
      verdict: 'pass',
      text: 'It is wide enough.',
      applies: true,
      source: 'SAE J517',
    },
    { id: 'vacuum', title: 'Vacuum', verdict: 'pass', text: 'no vacuum.', applies: false, source: 'practice' },
    { id: 'slope', title: 'Falls all the way', verdict: 'fail', text: 'A piece rises.', applies: true, source: 'rule' },
  ],
  bill: [{ key: 'hose', kind: 'hose', text: 'Hose 100R5 -10', quantityMilli: 295, unit: 'm' }],
  making: [step('tape', 'Tape the cut'), step('cut', 'Cut square', 'Eye protection on.'), step('debris', 'Debris out')],
  notes: [],
  caution: 'A planning figure.',
  ...change,
});

export const plumbingView = (change: Partial<PlumbingView> = {}): PlumbingView => ({
  answer: '2 lines: 1 fails a check.',
  lines: [
    lineRow(),
    lineRow({ id: 2, name: 'Fuel feed', fluid: 'E85', verdict: 'fail', says: 'Fluid: nitrile is not sufficient.' }),
  ],
  needs: [lineNeed(), lineNeed({ key: 'hose', text: 'Hose 100R5 -10', kind: 'hose', unit: 'm', toAddMilli: 0 })],
  cutList: [
    {
      hose: '100R5 -10',
      answer: '2 cuts: one length at hand is used, nothing is bought.',
      lengths: [
        {
          from: '1,200 mm at hand',
          lengthMm: 1200,
          bought: false,
          cuts: [
            { line: 'Turbo drain', mm: 270 },
            { line: 'Return', mm: 525 },
          ],
          restMm: 405,
        },
      ],
      boughtMm: 0,
      wasteMm: 405,
      proven: true,
    },
  ],
  caution: 'A planning figure.',
  ...change,
});

export const done = { act: 9, label: 'Done', entries: 1, parts: [], made: [7], notices: [] };
