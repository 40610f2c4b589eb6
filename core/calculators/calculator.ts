/**
 * How a calculator is written. One file each, in the folder of its group (`b/compression-ratio.ts`), and one line in
 * that folder's `index.ts`; menus, forms, help and the command line are drawn from the declaration.
 *
 *     export const overbore = calculator({
 *       id: 'B4', slug: 'overbore', title: 'Overbore',
 *       about: 'What boring the cylinders out adds to the displacement.',
 *       inputs: {
 *         bore: { label: 'Bore', dimension: 'length', unit: 'mm', must: { above: 0 }, usual: { from: 30, to: 200 } },
 *         cylinders: { kind: 'integer', label: 'Cylinders', dimension: 'number', unit: '-', must: { atLeast: 1 } },
 *       },
 *       outputs: { displacement: { label: 'Displacement', dimension: 'volume', unit: 'cc' } },
 *       formula: 'displacement = π/4 · bore² · …', source: 'Definition; derived by hand.', notes: [],
 *       example: { bore: { value: 86, unit: 'mm' }, cylinders: { value: 4 } },
 *       compute: ({ bore, cylinders }) => ({ outputs: { displacement: … }, warnings: [] }),
 *     });
 *
 * - Names of inputs and outputs are fixed: people script them. `compute` is given SI values (m, Pa, K, kg/s, rad, a
 *   fraction for %) and hands back SI values; units are the runner's business (`run.ts`).
 * - `must` refuses, `usual` warns, both in the declared unit. What depends on two inputs is refused inside `compute`
 *   with `refuseInput`; what is possible but unwise is a `warning`, or a `grave` one where an engine can be lost by it.
 * - A calculator that can be asked several ways has `modes` instead of `compute`; each names the inputs it needs, and
 *   reading another mode's input inside it is a bug that throws. An input that is `optional` may be undefined.
 * - Compare with `exceeds` and `fallsShort` of `limits.ts`, so that a value equal to a limit counts as inside.
 * - A number that isn't finite never leaves: the runner refuses it.
 */
import { Refusal } from '../refusal.ts';
import type { Dimension } from '../units/dimensions.ts';

/** Bounds outside which there is no result, in the input's declared unit. */
export interface Must {
  readonly above?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly atMost?: number;
}

/** The range the calculation is meant for, in the declared unit; outside it the result comes with a warning. */
export interface Usual {
  readonly from?: number;
  readonly to?: number;
  /** Where the range comes from, if not from the formula. */
  readonly because?: string;
}

interface Shared {
  readonly label: string;
  /** What to enter, where the label can't say it all. */
  readonly hint?: string;
  /** May be left out; `compute` then sees undefined. An input with a default isn't optional: it is filled in. */
  readonly optional?: true;
}

export interface NumberInput extends Shared {
  readonly kind?: 'number' | 'integer';
  readonly dimension: Dimension;
  readonly unit: string;
  readonly must?: Must;
  readonly usual?: Usual;
  /** In `unit`, with where it comes from. */
  readonly default?: number;
  readonly defaultSource?: string;
}

export interface ListInput extends Shared {
  readonly kind: 'list';
  readonly dimension: Dimension;
  readonly unit: string;
  readonly must?: Must;
  readonly usual?: Usual;
  readonly fewest?: number;
  readonly most?: number;
}

export interface ChoiceInput extends Shared {
  readonly kind: 'choice';
  /** What may be given, and how it reads. */
  readonly choices: Readonly<Record<string, string>>;
  readonly default?: string;
  readonly defaultSource?: string;
}

export interface YesNoInput extends Shared {
  readonly kind: 'yes-no';
  readonly default?: boolean;
  readonly defaultSource?: string;
}

export type Input = NumberInput | ListInput | ChoiceInput | YesNoInput;

export type Output =
  | {
      readonly kind?: 'number';
      readonly label: string;
      readonly dimension: Dimension;
      readonly unit: string;
      readonly hint?: string;
    }
  | { readonly kind: 'yes-no' | 'text'; readonly label: string; readonly hint?: string };

type OneValue<I extends Input> = I extends ListInput
  ? readonly number[]
  : I extends ChoiceInput
    ? keyof I['choices'] & string
    : I extends YesNoInput
      ? boolean
      : number;

/** What `compute` is given: SI numbers, lists of them, choices and yes or no. */
export type Values<I extends Record<string, Input>> = {
  readonly [K in keyof I]: I[K] extends { readonly optional: true } ? OneValue<I[K]> | undefined : OneValue<I[K]>;
};

