import { findCalculator } from '../calculators/index.ts';
import { evaluateCheck, type WorkedCheck } from '../checks/evaluate.ts';
import { unitsOfTerm } from '../checks/fact-terms.ts';
import { partKindNamed, partKinds } from '../checks/part-kinds.ts';
import { checkPlan } from '../checks/plan-checks.ts';
import { shippedCheck, shippedChecks } from '../checks/shipped.ts';
import type { CheckPlan } from '../checks/source.ts';
import type { CheckRow, ChecksView } from '../contract/checks.ts';
import { blockerKey } from '../gate/blocker.ts';
import { heldWaivers } from '../gate/waivers.ts';
import { Refusal } from '../refusal.ts';
import { buildChecks, runOf, type WorkedBuild, workedChecks } from '../workbook/store/checks.ts';
import { standingWaivers } from '../workbook/store/gate-facts.ts';
import { listRecords, needRecord } from '../workbook/store/record-tables.ts';
import { factProposals, setFacts } from './checks-facts.ts';
import { checkHistory } from './checks-history.ts';
import { swapCandidates } from './checks-swap.ts';
import { setTargets, targetRows } from './checks-targets.ts';
import { act, type Context, counted, needBuild, procedures } from './context.ts';
import { createRecord } from './records.ts';

const { checks } = procedures;

/** A past day, or undefined for now. */
export const pastDay = (context: Context, asOf: string | undefined): string | undefined =>
  asOf !== undefined && asOf < context.today() ? asOf : undefined;

type NewRow = Omit<CheckRow, 'id' | 'revision'>;

function rowOf(plan: CheckPlan, result: WorkedCheck): NewRow {
  const calculator = findCalculator(plan.calculator);
  const { verdict, says, value, unit, margin, inputs, outputs, warnings, formula, source, caution } = result;
  const { leastFrom, mostFrom, ...limit } = plan.limit;
  return {
    title: plan.title,
    calculator: plan.calculator,
    calculatorTitle: calculator?.title ?? '',
    output: plan.output,
    outputLabel: calculator?.outputs[plan.output]?.label ?? plan.output,
    limit: {
      ...limit,
      least: result.least ?? limit.least,
      most: result.most ?? limit.most,
      ...(leastFrom === undefined ? {} : { leastFrom: leastFrom as never }),
      ...(mostFrom === undefined ? {} : { mostFrom: mostFrom as never }),
    },
    system: null,
    shipped: '',
    beforeGate: true,
    note: '',
    verdict,
    says,
    value,
    unit,
    margin,
    inputs: inputs.map((input) => ({ ...input, source: input.source as never })),
    outputs: outputs.map((output) => ({ ...output })),
    warnings: [...warnings],
    formula,
    source,
    caution,
    waived: '',
  };
}

function waivedReasons(context: Context, build: number, asOf: string | undefined): (id: number) => string {
  const held = heldWaivers(standingWaivers(context.book().connection, build, asOf), asOf ?? context.today());
  return (id) =>
    (['check failing', 'check unknown'] as const)
      .map((kind) => held.get(blockerKey(kind, { kind: 'check', id }))?.reason)
      .find((reason) => reason !== undefined) ?? '';
}

function answerOf({ worked }: WorkedBuild): ChecksView['answer'] {
  const total = worked.length;
  const count = (verdict: string): number => worked.filter(({ result }) => result.verdict === verdict).length;
  if (total === 0) return 'No checks yet.';
  const [fails, lacks, close] = [count('fails'), count('lacks data'), count('close')];
  const of = `of ${counted(total, 'check')}`;
  if (fails + lacks === 0) {
    const held = total === 1 ? 'The check holds' : `All ${total} checks hold`;
    return close === 0 ? `${held}.` : `${held}, ${close} of them with little room.`;
  }
  const failing = fails === 0 ? '' : `${fails} ${of} ${fails === 1 ? 'fails' : 'fail'}`;
  const lacking =
    lacks === 0 ? '' : `${lacks}${fails === 0 ? ` ${of}` : ''} ${lacks === 1 ? 'lacks' : 'lack'} a figure`;
  return `${[failing, lacking].filter((text) => text !== '').join(' and ')}.`;
}

