/** The orders behind the lines: who, when, and the charges, which most lists give on an order's first line only. */
import { plainWords } from './clean-text.ts';
import type { ImportedOrder, ImportedOrderLine } from './import-types.ts';
import { cameIn } from './plan-states.ts';
import { Remarks } from './row-reader.ts';
import type { RowAmount } from './row-values.ts';
import type { ImportFinding } from './table-types.ts';

export type ChargeField = 'shipping' | 'tax' | 'duty' | 'discount' | 'orderTotal';

export interface LineWithCharges {
  readonly line: ImportedOrderLine;
  readonly charges: Readonly<Partial<Record<ChargeField, RowAmount>>>;
}

export interface OrdersOfLines {
  readonly orders: readonly ImportedOrder[];
  readonly findings: Remarks<ImportFinding>;
}

/** Gathers lines by vendor and order number, in the order in which they first appear. */
export function ordersOfLines(lines: readonly LineWithCharges[]): OrdersOfLines {
  const groups = new Map<string, LineWithCharges[]>();
  for (const entry of lines) {
    const key = `${plainWords(entry.line.vendor)}\n${plainWords(entry.line.orderNumber)}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [entry]);
    else group.push(entry);
  }
  const findings = new Remarks<ImportFinding>();
  return { orders: [...groups.values()].flatMap((group) => orderOf(group, findings)), findings };
}

function orderOf(group: readonly LineWithCharges[], findings: Remarks<ImportFinding>): readonly ImportedOrder[] {
  const first = group[0]?.line;
  if (first === undefined) return [];
  const remark = (severity: 'note' | 'attention', text: string, message: string) =>
    findings.add(first.row, { severity, column: '', text, message });
  const linesMinor = group.reduce((sum, { line }) => sum + (line.lineTotalMinor ?? 0), 0);
  const charge = (field: ChargeField) => group.flatMap(({ charges }) => charges[field]?.minor ?? []);
  const fields = ['shipping', 'tax', 'duty', 'discount'] as const;
  const total = charge('orderTotal');
  const [fileTotalMinor] = total;

  // A charge that stands on every line alike is either one charge repeated or one for each line; the total tells.
  const repeated = fields.every((field) => {
    const amounts = charge(field);
    return amounts.length === 0 || (amounts.length === group.length && new Set(amounts).size === 1);
  });
  const sums = (once: boolean) => {
    const sum = (field: ChargeField) => {
      const amounts = charge(field);
      return once ? (amounts[0] ?? 0) : amounts.reduce((all, amount) => all + amount, 0);
    };
    const discount = Math.abs(sum('discount'));
    const [shipping, tax, duty] = [sum('shipping'), sum('tax'), sum('duty')];
    return { shipping, tax, duty, discount, total: linesMinor + shipping + tax + duty - discount };
  };
  const apart = sums(false);
  const once = sums(true);
  const together = group.length > 1 && repeated && once.total !== apart.total;
  const charges = together && (fileTotalMinor === undefined || once.total === fileTotalMinor) ? once : apart;
  if (together) {
    const how = charges === once ? 'counted once' : 'added up';
    remark('attention', first.orderNumber, `Every line of the order carries the same charges; they were ${how}.`);
  }
  if (new Set(total).size > 1) {
    remark('attention', first.orderNumber, 'The lines of the order give different order totals; the first was taken.');
  }
  const dates = new Set(group.flatMap(({ line }) => line.orderedOn ?? []));
  if (dates.size > 1)
    remark('attention', first.orderNumber, 'The lines of the order carry different dates; the first was taken.');
  const differenceMinor = fileTotalMinor === undefined ? undefined : charges.total - fileTotalMinor;
  if (differenceMinor !== undefined && differenceMinor !== 0) {
    remark(
      'attention',
      first.orderNumber,
      `Lines and charges make ${charges.total}, the order total says ${fileTotalMinor} (minor units of ${first.currency}).`,
    );
  }
  const [orderedOn] = dates;
  return [
    {
      orderNumber: first.orderNumber,
      vendor: first.vendor,
      currency: first.currency,
      shippingMinor: charges.shipping,
      taxMinor: charges.tax,
      dutyMinor: charges.duty,
      discountMinor: charges.discount,
      state: group.every(({ line }) => cameIn(line.state)) ? 'complete' : 'open',
      rows: group.map(({ line }) => line.row),
      ...(orderedOn === undefined ? {} : { orderedOn }),
      ...(fileTotalMinor === undefined || differenceMinor === undefined ? {} : { fileTotalMinor, differenceMinor }),
    },
  ];
}
