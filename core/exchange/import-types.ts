import type { DateOrder } from '../dates/date-text.ts';
import type { ImportFinding, ImportQuestion } from './table-types.ts';

/** What a column can hold. A column that fits none of them is kept as text on its row. */
export const importFields = [
  'description',
  'partNumber',
  'maker',
  'vendor',
  'link',
  'quantity',
  'unit',
  'unitPrice',
  'lineTotal',
  'currency',
  'shipping',
  'tax',
  'discount',
  'duty',
  'orderTotal',
  'orderNumber',
  'orderLine',
  'orderedOn',
  'state',
  'promisedOn',
  'arrivedOn',
  'shippedQuantity',
  'backorderedQuantity',
  'fittedState',
  'tracking',
  'system',
  'phase',
  'job',
  'priority',
  'note',
  'paid',
  'coreDeposit',
  'bin',
] as const;
export type ImportField = (typeof importFields)[number];

export type ImportKind = 'parts' | 'orders';

/** Which column is what. `field` null: kept as text on the row. No field is given to two columns. */
export interface MappedColumn {
  readonly index: number;
  readonly title: string;
  readonly field: ImportField | null;
  /** How the guess was reached, for the screen that confirms it. */
  readonly because: 'heading' | 'content' | 'user' | 'nothing fits';
}

export interface Mapping {
  readonly kind: ImportKind;
  readonly fingerprint: string;
  readonly columns: readonly MappedColumn[];
}

/** Our own words for where a part stands; 'unknown' is a word nobody has explained, kept in the note. */
export const importStates = [
  'needed',
  'quoted',
  'ordered',
  'acknowledged',
  'back-ordered',
  'in-transit',
  'partly-received',
  'on-shelf',
  'allocated',
  'trial-fitted',
  'fitted',
  'snug',
  'verified',
  'wrong-part',
  'sent-back',
  'borrowed',
  'donor',
  'already-owned',
  'not-needed',
  'decision-open',
  'unknown',
] as const;
export type ImportState = (typeof importStates)[number];

export type PaidState = 'paid' | 'not-paid' | 'not-recorded';

/** A remark that belongs to a value and stays with the part (`value` in `unit` where it has one). */
export interface ImportFact {
  readonly key: string;
  readonly value: string;
  readonly unit?: string;
}

export interface ImportedPart {
  readonly row: number;
  readonly description: string;
  readonly partNumber?: string;
  readonly maker?: string;
  readonly link?: string;
  /** Thousandths of the unit; null when the cell is blank and a blank may not be read as one. */
  readonly quantityMilli: number | null;
  readonly unit: string;
  readonly system?: string;
  readonly phase?: string;
  readonly job?: string;
  readonly vendor?: string;
  readonly priority?: string;
  readonly unitPriceMinor?: number;
  /** The same price in 1/10,000 of a minor unit, exact: small fasteners cost fractions of a cent. */
  readonly unitPriceE4?: number;
  /** Quantity × exact price, rounded half away from zero. */
  readonly estimateLineMinor?: number;
  readonly priceIsGuess: boolean;
  readonly currency: string;
  readonly orderedOn?: string;
  readonly promisedOn?: string;
  readonly arrivedOn?: string;
  readonly orderNumber?: string;
  readonly state: ImportState;
  /** The word that the state was read from, as written. */
  readonly stateText: string;
  /** How many came in so far, whatever happened to them since. */
  readonly arrivedMilli?: number;
  /** How many sit on the engine, for trial or for good. */
  readonly fittedMilli?: number;
  /** True when a word on the row says that it is not the builder's own. */
  readonly borrowed: boolean;
  /** Whose it is, when borrowed and the note says so. */
  readonly owner?: string;
  readonly bin?: string;
  readonly coreDepositMinor?: number;
  readonly paid: PaidState;
  /** The note as written, and everything on the row that was not understood, word for word. */
  readonly note: string;
  readonly facts: readonly ImportFact[];
}

