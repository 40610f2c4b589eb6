import type { ImportField, ImportPlan, ImportState, PaidState, RowFate } from '../../../core/exchange/import-types.ts';
import type { Encoding, Separator } from '../../../core/exchange/table-types.ts';
import { counted } from '../../parts/formats.ts';

/** What a column can hold, in the words of this screen. */
export const fieldWords: Readonly<Record<ImportField, string>> = {
  description: 'Description',
  partNumber: 'Part number',
  maker: 'Maker',
  vendor: 'Vendor',
  link: 'Link',
  quantity: 'Quantity',
  unit: 'Unit',
  unitPrice: 'Price each',
  lineTotal: 'Line total',
  currency: 'Currency',
  shipping: 'Shipping',
  tax: 'Tax',
  discount: 'Discount',
  duty: 'Duty',
  orderTotal: 'Order total',
  orderNumber: 'Order number',
  orderLine: 'Line of the order',
  orderedOn: 'Ordered on',
  state: 'Where it stands',
  promisedOn: 'Promised for',
  arrivedOn: 'Arrived on',
  shippedQuantity: 'Quantity shipped',
  backorderedQuantity: 'Quantity back-ordered',
  fittedState: 'Fitted or not',
  tracking: 'Tracking number',
  system: 'System',
  phase: 'Phase',
  job: 'Job',
  priority: 'Priority',
  note: 'Note',
  paid: 'Paid or not',
  coreDeposit: 'Core deposit',
  bin: 'Bin',
};

/** Where a part stands, in the words of this screen. */
export const stateWords: Readonly<Record<ImportState, string>> = {
  needed: 'Needed, not ordered',
  quoted: 'Quoted',
  ordered: 'Ordered',
  acknowledged: 'Ordered and acknowledged',
  'back-ordered': 'Back-ordered',
  'in-transit': 'On its way',
  'partly-received': 'Came in part',
  'on-shelf': 'Here, on the shelf',
  allocated: 'Here, set aside for the job',
  'trial-fitted': 'Trial-fitted, to come off again',
  fitted: 'Fitted',
  snug: 'Fitted, bolts snug',
  verified: 'Fitted and checked',
  'wrong-part': 'Here, but the wrong part',
  'sent-back': 'Sent back',
  borrowed: 'Borrowed',
  donor: 'Off a donor',
  'already-owned': 'Already owned',
  'not-needed': 'Not needed',
  'decision-open': 'Still to be decided',
  unknown: 'Keep it as a note',
};

/** What becomes of a row of the file. */
export const fateWords: Readonly<Record<RowFate, string>> = {
  part: 'Part line',
  'order-line': 'Order line',
  section: 'Heading',
  total: 'Total',
  blank: 'Blank',
  header: 'Column headings',
  duplicate: 'Known already',
  attention: 'Needs you',
  skipped: 'Skipped',
};

export const paidWords: readonly { readonly value: PaidState; readonly label: string }[] = [
  { value: 'not-recorded', label: 'Not recorded: enter payments later' },
  { value: 'paid', label: 'Paid on the day of its order' },
  { value: 'not-paid', label: 'Not paid yet' },
];

export const encodingWords: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16, low byte first',
  'utf-16be': 'UTF-16, high byte first',
  'windows-1252': 'Western European (Windows 1252)',
  'windows-1250': 'Central European (Windows 1250)',
  'windows-1251': 'Cyrillic (Windows 1251)',
  macintosh: 'Western (old Macintosh)',
};

export const separatorWords: Readonly<Record<Separator, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'upright strokes',
};

const fateCounts: readonly (readonly [fate: RowFate, one: string, many: string])[] = [
  ['part', 'part line', 'part lines'],
  ['order-line', 'order line', 'order lines'],
  ['section', 'heading', 'headings'],
  ['total', 'total', 'totals'],
  ['header', 'row of column headings', 'rows of column headings'],
  ['blank', 'blank', 'blank'],
  ['duplicate', 'known already', 'known already'],
  ['skipped', 'skipped', 'skipped'],
];

/** Where every row of the file goes: the counts add up to the rows of the file. */
export function planSentence({ counts }: Pick<ImportPlan, 'counts'>): string {
  const parts = fateCounts.flatMap(([fate, one, many]) =>
    counts[fate] === 0 ? [] : [counted(counts[fate], one, many)],
  );
  const all = `${counted(counts.rowsInFile, 'row', 'rows')}: ${parts.length === 0 ? 'nothing to bring in' : parts.join(', ')}`;
  if (counts.attention === 0) return `${all}.`;
  return `${all}; ${counted(counts.attention, 'row needs you', 'rows need you')}.`;
}
