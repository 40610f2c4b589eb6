/** The money figures of part lines: one home for each. Minor units of the base currency. */
import type { PartState } from './part-state.ts';

export interface Figures {
  /** RV: cost recognised, losses included, refused units left out. */
  readonly costMinor: number;
  /** The part of the cost that was lost or scrapped. */
  readonly lossMinor: number;
  /** K: value on order and not received. */
  readonly commitmentMinor: number;
  /** E: estimate of what is neither in hand nor on order. */
  readonly remainingMinor: number;
  /** P: paid less refunded, with value that came in without cash; refundable deposits left out. */
  readonly paidMinor: number;
  readonly depositsMinor: number;
  /** Positive when we owe the vendor, negative when the vendor owes goods or money. */
  readonly vendorOwedMinor: number;
  readonly claimsMinor: number;
  /** U = K + vendor owed − claims: negative means that money is coming back. */
  readonly stillToPayMinor: number;
  /** F = RV + K + E. */
  readonly forecastMinor: number;
  /** Differences from exchange rates and cash rounding; part of no forecast, shown by themselves. */
  readonly exchangeMinor: number;
  readonly roundingMinor: number;
}

/** What one part line has cost, will cost and still owes. */
export function figures(state: PartState): Figures {
  const { money } = state;
  const commitmentMinor = state.lines.reduce((sum, line) => sum + line.commitmentMinor, 0);
  const costMinor = money.cost + money.loss;
  const vendorOwedMinor = 0 - money.vendor;
  return {
    costMinor,
    lossMinor: money.loss,
    commitmentMinor,
    remainingMinor: state.remainingMinor,
    paidMinor: 0 - money.cash - money.deposits - money.transfer,
    depositsMinor: money.deposits,
    vendorOwedMinor,
    claimsMinor: money.claims,
    stillToPayMinor: commitmentMinor + vendorOwedMinor - money.claims,
    forecastMinor: costMinor + commitmentMinor + state.remainingMinor,
    exchangeMinor: money.exchange,
    roundingMinor: money.rounding,
  };
}

/**
 * How far RV + K and P + U are apart, less the exchange and rounding differences that explain it: 0 in sound books.
 */
export function identityGapMinor(of: Figures): number {
  const accrual = of.costMinor + of.commitmentMinor;
  const cash = of.paidMinor + of.stillToPayMinor;
  return accrual - cash + of.exchangeMinor + of.roundingMinor;
}

const noFigures: Figures = {
  costMinor: 0,
  lossMinor: 0,
  commitmentMinor: 0,
  remainingMinor: 0,
  paidMinor: 0,
  depositsMinor: 0,
  vendorOwedMinor: 0,
  claimsMinor: 0,
  stillToPayMinor: 0,
  forecastMinor: 0,
  exchangeMinor: 0,
  roundingMinor: 0,
};

/** Figures of several part lines together. */
export function addFigures(all: Iterable<Figures>): Figures {
  const total: Record<string, number> = { ...noFigures };
  for (const one of all) for (const [name, amount] of Object.entries(one)) total[name] = (total[name] ?? 0) + amount;
  return total as unknown as Figures;
}
