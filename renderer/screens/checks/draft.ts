import type { Calculator, Input } from '../../../core/calculators/calculator.ts';
import type { CheckLimit, CheckSource, RecordRow, RecordValues } from '../../../core/contract/records.ts';

/** A check while it is being made: sources may still lack a choice. */
export interface Draft {
  readonly title: string;
  readonly calculator: string;
  readonly inputs: Readonly<Record<string, CheckSource>>;
  readonly output: string;
  readonly limit: CheckLimit;
  readonly beforeGate: boolean;
  readonly note: string;
}

export const emptyDraft: Draft = {
  title: '',
  calculator: '',
  inputs: {},
  output: '',
  limit: { least: null, most: null, unit: '', closeMilli: 50, source: '' },
  beforeGate: true,
  note: '',
};

/** A kept check as its form starts with. */
export function draftOf({ values }: RecordRow): Draft {
  const { title, calculator, inputs, output, limit, beforeGate, note } = values as unknown as RecordValues['check'];
  return { title, calculator, inputs, output, limit, beforeGate, note };
}

/** Another calculator: nothing of the former one's inputs can stay. */
export function draftFor(draft: Draft, { id, title, outputs }: Calculator): Draft {
  const first = Object.entries(outputs).find(([, { kind }]) => kind !== 'text');
  const unit = first !== undefined && 'unit' in first[1] ? first[1].unit : '';
  return {
    ...draft,
    title: draft.title === '' ? title : draft.title,
    calculator: id,
    inputs: {},
    output: first?.[0] ?? '',
    limit: { ...draft.limit, unit },
  };
}

/** A source of the kind chosen, with nothing in it yet. */
export function emptySource(from: CheckSource['from'], input: Input): CheckSource {
  switch (from) {
    case 'fact':
      return { from, fact: '', part: null, partKind: '' };
    case 'target':
      return { from, target: '' };
    case 'measurement':
      return { from, sheet: 0, figure: 'mean' };
    case 'typed':
      return { from, given: 'unit' in input ? { value: '', unit: input.unit } : { value: '' }, source: '' };
  }
}

/** The options with the present choice among them, which may be a figure worked out behind the vocabulary. */
export const withPresent = (present: string, options: readonly { readonly value: string; readonly label: string }[]) =>
  present === '' || options.some(({ value }) => value === present)
    ? options
    : [{ value: present, label: present }, ...options];

/** Whether everything about the source was chosen or typed. */
export function isComplete(source: CheckSource): boolean {
  switch (source.from) {
    case 'fact':
      return source.fact !== '' && (source.part !== null || source.partKind !== '');
    case 'target':
      return source.target !== '';
    case 'measurement':
      return source.sheet > 0;
    case 'typed':
      return String(source.given.value).trim() !== '';
  }
}

/** What can be tried out or kept; null while something is still to be filled in. */
export function planOf({ title, calculator, inputs, output, limit }: Draft) {
  const bounded =
    limit.least !== null || limit.most !== null || limit.leastFrom !== undefined || limit.mostFrom !== undefined;
  if (calculator === '' || output === '' || !bounded || !Object.values(inputs).every(isComplete)) return null;
  return { title: title.trim() === '' ? 'New check' : title, calculator, inputs: { ...inputs }, output, limit };
}
