/**
 * Where one part line stands: its need, its order lines and its lots, folded from postings. Quantities are integer
 * thousandths, amounts integer minor units of the base currency with debits positive (a vendor whom we owe is negative).
 */
import {
  type Balance,
  type ExitAccount,
  type MoneyAccount,
  moneyAccounts,
  type PlaceAccount,
  type Posting,
} from './accounts.ts';
import type { EntryDraft, LotSource } from './entry.ts';
import { addToLine, addToLot, emptyLine, emptyLot, isMoney, zeros } from './line-and-lot.ts';

/** What the records say about a part line; everything else about it is folded from postings. */
export interface PartFacts {
  readonly part: number;
  readonly build: number;
  readonly optional?: boolean;
  readonly needsVerification?: boolean;
  /** Tightened past yield: once finally torqued it may not be used again. */
  readonly stretchOnce?: boolean;
  readonly lines?: readonly LineFacts[];
  readonly lots?: readonly LotFacts[];
}

export interface LineFacts {
  readonly line: number;
  readonly order: number;
}

/** Where a lot came from; fixed by the entry that brought it in. */
export interface LotFacts {
  readonly lot: number;
  /** The order line that it came on, 0 for none. */
  readonly line: number;
  readonly source: LotSource;
  /** Whose it is when borrowed. */
  readonly owner?: string;
}

export interface PartState {
  readonly part: number;
  readonly build: number;
  readonly optional: boolean;
  readonly needsVerification: boolean;
  readonly stretchOnce: boolean;
  readonly needMilli: number;
  /** Price guess each in 1/10,000 of a minor unit; null without one. */
  readonly estimateEachE4: number | null;
  /** Raw balance of the estimate account, from which `estimateEachE4` follows: 1000 or 0, and the price or 0. */
  readonly estimateBalance: { readonly quantityMilli: number; readonly amountE4: number };
  /** E: what is still to be spent on units neither in hand nor on the way. */
  readonly remainingMinor: number;
  /** Totals of the double entry over everything posted to this part line. */
  readonly money: Readonly<Record<MoneyAccount, number>>;
  /** Oldest first. */
  readonly lines: readonly LineState[];
  /** Oldest first. */
  readonly lots: readonly LotState[];
}

export interface LineState extends LineFacts {
  readonly orderedMilli: number;
  readonly replacedMilli: number;
  readonly cancelledMilli: number;
  readonly receivedMilli: number;
  readonly placedMilli: number;
  readonly acknowledgedMilli: number;
  readonly backOrderedMilli: number;
  readonly inTransitMilli: number;
  /** The order document's value of the line in the base currency. */
  readonly landedMinor: number;
  /** K: value of what is still outstanding. */
  readonly commitmentMinor: number;
  /** Balance of the vendor account: negative when we owe, positive when the vendor owes goods or money. */
  readonly vendorMinor: number;
  /** What the vendor owes for refused and cancelled units, the lots' claims included. */
  readonly claimsMinor: number;
  /** Cash out less cash back, refundable deposits left out. */
  readonly paidMinor: number;
  readonly depositsMinor: number;
  /** Cost on the line that belongs to no lot: return fees, deposits kept by the vendor. */
  readonly feesMinor: number;
}

