/** A declared fit judged: its rule, what it was given and from where, and what comes of it. */
import { Refusal } from '../../refusal.ts';
import type { CheckResult, FitCheck } from '../checks/check.ts';
import { evaluateCheck } from '../checks/evaluate.ts';
import { readFitCheck } from '../checks/read-check.ts';
import { shippedChecks } from '../checks/shipped.ts';
import type { Severity } from '../tables/lookalikes.ts';
import { plain } from '../thread.ts';
import { type AnsweredPath, ambientBarOf, answerPaths, factsOf } from './facts.ts';
import { askedPaths, thingsOf } from './paths.ts';
import {
  type AcceptanceShown,
  acceptanceOf,
  type FitContext,
  type KeptDeclaredFit,
  type Stands,
  shownAcceptance,
} from './records.ts';

export interface JudgedDeclared {
  readonly fit: KeptDeclaredFit;
  readonly rule: FitCheck;
  readonly outcome: CheckResult['outcome'];
  /** How bad it is when it fails. */
  readonly severity: Severity;
  readonly says: string;
  readonly left: string;
  readonly right: string;
  readonly margin: string;
  readonly missing: { path: string; label: string }[];
  readonly notes: string[];
  readonly source: string;
  readonly caution: string;
  readonly asks: { path: string; label: string; sort: string; value: string; from: string }[];
  readonly things: { name: string; part: number | null; description: string }[];
  readonly stands: Stands;
  readonly accepted: AcceptanceShown | null;
  readonly acceptFor: string;
}

/** A shipped rule by its id. */
const shippedFit = (id: string): FitCheck | undefined => shippedChecks.find((one) => one.id === id);

/**
 * The rule of a declared fit: its own, or the shipped one that it names.
 * @throws Refusal `bad-input` naming `rule` or `shipped`
 */
export function ruleOf({ rule, shipped }: Pick<KeptDeclaredFit, 'rule' | 'shipped'>): FitCheck {
  if (rule !== null) {
    try {
      return readFitCheck(rule);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      throw new Refusal('bad-input', error.message, {
        field: `rule.${error.field ?? ''}`,
        ...(error.accepted === undefined ? {} : { accepted: error.accepted }),
      });
    }
  }
  const found = shippedFit(shipped);
  if (found !== undefined) return found;
  throw new Refusal(
    'bad-input',
    shipped === ''
      ? 'The fit has no rule. Nothing was changed.'
      : `There is no shipped fit “${shipped}”. Nothing was changed.`,
    {
      field: shipped === '' ? 'rule' : 'shipped',
      accepted: `a rule, or one of ${shippedChecks.map(({ id }) => id).join(', ')}`,
    },
  );
}

/** The results that say something by themselves: a group's children, whatever lies inside. */
const leaves = (result: CheckResult): readonly CheckResult[] =>
  result.of === undefined ? [result] : result.of.flatMap(leaves);

const worst: readonly Severity[] = ['stop', 'danger', 'caution', 'info'];

/** A group is as bad as the worst of what fails in it. */
function severityOf(rule: FitCheck, result: CheckResult): Severity {
  const failed = leaves(result).flatMap(({ severity }) => (severity === undefined ? [] : [severity]));
  return worst.find((one) => (failed.length === 0 ? one === rule.severity : failed.includes(one))) ?? rule.severity;
}

function marginText(result: CheckResult): string {
  const { marginLeft, unit } = result;
  return marginLeft === undefined ? '' : `${plain(marginLeft, 4)}${unit === undefined ? '' : ` ${unit}`}`;
}

const joinedWords = (results: readonly CheckResult[], side: 'left' | 'right'): string =>
  [...new Set(results.map((one) => one[side]))].filter((text) => text !== '').join('; ');

/**
 * Judges a declared fit by what is known now.
 * @throws Refusal `bad-input` where its rule can't be read
 */
export function judgeDeclared(fit: KeptDeclaredFit, context: FitContext): JudgedDeclared {
  const rule = ruleOf(fit);
  const asked = askedPaths(rule);
  const answers = answerPaths(asked, fit.values, fit.things, context);
  const label = new Map(asked.map((one) => [one.path, one.label]));
  const ambientBar = ambientBarOf(context);
  const result = evaluateCheck(rule, factsOf(answers), {
    ...(ambientBar === undefined ? {} : { ambientBar }),
    nameOf: (path) => label.get(path),
  });
  const parts = leaves(result);
  const [left, right] = [joinedWords(parts, 'left'), joinedWords(parts, 'right')];
  const acceptFor = acceptanceOf(parts.map((one) => `${one.id}: ${one.left} / ${one.right}`));
  const accepted = shownAcceptance(fit.accepted, acceptFor);
  const { outcome } = result;
  const stands: Stands =
    outcome === 'unknown' ? 'unknown' : outcome === 'fail' && (accepted === null || accepted.lapsed) ? 'wrong' : 'fits';
  return {
    fit,
    rule,
    outcome,
    severity: severityOf(rule, result),
    says: result.text,
    left,
    right,
    margin: parts.length === 1 ? marginText(result) : '',
    missing: result.missing.map((path) => ({ path, label: label.get(path) ?? path })),
    notes: [...result.notes],
    source: [...new Set(parts.map(({ source }) => source ?? ''))].filter((text) => text !== '').join(' '),
    caution: rule.caution ?? parts.find(({ caution }) => caution !== undefined)?.caution ?? followMaker,
    asks: answers.map(shownAnswer),
    things: thingsOf(asked).map((name) => {
      const part = fit.things[name] ?? null;
      const known = part === null ? undefined : context.parts.get(part);
      return {
        name,
        part,
        description: known === undefined ? '' : `${known.description}${known.listed ? '' : ' (dropped)'}`,
      };
    }),
    stands,
    accepted,
    acceptFor,
  };
}

const followMaker = 'This compares what was entered, not the parts: follow the makers’ manuals.';

const shownAnswer = ({ path, label, sort, value, from }: AnsweredPath) => ({ path, label, sort, value, from });

const outcomeRank = ['fail', 'unknown', 'pass', 'not asked'] as const;

/** The worst first: what is wrong, by harm; then what isn't known; what was accepted comes after. */
export function worstDeclaredFirst(one: JudgedDeclared, other: JudgedDeclared): number {
  const rank = ({ stands, outcome, severity, fit }: JudgedDeclared): readonly number[] => [
    stands === 'fits' ? 1 : 0,
    outcomeRank.indexOf(outcome),
    worst.indexOf(severity),
    fit.id,
  ];
  const [first, second] = [rank(one), rank(other)];
  const at = first.findIndex((value, index) => value !== second[index]);
  return at < 0 ? 0 : (first[at] ?? 0) - (second[at] ?? 0);
}
