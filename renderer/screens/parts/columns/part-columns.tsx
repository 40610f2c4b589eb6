import { standings } from '../../../../core/contract/parts.ts';
import { quantityText } from '../../../parts/formats.ts';
import type { LocaleSettings } from '../../../parts/locale.tsx';
import { State } from '../../../parts/state.tsx';
import type { Names } from '../names.ts';
import { type CellActs, dateColumn, moneyColumn, type PartColumn, quantityColumn } from './column-tools.ts';
import { inHandMilli, onEngineMilli, temporaryWords } from './row-figures.ts';
import { typedColumns } from './typed-columns.ts';

const standing: PartColumn = {
  key: 'standing',
  title: 'Standing',
  kind: 'state',
  width: 132,
  // In the order of a part's life, not of the alphabet.
  value: (row) => standings.indexOf(row.standing),
  text: (row) => row.standing,
  render: (row) => (
    <span title={row.standingText}>
      <State state={row.standing} />
    </span>
  ),
  groupable: true,
  card: 'aside',
};

const temporary: PartColumn = {
  key: 'temporary',
  title: 'For now only',
  kind: 'choice',
  value: (row) => temporaryWords(row) || null,
  text: temporaryWords,
};

const yes = (key: string, title: string, is: (row: Parameters<PartColumn['text']>[0]) => boolean): PartColumn => ({
  key,
  title,
  kind: 'choice',
  value: (row) => (is(row) ? 'yes' : null),
  text: (row) => (is(row) ? 'yes' : ''),
  searched: false,
});

/** Every column of the parts sheet, from left to right. */
export function partColumns(names: Names, locale: LocaleSettings, acts: CellActs): readonly PartColumn[] {
  const typed = typedColumns(names, locale, acts);
  const toGet = quantityColumn('toGet', 'Still to get', (row) => row.uncoveredMilli, locale);
  return [
    typed.description,
    standing,
    typed.need,
    quantityColumn('onOrder', 'On order', (row) => row.onOrderMilli, locale),
    quantityColumn('inHand', 'In hand', inHandMilli, locale),
    quantityColumn('onEngine', 'On engine', onEngineMilli, locale),
    {
      ...toGet,
      card: 'secondary',
      render: (row) =>
        row.uncoveredMilli === 0 ? '' : <strong>{quantityText(row.uncoveredMilli, locale, row.unit)}</strong>,
    },
    moneyColumn('forecast', 'Forecast', (row) => row.forecastMinor, locale),
    typed.system,
    typed.vendor,
    typed.partNumber,
    typed.priceEach,
    moneyColumn('paid', 'Paid', (row) => row.paidMinor, locale),
    dateColumn('promised', 'Promised', (row) => row.promisedOn, locale),
    typed.neededBy,
    typed.phase,
    typed.bin,
    typed.priority,
    typed.job,
    typed.attention,
    typed.note,
    typed.maker,
    quantityColumn('backOrdered', 'On back-order', (row) => row.backOrderedMilli, locale),
    quantityColumn('toInspect', 'To inspect', (row) => row.inspectionMilli, locale),
    quantityColumn('rejected', 'Rejected', (row) => row.rejectedMilli, locale),
    quantityColumn('lent', 'Lent', (row) => row.lentMilli, locale),
    temporary,
    moneyColumn('cost', 'Cost so far', (row) => row.costMinor, locale),
    moneyColumn('commitment', 'Committed', (row) => row.commitmentMinor, locale),
    moneyColumn('remaining', 'Still to buy', (row) => row.remainingMinor, locale),
    moneyColumn('stillToPay', 'Still to pay', (row) => row.stillToPayMinor, locale),
    yes('optional', 'Can be left out', (row) => row.optional),
    yes('stretchOnce', 'Stretches once', (row) => row.stretchOnce),
  ];
}

/** Columns that a fresh sheet keeps out of sight; the column menu brings them back. */
export const hiddenAtFirst: readonly string[] = [
  'neededBy',
  'phase',
  'bin',
  'priority',
  'job',
  'attention',
  'note',
  'maker',
  'backOrdered',
  'toInspect',
  'rejected',
  'lent',
  'temporary',
  'cost',
  'commitment',
  'remaining',
  'stillToPay',
  'optional',
  'stretchOnce',
];
