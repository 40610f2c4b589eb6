import { Button } from '@mantine/core';
import { IconCircleCheck } from '@tabler/icons-react';
import { type RefObject, useMemo } from 'react';
import type { Calculator } from '../../../core/calculators/calculator.ts';
import { navigate, type Params } from '../../app/route.tsx';
import { InputField } from './input-field.tsx';
import { type Reading, readingOf } from './reading.ts';
import { Result } from './result.tsx';
import { exampleTyped, paramsOf, type Typed, typedOf } from './typed.ts';

export interface OneCalculatorProps {
  readonly calculator: Calculator;
  readonly params: Params;
  readonly heading: RefObject<HTMLHeadingElement | null>;
}

/** One calculator: what it answers, its fields, the result as one types, and where all of it comes from. */
export function OneCalculator({ calculator, params, heading }: OneCalculatorProps) {
  const { title, about, inputs, modes, formula, source, notes } = calculator;
  const typed = useMemo(() => typedOf(calculator, params), [calculator, params]);
  const reading = useMemo(() => readingOf(calculator, typed), [calculator, typed]);
  const put = (next: Partial<Typed>) =>
    navigate('/calculators', paramsOf(calculator, { ...typed, ...next }), { replace: true });
  // A step of its own in the history, so that Back gives what was typed before.
  const replaceAll = (next: Typed) => navigate('/calculators', paramsOf(calculator, next));
  const allNotes = reading.state === 'answered' ? reading.answer.notes : notes;

  return (
    <section className="calculators-one" aria-labelledby="calculators-title">
      <h2 id="calculators-title" ref={heading} tabIndex={-1}>
        {title}
      </h2>
      <p className="calculators-prose">{about}</p>
      <Ways calculator={calculator} reading={reading} />
      <div className="calculators-work">
        <div className="calculators-inputs">
          <div className="calculators-buttons not-printed">
            <Button onClick={() => replaceAll(exampleTyped(calculator, typed.outputUnits))}>Use the example</Button>
            {Object.keys(typed.texts).length > 0 && (
              <Button variant="subtle" onClick={() => replaceAll({ ...typed, texts: {} })}>
                Empty the fields
              </Button>
            )}
          </div>
          {Object.entries(inputs).map(([name, input]) => (
            <InputField
              key={name}
              name={name}
              input={input}
              needed={modes.every(({ needs }) => needs.includes(name))}
              text={typed.texts[name] ?? ''}
              unit={typed.units[name]}
              problem={problemAt(reading, name)}
              onText={(text) => put({ texts: { ...typed.texts, [name]: text } })}
              onUnit={(unit) => put({ units: { ...typed.units, [name]: unit } })}
            />
          ))}
        </div>
        <Result
          calculator={calculator}
          reading={reading}
          onUnit={(output, unit) => put({ outputUnits: { ...typed.outputUnits, [output]: unit } })}
        />
      </div>
      <section className="calculators-prose">
        <h3>Formula</h3>
        <p>{formula}</p>
      </section>
      <section className="calculators-prose">
        <h3>Source</h3>
        <p>{source}</p>
      </section>
      {allNotes.length > 0 && (
        <section className="calculators-prose">
          <h3>Notes</h3>
          <ul>
            {allNotes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </section>
      )}
    </section>
  );
}

function problemAt(reading: Reading, name: string): string | null {
  if (reading.state !== 'refused' || reading.field !== name) return null;
  return reading.accepted === undefined ? reading.message : `${reading.message} Accepted: ${reading.accepted}.`;
}

/** The ways to ask, where there are several; the one in use is marked. What is given decides. */
function Ways({ calculator, reading }: { readonly calculator: Calculator; readonly reading: Reading }) {
  const { inputs, modes } = calculator;
  if (modes.length < 2) return null;
  const used = reading.state === 'answered' ? reading.answer.mode : undefined;
  return (
    <section className="calculators-prose">
      <h3>Ways to ask; the fields that are filled in decide</h3>
      <ul>
        {modes.map(({ name, title, needs }) => (
          <li key={name}>
            {title}: {needs.map((need) => inputs[need]?.label ?? need).join(', ')}
            {name === used && (
              <strong className="calculators-used">
                {' '}
                <IconCircleCheck aria-hidden size="1.1em" /> in use
              </strong>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
