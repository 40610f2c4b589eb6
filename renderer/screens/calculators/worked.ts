import { useMemo } from 'react';
import type { Calculator } from '../../../core/calculators/calculator.ts';
import { formatMeasure } from '../../../core/units/measure.ts';
import type { Params } from '../../app/route.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { type Reading, readingOf } from './reading.ts';
import { outputUnits } from './standing-units.ts';
import { type Typed, typedOf } from './typed.ts';

/** What was typed into a calculator, the same with the units that stand, and how far it has come. */
export interface Worked {
  readonly typed: Typed;
  readonly seen: Typed;
  readonly reading: Reading;
}

/** Works the chosen calculator out from the address; undefined while none is chosen. */
export function useWorked(calculator: Calculator | undefined, params: Params): Worked | undefined {
  const { units } = useLocale();
  return useMemo(() => {
    if (calculator === undefined) return undefined;
    const typed = typedOf(calculator, params);
    const seen = { ...typed, outputUnits: outputUnits(calculator, typed, units) };
    return { typed, seen, reading: readingOf(calculator, seen) };
  }, [calculator, params, units]);
}

/** The result in one sentence, with its first two figures; or what the calculator is for, while there is none. */
export function answerOf(calculator: Calculator, { reading }: Worked, language: string): string {
  if (reading.state !== 'answered') return `${calculator.title}: ${calculator.about}`;
  const told = Object.entries(calculator.outputs).flatMap(([name, output]) => {
    const one = reading.answer.outputs[name];
    if (one === undefined) return [];
    const text =
      typeof one.value === 'number' && 'unit' in output
        ? formatMeasure({ value: one.value, unit: one.unit }, output.dimension, 5, language)
        : one.value === true
          ? 'yes'
          : one.value === false
            ? 'no'
            : String(one.value);
    return [`${output.label.charAt(0).toLowerCase()}${output.label.slice(1)} ${text}`];
  });
  return `${calculator.title}: ${told.slice(0, 2).join('; ')}.`;
}
