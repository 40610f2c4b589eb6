import type { RecordKind, RecordValues } from '../contract/records.ts';
import { Refusal } from '../refusal.ts';

/** What records about money over time must be besides their shapes. @throws Refusal `bad-input` naming the field. */
export function checkBuyingRecord(kind: RecordKind, values: Readonly<Record<string, unknown>>): void {
  if (kind === 'income') checkIncome(values as unknown as RecordValues['income']);
}

function checkIncome({ amountMinor, every, from, until }: RecordValues['income']): void {
  if (amountMinor === 0) {
    throw new Refusal('bad-input', 'An income of nothing changes nothing. Nothing was changed.', {
      field: 'amountMinor',
      accepted: 'an amount above zero',
    });
  }
  if (until === null) return;
  if (every === 'once') {
    throw new Refusal('bad-input', 'Income that comes once has one day, and no last one. Nothing was changed.', {
      field: 'until',
      accepted: 'no last day, or income that comes every month',
    });
  }
  if (until < from) {
    throw new Refusal('bad-input', `The last day ${until} is before the first, ${from}. Nothing was changed.`, {
      field: 'until',
      accepted: `a day from ${from} on, or none`,
    });
  }
}
