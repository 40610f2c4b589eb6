import type { z } from 'zod';
import { evaluateCheck, type WorkedCheck } from '../checks/evaluate.ts';
import { plainKey } from '../checks/fact-terms.ts';
import { checkFacts } from '../checks/read-fact.ts';
import type { CheckContext, CheckPart } from '../checks/source.ts';
import type { checksContract, SwapView } from '../contract/checks.ts';
import { addDays } from '../dates/calendar-date.ts';
import type { GateFacts, PartFact } from '../gate/facts.ts';
import { Refusal } from '../refusal.ts';
import { isUnit } from '../units/quantity.ts';
import { buildChecks, type KeptCheck, runOf } from '../workbook/store/checks.ts';
import { moneyOf } from '../workbook/store/money.ts';
import { keptPositions } from '../workbook/store/positions.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { type Context, needBuild } from './context.ts';
import { allGateFacts, reviewFacts } from './gate.ts';

type Swap = z.infer<NonNullable<(typeof checksContract.swap)['~orpc']['inputSchema']>>;
type Candidate = Swap['candidates'][number];
type Column = SwapView['columns'][number];

/** The part with the candidate's facts over its own. */
function partWith(part: CheckPart, candidate: Candidate): CheckPart {
  const told = new Set(candidate.facts.map(({ key }) => plainKey(key)));
  return {
    ...part,
    description: candidate.label,
    facts: [...part.facts.filter(({ key }) => !told.has(plainKey(key))), ...candidate.facts],
  };
}

/**
 * The line as the hoist check would see it: all of it still to come, on the candidate's day. Nothing of a part that is
 * here or on order counts any more, except where neither price nor day is given: then only the facts change.
 */
function factWith(fact: PartFact, candidate: Candidate, today: string): PartFact {
  if (candidate.priceMinor === null && candidate.arrivesInDays === null) return fact;
  const cost = candidate.priceMinor === null ? {} : { costToComeMinor: candidate.priceMinor, estimateKnown: true };
  if (candidate.arrivesInDays === null) return { ...fact, ...cost };
  return {
    ...fact,
    ...cost,
    fittedMilli: 0,
    snugMilli: 0,
    verifiedMilli: 0,
    inHandMilli: 0,
    inspectionMilli: 0,
    onOrderMilli: fact.needMilli,
    backOrderedMilli: 0,
    backOrderedOn: null,
    promisedOn: addDays(today, candidate.arrivesInDays),
    expectedOn: null,
  };
}

/** A line that the hoist check has left out because nothing of it stands in the way. */
function finishedPart(context: Context, part: number): PartFact {
  const { connection } = context.book();
  const record = needRecord(connection, 'parts', part, 'part');
  const position = keptPositions(connection, Number(record.build)).get(part);
  const unit = String(record['unit']);
  return {
    id: part,
    description: String(record['description']),
    unit: isUnit(unit) ? unit : 'each',
    needMilli: position?.needMilli ?? 0,
    fittedMilli: position?.fittedMilli ?? 0,
    snugMilli: position?.snugMilli ?? 0,
    verifiedMilli: position?.verifiedMilli ?? 0,
    trialFittedMilli: 0,
    borrowedOnMilli: 0,
    lentMilli: 0,
    rejectedUnsettledMilli: 0,
    inHandMilli: 0,
    onOrderMilli: 0,
    backOrderedMilli: 0,
    needsVerification: record['needsVerification'] === true,
    optional: record['optional'] === true,
    costToComeMinor: 0,
    estimateKnown: true,
  };
}

function gateWith(context: Context, facts: GateFacts, candidate: Candidate, checks: GateFacts['checks']): GateFacts {
  const known = facts.parts.some(({ id }) => id === candidate.part);
  const parts = known ? facts.parts : [...facts.parts, finishedPart(context, candidate.part)];
  return {
    ...facts,
    parts: parts.map((part) => (part.id === candidate.part ? factWith(part, candidate, context.today()) : part)),
    ...(checks === undefined ? {} : { checks }),
  };
}

