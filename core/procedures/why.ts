import type { Derivation, WhyFigure, WhyQuestion } from '../contract/journal.ts';
import type { MoneyFigures } from '../contract/money.ts';
import type { ProgressMeasures } from '../contract/plan.ts';
import { formatMoney } from '../money/currency.ts';
import { Refusal } from '../refusal.ts';
import { type Counted, entriesBehind } from '../workbook/store/derivation.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { budgetEntries, moneyOf } from '../workbook/store/money.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { progressMeasures } from '../workbook/store/plan.ts';
import { needRecord, readRecord } from '../workbook/store/record-tables.ts';
import { type Context, counted, needBuild, procedures } from './context.ts';
import { reviewOf } from './gate.ts';

const paid = [
  ['cash', -1],
  ['deposits', -1],
  ['transfer', -1],
] as const;
const cost = [
  ['cost', 1],
  ['loss', 1],
] as const;

/** Which postings each figure counts. The screens' figures are sums of the same accounts. */
const counts: Partial<Record<WhyFigure, Counted>> = {
  need: { measure: 'quantity', accounts: [['need', 1]] },
  'on-order': {
    measure: 'quantity',
    accounts: [
      ['placed', 1],
      ['acknowledged', 1],
      ['back-ordered', 1],
      ['in-transit', 1],
    ],
  },
  'back-ordered': { measure: 'quantity', accounts: [['back-ordered', 1]] },
  'in-hand': {
    measure: 'quantity',
    accounts: [
      ['inspection', 1],
      ['shelf', 1],
      ['allocated', 1],
    ],
  },
  'trial-fitted': { measure: 'quantity', accounts: [['trial-fitted', 1]] },
  fitted: {
    measure: 'quantity',
    accounts: [
      ['fitted', 1],
      ['snug', 1],
      ['verified', 1],
    ],
  },
  final: { measure: 'quantity', accounts: [['verified', 1]] },
  rejected: { measure: 'quantity', accounts: [['rejected', 1]] },
  cost: { measure: 'amount', accounts: cost },
  commitment: { measure: 'amount', accounts: [['commitment', 1]] },
  remaining: { measure: 'amount', accounts: [['remaining', 1]] },
  paid: { measure: 'amount', accounts: paid },
  'still-to-pay': {
    measure: 'amount',
    accounts: [
      ['commitment', 1],
      ['vendor', -1],
      ['claims', -1],
    ],
  },
  forecast: { measure: 'amount', accounts: [...cost, ['commitment', 1], ['remaining', 1]] },
  claims: { measure: 'amount', accounts: [['claims', 1]] },
  deposits: { measure: 'amount', accounts: [['deposits', 1]] },
  loss: { measure: 'amount', accounts: [['loss', 1]] },
  exchange: { measure: 'amount', accounts: [['exchange', 1]] },
};

const titles: Record<WhyFigure, string> = {
  need: 'Needed',
  'on-order': 'On order',
  'back-ordered': 'On back-order',
  'in-hand': 'In hand, off the engine',
  'trial-fitted': 'On for trial fit',
  fitted: 'On the engine to stay',
  final: 'At final torque or verified',
  rejected: 'Rejected',
  cost: 'Cost of what came in',
  commitment: 'Value on order',
  remaining: 'Estimate of what is still to order',
  paid: 'Paid',
  'still-to-pay': 'Still to pay on orders',
  forecast: 'Estimate at completion',
  claims: 'Owed by vendors',
  deposits: 'Core deposits out',
  loss: 'Lost or scrapped',
  exchange: 'Exchange difference',
  budget: 'Budget',
  variance: 'Budget less estimate at completion',
  'received-share': 'Parts received',
  'fitted-share': 'Parts fitted',
  'verified-share': 'Parts verified',
  'jobs-share': 'Jobs done',
  'spend-share': 'Share of the estimate spent',
  'gate-date': 'Day of the hoist check',
  'gate-cost': 'What clearing the hoist check still costs',
  'blocker-count': 'What stands in the way',
};

const formulas: Partial<Record<WhyFigure, string>> = {
  forecast: 'cost + value on order + remaining estimate = paid + still to pay + remaining estimate',
  'still-to-pay': 'value on order + owed to vendors − owed by vendors',
  variance: 'budget − estimate at completion',
  'spend-share': 'cost of what came in ÷ estimate at completion',
  paid: 'cash out less cash back, deposits apart; value taken over from elsewhere counts as paid',
};