export interface LotState extends LotFacts {
  readonly cameInMilli: number;
  readonly places: Readonly<Record<PlaceAccount, number>>;
  readonly exits: Readonly<Record<ExitAccount, number>>;
  /** Returned units that were refunded or exchanged. */
  readonly settledMilli: number;
  readonly costMinor: number;
  readonly lossMinor: number;
  readonly claimsMinor: number;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
export type MutableLine = Mutable<LineState>;
export interface MutableLot extends Mutable<Omit<LotState, 'places' | 'exits'>> {
  places: Record<PlaceAccount, number>;
  exits: Record<ExitAccount, number>;
}
export interface MutablePart extends Mutable<Omit<PartState, 'lines' | 'lots' | 'money'>> {
  lines: MutableLine[];
  lots: MutableLot[];
  money: Record<MoneyAccount, number>;
}

/** A part line that nothing has been posted to. */
export function emptyPart(facts: PartFacts): MutablePart {
  return {
    part: facts.part,
    build: facts.build,
    optional: facts.optional ?? false,
    needsVerification: facts.needsVerification ?? false,
    stretchOnce: facts.stretchOnce ?? false,
    needMilli: 0,
    estimateEachE4: null,
    estimateBalance: { quantityMilli: 0, amountE4: 0 },
    remainingMinor: 0,
    money: zeros(moneyAccounts),
    lines: [...(facts.lines ?? [])].sort((a, b) => a.line - b.line).map(emptyLine),
    lots: [...(facts.lots ?? [])].sort((a, b) => a.lot - b.lot).map(emptyLot),
  };
}

/** Folds the balances of one part line. Balances of other part lines must be left out. */
export function stateFromBalances(facts: PartFacts, balances: Iterable<Balance>): PartState {
  const state = emptyPart(facts);
  for (const balance of balances) addMovement(state, balance, 0);
  return state;
}

/** The state after these postings; the given state is left as it is. `lots` describes lots that the entry brings in. */
export function applyPostings(
  state: PartState,
  postings: Iterable<Posting>,
  lots: readonly LotFacts[] = [],
): PartState {
  const next = copyPart(state);
  for (const lot of lots) lotIn(next, lot);
  for (const posting of postings) addMovement(next, posting, posting.order);
  return next;
}

/** Adds one posting or balance to a state in place: for folds over whole files. `order` is 0 where it isn't known. */
export function addMovement(state: MutablePart, moved: Omit<Balance, 'part'>, order: number): void {
  const { account, quantityMilli: quantity, amountMinor: amount } = moved;
  if (account === 'need') state.needMilli += quantity;
  else if (account === 'estimate') addEstimate(state, quantity, amount);
  else if (account === 'remaining') state.remainingMinor += amount;
  if (isMoney(account)) state.money[account] += amount;
  const line = moved.line === 0 ? undefined : lineIn(state, { line: moved.line, order });
  if (line !== undefined) addToLine(line, moved);
  if (moved.lot !== 0) addToLot(lotIn(state, { lot: moved.lot, line: moved.line, source: 'bought' }), moved);
}

/** The lot that a draft brings in, as its entry fixes it; undefined for kinds that bring in none. */
export function lotOfDraft(draft: EntryDraft): LotFacts | undefined {
  if (draft.lot === undefined) return undefined;
  const line = draft.line ?? 0;
  if (draft.kind === 'received') return { lot: draft.lot, line, source: 'bought' };
  if (draft.kind === 'over-delivered') return { lot: draft.lot, line, source: 'over-delivery' };
  if (draft.kind !== 'came-in') return undefined;
  const source = draft.payload?.['source'];
  const owner = draft.payload?.['owner'];
  return {
    lot: draft.lot,
    line: 0,
    source: source as LotSource,
    ...(typeof owner === 'string' && owner !== '' ? { owner } : {}),
  };
}

export function copyPart(state: PartState): MutablePart {
  return {
    ...state,
    money: { ...state.money },
    lines: state.lines.map((line) => ({ ...line })),
    lots: state.lots.map((lot) => ({ ...lot, places: { ...lot.places }, exits: { ...lot.exits } })),
  };
}

/** Finds a lot, or adds it in its place. */
export function lotIn(state: MutablePart, facts: LotFacts): MutableLot {
  const known = state.lots.find((lot) => lot.lot === facts.lot);
  if (known !== undefined) return known;
  const made = emptyLot(facts);
  insert(state.lots, made, (lot) => lot.lot);
  return made;
}

function lineIn(state: MutablePart, facts: LineFacts): MutableLine {
  const known = state.lines.find((line) => line.line === facts.line);
  if (known !== undefined) return known;
  const made = emptyLine(facts);
  insert(state.lines, made, (line) => line.line);
  return made;
}

function insert<T>(list: T[], item: T, id: (item: T) => number): void {
  const before = list.findIndex((other) => id(other) > id(item));
  if (before === -1) list.push(item);
  else list.splice(before, 0, item);
}

function addEstimate(state: MutablePart, quantity: number, amount: number): void {
  const before = state.estimateBalance;
  const after = { quantityMilli: before.quantityMilli + quantity, amountE4: before.amountE4 + amount };
  state.estimateBalance = after;
  state.estimateEachE4 = after.quantityMilli > 0 ? after.amountE4 : null;
}
