import { Button } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import type { RefObject } from 'react';
import type { Calculator } from '../../../core/calculators/calculator.ts';
import { navigate, type Params } from '../../app/route.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { InputField } from './input-field.tsx';
import { Paper } from './paper.tsx';
import { Plot, plotParams } from './plot.tsx';
import type { Reading } from './reading.ts';
import { Result } from './result.tsx';
import { caseOf, typedOfCase } from './saved-case.ts';
import { SavedCases } from './saved-cases.tsx';
import { inputUnit, withoutUnit } from './standing-units.ts';
import { exampleTyped, paramsOf, type Typed } from './typed.ts';
import { Ways } from './ways.tsx';
import type { Worked } from './worked.ts';

export interface OneCalculatorProps {
  readonly calculator: Calculator;
  readonly params: Params;
  readonly heading: RefObject<HTMLHeadingElement | null>;
  readonly worked: Worked;
}

/** What of the address is kept while one types: the plot, and the case that is compared with. */
const kept = (params: Params): Params =>
  Object.fromEntries([...plotParams, 'case'].flatMap((name) => (params[name] ? [[name, params[name]]] : [])));

/** One calculator: what it answers, its fields, the result as one types, and where all of it comes from. */
export function OneCalculator({ calculator, params, heading, worked }: OneCalculatorProps) {
  const { typed, seen, reading } = worked;
  const { title, about, inputs, modes, formula, source, notes, group } = calculator;
  const { units: system } = useLocale();
  const unitOf = (name: string): string => {
    const input = inputs[name];
    return (input === undefined ? undefined : inputUnit(name, input, typed, group, system)) ?? '-';
  };
  const put = (next: Partial<Typed>, others: Params = {}) =>
    navigate(
      '/calculators',
      { ...kept(params), ...paramsOf(calculator, { ...typed, ...next }), ...others },
      { replace: true },
    );
  // A step of its own in the history, so that Back gives what was typed before.
  const replaceAll = (next: Typed, others: Params = kept(params)) =>
    navigate('/calculators', { ...others, ...paramsOf(calculator, next) });
  // The unit goes into the address with the text, so that a link means the same in every workbook.
  const type = (name: string, text: string) => {
    const unit = unitOf(name);
    const input = inputs[name];
    const said = input !== undefined && 'unit' in input && unit !== input.unit ? { [name]: unit } : {};
    put({ texts: { ...typed.texts, [name]: text }, units: { ...typed.units, ...said } });
  };
  // A unit written behind the number gives way to the one chosen; the plot's range was in the former one.
  const chooseUnit = (name: string, unit: string) => {
    const text = typed.texts[name];
    const texts = text === undefined || inputs[name]?.kind === 'list' ? {} : { [name]: withoutUnit(text) };
    const next = { texts: { ...typed.texts, ...texts }, units: { ...typed.units, [name]: unit } };
    put(next, { 'p.from': '', 'p.to': '' });
  };
  const answer = reading.state === 'answered' ? reading.answer : undefined;

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
            {answer !== undefined && (
              <Button
                variant="subtle"
                leftSection={<IconPrinter aria-hidden size="1.1em" />}
                onClick={() => window.print()}
              >
                Print
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
              unit={'unit' in input ? unitOf(name) : undefined}
              problem={problemAt(reading, name)}
              onText={(text) => type(name, text)}
              onUnit={(unit) => chooseUnit(name, unit)}
            />
          ))}
        </div>
        <Result
          calculator={calculator}
          reading={reading}
          onUnit={(output, unit) => put({ outputUnits: { ...typed.outputUnits, [output]: unit } })}
        />
      </div>
      <SavedCases
        calculator={calculator}
        typed={seen}
        unitOf={unitOf}
        answered={answer !== undefined}
        chosen={params['case']}
        onCompare={(id) => put({}, { case: id === undefined ? '' : String(id) })}
        onOpen={(row) => replaceAll(typedOfCase(calculator, caseOf(row)), { case: String(row.id) })}
      />
      {answer !== undefined && (
        <Plot
          calculator={calculator}
          typed={seen}
          answer={answer}
          params={params}
          unitOf={unitOf}
          onPlot={(plot) => put({}, Object.fromEntries(plotParams.map((name) => [name, plot[name] ?? ''])))}
        />
      )}
      <section className="calculators-prose">
        <h3>Formula</h3>
        <p>{formula}</p>
      </section>
      <section className="calculators-prose">
        <h3>Source</h3>
        <p>{source}</p>
      </section>
      <Notes notes={answer?.notes ?? notes} />
      {answer !== undefined && <Paper calculator={calculator} typed={seen} unitOf={unitOf} answer={answer} />}
    </section>
  );
}

function Notes({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <section className="calculators-prose">
      <h3>Notes</h3>
      <ul>
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </section>
  );
}

function problemAt(reading: Reading, name: string): string | null {
  if (reading.state !== 'refused' || reading.field !== name) return null;
  return reading.accepted === undefined ? reading.message : `${reading.message} Accepted: ${reading.accepted}.`;
}