type OutputValue<O extends Output> = O extends { readonly kind: 'yes-no' }
  ? boolean
  : O extends { readonly kind: 'text' }
    ? string
    : number;

export interface Warning {
  /** `grave` where an engine, a part or a person can be lost by it. */
  readonly level: 'warning' | 'grave';
  readonly message: string;
}

/** What `compute` hands back: SI numbers, and only the outputs that this mode and these inputs can give. */
export interface Result<O extends Record<string, Output>> {
  readonly outputs: { readonly [K in keyof O]?: OutputValue<O[K]> | undefined };
  readonly warnings?: readonly Warning[];
  readonly notes?: readonly string[];
}

export interface Mode<I extends Record<string, Input>, O extends Record<string, Output>> {
  readonly name: string;
  /** As a person asks for it: "gauge from absolute". */
  readonly title: string;
  readonly needs: readonly (keyof I & string)[];
  /** Inputs that may come too; without this, every optional or defaulted input that no other mode needs. */
  readonly may?: readonly (keyof I & string)[];
  compute(values: Values<I>): Result<O>;
}

/** An input as it comes from a form, a file or a command line. Numbers may be text, such as `3/8` or `1 1/2 in`. */
export interface Given {
  readonly value: number | string | boolean | readonly (number | string)[];
  readonly unit?: string | undefined;
}

interface Facts {
  /** The group's letter and a number: `B2`. */
  readonly id: string;
  readonly slug: string;
  readonly title: string;
  /** One sentence: what it answers. */
  readonly about: string;
  readonly formula: string;
  /** Where the formula and its figures come from, and whether that was read or is from memory. */
  readonly source: string;
  /** What always stands beside the result. */
  readonly notes: readonly string[];
  /** One line where the figure can hurt someone or lose an engine. */
  readonly caution?: string;
}

export interface Declaration<I extends Record<string, Input>, O extends Record<string, Output>> extends Facts {
  readonly inputs: I;
  readonly outputs: O;
  readonly example: { readonly [K in keyof NoInfer<I>]?: Given };
  readonly compute?: (values: Values<NoInfer<I>>) => Result<NoInfer<O>>;
  readonly modes?: readonly Mode<NoInfer<I>, NoInfer<O>>[];
}

type LooseInputs = Readonly<Record<string, Input>>;
type LooseOutputs = Readonly<Record<string, Output>>;

/** A calculator as the list, the runner and the forms know it. */
export interface Calculator extends Facts {
  readonly group: GroupId;
  readonly inputs: LooseInputs;
  readonly outputs: LooseOutputs;
  readonly example: Readonly<Record<string, Given>>;
  readonly modes: readonly Mode<LooseInputs, LooseOutputs>[];
}

export const groupTitles = {
  A: 'Units',
  B: 'Engine geometry',
  C: 'Airflow and boost',
  D: 'Fuel',
  E: 'Fluids and hose',
  F: 'Fasteners',
  G: 'Clearances and measurement',
  H: 'Timing',
  I: 'Driveline extras',
  J: 'Thermal and exhaust',
  K: 'Electrical',
} as const;

export type GroupId = keyof typeof groupTitles;

/** Makes a calculator of its declaration; the types of `compute` follow from the inputs and outputs. */
export function calculator<const I extends LooseInputs, const O extends LooseOutputs>(
  declaration: Declaration<I, O>,
): Calculator {
  const { compute, modes, ...rest } = declaration;
  const only = { name: 'only', title: declaration.title, needs: neededAlways(declaration.inputs) };
  const all = modes ?? (compute === undefined ? [] : [{ ...only, compute }]);
  if (all.length === 0) throw new Error(`${declaration.id} can't compute anything.`);
  const group = declaration.id.charAt(0);
  if (!Object.hasOwn(groupTitles, group)) throw new Error(`${declaration.id} belongs to no group.`);
  return { ...rest, group: group as GroupId, modes: all } as unknown as Calculator;
}

function neededAlways(inputs: LooseInputs): readonly string[] {
  return Object.entries(inputs)
    .filter(([, input]) => input.optional !== true && !hasDefault(input))
    .map(([name]) => name);
}

export function hasDefault(input: Input): boolean {
  return 'default' in input && input.default !== undefined;
}

export const warning = (message: string): Warning => ({ level: 'warning', message });
export const graveWarning = (message: string): Warning => ({ level: 'grave', message });

/** Refuses inputs that can't belong together. `reason` is a sentence; `accepted` says what would do. */
export function refuseInput(field: string, reason: string, accepted: string): never {
  throw new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}
