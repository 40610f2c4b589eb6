/**
 * Check cases in the notation of a table: `bore 86 mm; cylinders 4; readings [59.992, 59.994] mm; basis 5/8H`. Every
 * case names where its expected figure comes from.
 */
import { describe, expect, it } from 'vitest';
import type { Calculator, Given } from '../../../core/calculators/calculator.ts';
import { type Answer, runCalculator } from '../../../core/calculators/run.ts';
import type { Refusal } from '../../../core/refusal.ts';

interface Accepted {
  readonly case: string;
  readonly inputs: string;
  readonly expected: string;
  /** Relative; a record where outputs differ. */
  readonly tolerance: number | Readonly<Record<string, number>>;
  readonly source: string;
  /** What some warning must say. */
  readonly warns?: RegExp;
}

interface Rejected {
  readonly case: string;
  readonly inputs: string;
  /** The name of the input refused. */
  readonly rejected: string;
  readonly source: string;
}

export type CheckCase = Accepted | Rejected;

function oneGiven(text: string): [string, Given] {
  const [, name = '', rest = ''] = /^(\S+)\s+(.*)$/.exec(text.trim()) ?? [];
  const list = /^\[([^\]]*)\]\s*(.*)$/.exec(rest);
  if (list !== null) return [name, { value: (list[1] ?? '').split(',').map(Number), unit: list[2] }];
  if (rest === 'true' || rest === 'false') return [name, { value: rest === 'true' }];
  const number = /^(-?[\d.]+(?:e-?\d+)?)(?:\s+(.*))?$/.exec(rest);
  return [name, number === null ? { value: rest } : { value: Number(number[1]), unit: number[2] }];
}

/** `bore 86 mm; cylinders 4` as the runner wants it. */
export function givenIn(text: string): Record<string, Given> {
  return Object.fromEntries(
    text
      .split(';')
      .filter((part) => part.trim() !== '')
      .map(oneGiven),
  );
}

/** Runs a calculator on inputs in table notation; `units` asks outputs in units, `result lbf*in; …`. */
export function run(calculator: Calculator, inputs: string, units: Readonly<Record<string, string>> = {}): Answer {
  return runCalculator(calculator, { inputs: givenIn(inputs), units });
}

/** A number output, in the unit asked for. */
export function numberOf(calculator: Calculator, inputs: string, output: string, unit?: string): number {
  const value = run(calculator, inputs, unit === undefined ? {} : { [output]: unit }).outputs[output]?.value;
  if (typeof value !== 'number') throw new Error(`${calculator.id} gave no number ${output}.`);
  return value;
}

/** The refusal that inputs in table notation meet. */
export function refusalOf(calculator: Calculator, inputs: string): Refusal {
  try {
    run(calculator, inputs);
  } catch (error) {
    return error as Refusal;
  }
  throw new Error(`${calculator.id} accepted: ${inputs}`);
}

/** One test a case. */
export function checkCases(calculator: Calculator, cases: readonly CheckCase[]): void {
  describe(`${calculator.id} ${calculator.title}: check cases`, () => {
    it.each(cases)('$case ($source)', (one) => {
      if ('rejected' in one) {
        expect(refusalOf(calculator, one.inputs)).toMatchObject({
          name: 'Refusal',
          code: 'bad-input',
          field: one.rejected,
          message: expect.stringContaining('Nothing was changed.'),
        });
        return;
      }
      const expected = givenIn(one.expected);
      const units = Object.fromEntries(
        Object.entries(expected).flatMap(([name, { unit }]) => (unit === undefined ? [] : [[name, unit]])),
      );
      const answer = runCalculator(calculator, { inputs: givenIn(one.inputs), units });
      for (const [name, { value }] of Object.entries(expected)) {
        const got = answer.outputs[name]?.value;
        if (typeof value !== 'number') {
          expect(got, name).toBe(value);
          continue;
        }
        const tolerance = typeof one.tolerance === 'number' ? one.tolerance : (one.tolerance[name] ?? Number.NaN);
        const allowed = value === 0 ? 1e-9 : tolerance * Math.abs(value);
        expect(Math.abs((got as number) - value), `${name}: ${String(got)}, expected ${value}`).toBeLessThanOrEqual(
          allowed,
        );
      }
      if (one.warns !== undefined) {
        expect(answer.warnings.map(({ message }) => message).join('\n')).toMatch(one.warns);
      }
    });
  });
}
