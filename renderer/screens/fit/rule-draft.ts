import type { Comparison, FactValue, Operand, PressureReference } from '../../../core/fit/checks/check.ts';
import type { ValueSort } from '../../../core/fit/kept/paths.ts';
import { readFitValue } from '../../../core/fit/kept/read-value.ts';
import type { PortRole } from '../../../core/fit/port.ts';
import type { Severity } from '../../../core/fit/tables/lookalikes.ts';
import { Refusal } from '../../../core/refusal.ts';

/** What stands beside a side without a field of its own: it is kept as it is. */
export interface Beside {
  readonly unit?: string;
  readonly ref?: PressureReference;
  readonly margin?: number;
}

/** A rule of one's own while it is typed. */
export interface RuleDraft {
  /** The thing, a dot, what of it; several parted by commas for a sum. */
  readonly left: string;
  readonly op: Comparison;
  readonly rightIs: 'path' | 'fixed';
  readonly right: string;
  readonly besideLeft: Beside;
  readonly besideRight: Beside;
  readonly tolerance: number | null;
  readonly role: PortRole;
  readonly severity: Severity;
  readonly pass: string;
  readonly fail: string;
  readonly unknown: string;
  readonly source: string;
  readonly caution: string;
}

export const emptyRule: RuleDraft = {
  left: '',
  op: 'eq',
  rightIs: 'path',
  right: '',
  besideLeft: {},
  besideRight: {},
  tolerance: null,
  role: 'fluid',
  severity: 'caution',
  pass: 'They fit: {left} and {right}.',
  fail: 'They do not fit: {left} against {right}.',
  unknown: 'Enter {missing}.',
  source: '',
  caution: '',
};

const comparisonLabels: Readonly<Record<Comparison, string>> = {
  eq: 'is the same as',
  ne: 'is not the same as',
  near: 'is as near as the tolerance to',
  le: 'is at most',
  ge: 'is at least',
  lt: 'is less than',
  gt: 'is more than',
  within: 'lies within the range',
  covers: 'is a range that covers',
  in: 'is one of',
  subset: 'is a list, all of it in',
  contains: 'is a list that has in it',
  mates: 'is a port that joins',
  sum_le: 'added up is at most',
  sum_ge: 'added up is at least',
};
export const comparisonChoices = (Object.keys(comparisonLabels) as Comparison[]).map((value) => ({
  value,
  label: comparisonLabels[value],
}));

export const isSum = (op: Comparison): boolean => op === 'sum_le' || op === 'sum_ge';

const rightSorts: Readonly<Partial<Record<Comparison, ValueSort>>> = {
  mates: 'port',
  within: 'range',
  in: 'list',
  subset: 'list',
  eq: 'value',
  ne: 'value',
  contains: 'value',
};

const step = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/[^a-z\d]+/g, '_')
    .replaceAll(/^_+|_+$/g, '');

/**
 * The path that is written: `head.coolant ports` is `head.coolant_ports`.
 * @throws Refusal `bad-input` naming the field where the thing or what of it is missing
 */
export function pathIn(text: string, field: string): string {
  const steps = text.split(/[.:]/).map(step);
  if (steps.length >= 2 && steps.every((one) => /^[a-z]/.test(one))) return steps.join('.');
  throw new Refusal('bad-input', `“${text.trim()}” names no thing and what of it. Nothing was changed.`, {
    field,
    accepted: 'the thing, a dot and what of it, such as head.coolant ports',
  });
}

/** One side as a person reads it: `the coolant ports of the head`. */
export function sideWords(text: string): string {
  return text
    .split(',')
    .flatMap((one) => {
      try {
        const [thing = '', ...rest] = pathIn(one, '').split('.');
        return [`the ${rest.join(' ').replaceAll('_', ' ')} of the ${thing.replaceAll('_', ' ')}`];
      } catch {
        return [];
      }
    })
    .join(' and ');
}

const literal = (value: FactValue): Operand => {
  if (typeof value === 'string') return { text: value };
  return Array.isArray(value) ? value.map(literal) : (value as Operand);
};

/** A side with what stood beside it; the unit of a fixed value is typed with it. */
function withBeside(side: Operand, beside: Beside): Operand {
  if (typeof side === 'string') return Object.keys(beside).length === 0 ? side : { value: side, ...beside };
  const { margin } = beside;
  if (margin === undefined) return side;
  if (typeof side === 'number') return { value: side, margin };
  return typeof side === 'object' && 'value' in side ? { ...side, margin } : side;
}

/** "bar abs, margin 0.2"; empty where nothing stands beside a side. */
export const besideWords = ({ unit, ref, margin }: Beside): string =>
  [[unit, ref].filter((one) => one !== undefined).join(' '), margin === undefined ? '' : `margin ${margin}`]
    .filter((one) => one !== '')
    .join(', ');

