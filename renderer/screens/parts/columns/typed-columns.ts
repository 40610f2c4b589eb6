import { parseTypedDate } from '../../../../core/dates/date-text.ts';
import { minorDigits } from '../../../../core/money/currency.ts';
import { extraPriceDigits } from '../../../../core/money/line-value.ts';
import { isUnit, parseQuantity, plainQuantity } from '../../../../core/units/quantity.ts';
import { plainUnitPrice, unitPriceText } from '../../../parts/formats.ts';
import type { LocaleSettings } from '../../../parts/locale.tsx';
import type { Names } from '../names.ts';
import { type CellActs, dateColumn, dateOrderOf, noneWord, type PartColumn, quantityColumn } from './column-tools.ts';
import { readTypedPrice, requireTyped } from './typed-text.ts';

/** Columns of free text that are typed into. */
function textColumn(
  key: 'description' | 'partNumber' | 'note' | 'attention' | 'maker',
  title: string,
  acts: CellActs,
  more: Partial<PartColumn> = {},
): PartColumn {
  const text = (row: Parameters<PartColumn['text']>[0]) => row[key];
  return {
    key,
    title,
    kind: 'text',
    value: text,
    text,
    edit: {
      kind: 'text',
      allowed: acts.allowed,
      commit: (row, typed) => {
        const value = key === 'description' ? requireTyped(typed, 'description') : typed.trim();
        return acts.save(row, { [key]: value }, typed, text);
      },
    },
    ...more,
  };
}

/** A column whose cells are chosen from a list of records. */
function recordColumn(
  key: 'system' | 'phase' | 'vendor' | 'job' | 'bin',
  title: string,
  names: Names,
  acts: CellActs,
  more: Partial<PartColumn> = {},
): PartColumn {
  const list = names[key];
  const text = (row: Parameters<PartColumn['text']>[0]) => list.nameOf(row[key]);
  return {
    key,
    title,
    kind: 'choice',
    value: (row) => text(row) || null,
    text,
    groupable: true,
    edit: {
      kind: 'choice',
      choices: [noneWord, ...list.options.map(({ label }) => label)],
      text: (row) => text(row) || noneWord,
      allowed: acts.allowed,
      commit: (row, typed) => {
        const id = typed === noneWord ? null : list.idOf(typed);
        return key === 'bin' ? acts.putInBin(row, id) : acts.save(row, { [key]: id }, typed, text);
      },
    },
    ...more,
  };
}

/** The columns that hold what a person typed about a line. */
export function typedColumns(names: Names, locale: LocaleSettings, acts: CellActs) {
  const price = (row: Parameters<PartColumn['text']>[0]) =>
    row.estimateEachE4 === null ? '' : unitPriceText(row.estimateEachE4, locale);
  const needText = quantityColumn('need', 'Needed', (row) => row.needMilli, locale);
  const neededBy = dateColumn('neededBy', 'Needed by', (row) => row.neededBy, locale);
  return {
    description: textColumn('description', 'Description', acts, {
      width: 270,
      card: 'primary',
      subtotal: (rows) => `${rows.length.toLocaleString(locale.language)} ${rows.length === 1 ? 'line' : 'lines'}`,
    }),
    partNumber: textColumn('partNumber', 'Part number', acts, { width: 140 }),
    maker: textColumn('maker', 'Maker', acts, { width: 140 }),
    note: textColumn('note', 'Note', acts, { width: 240 }),
    attention: textColumn('attention', 'Wants an eye', acts, { width: 220 }),
    system: recordColumn('system', 'System', names, acts, { card: 'secondary' }),
    phase: recordColumn('phase', 'Phase', names, acts),
    vendor: recordColumn('vendor', 'Vendor', names, acts, { width: 160 }),
    job: recordColumn('job', 'Job', names, acts, { width: 180 }),
    bin: recordColumn('bin', 'Bin', names, acts, { card: 'secondary' }),
    need: {
      ...needText,
      edit: {
        kind: 'quantity',
        text: (row) => plainQuantity(row.needMilli),
        allowed: acts.allowed,
        commit: async (row, typed) => {
          const unit = isUnit(row.unit) ? row.unit : 'each';
          const needMilli = parseQuantity(typed, unit, { field: 'quantity needed', zero: true });
          await acts.save(row, { needMilli }, typed, needText.text);
        },
      },
    } satisfies PartColumn,
    priceEach: {
      key: 'priceEach',
      title: 'Price each',
      kind: 'money',
      value: (row) => row.estimateEachE4,
      text: price,
      searched: false,
      filter: {
        kind: 'range',
        digits: minorDigits(locale.currency) + extraPriceDigits,
        accepted: 'a price such as 12.50',
      },
      edit: {
        kind: 'money',
        text: (row) => (row.estimateEachE4 === null ? '' : plainUnitPrice(row.estimateEachE4, locale.currency)),
        allowed: acts.allowed,
        commit: async (row, typed) => {
          const estimateEachE4 = readTypedPrice(typed, locale.currency);
          await acts.save(row, { estimateEachE4 }, typed, price);
        },
      },
    } satisfies PartColumn,
    priority: {
      key: 'priority',
      title: 'Priority',
      kind: 'choice',
      value: (row) => row.priority,
      text: (row) => String(row.priority),
      searched: false,
      groupable: true,
      edit: {
        kind: 'choice',
        choices: ['1', '2', '3', '4', '5'],
        allowed: acts.allowed,
        commit: (row, typed) => acts.save(row, { priority: Number(typed) }, typed, (each) => String(each.priority)),
      },
    } satisfies PartColumn,
    neededBy: {
      ...neededBy,
      edit: {
        kind: 'date',
        allowed: acts.allowed,
        commit: async (row, typed) => {
          const day = typed.trim() === '' ? null : parseTypedDate(typed, dateOrderOf(locale), 'needed by');
          await acts.save(row, { neededBy: day }, typed, neededBy.text);
        },
      },
    } satisfies PartColumn,
  };
}
