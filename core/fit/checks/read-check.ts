import { Refusal } from '../../refusal.ts';
import { portRoles } from '../port.ts';
import type { Severity } from '../tables/lookalikes.ts';
import { comparisons, type FitCheck, type Operand } from './check.ts';

const severities: readonly Severity[] = ['info', 'caution', 'danger', 'stop'];
const references = ['abs', 'gauge'] as const;
const idShape = /^[a-z][a-z\d_]{0,59}$/;
const pathShape = /^[A-Za-z_][\w-]*(?:\.[A-Za-z_][\w-]*)*$/;
const longestText = 300;
const deepest = 3;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function refuse(field: string, accepted: string): never {
  throw new Refusal('bad-input', `The check's ${field} can't be read. Nothing was changed.`, { field, accepted });
}

function oneOf<Choice extends string>(value: unknown, choices: readonly Choice[], field: string): Choice {
  return choices.find((one) => one === value) ?? refuse(field, `one of ${choices.join(', ')}`);
}

function textIn(value: unknown, field: string): string {
  return typeof value === 'string' && value.trim() !== '' && value.length <= longestText
    ? value.trim()
    : refuse(field, `text of 1 to ${longestText} characters`);
}

const numberIn = (value: unknown, field: string): number =>
  typeof value === 'number' && Number.isFinite(value) ? value : refuse(field, 'a number');

const sideForms =
  'a path such as head.coolant_ports, a number, yes or no, {"text":"flat"}, {"min":0,"max":3.5,"unit":"bar","ref":"abs"}, {"value":2.9,"unit":"bar","ref":"abs"} or a list of these';

function measureIn(value: Record<string, unknown>, field: string) {
  const { unit, ref } = value as { unit?: unknown; ref?: unknown };
  return {
    ...(unit === undefined ? {} : { unit: textIn(unit, `${field}.unit`) }),
    ...(ref === undefined ? {} : { ref: oneOf(ref, references, `${field}.ref`) }),
  };
}

function sideIn(value: unknown, field: string, depth = 0): Operand {
  if (depth > deepest) refuse(field, `lists no deeper than ${deepest}`);
  if (typeof value === 'string') return pathShape.test(value) ? value : refuse(field, sideForms);
  if (typeof value === 'number') return numberIn(value, field);
  if (typeof value === 'boolean') return value;
  if (Array.isArray(value)) {
    return value.length > 0 && value.length <= 50
      ? value.map((one, at) => sideIn(one, `${field}[${at}]`, depth + 1))
      : refuse(field, 'a list of 1 to 50 sides');
  }
  if (!isRecord(value)) return refuse(field, sideForms);
  if ('text' in value) return { text: textIn(value['text'], `${field}.text`) };
  const measure = measureIn(value, field);
  if ('min' in value || 'max' in value) {
    const { min, max } = value as { min?: unknown; max?: unknown };
    const range = {
      ...(min === undefined ? {} : { min: numberIn(min, `${field}.min`) }),
      ...(max === undefined ? {} : { max: numberIn(max, `${field}.max`) }),
    };
    if (range.min !== undefined && range.max !== undefined && range.min > range.max) {
      refuse(field, 'a least value that is not above the greatest');
    }
    return { ...range, ...measure };
  }
  const { value: inner, margin } = value as { value?: unknown; margin?: unknown };
  const isPath = typeof inner === 'string' && pathShape.test(inner);
  return {
    value: isPath ? inner : numberIn(inner, `${field}.value`),
    ...measure,
    ...(margin === undefined ? {} : { margin: numberIn(margin, `${field}.margin`) }),
  };
}

function conditionsIn(value: unknown): Readonly<Record<string, string | number | boolean>> {
  if (!isRecord(value)) return refuse('when', 'paths with the values that they must have');
  return Object.fromEntries(
    Object.entries(value).map(([path, wanted]) => {
      const plain = ['string', 'number', 'boolean'].includes(typeof wanted);
      if (!pathShape.test(path) || !plain) refuse('when', 'paths with a text, a number or yes or no each');
      return [path, wanted as string | number | boolean];
    }),
  );
}

/**
 * A check made from data, as a form or a file brings it.
 * @throws Refusal `bad-input` naming the field that can't be read and what it accepts
 */
export function readFitCheck(data: unknown, depth = 0): FitCheck {
  if (!isRecord(data)) return refuse('data', 'an object with id, title, left, op, right, severity and its texts');
  if (depth > deepest) refuse('of', `checks no deeper than ${deepest}`);
  const { id, title, severity, when, source, caution, op, of, tol, role } = data as Record<string, unknown> & {
    [name in 'id' | 'title' | 'severity' | 'when' | 'source' | 'caution' | 'op' | 'of' | 'tol' | 'role']?: unknown;
  };
  const common = {
    id:
      typeof id === 'string' && idShape.test(id)
        ? id
        : refuse('id', 'small letters, digits and _, such as coolant_ports'),
    title: textIn(title, 'title'),
    severity: oneOf(severity, severities, 'severity'),
    ...(when === undefined ? {} : { when: conditionsIn(when) }),
    pass: textIn(data['pass'], 'pass'),
    fail: textIn(data['fail'], 'fail'),
    unknown: textIn(data['unknown'] ?? 'Enter {missing}.', 'unknown'),
    ...(source === undefined ? {} : { source: textIn(source, 'source') }),
    ...(caution === undefined ? {} : { caution: textIn(caution, 'caution') }),
  };
  if (op === 'all' || op === 'any') {
    if (!Array.isArray(of) || of.length === 0 || of.length > 20) return refuse('of', 'a list of 1 to 20 checks');
    return { ...common, op, of: of.map((one) => readFitCheck(one, depth + 1)) };
  }
  const comparison = oneOf(op, comparisons, 'op');
  if (comparison === 'near' && (typeof tol !== 'number' || !(tol >= 0))) refuse('tol', 'a number from 0, for near');
  return {
    ...common,
    op: comparison,
    left: sideIn(data['left'], 'left'),
    right: sideIn(data['right'], 'right'),
    ...(tol === undefined ? {} : { tol: numberIn(tol, 'tol') }),
    ...(role === undefined ? {} : { role: oneOf(role, portRoles, 'role') }),
  };
}
