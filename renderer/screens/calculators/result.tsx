import { IconAlertOctagon, IconAlertTriangle } from '@tabler/icons-react';
import type { Calculator, Output, Warning } from '../../../core/calculators/calculator.ts';
import type { Answer } from '../../../core/calculators/run.ts';
import { formatMeasure, unitLabel } from '../../../core/units/measure.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { defaultWords } from './input-field.tsx';
import type { Reading } from './reading.ts';
import { hasUnits, UnitChoice } from './unit-choice.tsx';

export interface ResultProps {
  readonly calculator: Calculator;
  readonly reading: Reading;
  readonly onUnit: (output: string, unit: string) => void;
}

/** What comes out, with what has to be known beside it; or, in one sentence, why nothing comes out yet. */
export function Result({ calculator, reading, onUnit }: ResultProps) {
  const { inputs, caution } = calculator;
  const ofOutput = reading.state === 'refused' && inputs[reading.field] === undefined;
  return (
    <section className="calculators-result" aria-labelledby="calculators-result">
      <h3 id="calculators-result">Result</h3>
      <p role="status" className="calculators-soft">
        {ofOutput ? '' : statusOf(calculator, reading)}
      </p>
      {ofOutput && <RefusalNote refusal={reading} />}
      {reading.state === 'answered' && <Outputs calculator={calculator} answer={reading.answer} onUnit={onUnit} />}
      {caution !== undefined && <Caution>{caution}</Caution>}
      {reading.state === 'answered' && <Assumed calculator={calculator} answer={reading.answer} />}
    </section>
  );
}

function statusOf({ inputs, modes }: Calculator, reading: Reading): string {
  const labels = (names: readonly string[]) => names.map((name) => inputs[name]?.label ?? name).join(', ');
  if (reading.state === 'waiting') return `Still needed: ${labels(reading.missing)}.`;
  if (reading.state === 'refused') return `No result while ${labels([reading.field])} can't be taken.`;
  const mode = modes.find(({ name }) => name === reading.answer.mode);
  return modes.length > 1 && mode !== undefined ? `Asked this way: ${mode.title}.` : '';
}

function Outputs({ calculator, answer, onUnit }: Omit<ResultProps, 'reading'> & { readonly answer: Answer }) {
  return (
    <>
      <dl className="calculators-outputs">
        {Object.entries(calculator.outputs).map(([name, output]) => {
          const told = answer.outputs[name];
          if (told === undefined) return null;
          return (
            <div key={name}>
              <dt>
                {output.label}
                {output.hint !== undefined && <span className="calculators-soft">, {output.hint}</span>}
              </dt>
              <dd>
                <Figure output={output} value={told.value} unit={told.unit} />
                {'unit' in output && hasUnits(output.dimension) && (
                  <UnitChoice
                    of={output.label}
                    dimension={output.dimension}
                    unit={told.unit}
                    onChange={(unit) => onUnit(name, unit)}
                  />
                )}
              </dd>
            </div>
          );
        })}
      </dl>
      {answer.warnings.map((one) => (
        <WarningNote key={one.message} warning={one} />
      ))}
    </>
  );
}

interface FigureProps {
  readonly output: Output;
  readonly value: number | boolean | string;
  readonly unit: string;
}

/** Five significant digits, which is more than any of the formulas is good for; all of them when pointed at or copied. */
function Figure({ output, value, unit }: FigureProps) {
  const { language } = useLocale();
  if (typeof value === 'boolean') return <strong>{value ? 'yes' : 'no'}</strong>;
  if (typeof value === 'string' || !('unit' in output)) return <strong>{value}</strong>;
  const { dimension } = output;
  return (
    <data className="figure" value={String(value)} title={`${value} ${unitLabel(unit, dimension)}`.trim()}>
      {formatMeasure({ value, unit }, dimension, 5, language)}
    </data>
  );
}

function WarningNote({ warning: { level, message } }: { readonly warning: Warning }) {
  const grave = level === 'grave';
  const Mark = grave ? IconAlertOctagon : IconAlertTriangle;
  return (
    <p className={grave ? 'note note-blocks' : 'note note-warn'}>
      <Mark aria-hidden className="note-icon" />
      <span>
        <strong>{grave ? 'Danger.' : 'Warning.'}</strong> {message}
      </span>
    </p>
  );
}

function Assumed({ calculator: { inputs }, answer }: { readonly calculator: Calculator; readonly answer: Answer }) {
  if (answer.assumed.length === 0) return null;
  const told = answer.assumed.map(({ name }) => {
    const input = inputs[name];
    return input === undefined ? name : `${input.label} ${defaultWords(input) ?? ''}`;
  });
  return <p className="calculators-soft">Assumed, because left empty: {told.join('; ')}.</p>;
}
