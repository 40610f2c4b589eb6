import { readFileSync } from 'node:fs';
import type { Calculator, Given as GivenInput } from '../../core/calculators/calculator.ts';
import { describeCalculator } from '../../core/calculators/describe.ts';
import { calculators, findCalculator } from '../../core/calculators/index.ts';
import { type Asked, runCalculator } from '../../core/calculators/run.ts';
import { Refusal } from '../../core/refusal.ts';
import { needExisting } from './open.ts';
import { exitCodes, type Given, type Room, UsageError, type Verb } from './verb.ts';

const runAs = 'npm run -s workbook --';

/** The calculator named, or a usage error that lists what there is. */
function need(named: string): Calculator {
  const found = findCalculator(named);
  if (found !== undefined) return found;
  throw new UsageError(`There is no calculator “${named}”. One of: ${calculators.map(({ id }) => id).join(', ')}.`);
}

const wanted = 'Give JSON such as {"inputs":{"bore":{"value":86,"unit":"mm"}},"units":{"displacement":"in3"}}.';

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const unreadable = (name: string): Refusal =>
  new Refusal('bad-input', `The input ${name} can't be read. Nothing was changed.`, {
    field: name,
    accepted: 'a number with its unit, such as {"value":86,"unit":"mm"}',
  });

/** `{"value":86,"unit":"mm"}`, or the same as text (`"86 mm"`), a number, true, or a list. */
function oneInput(name: string, said: unknown): GivenInput {
  const { value, unit } = isRecord(said) ? said : { value: said, unit: undefined };
  const plain = (one: unknown): boolean => typeof one === 'number' || typeof one === 'string';
  const readable = plain(value) || typeof value === 'boolean' || (Array.isArray(value) && value.every(plain));
  if (!readable || (unit !== undefined && unit !== null && typeof unit !== 'string')) {
    throw unreadable(name);
  }
  return { value: value as GivenInput['value'], unit: unit ?? undefined };
}

/** What is asked, read from JSON. @throws UsageError when the text isn't that. */
function readAsked(text: string): Asked {
  let said: unknown;
  try {
    said = JSON.parse(text);
  } catch (error) {
    // Some languages write NaN and Infinity into what should be JSON; the input can still be named.
    const field = /"(\w+)"\s*:\s*(?:\{[^{}]*?"value"\s*:\s*)?(?:\[[^\]]*?)?(?:NaN|-?Infinity)/.exec(text)?.[1];
    if (field !== undefined) throw unreadable(field);
    throw new UsageError(`This is not JSON: ${error instanceof Error ? error.message : String(error)}. ${wanted}`);
  }
  if (!isRecord(said) || !isRecord(said['inputs'])) throw new UsageError(`There are no inputs. ${wanted}`);
  const other = Object.keys(said).find((key) => key !== 'inputs' && key !== 'units');
  if (other !== undefined) throw new UsageError(`“${other}” is neither inputs nor units. ${wanted}`);
  const units = said['units'] ?? {};
  if (!isRecord(units) || !Object.values(units).every((unit) => typeof unit === 'string')) {
    throw new UsageError(`The units can't be read. ${wanted}`);
  }
  const inputs = Object.entries(said['inputs'])
    .filter(([, one]) => one !== null && !(isRecord(one) && (one['value'] ?? null) === null))
    .map(([name, one]) => [name, oneInput(name, one)] as const);
  return { inputs: Object.fromEntries(inputs), units: units as Record<string, string> };
}

function textOf(given: Given, room: Room, { id }: Calculator): string {
  const from = given.text('in');
  if (from === undefined)
    throw new UsageError(`calc ${id} needs --in FILE, or --in - to read standard input. ${wanted}`);
  if (from === '-') return room.input === undefined ? readFileSync(0, 'utf8') : room.input();
  return readFileSync(needExisting(room, from, 'The inputs'), 'utf8');
}

/** Help for one calculator: its inputs with units and ranges, its outputs, and an example that can be pasted. */
function helpAbout(given: Given): string | undefined {
  const [named] = given.positionals;
  if (named === undefined) return undefined;
  const { id, title, about, formula, source, caution, notes, inputs, outputs, modes, example } = describeCalculator(
    need(named),
  );
  const width = Math.max(...[...inputs, ...outputs].map(({ name }) => name.length));
  const rows = inputs.map((input) => {
    const { name, label, hint, accepted, optional } = input;
    const standing =
      'default' in input
        ? `; ${String(input.default)}${'unit' in input && input.unit !== '-' ? ` ${input.unit}` : ''} if left out`
        : '';
    return `  ${name.padEnd(width)}  ${label}${hint === undefined ? '' : ` (${hint})`}: ${accepted}${standing}${optional ? '; may be left out' : ''}`;
  });
  const results = outputs.map((output) => {
    const units = 'units' in output ? output.units.filter((unit) => unit !== '-') : [];
    return `  ${output.name.padEnd(width)}  ${output.label}${units.length === 0 ? '' : `: ${'unit' in output ? output.unit : ''} (or ${units.filter((unit) => !('unit' in output) || unit !== output.unit).join(', ')})`}`.replace(
      ' (or )',
      '',
    );
  });
  return [
    `${id} ${title}: ${about}`,
    '',
    'Inputs:',
    ...rows,
    ...(modes.length < 2
      ? []
      : ['', 'Ways to ask:', ...modes.map((mode) => `  ${mode.title}: ${mode.needs.join(', ')}`)]),
    '',
    'Outputs:',
    ...results,
    '',
    `Formula: ${formula}`,
    `Source: ${source}`,
    ...notes.map((note) => `Note: ${note}`),
    ...(caution === undefined ? [] : [`Caution: ${caution}`]),
    '',
    'Example:',
    `  echo '${JSON.stringify({ inputs: example })}' | ${runAs} calc ${id} --in -`,
  ].join('\n');
}

function list() {
  const width = Math.max(...calculators.map(({ id }) => id.length));
  return {
    lines: calculators.map(({ id, title }) => `${id.padEnd(width)}  ${title}`),
    data: calculators.map(describeCalculator),
  };
}

export const calc: Verb = {
  name: 'calc',
  summary: 'work a calculator: JSON in, JSON out',
  usage: '[ID]',
  options: { in: { type: 'string' }, list: { type: 'boolean' } },
  optionHelp: [
    ['--in FILE', 'the inputs as JSON; - reads standard input'],
    ['--list', 'every calculator; with --json its inputs, outputs, units and ranges too'],
  ],
  examples: ['calc --list', 'calc B1 --help', 'calc B1 --in bore.json', 'calc B1 --in - < bore.json'],
  takes: [0, 1],
  speaksJson: (args) => !args.includes('--list'),
  refusedExit: exitCodes.usage,
  helpAbout,
  async run(given, room) {
    const [named] = given.positionals;
    if (given.flag('list')) {
      if (named === undefined) return list();
      throw new UsageError(`--list lists every calculator; of one alone, calc ${named} --help tells more.`);
    }
    if (named === undefined) throw new UsageError('calc needs a calculator, such as calc B1 --in -, or --list.');
    const calculator = need(named);
    return { lines: [], data: runCalculator(calculator, readAsked(textOf(given, room, calculator))) };
  },
};
