/** What a rule asks for: every path with what it is called and how its value is written. */
import type { FitCheck, Operand } from '../checks/check.ts';
import { factNames } from '../checks/fact-names.ts';
import type { PortRole } from '../port.ts';

/** How a value is written; `measure` is a number with or without a unit, `value` a number or a word. */
export type ValueSort =
  | 'count'
  | 'length'
  | 'range'
  | 'text'
  | 'port'
  | 'list'
  | 'pressure'
  | 'temperature'
  | 'number'
  | 'measure'
  | 'value'
  | 'yes or no';

export interface AskedPath {
  readonly path: string;
  readonly label: string;
  readonly sort: ValueSort;
  /** What a port is for. */
  readonly role: PortRole;
}

/** Paths of one side; a path behind `value` is a number. */
function pathsIn(operand: Operand): readonly string[] {
  if (typeof operand === 'string') return [operand];
  if (typeof operand !== 'object') return [];
  if (Array.isArray(operand)) return (operand as readonly Operand[]).flatMap(pathsIn);
  if ('text' in operand || 'min' in operand || 'max' in operand) return [];
  const { value } = operand as { value?: number | string };
  return typeof value === 'string' ? [value] : [];
}

const sorts: Readonly<Record<string, readonly [ValueSort, ValueSort]>> = {
  mates: ['port', 'port'],
  within: ['measure', 'range'],
  covers: ['range', 'measure'],
  in: ['value', 'list'],
  subset: ['list', 'list'],
  contains: ['list', 'value'],
  eq: ['value', 'value'],
  ne: ['value', 'value'],
};
const measured: readonly [ValueSort, ValueSort] = ['measure', 'measure'];

const words = (text: string): string => text.replaceAll(/[_-]+/g, ' ');

/** What a path of a rule of one's own is called. */
function labelOf(path: string): string {
  const [thing = '', ...rest] = path.split('.');
  return rest.length === 0 ? `the ${words(thing)}` : `the ${words(rest.join(' '))} of the ${words(thing)}`;
}

/** Every path that a rule asks for, in the order asked, each once. */
export function askedPaths(check: FitCheck): readonly AskedPath[] {
  const found = new Map<string, AskedPath>();
  const add = (path: string, sort: ValueSort, role: PortRole): void => {
    if (found.has(path)) return;
    const known = factNames.find((one) => one.path === path);
    found.set(path, { path, label: known?.label ?? labelOf(path), sort: known?.sort ?? sort, role });
  };
  const walk = (rule: FitCheck): void => {
    for (const [path, wanted] of Object.entries(rule.when ?? {})) {
      add(path, typeof wanted === 'boolean' ? 'yes or no' : typeof wanted === 'number' ? 'number' : 'text', 'fluid');
    }
    if ('of' in rule) {
      for (const child of rule.of) walk(child);
      return;
    }
    const [left, right] = sorts[rule.op] ?? measured;
    for (const path of pathsIn(rule.left)) add(path, left, rule.role ?? 'fluid');
    for (const path of pathsIn(rule.right)) add(path, right, rule.role ?? 'fluid');
  };
  walk(check);
  return [...found.values()];
}

/** Things that a rule is about and that a part line could be: head, block. A plan is none. */
export const thingsOf = (asked: readonly AskedPath[]): readonly string[] =>
  [...new Set(asked.flatMap(({ path }) => (path.includes('.') ? [path.split('.')[0] ?? ''] : [])))].filter(
    (thing) => thing !== '' && thing !== 'plan',
  );
