import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { Answer } from '../../../core/calculators/run.ts';
import { formatMeasure, unitLabel } from '../../../core/units/measure.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { defaultWords } from './input-field.tsx';
import type { Typed } from './typed.ts';

/** Stands on every printed result, whatever it is about. */
const standing =
  'These are planning figures. Where the maker of the engine or part publishes a value, that value governs.';

export interface PaperProps {
  readonly calculator: Calculator;
  readonly typed: Typed;
  readonly unitOf: (input: string) => string;
  readonly answer: Answer;
}

/** The calculation on one sheet of paper; on the screen the fields say the same, so that it is hidden there. */
export function Paper({ calculator, typed, unitOf, answer }: PaperProps) {
  const locale = useLocale();
  const { workbookName, builds, buildId, today } = useWorkspace();
  const { id, title, about, inputs, outputs } = calculator;
  const build = builds.find((one) => one.id === buildId)?.name ?? workbookName;
  const given = Object.entries(inputs).flatMap(([name, input]): [string, string][] => {
    const text = typed.texts[name] ?? '';
    if (text === '') {
      const assumed = answer.assumed.some((one) => one.name === name);
      return assumed ? [[input.label, `${defaultWords(input) ?? ''} (assumed)`]] : [];
    }
    if (input.kind === 'choice') return [[input.label, input.choices[text] ?? text]];
    if (input.kind === 'yes-no') return [[input.label, text === 'true' ? 'yes' : 'no']];
    const unit = unitLabel(unitOf(name), input.dimension);
    return [[input.label, /[^\d\s.,;/eE+-]/.test(text) ? text : `${text} ${unit}`.trim()]];
  });
  const results = Object.entries(outputs).flatMap(([name, output]): [string, string][] => {
    const told = answer.outputs[name];
    if (told === undefined) return [];
    if (typeof told.value === 'number' && 'unit' in output) {
      return [
        [output.label, formatMeasure({ value: told.value, unit: told.unit }, output.dimension, 5, locale.language)],
      ];
    }
    return [[output.label, told.value === true ? 'yes' : told.value === false ? 'no' : String(told.value)]];
  });
  const own = answer.caution ?? '';
  const cautions = own.includes('that value governs') ? [own] : [own, standing].filter((caution) => caution !== '');
  return (
    <article className="calculators-paper" hidden>
      <h2>
        {id} {title}
      </h2>
      <p>
        {about} {build}, {dateText(today, locale)}.
      </p>
      <Pairs title="Inputs" pairs={given} />
      <Pairs title="Results" pairs={results} />
      {answer.warnings.map(({ level, message }) => (
        <p key={message}>
          <strong>{level === 'grave' ? 'Danger.' : 'Warning.'}</strong> {message}
        </p>
      ))}
      {cautions.map((caution) => (
        <p key={caution}>
          <strong>Caution.</strong> {caution}
        </p>
      ))}
      <h3>Formula</h3>
      <p>{answer.formula}</p>
      <h3>Source</h3>
      <p>{answer.source}</p>
      {answer.notes.length > 0 && <h3>Notes</h3>}
      {answer.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
    </article>
  );
}

function Pairs({ title, pairs }: { readonly title: string; readonly pairs: readonly (readonly [string, string])[] }) {
  return (
    <>
      <h3>{title}</h3>
      <dl>
        {pairs.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
