import type { RangeBounds, SheetColumn } from './sheet-types.ts';
import { filterOf } from './sheet-view.ts';

type BoundsOutcome =
  | { readonly bounds: RangeBounds | null }
  | { readonly field: 'from' | 'to'; readonly message: string };

const acceptedByKind = {
  date: 'a date such as 2026-03-31',
  number: 'a number such as 12.5',
  quantity: 'a quantity such as 8 or 0.5',
  money: 'an amount such as 12.50',
} as const;

/** What a bound of this column's range may look like, in words. */
export function acceptedBound<Row>(column: SheetColumn<Row>): string {
  return filterOf(column).accepted ?? acceptedByKind[column.kind as keyof typeof acceptedByKind] ?? 'a value';
}

/**
 * Reads a typed range. Both sides empty means no filter (`bounds: null`). A bound that can't be understood, or a range
 * the wrong way round, comes back as a message that names the side and says what is accepted.
 */
export function readBounds<Row>(column: SheetColumn<Row>, fromText: string, toText: string): BoundsOutcome {
  const from = readBound(column, fromText);
  const to = readBound(column, toText);
  const accepted = acceptedBound(column);
  const complain = (side: 'From' | 'To', text: string) =>
    `${side} “${text.trim()}” can’t be read for ${column.title}. Type ${accepted}. Nothing was changed.`;
  if (from === undefined) return { field: 'from', message: complain('From', fromText) };
  if (to === undefined) return { field: 'to', message: complain('To', toText) };
  if (from === null && to === null) return { bounds: null };
  if (from !== null && to !== null && from > to) {
    return { field: 'to', message: `To must not come before From for ${column.title}. Nothing was changed.` };
  }
  return { bounds: { from, to, fromText: fromText.trim(), toText: toText.trim() } };
}

/** The bound in the terms of the column's `value`; null when empty, undefined when it can't be understood. */
function readBound<Row>(column: SheetColumn<Row>, typed: string): number | string | null | undefined {
  const text = typed.trim();
  if (text === '') return null;
  const { parse, digits } = filterOf(column);
  if (parse !== undefined) return parse(text) ?? undefined;
  if (column.kind === 'date') return isDate(text) ? text : undefined;
  if (column.kind === 'text') return text;
  return readDecimal(text, digits ?? { money: 2, quantity: 3 }[column.kind as string]);
}

function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

/** A decimal with point or comma; with `digits` as a whole number of that many decimal steps, made without floats. */
function readDecimal(text: string, digits: number | undefined): number | undefined {
  const parts = /^([+-]?)(\d+)(?:[.,](\d+))?$/.exec(text.replaceAll(/[\s\u00a0\u202f]/g, ''));
  if (parts === null) return undefined;
  const [, sign = '', whole = '', fraction = ''] = parts;
  if (digits === undefined) return Number(`${sign}${whole}.${fraction || '0'}`);
  if (fraction.length > digits) return undefined;
  const steps = Number(`${sign}${whole}${fraction.padEnd(digits, '0')}`);
  return Number.isSafeInteger(steps) ? steps : undefined;
}