function rightOf({ op, rightIs, right, role, besideRight }: RuleDraft): Operand {
  if (rightIs === 'path') return withBeside(pathIn(right, 'rule.right'), besideRight);
  const asked = { path: 'right', label: 'the fixed value', sort: rightSorts[op] ?? 'measure', role } as const;
  return withBeside(literal(readFitValue(asked, { value: right, unit: '' }, 'rule.right')), besideRight);
}

/**
 * The rule as it is kept.
 * @throws Refusal `bad-input` naming the field of the rule that can't be read
 */
export function ruleFrom(draft: RuleDraft, title: string): Record<string, unknown> {
  const { left, op, besideLeft, tolerance, role, severity, pass, fail, unknown, source, caution } = draft;
  const paths = (isSum(op) ? left.split(',') : [left]).map((one) => pathIn(one, 'rule.left'));
  return {
    id: /^[a-z]/.test(step(title)) ? step(title).slice(0, 60) : 'own_fit',
    title: title.trim() === '' ? 'Own fit' : title.trim(),
    left: isSum(op) ? paths : withBeside(paths[0] ?? '', besideLeft),
    op,
    right: rightOf(draft),
    severity,
    pass,
    fail,
    unknown,
    ...(op === 'near' ? { tol: tolerance } : {}),
    ...(op === 'mates' ? { role } : {}),
    ...(source.trim() === '' ? {} : { source: source.trim() }),
    ...(caution.trim() === '' ? {} : { caution: caution.trim() }),
  };
}

/** What the rule would be, or what is still wrong with it. */
export function ruleOrProblem(
  draft: RuleDraft,
  title: string,
): { readonly rule: Record<string, unknown> } | { readonly problem: Refusal } {
  try {
    return { rule: ruleFrom(draft, title) };
  } catch (error) {
    if (error instanceof Refusal) return { problem: error };
    throw error;
  }
}

interface SideText {
  readonly is: RuleDraft['rightIs'];
  readonly text: string;
  readonly beside?: Beside;
}

function textOf(operand: unknown): SideText | null {
  if (typeof operand === 'string') return { is: 'path', text: operand };
  if (typeof operand === 'number') return { is: 'fixed', text: String(operand) };
  if (typeof operand === 'boolean') return { is: 'fixed', text: operand ? 'yes' : 'no' };
  if (Array.isArray(operand)) {
    const items = operand.map(textOf);
    // Items of a list have no place for what stands beside them.
    if (items.some((one) => one?.beside !== undefined)) return null;
    const kinds = new Set(items.map((one) => one?.is));
    const [only] = kinds;
    return only === undefined || kinds.size > 1 ? null : { is: only, text: items.map((one) => one?.text).join(', ') };
  }
  if (typeof operand !== 'object' || operand === null) return null;
  const { text, value, min, max, unit = '', ref = '', margin } = operand as Record<string, unknown>;
  const measured = (what: string) => ({
    is: 'fixed' as const,
    text: `${what} ${unit} ${ref}`.replaceAll(/\s+/g, ' ').trim(),
  });
  if (typeof text === 'string') return { is: 'fixed', text };
  if (typeof value === 'string') {
    const { value: _path, ...beside } = operand as { readonly value: string } & Beside;
    return { is: 'path', text: value, beside };
  }
  if (typeof value === 'number') {
    return { ...measured(String(value)), ...(typeof margin === 'number' ? { beside: { margin } } : {}) };
  }
  if (typeof min === 'number' && typeof max === 'number') return measured(`${min} to ${max}`);
  if (typeof max === 'number') return measured(`up to ${max}`);
  return typeof min === 'number' ? measured(`from ${min}`) : null;
}

/** A kept rule as the form starts with; null where the form has no fields for all that it says. */
export function draftOfRule(rule: Readonly<Record<string, unknown>>): RuleDraft | null {
  const [left, right] = [textOf(rule['left']), textOf(rule['right'])];
  if ('of' in rule || 'when' in rule || left?.is !== 'path' || right === null) return null;
  const text = (name: string): string => (typeof rule[name] === 'string' ? rule[name] : '');
  return {
    left: left.text,
    op: rule['op'] as Comparison,
    rightIs: right.is,
    right: right.text,
    besideLeft: left.beside ?? {},
    besideRight: right.beside ?? {},
    tolerance: typeof rule['tol'] === 'number' ? rule['tol'] : null,
    role: (rule['role'] as PortRole | undefined) ?? 'fluid',
    severity: rule['severity'] as Severity,
    pass: text('pass'),
    fail: text('fail'),
    unknown: text('unknown'),
    source: text('source'),
    caution: text('caution'),
  };
}
