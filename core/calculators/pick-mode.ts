/** Which way a calculator is being asked, told by the inputs that were given. */
import { type Calculator, hasDefault, refuseInput } from './calculator.ts';
import { acceptedFor, named } from './read-inputs.ts';

type AnyMode = Calculator['modes'][number];

/** Every input a mode takes: what it needs, and what it may have. */
export function inputsOfMode({ inputs, modes }: Calculator, mode: AnyMode): readonly string[] {
  const elsewhere = new Set(modes.flatMap(({ needs }) => needs));
  const may =
    mode.may ??
    Object.entries(inputs)
      .filter(([name, input]) => (input.optional === true || hasDefault(input)) && !elsewhere.has(name))
      .map(([name]) => name);
  return [...mode.needs, ...may.filter((name) => !mode.needs.includes(name))];
}

/**
 * The mode whose needs are all given, and to which nothing given is foreign; the one that needs most, if several.
 * @throws Refusal `bad-input` naming the first input missing, or the first that can't stand beside the others.
 */
export function pickMode(calculator: Calculator, given: ReadonlySet<string>): AnyMode {
  const { inputs, modes } = calculator;
  const ranked = modes
    .map((mode) => {
      const takes = inputsOfMode(calculator, mode);
      const missing = mode.needs.filter((name) => !given.has(name));
      const foreign = [...given].filter((name) => !takes.includes(name));
      return { mode, missing, foreign, met: mode.needs.length - missing.length };
    })
    .sort((a, b) => a.foreign.length - b.foreign.length || a.missing.length - b.missing.length || b.met - a.met);
  const [best] = ranked.filter(({ missing, foreign }) => missing.length + foreign.length === 0);
  if (best !== undefined) {
    const fitting = ranked.filter(({ missing, foreign }) => missing.length + foreign.length === 0);
    return fitting.reduce((most, one) => (one.mode.needs.length > most.mode.needs.length ? one : most)).mode;
  }
  const ways = modes.map(({ title, needs }) => `${title}: ${needs.join(', ')}`).join('; ');
  const [nearest] = ranked;
  const [missing] = nearest?.missing ?? [];
  const [foreign] = nearest?.foreign ?? [];
  const field = foreign ?? missing ?? '';
  const input = inputs[field];
  const what = input === undefined ? field : named(field, input);
  if (foreign !== undefined) {
    return refuseInput(field, `${what} can't be given together with the other inputs: one way at a time.`, ways);
  }
  const accepted = input === undefined ? '' : acceptedFor(input);
  return refuseInput(
    field,
    `${what} is missing.`,
    modes.length === 1 ? accepted : `${accepted}; or another way: ${ways}`,
  );
}