const method =
  'Encumbrance accounting: what is ordered is set aside from the estimate until it arrives. Definitions of the workbook’s ledger.';

/** "head stud kit", "Fuel", "the whole build". */
function aboutOf(context: Context, question: WhyQuestion): string {
  const { connection } = context.book();
  const name = (table: 'systems' | 'phases' | 'vendors', id: number): string =>
    String(readRecord(connection, table, id)?.['name'] ?? id);
  if (question.part !== undefined) return String(needRecord(connection, 'parts', question.part, 'part')['description']);
  if (question.order !== undefined)
    return `order ${String(needRecord(connection, 'orders', question.order, 'order')['number'] || question.order)}`;
  if (question.system !== undefined) return question.system === null ? 'no system' : name('systems', question.system);
  if (question.phase !== undefined) return question.phase === null ? 'no phase' : name('phases', question.phase);
  if (question.vendor !== undefined) return question.vendor === null ? 'no vendor' : name('vendors', question.vendor);
  return needBuild(context, question.build).name;
}

/** The money figures that a question is about, from the function that the screens use. */
function moneyFor(context: Context, question: WhyQuestion): MoneyFigures | undefined {
  const { connection } = context.book();
  const today = context.today();
  if (question.part !== undefined || question.order !== undefined) return undefined;
  const by = question.vendor !== undefined ? 'vendor' : question.phase !== undefined ? 'phase' : 'system';
  const { total, rows } = moneyOf(connection, question.build, today, question.asOf, by);
  const tag = by === 'vendor' ? question.vendor : by === 'phase' ? question.phase : question.system;
  const asked = question.vendor !== undefined || question.phase !== undefined || question.system !== undefined;
  return asked ? rows.get(tag ?? null) : total;
}

function moneyTerms(figures: MoneyFigures, figure: WhyFigure, say: (minor: number) => string): Derivation['terms'] {
  const term = (label: string, amountMinor: number): Derivation['terms'][number] => ({
    label,
    amountMinor,
    quantityMilli: null,
    text: say(amountMinor),
  });
  if (figure === 'forecast') {
    return [
      term('Cost of what came in', figures.costMinor),
      term('Value on order', figures.commitmentMinor),
      term('Remaining estimate', figures.remainingMinor),
    ];
  }
  if (figure === 'variance')
    return [term('Budget', figures.budgetMinor), term('Estimate at completion', -figures.forecastMinor)];
  return [];
}

const empty: Derivation = {
  title: '',
  quantityMilli: null,
  amountMinor: null,
  text: '',
  formula: '',
  source: '',
  terms: [],
  entries: [],
  more: 0,
};

function shareOf(measures: ProgressMeasures, figure: WhyFigure): Derivation['terms'] {
  const term = (label: string, share: ProgressMeasures['spend'], of: string): Derivation['terms'][number] => ({
    label,
    amountMinor: null,
    quantityMilli: null,
    text:
      share.share === null ? share.text : `${share.text}${of === '' ? '' : ` (${share.done} of ${share.of} ${of})`}`,
  });
  const stage = { 'received-share': 'received', 'fitted-share': 'fitted', 'verified-share': 'verified' } as const;
  if (figure === 'jobs-share') {
    return [
      term('By count', measures.jobs.byCount, 'jobs'),
      term('By weight', measures.jobs.byWeight, 'minutes guessed'),
    ];
  }
  if (figure === 'spend-share') return [term('Spent', measures.spend, '')];
  const name = stage[figure as keyof typeof stage];
  return [
    term('Lines complete', measures[name].byLine, 'lines'),
    term('By quantity', measures[name].byQuantity, ''),
    term('By value', measures[name].byValue, ''),
  ];
}

function gateDerivation(context: Context, question: WhyQuestion): Derivation {
  const { review, answer } = reviewOf(context, question.build, question.asOf);
  const value: Partial<Record<WhyFigure, string>> = {
    'gate-date': review.gateOn === null ? review.noDate : dayWords(review.gateOn),
    'gate-cost': review.costUnknown === 0 ? '' : `and ${counted(review.costUnknown, 'item')} without a known cost`,
    'blocker-count': answer,
  };
  return {
    ...empty,
    title: titles[question.figure],
    amountMinor: question.figure === 'gate-cost' ? review.costMinor : null,
    text: value[question.figure] ?? '',
    formula:
      'Each item is cleared when its parts are here and its work is done in your hours, one after the other; the last one gives the day.',
    source:
      review.assumed === 0
        ? ''
        : `For ${counted(review.assumed, 'item')} nobody has guessed the work, so a usual time is counted.`,
    terms: review.blockers.map((blocker) => ({
      label: `${blocker.title}: ${blocker.kind}`,
      amountMinor: blocker.costMinor,
      quantityMilli: null,
      text: blocker.clearOn === null ? blocker.noDate : `cleared ${dayWords(blocker.clearOn)} at best`,
    })),
  };
}

