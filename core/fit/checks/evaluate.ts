import { plain } from '../thread.ts';
import type { CheckOutcome, CheckResult, ComparingCheck, Facts, FitCheck, GroupCheck } from './check.ts';
import { compare } from './compare.ts';
import { type Filled, factAt, fill, sideText } from './sides.ts';

export interface EvaluateOptions {
  /** The air outside in bar; 1.013 is taken, and said, where it isn't given. */
  readonly ambientBar?: number;
  /** What a path is called in a message; the path itself where it has no name. */
  readonly nameOf?: (path: string) => string | undefined;
}

const words = (template: string, filling: Readonly<Record<string, string>>): string =>
  template.replace(/\{(\w+)\}/g, (whole, name: string) => filling[name] ?? whole);

/** Whether the check is to be asked: the paths that are missing to know, or yes or no. */
function asked({ when }: FitCheck, facts: Facts): boolean | readonly string[] {
  const all = Object.entries(when ?? {});
  const wrong = all.some(([path, wanted]) => {
    const found = factAt(facts, path);
    return found !== undefined && found !== null && String(found).toLowerCase() !== String(wanted).toLowerCase();
  });
  if (wrong) return false;
  const missing = all.map(([path]) => path).filter((path) => (factAt(facts, path) ?? null) === null);
  return missing.length === 0 ? true : missing;
}

const base = (check: FitCheck) => ({
  id: check.id,
  title: check.title,
  op: check.op,
  ...(check.source === undefined ? {} : { source: check.source }),
  ...(check.caution === undefined ? {} : { caution: check.caution }),
});

const severityOf = (check: FitCheck, outcome: CheckOutcome) => (outcome === 'fail' ? { severity: check.severity } : {});

const textFor = (filled: Filled): string => ('side' in filled ? sideText(filled.side) : 'not known');

function comparing(check: ComparingCheck, facts: Facts, { ambientBar, nameOf }: EvaluateOptions): CheckResult {
  const [left, right] = [fill(check.left, facts), fill(check.right, facts)];
  const sides = { left: textFor(left), right: textFor(right) };
  const called = (paths: readonly string[]): string => paths.map((path) => nameOf?.(path) ?? path).join(', ');
  const unknown = (missing: readonly string[], what: string): CheckResult => ({
    ...base(check),
    ...sides,
    outcome: 'unknown',
    text: words(check.unknown, { ...sides, missing: what, margin: '', reason: '' }),
    missing,
    notes: [],
  });
  const missing = [left, right].flatMap((one) => ('missing' in one ? one.missing : []));
  if (!('side' in left) || !('side' in right)) return unknown(missing, called(missing));
  const found = compare(check, left.side, right.side, ambientBar);
  if ('problem' in found) return unknown([], found.problem);
  const outcome = found.holds ? 'pass' : 'fail';
  const margin =
    found.marginLeft === undefined
      ? ''
      : `${plain(found.marginLeft, 4)}${found.unit === undefined ? '' : ` ${found.unit}`}`;
  return {
    ...base(check),
    ...sides,
    outcome,
    ...severityOf(check, outcome),
    ...(found.marginLeft === undefined ? {} : { marginLeft: found.marginLeft }),
    ...(found.unit === undefined ? {} : { unit: found.unit }),
    text: words(found.holds ? check.pass : check.fail, { ...sides, missing: '', margin, reason: found.reason ?? '' }),
    missing: [],
    notes: found.notes,
  };
}

function grouped(check: GroupCheck, facts: Facts, options: EvaluateOptions): CheckResult {
  const of = check.of.map((child) => evaluateCheck(child, facts, options));
  const counted = of.filter(({ outcome }) => outcome !== 'not asked');
  const has = (outcome: CheckOutcome): boolean => counted.some((one) => one.outcome === outcome);
  const outcome: CheckOutcome =
    counted.length === 0
      ? 'not asked'
      : check.op === 'all'
        ? has('fail')
          ? 'fail'
          : has('unknown')
            ? 'unknown'
            : 'pass'
        : has('pass')
          ? 'pass'
          : has('unknown')
            ? 'unknown'
            : 'fail';
  const missing = outcome === 'unknown' ? [...new Set(counted.flatMap((one) => one.missing))] : [];
  const template = outcome === 'pass' ? check.pass : outcome === 'fail' ? check.fail : check.unknown;
  const called = missing.map((path) => options.nameOf?.(path) ?? path).join(', ');
  const failed = counted
    .filter((one) => one.outcome === 'fail')
    .map(({ text }) => text)
    .join(' ');
  return {
    ...base(check),
    outcome,
    ...severityOf(check, outcome),
    left: '',
    right: '',
    text: words(template, { missing: called, reason: failed, left: '', right: '', margin: '' }),
    missing,
    notes: [...new Set(counted.flatMap((one) => one.notes))],
    of,
  };
}

/**
 * Asks one check of the facts. A value that is missing, or two that can't be compared, give `unknown`, never `pass`; a
 * check whose conditions don't hold is `not asked`. Never throws on facts.
 */
export function evaluateCheck(check: FitCheck, facts: Facts, options: EvaluateOptions = {}): CheckResult {
  const ask = asked(check, facts);
  if (ask === true) return 'of' in check ? grouped(check, facts, options) : comparing(check, facts, options);
  const missing = ask === false ? [] : ask;
  const called = missing.map((path) => options.nameOf?.(path) ?? path).join(', ');
  return {
    ...base(check),
    outcome: ask === false ? 'not asked' : 'unknown',
    left: '',
    right: '',
    text:
      ask === false
        ? `${check.title}: not asked here.`
        : words(check.unknown, { missing: called, left: 'not known', right: 'not known', margin: '', reason: '' }),
    missing,
    notes: [],
  };
}
