/** What must be true of every part line after every entry. A finding is a fault of the books, never of the user. */
import { onEngine, outstandingOf, uncovered, unsettledOf } from './coverage.ts';
import { figures, identityGapMinor } from './figures.ts';
import type { LineState, LotState, PartState } from './part-state.ts';

export const invariantIds = [
  'double-entry', // the money accounts add up to zero
  'outstanding-labels', // ordered + replaced − cancelled − received = the labels, none below zero
  'lot-units', // the buckets and exits of a lot add up to the units that came in
  'bucket-floor', // no place, exit or settled count below zero, nor more settled than returned
  'identity', // RV + K = P + U
  'deposits', // refunded + kept ≤ paid
  'claims', // no claim below zero
  'remaining', // E zero or more, and zero once everything is covered
  'commitment', // K zero or more, and zero once nothing is outstanding
  'settled-order', // nothing outstanding, no claim, nothing owed: nothing left to pay
  'room', // no more on the engine than needed
  'need', // the need is zero or more, and there is one estimate or none
  'money-of-lines', // the lines and lots carry what the part line carries
  'borrowed', // a borrowed unit costs nothing and is never with a vendor
] as const;
export type InvariantId = (typeof invariantIds)[number];

export interface LedgerFinding {
  readonly id: InvariantId;
  readonly part: number;
  readonly line: number;
  readonly lot: number;
  readonly text: string;
}

/** Every invariant that the state breaks; none in sound books. */
export function findings(state: PartState): LedgerFinding[] {
  const found: LedgerFinding[] = [];
  const check = (holds: boolean, id: InvariantId, text: string, line = 0, lot = 0): void => {
    if (!holds) found.push({ id, part: state.part, line, lot, text });
  };
  const of = figures(state);
  const sum = Object.values(state.money).reduce((total, amount) => total + amount, 0);
  const open = uncovered(state);
  check(sum === 0, 'double-entry', `the money accounts add up to ${sum}`);
  check(identityGapMinor(of) === 0, 'identity', `cost and commitment differ from paid and to pay`);
  check(state.remainingMinor >= 0, 'remaining', `the remaining estimate is ${state.remainingMinor}`);
  check(open > 0 || state.remainingMinor === 0, 'remaining', 'nothing is uncovered, yet an estimate remains');
  check(state.needMilli >= 0, 'need', `the need is ${state.needMilli} thousandths`);
  check(onEngine(state) <= state.needMilli, 'room', 'more is on the engine than is needed');
  const { quantityMilli, amountE4 } = state.estimateBalance;
  const oneEstimate = (quantityMilli === 1000 && amountE4 >= 0) || (quantityMilli === 0 && amountE4 === 0);
  check(oneEstimate, 'need', 'there is more than one estimate');
  checkTotals(state, check);
  for (const line of state.lines) checkLine(line, check);
  for (const lot of state.lots) checkLot(lot, check);
  return found;
}

type Check = (holds: boolean, id: InvariantId, text: string, line?: number, lot?: number) => void;

function checkTotals(state: PartState, check: Check): void {
  const ofLines = (pick: (line: LineState) => number): number => state.lines.reduce((sum, line) => sum + pick(line), 0);
  const ofLots = (pick: (lot: LotState) => number): number => state.lots.reduce((sum, lot) => sum + pick(lot), 0);
  const { money } = state;
  const pairs: readonly [string, number, number][] = [
    ['cost', money.cost, ofLots((lot) => lot.costMinor) + ofLines((line) => line.feesMinor)],
    ['loss', money.loss, ofLots((lot) => lot.lossMinor)],
    ['vendor', money.vendor, ofLines((line) => line.vendorMinor)],
    ['claims', money.claims, ofLines((line) => line.claimsMinor)],
    ['deposits', money.deposits, ofLines((line) => line.depositsMinor)],
    ['cash', money.cash + money.deposits, 0 - ofLines((line) => line.paidMinor)],
  ];
  for (const [name, whole, parts] of pairs) check(whole === parts, 'money-of-lines', `${name}: ${whole} and ${parts}`);
}

function checkLine(line: LineState, check: Check): void {
  const at = line.line;
  const labels = [line.placedMilli, line.acknowledgedMilli, line.backOrderedMilli, line.inTransitMilli];
  const outstanding = outstandingOf(line);
  const sum = labels.reduce((total, units) => total + units, 0);
  const whole = [line.orderedMilli, line.replacedMilli, line.cancelledMilli, line.receivedMilli];
  check(sum === outstanding, 'outstanding-labels', `${outstanding} outstanding, ${sum} labelled`, at);
  check(
    [...labels, ...whole].every((units) => units >= 0),
    'outstanding-labels',
    'a count is below zero',
    at,
  );
  check(line.depositsMinor >= 0, 'deposits', `deposits are ${line.depositsMinor}`, at);
  check(line.claimsMinor >= 0, 'claims', `claims are ${line.claimsMinor}`, at);
  check(line.commitmentMinor >= 0, 'commitment', `the commitment is ${line.commitmentMinor}`, at);
  check(outstanding > 0 || line.commitmentMinor === 0, 'commitment', 'committed, with nothing outstanding', at);
  const settled = outstanding === 0 && line.claimsMinor === 0 && line.vendorMinor === 0;
  const stillToPay = line.commitmentMinor - line.vendorMinor - line.claimsMinor;
  check(!settled || stillToPay === 0, 'settled-order', 'settled, yet something is to pay', at);
}

function checkLot(lot: LotState, check: Check): void {
  const at = [lot.line, lot.lot] as const;
  const units = [...Object.values(lot.places), ...Object.values(lot.exits)];
  const sum = units.reduce((total, one) => total + one, 0);
  check(sum === lot.cameInMilli, 'lot-units', `${lot.cameInMilli} came in, ${sum} are accounted for`, ...at);
  check(units.every((one) => one >= 0) && lot.settledMilli >= 0, 'bucket-floor', 'a bucket is below zero', ...at);
  check(unsettledOf(lot) >= 0, 'bucket-floor', 'more was settled than returned', ...at);
  check(lot.claimsMinor >= 0, 'claims', `claims are ${lot.claimsMinor}`, ...at);
  if (lot.source !== 'borrowed') return;
  const money = lot.costMinor !== 0 || lot.lossMinor !== 0 || lot.claimsMinor !== 0;
  const away = lot.exits.returned + lot.exits.scrapped + lot.exits.consumed + lot.exits.moved + lot.places.rejected;
  check(!money && away === 0, 'borrowed', 'a borrowed unit carries money or went where it may not', ...at);
}