/** All checks, the forecast and the day of the gate as they stand, and with each candidate in its part's place. */
export function swapCandidates(context: Context, { build, candidates }: Swap): SwapView {
  const { connection } = context.book();
  needBuild(context, build);
  for (const candidate of candidates) checkFacts(candidate.facts);
  const { checks, context: facts } = buildChecks(connection, build, undefined);
  const run = runOf(connection);
  const work = (read: CheckContext): WorkedCheck[] => checks.map((check) => evaluateCheck(check, read, run));
  const gateNow = allGateFacts(context, build, undefined);
  const forecast = moneyOf(connection, build, context.today(), undefined).total.forecastMinor;
  const positions = keptPositions(connection, build);

  const gateChecks = (results: readonly WorkedCheck[]): NonNullable<GateFacts['checks']> =>
    checks.flatMap((check: KeptCheck, index) => {
      const result = results[index];
      return result === undefined || !check.beforeGate
        ? []
        : [{ id: check.id, title: check.title, verdict: result.verdict, says: result.says }];
    });
  const column = (label: string, results: readonly WorkedCheck[], forecastMinor: number, gate: GateFacts): Column => {
    const { gateOn, atLeastOn } = reviewFacts(context, build, gate);
    const count = (verdict: string): number => results.filter((one) => one.verdict === verdict).length;
    return { label, forecastMinor, gateOn, atLeastOn, fails: count('fails'), lacks: count('lacks data') };
  };

  const now = work(facts);
  const results = [now];
  const columns = [column('As it stands', now, forecast, gateNow)];
  for (const candidate of candidates) {
    const part = facts.parts.find(({ id }) => id === candidate.part) ?? bareParts(context, build, candidate.part);
    const others = facts.parts.filter(({ id }) => id !== candidate.part);
    const swapped = work({ ...facts, parts: [...others, partWith(part, candidate)].sort((a, b) => a.id - b.id) });
    const position = positions.get(candidate.part);
    // What the line has cost so far is spent; its open order and its estimate give way to the candidate's price.
    const toCome = (position?.commitmentMinor ?? 0) + (position?.remainingMinor ?? 0);
    const forecastMinor = candidate.priceMinor === null ? forecast : forecast - toCome + candidate.priceMinor;
    results.push(swapped);
    columns.push(
      column(candidate.label, swapped, forecastMinor, gateWith(context, gateNow, candidate, gateChecks(swapped))),
    );
  }
  return {
    answer: answerOf(columns),
    columns,
    rows: checks.map((check, index) => {
      const cells = results.map((column) => {
        const { verdict, says, value, unit } = column[index] as WorkedCheck;
        const figure = value === null ? '' : `${Number(value.toPrecision(5))}${unit === '-' ? '' : ` ${unit}`}`;
        return { verdict, says, figure };
      });
      const [first] = cells;
      const changed = cells.some((cell) => cell.verdict !== first?.verdict || cell.figure !== first.figure);
      return { check: check.id, title: check.title, changed, cells };
    }),
  };
}

/** A part line that says nothing yet, so that a candidate may say something in its place. */
function bareParts(context: Context, build: number, part: number): CheckPart {
  const record = needRecord(context.book().connection, 'parts', part, 'part');
  if (record.build !== build) {
    throw new Refusal('bad-input', `Part line ${part} belongs to another build. Nothing was changed.`, {
      field: 'part',
      accepted: 'a part line of this build',
    });
  }
  if (record.retiredOn !== null) {
    throw new Refusal('not-allowed-from-here', `“${String(record['description'])}” was dropped. Nothing was changed.`, {
      field: 'part',
      accepted: 'a part line on the list',
    });
  }
  return {
    id: part,
    description: String(record['description']),
    kind: String(record['kind'] ?? ''),
    facts: [],
    standing: 'needed',
  };
}

function answerOf(columns: readonly Column[]): string {
  const [now, ...others] = columns;
  const best = others.reduce<Column | undefined>((least, one) => {
    if (least === undefined) return one;
    const step = one.fails - least.fails || one.lacks - least.lacks || one.forecastMinor - least.forecastMinor;
    return step < 0 ? one : least;
  }, undefined);
  if (now === undefined || best === undefined) return '';
  const fails = (count: number): string =>
    count === 0 ? 'no check fails' : count === 1 ? '1 check fails' : `${count} checks fail`;
  const change =
    best.fails === now.fails ? `${fails(best.fails)}, as now` : `${fails(best.fails)} instead of ${now.fails}`;
  return `${others.length === 1 ? 'With' : 'Best of these is'} ${best.label}: ${change}. What has been paid for the part so far stays spent.`;
}