export const checksProcedures = {
  view: checks.view.handler(({ context, input }): ChecksView => {
    needBuild(context, input.build);
    const asOf = pastDay(context, input.asOf);
    const all = workedChecks(context.book().connection, input.build, asOf);
    const waived = waivedReasons(context, input.build, asOf);
    const has = new Set(all.checks.map(({ shipped }) => shipped));
    const count = (verdict: string): number => all.worked.filter(({ result }) => result.verdict === verdict).length;
    return {
      answer: answerOf(all),
      counts: { holds: count('holds'), close: count('close'), fails: count('fails'), lacks: count('lacks data') },
      checks: all.worked.map(({ check, result }) => ({
        ...rowOf(check, result),
        id: check.id,
        revision: check.revision,
        system: check.system,
        shipped: check.shipped,
        beforeGate: check.beforeGate,
        note: check.note,
        waived: waived(check.id),
      })),
      targets: targetRows(all),
      offered: shippedChecks
        .filter(({ shipped }) => !has.has(shipped))
        .map(({ shipped, title, about }) => ({ shipped, title, about })),
    };
  }),

  history: checks.history.handler(({ context, input }) => {
    needBuild(context, input.build);
    return checkHistory(context, input.build, input.check, input.asOf);
  }),

  tryOut: checks.tryOut.handler(({ context, input }) => {
    needBuild(context, input.build);
    const plan = input as unknown as CheckPlan;
    checkPlan(plan);
    const { connection } = context.book();
    const asOf = pastDay(context, input.asOf);
    const { context: facts } = buildChecks(connection, input.build, asOf, [plan]);
    return rowOf(plan, evaluateCheck(plan, facts, runOf(connection)));
  }),

  addShipped: checks.addShipped.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const has = new Set(
      listRecords(connection, 'checks', 'build = ? AND retired_on IS NULL', input.build).map(
        (record) => record['shipped'],
      ),
    );
    for (const slug of input.shipped) {
      if (shippedCheck(slug) !== undefined && !has.has(slug)) continue;
      const problem = has.has(slug)
        ? `The build has the check “${slug}” already`
        : `There is no shipped check “${slug}”`;
      const left = shippedChecks.filter(({ shipped }) => !has.has(shipped)).map(({ shipped }) => shipped);
      throw new Refusal('bad-input', `${problem}. Nothing was changed.`, {
        field: 'shipped',
        accepted: left.length === 0 ? 'none: the build has them all' : `one of ${left.join(', ')}`,
      });
    }
    const wanted = shippedChecks.filter(({ shipped }) =>
      input.shipped.length === 0 ? !has.has(shipped) : input.shipped.includes(shipped),
    );
    return act(context, input, `Adding of ${counted(wanted.length, 'check')}`, (writer) => {
      for (const { about, ...check } of wanted) {
        createRecord(writer, 'check', input.build, input.on, { ...check, note: about });
      }
      return undefined;
    });
  }),

  setTargets: checks.setTargets.handler(({ context, input }) => {
    needBuild(context, input.build);
    return setTargets(context, input);
  }),

  swap: checks.swap.handler(({ context, input }) => {
    needBuild(context, input.build);
    return swapCandidates(context, input);
  }),

  vocabulary: checks.vocabulary.handler(() =>
    partKinds.map(({ kind, label, facts }) => ({
      kind,
      label,
      facts: facts.map((term) => ({
        key: term.key,
        label: term.label,
        hint: term.hint,
        units: [...unitsOfTerm(term)],
        unit: term.unit === '-' ? '' : term.unit,
      })),
    })),
  ),

  proposals: checks.proposals.handler(({ context, input }) => {
    const record = needRecord(context.book().connection, 'parts', input.part, 'part');
    return factProposals(context.book().connection, record, partKindNamed);
  }),

  setFacts: checks.setFacts.handler(({ context, input }) => setFacts(context, input)),
};
