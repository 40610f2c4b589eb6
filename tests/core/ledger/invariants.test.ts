/** Every invariant of the books over random lives. The invariants are the design's own; no outside source. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moneyAccounts } from '../../../core/ledger/accounts.ts';
import { figures, identityGapMinor } from '../../../core/ledger/figures.ts';
import { findings, invariantIds } from '../../../core/ledger/invariants.ts';
import { applyPostings } from '../../../core/ledger/part-state.ts';
import { reversalPostings } from '../../../core/ledger/reverse.ts';
import { bare, foldPostings, live, steps } from './random-life.ts';

const runs = { numRuns: 200 };

test('no entry that is let in breaks an invariant', () => {
  fc.assert(
    fc.property(steps, (all) => {
      live(all, (_, after) => expect(findings(after)).toEqual([]));
    }),
    runs,
  );
});

test('every entry is a double entry by itself, and its lots keep their units', () => {
  const money: ReadonlySet<string> = new Set(moneyAccounts);
  fc.assert(
    fc.property(steps, (all) => {
      live(all, (_, after, postings) => {
        const sum = postings.filter((one) => money.has(one.account)).reduce((total, one) => total + one.amountMinor, 0);
        expect(sum).toBe(0);
        expect(identityGapMinor(figures(after))).toBe(0);
        expect(postings.every((one) => one.quantityMilli !== 0 || one.amountMinor !== 0)).toBe(true);
        expect(new Set(postings.map((one) => one.part)).size).toBeLessThanOrEqual(1);
      });
    }),
    runs,
  );
});

test('folding the balances anew gives the state that the postings led to', () => {
  fc.assert(
    fc.property(steps, (all) => {
      const { state, history } = live(all);
      const again = foldPostings(
        history.flatMap((entry) => entry.postings),
        history,
      );
      expect(bare(again)).toEqual(bare(state));
    }),
    runs,
  );
});

test('taking back the last entry gives the state before it', () => {
  fc.assert(
    fc.property(steps, (all) => {
      live(all, (before, after, postings) => {
        expect(bare(applyPostings(after, reversalPostings(postings)))).toEqual(bare(before));
      });
    }),
    runs,
  );
});

test('nothing is lost: all that was ordered and came in is somewhere, all that was landed is on order or in the books', () => {
  fc.assert(
    fc.property(steps, (all) => {
      const { state } = live(all);
      for (const lot of state.lots) {
        const units = [...Object.values(lot.places), ...Object.values(lot.exits)];
        expect(units.reduce((sum, one) => sum + one, 0)).toBe(lot.cameInMilli);
      }
      for (const line of state.lines) {
        const came = state.lots.filter((lot) => lot.line === line.line && lot.source === 'bought');
        expect(came.reduce((sum, lot) => sum + lot.cameInMilli, 0)).toBe(line.receivedMilli);
      }
    }),
    runs,
  );
});

test('each invariant notices books that break it', () => {
  const { state } = live([]);
  const line = state.lines[0];
  const lot = state.lots[0];
  if (line === undefined || lot === undefined) throw new Error('The opening brought no line or lot');
  const ids = [
    findings({ ...state, money: { ...state.money, cash: 1 } }),
    findings({ ...state, money: { ...state.money, rounding: 1, cost: state.money.cost + 1 } }),
    findings({ ...state, remainingMinor: 1, needMilli: -1 }),
    findings({ ...state, lines: [{ ...line, placedMilli: 0, depositsMinor: -1, claimsMinor: -1 }] }),
    findings({ ...state, lines: [{ ...line, receivedMilli: 8000, commitmentMinor: 5, vendorMinor: 0 }] }),
    findings({ ...state, lots: [{ ...lot, settledMilli: 1, source: 'borrowed' }] }),
    findings({ ...state, lots: [{ ...lot, cameInMilli: 1, places: { ...lot.places, fitted: 9000 } }] }),
  ].flatMap((found) => found.map((one) => one.id));
  expect(new Set(ids)).toEqual(new Set(invariantIds));
});