export interface ImportedOrderLine {
  readonly row: number;
  readonly orderNumber: string;
  readonly vendor: string;
  readonly orderedOn?: string;
  readonly orderLine?: string;
  readonly description: string;
  readonly partNumber?: string;
  readonly quantityMilli: number | null;
  readonly unit: string;
  readonly unitPriceMinor?: number;
  readonly unitPriceE4?: number;
  readonly lineTotalMinor?: number;
  readonly currency: string;
  readonly shippedMilli?: number;
  readonly backorderedMilli?: number;
  readonly promisedOn?: string;
  readonly arrivedOn?: string;
  readonly state: ImportState;
  readonly stateText: string;
  readonly paid: PaidState;
  readonly tracking?: string;
  readonly note: string;
  readonly facts: readonly ImportFact[];
}

/** One order; its charges stand once, usually on its first line. */
export interface ImportedOrder {
  readonly orderNumber: string;
  readonly vendor: string;
  readonly orderedOn?: string;
  readonly currency: string;
  readonly shippingMinor: number;
  readonly taxMinor: number;
  readonly dutyMinor: number;
  readonly discountMinor: number;
  /** Total as the file says, and the difference from lines + charges, when it says one. */
  readonly fileTotalMinor?: number;
  readonly differenceMinor?: number;
  readonly state: 'open' | 'complete';
  readonly rows: readonly number[];
}

/**
 * part, order-line: will be written. section: names the system of the rows below. total: sums rows above, left out.
 * duplicate: the same as another row or as something known. attention: blocks the batch until answered or skipped.
 */
export const rowFates = [
  'part',
  'order-line',
  'section',
  'total',
  'blank',
  'header',
  'duplicate',
  'attention',
  'skipped',
] as const;
export type RowFate = (typeof rowFates)[number];

export interface PlannedRow {
  readonly row: number;
  readonly fate: RowFate;
  readonly part?: ImportedPart;
  readonly orderLine?: ImportedOrderLine;
  /** The duplicate key, for the caller to store and to give back as `known`. */
  readonly key?: string;
  /** Changes when anything but the key changes: tells a duplicate from a conflict. */
  readonly content?: string;
  /** The earlier file row (or '' + id of something known) that this one repeats. */
  readonly duplicateOf?: string;
  readonly findings: readonly ImportFinding[];
}

export interface SectionTotal {
  readonly system: string;
  readonly row: number;
  readonly fileTotalMinor: number;
  readonly ourTotalMinor: number;
  /** Why the two differ, line by line: ours minus the file's; the amounts add up to the whole difference. */
  readonly differences: readonly { readonly row: number; readonly reason: string; readonly amountMinor: number }[];
}

export interface ImportPlan {
  readonly kind: ImportKind;
  /** True: no blocking question is open and no row needs attention; the batch may be written. */
  readonly ready: boolean;
  readonly questions: readonly ImportQuestion[];
  readonly rows: readonly PlannedRow[];
  readonly counts: Readonly<Record<RowFate, number>> & { readonly rowsInFile: number };
  readonly systems: readonly string[];
  readonly vendors: readonly string[];
  readonly orders: readonly ImportedOrder[];
  readonly sectionTotals: readonly SectionTotal[];
  /** Remarks on the whole file. */
  readonly findings: readonly ImportFinding[];
}

/** `answers[question.id]`, and `answers['row:17'] = 'skip'` or `'import'` to overrule the fate of one row. */
export type ImportAnswers = Readonly<Record<string, string>>;

export interface ImportDefaults {
  /** ISO 4217 code for prices that name none. */
  readonly currency: string;
  /** Offered as the guess when a date column can't be decided; it is asked all the same. */
  readonly dateOrder?: DateOrder;
  /** Settles 1,234 where the column doesn't: the mark that this user types before cents. */
  readonly decimalMark?: '.' | ',';
  readonly paid: PaidState;
  readonly missingQuantityIsOne: boolean;
  /** YYYY-MM-DD; order and arrival dates after it are remarked on. */
  readonly today: string;
}

/** Something brought in before: its key, its content and an id to show. */
export interface KnownRow {
  readonly key: string;
  readonly content: string;
  readonly id: string;
}
