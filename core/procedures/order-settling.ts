import type { EntryKind } from '../ledger/entry.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { readSettings } from '../workbook/store/connection.ts';
import type { OrderRecord } from '../workbook/store/order-records.ts';
import { atFields, checkWhole, chosenLines, describe, lineState, money, orderName } from './order-acts.ts';

export interface RefundGiven {
  readonly on: string;
  readonly line: number;
  /** Money that came back, in the base currency. */
  readonly amountMinor: number;
  /** What the vendor keeps of the claim. */
  readonly feeMinor: number;
  /** Returned units that this settles. */
  readonly settlesMilli: number;
  readonly note: string;
}

const onlyLine = (writer: ActWriter, order: OrderRecord, line: number) => {
  const [chosen] = atFields({ 'lines.0.line': 'line' }, () => chosenLines(writer.connection, order, [{ line }]));
  if (chosen === undefined) throw new Error('A line that was asked for is missing');
  return chosen.record;
};

/** Money back for what was sent back or cancelled; the fee closes the rest of the claim and stays a cost. */
export function refundLine(writer: ActWriter, order: OrderRecord, given: RefundGiven): string {
  const { connection } = writer;
  const { currency } = readSettings(connection);
  const record = onlyLine(writer, order, given.line);
  const line = lineState(writer, record.part, record.id, 'line');
  checkWhole(connection, record.part, given.settlesMilli, 'settlesMilli');
  const closes = given.amountMinor + given.feeMinor;
  if (closes + given.settlesMilli === 0) {
    throw new Refusal('bad-input', 'No money, no fee and no unit is named. Nothing was changed.', {
      field: 'amountMinor',
      accepted: 'the money that came back',
    });
  }
  const unsettled = writer
    .state(record.part)
    .lots.filter((lot) => lot.line === record.id)
    .reduce((sum, lot) => sum + lot.exits.returned - lot.settledMilli + lot.places.rejected, 0);
  // A refund of a foreign order that settles all that went back closes the claim; another rate is no fee.
  const closesAll = order.rate !== null && given.settlesMilli > 0 && given.settlesMilli === unsettled;
  if (!closesAll && closes > line.claimsMinor) {
    throw new Refusal(
      'not-allowed-from-here',
      `The vendor owes ${money(line.claimsMinor, currency)} for “${describe(connection, record.part)}”; money and fee together are ${money(closes, currency)}. Nothing was changed.`,
      {
        field: 'amountMinor',
        accepted:
          line.claimsMinor === 0
            ? 'nothing, as it stands: reject and send back, or cancel, first'
            : `at most ${money(line.claimsMinor, currency)} with the fee`,
        detail: { bucket: 'claims', available: line.claimsMinor, asked: closes },
      },
    );
  }
  atFields({ quantity: 'settlesMilli', amount: 'amountMinor' }, () =>
    writer.post({
      kind: 'refunded',
      on: given.on,
      build: order.build,
      part: record.part,
      order: order.id,
      line: record.id,
      amountMinor: given.amountMinor,
      ...(given.note === '' ? {} : { note: given.note }),
      payload: {
        ...(given.feeMinor === 0 ? {} : { feeMinor: given.feeMinor }),
        ...(given.settlesMilli === 0 ? {} : { closesMilli: given.settlesMilli }),
        ...(closesAll && closes !== line.claimsMinor ? { claimMinor: line.claimsMinor } : {}),
      },
    }),
  );
  return `Refund of ${money(given.amountMinor, currency)} on ${orderName(connection, order)}`;
}

export type DepositStep = 'paid' | 'old unit sent' | 'refunded' | 'kept by vendor';

const depositKinds: Record<DepositStep, EntryKind> = {
  paid: 'deposit-paid',
  'old unit sent': 'old-unit-sent',
  refunded: 'deposit-refunded',
  'kept by vendor': 'deposit-kept',
};

const depositLabels: Record<DepositStep, string> = {
  paid: 'Core deposit',
  'old unit sent': 'Old unit sent in',
  refunded: 'Core deposit refunded',
  'kept by vendor': 'Core deposit kept by the vendor',
};

/** The deposit on an old unit: cash out when paid, back when refunded, a cost only when the vendor keeps it. */
export function depositOnLine(
  writer: ActWriter,
  order: OrderRecord,
  given: {
    readonly on: string;
    readonly line: number;
    readonly what: DepositStep;
    readonly amountMinor: number;
    readonly dueOn: string | null;
    readonly reason: string;
  },
): string {
  const { connection } = writer;
  const record = onlyLine(writer, order, given.line);
  lineState(writer, record.part, record.id, 'line');
  const moves = given.what !== 'old unit sent';
  if (moves && given.amountMinor === 0) {
    throw new Refusal('bad-input', 'The amount of the deposit is missing. Nothing was changed.', {
      field: 'amountMinor',
      accepted: 'an amount above 0',
    });
  }
  atFields({ amount: 'amountMinor' }, () =>
    writer.post({
      kind: depositKinds[given.what],
      on: given.on,
      build: order.build,
      part: record.part,
      order: order.id,
      line: record.id,
      ...(moves ? { amountMinor: given.amountMinor } : {}),
      payload: {
        ...(given.dueOn === null ? {} : { dueOn: given.dueOn }),
        ...(given.reason === '' ? {} : { reason: given.reason }),
      },
    }),
  );
  return `${depositLabels[given.what]}: ${describe(connection, record.part)}`;
}
