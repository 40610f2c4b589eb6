/** The line and lot halves of a part line's state: empty ones, and what a movement does to them. */
import {
  type Balance,
  type ExitAccount,
  exitAccounts,
  type MoneyAccount,
  moneyAccounts,
  type PlaceAccount,
  placeAccounts,
} from './accounts.ts';
import type { LineFacts, LotFacts, MutableLine, MutableLot } from './part-state.ts';

const lineQuantities = {
  replaced: 'replacedMilli',
  cancelled: 'cancelledMilli',
  received: 'receivedMilli',
  placed: 'placedMilli',
  acknowledged: 'acknowledgedMilli',
  'back-ordered': 'backOrderedMilli',
  'in-transit': 'inTransitMilli',
} as const;

/** Adds a movement to its order line. */
export function addToLine(line: MutableLine, moved: Omit<Balance, 'part'>): void {
  const { account, quantityMilli: quantity, amountMinor: amount } = moved;
  if (account === 'ordered') {
    line.orderedMilli += quantity;
    line.landedMinor += amount;
  } else if (account in lineQuantities) line[lineQuantities[account as keyof typeof lineQuantities]] += quantity;
  else if (account === 'commitment') line.commitmentMinor += amount;
  else if (account === 'vendor') line.vendorMinor += amount;
  else if (account === 'claims') line.claimsMinor += amount;
  else if (account === 'cash') line.paidMinor -= amount;
  else if (account === 'cost' && moved.lot === 0) line.feesMinor += amount;
  else if (account === 'deposits') {
    line.depositsMinor += amount;
    line.paidMinor -= amount;
  }
}

/** Adds a movement to its lot. */
export function addToLot(lot: MutableLot, moved: Omit<Balance, 'part'>): void {
  const { account, quantityMilli: quantity, amountMinor: amount } = moved;
  if (account === 'came-in') lot.cameInMilli += quantity;
  else if (account === 'settled') lot.settledMilli += quantity;
  else if (account === 'cost') lot.costMinor += amount;
  else if (account === 'loss') lot.lossMinor += amount;
  else if (account === 'claims') lot.claimsMinor += amount;
  else if (account in lot.places) lot.places[account as PlaceAccount] += quantity;
  else if (account in lot.exits) lot.exits[account as ExitAccount] += quantity;
}

const moneySet: ReadonlySet<string> = new Set(moneyAccounts);
/** Whether an account takes part in the double entry. */
export function isMoney(account: string): account is MoneyAccount {
  return moneySet.has(account);
}

export function emptyLine(facts: LineFacts): MutableLine {
  return {
    line: facts.line,
    order: facts.order,
    orderedMilli: 0,
    replacedMilli: 0,
    cancelledMilli: 0,
    receivedMilli: 0,
    placedMilli: 0,
    acknowledgedMilli: 0,
    backOrderedMilli: 0,
    inTransitMilli: 0,
    landedMinor: 0,
    commitmentMinor: 0,
    vendorMinor: 0,
    claimsMinor: 0,
    paidMinor: 0,
    depositsMinor: 0,
    feesMinor: 0,
  };
}

export function emptyLot(facts: LotFacts): MutableLot {
  return {
    ...facts,
    cameInMilli: 0,
    places: zeros(placeAccounts),
    exits: zeros(exitAccounts),
    settledMilli: 0,
    costMinor: 0,
    lossMinor: 0,
    claimsMinor: 0,
  };
}

/** A record with 0 under every name. */
export function zeros<T extends string>(names: readonly T[]): Record<T, number> {
  return Object.fromEntries(names.map((name) => [name, 0])) as Record<T, number>;
}