function budgetDerivation(context: Context, question: WhyQuestion, figures: MoneyFigures): Derivation {
  const { connection } = context.book();
  const until = question.asOf ?? context.today();
  const entries = budgetEntries(connection, question.build).filter((entry) => {
    if (entry.on > until || entry.reversed || entry.kind === 'contingency') return false;
    const line = entry.lineId === null ? undefined : readRecord(connection, 'budgetLines', entry.lineId);
    if (question.system !== undefined) return (line?.['system'] ?? null) === question.system;
    if (question.phase !== undefined) return (line?.['phase'] ?? null) === question.phase;
    return true;
  });
  return {
    ...empty,
    title: titles.budget,
    amountMinor: figures.budgetMinor,
    text: '',
    formula: 'original budget + approved changes + contingency drawn',
    entries: entries.map((entry) => {
      const line = entry.lineId === null ? undefined : readRecord(connection, 'budgetLines', entry.lineId);
      return {
        seq: entry.seq,
        on: entry.on,
        text: `${String(line?.['name'] ?? 'budget')}: ${entry.reason}`,
        part: null,
        description: '',
        quantityMilli: 0,
        amountMinor: entry.amountMinor,
        reversed: entry.reversed,
      };
    }),
  };
}

export const whyProcedures = {
  ask: procedures.why.ask.handler(({ context, input }): Derivation => {
    const { connection } = context.book();
    const today = context.today();
    const asOf = input.asOf !== undefined && input.asOf < today ? input.asOf : '9999-12-31';
    const about = aboutOf(context, input);
    const { currency } = context.settings();
    const say = (minor: number): string => formatMoney(minor, currency);
    const title = `${titles[input.figure]}: ${about}`;

    if (input.figure === 'gate-date' || input.figure === 'gate-cost' || input.figure === 'blocker-count') {
      return { ...gateDerivation(context, input), title };
    }
    if (input.figure.endsWith('-share')) {
      const measures = progressMeasures(connection, input.build, asOf === '9999-12-31' ? undefined : asOf);
      const terms = shareOf(measures, input.figure);
      return {
        ...empty,
        title,
        text: terms[0]?.text ?? '',
        formula: formulas[input.figure] ?? 'done ÷ all, counted three ways; units beyond the need never count',
        terms,
      };
    }
    const figures = moneyFor(context, input);
    if (input.figure === 'budget' || input.figure === 'variance') {
      if (figures === undefined) {
        throw new Refusal('bad-input', 'A budget belongs to the build, a system or a phase.', {
          field: 'figure',
          accepted: 'a question about the build, a system or a phase',
        });
      }
      const budget = { ...budgetDerivation(context, input, figures), title };
      if (input.figure === 'budget') return budget;
      return {
        ...budget,
        amountMinor: figures.varianceMinor,
        text: '',
        formula: formulas.variance ?? '',
        terms: moneyTerms(figures, 'variance', say),
      };
    }
    const postingsCounted = counts[input.figure];
    if (postingsCounted === undefined) throw new Error(`No derivation for ${input.figure}`);
    const { total, entries, more } = entriesBehind(connection, input, postingsCounted, asOf);
    if (postingsCounted.measure === 'quantity') {
      const unit =
        input.part === undefined
          ? ''
          : (partRows(connection, { build: input.build, today, asOf: input.asOf, ids: [input.part], dropped: true })[0]
              ?.unit ?? '');
      return {
        ...empty,
        title,
        quantityMilli: total,
        text: quantityWords(total, unit),
        formula: 'the sum of these entries',
        entries,
        more,
      };
    }
    return {
      ...empty,
      title,
      amountMinor: total,
      text: '',
      formula: formulas[input.figure] ?? 'the sum of these entries',
      source: method,
      terms: figures === undefined ? [] : moneyTerms(figures, input.figure, say),
      entries,
      more,
    };
  }),
};
