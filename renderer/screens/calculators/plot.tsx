import { NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { Answer } from '../../../core/calculators/run.ts';
import { Refusal } from '../../../core/refusal.ts';
import { formatMeasure, unitLabel } from '../../../core/units/measure.ts';
import { parseMeasure } from '../../../core/units/parse-measure.ts';
import type { Params } from '../../app/route.tsx';
import { Curve } from '../../parts/curve.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { plotPoints, plottable, pointAt, presentValue, standingRange, stretchesOf } from './plot-points.ts';
import type { Typed } from './typed.ts';

/** Kept in the address: `p.y` the result drawn, `p.x` the input it is drawn against, `p.from` and `p.to` its range. */
export const plotParams = ['p.x', 'p.y', 'p.from', 'p.to'] as const;

export interface PlotProps {
  readonly calculator: Calculator;
  readonly typed: Typed;
  readonly answer: Answer;
  readonly params: Params;
  readonly unitOf: (input: string) => string;
  readonly onPlot: (params: Params) => void;
}

/** The result over a range of one input: which way it goes, how steeply, and from where on it warns. */
export function Plot({ calculator, typed, answer, params, unitOf, onPlot }: PlotProps) {
  const { language } = useLocale();
  const inputs = plottable(calculator, answer.mode);
  const outputs = Object.entries(calculator.outputs).filter(
    ([name]) => typeof answer.outputs[name]?.value === 'number',
  );
  const [x, input] = inputs.find(([name]) => name === params['p.x']) ?? inputs[0] ?? ['', undefined];
  const [y, output] = outputs.find(([name]) => name === params['p.y']) ?? outputs[0] ?? ['', undefined];
  const unit = input === undefined ? '' : unitOf(x);
  const outUnit = answer.outputs[y]?.unit ?? '';
  const present = input === undefined ? undefined : presentValue(input, x, typed, unit);
  const standing = input === undefined ? ([0, 1] as const) : standingRange(input, unit, present);
  // An end that is being typed may be empty, which the address can't keep; another input or unit has ends of its own.
  const of = `${x} ${unit}`;
  const [typing, setTyping] = useState({ of: '', from: '', to: '' });
  const stated = { from: params['p.from'] ?? String(standing[0]), to: params['p.to'] ?? String(standing[1]) };
  const { from, to } = typing.of === of ? typing : stated;
  const range = input === undefined ? null : rangeOf(from, to, input.dimension, unit);
  const points =
    range === null || 'problem' in range ? [] : plotPoints(calculator, typed, { name: x, unit, ...range }, y);
  if (input === undefined || output === undefined || !('unit' in output)) return null;

  const now = present === undefined ? null : pointAt(calculator, typed, x, unit, present, y);
  const axisLabel = (label: string, one: string) => (one === '' ? label : `${label}, ${one}`);
  const put = (name: (typeof plotParams)[number], value: string) =>
    onPlot({ ...params, [name]: value, ...(name === 'p.x' ? { 'p.from': '', 'p.to': '' } : {}) });
  const figure = (value: number, of: typeof input | typeof output, one: string) =>
    formatMeasure({ value, unit: one }, of.dimension, 4, language);
  const problem = range !== null && 'problem' in range ? range : null;

  return (
    <section className="calculators-plot not-printed" aria-labelledby="calculators-plot">
      <h3 id="calculators-plot">Over a range</h3>
      <div className="calculators-plot-fields">
        <NativeSelect
          label="Draw"
          value={y}
          data={outputs.map(([name, one]) => ({ value: name, label: one.label }))}
          onChange={(event) => put('p.y', event.currentTarget.value)}
        />
        <NativeSelect
          label="Against"
          value={x}
          data={inputs.map(([name, one]) => ({ value: name, label: one.label }))}
          onChange={(event) => put('p.x', event.currentTarget.value)}
        />
        {(['from', 'to'] as const).map((end) => (
          <TextInput
            key={`${x} ${end}`}
            label={`${end === 'from' ? 'From' : 'To'}${unitLabel(unit, input.dimension) === '' ? '' : `, ${unitLabel(unit, input.dimension)}`}`}
            value={end === 'from' ? from : to}
            error={problem?.end === end ? problem.problem : undefined}
            onChange={(event) => {
              setTyping({ of, from, to, [end]: event.currentTarget.value });
              put(`p.${end}`, event.currentTarget.value);
            }}
          />
        ))}
      </div>
      {problem === null && (
        <Curve
          title={sentenceOf(points, output.label, input.label, (value) => figure(value, output, outUnit))}
          xName={axisLabel(input.label, unitLabel(unit, input.dimension))}
          yName={axisLabel(output.label, unitLabel(outUnit, output.dimension))}
          points={points}
          stretches={stretchesOf(points)}
          present={now?.y === null || now === null ? null : { x: now.x, y: now.y }}
          xText={(value) => figure(value, input, unit)}
          yText={(value) => figure(value, output, outUnit)}
        />
      )}
    </section>
  );
}

type Range = { readonly from: number; readonly to: number } | { readonly end: 'from' | 'to'; readonly problem: string };

/** The two ends as numbers in the unit of the field, or what is wrong with one of them. */
function rangeOf(from: string, to: string, dimension: Parameters<typeof parseMeasure>[1], unit: string): Range {
  const ends = { from: 0, to: 0 };
  for (const [end, text] of [
    ['from', from],
    ['to', to],
  ] as const) {
    try {
      const read = parseMeasure(text, dimension, { unit, field: end });
      if (read.unit !== unit) return { end, problem: 'Write it in the unit of the field, without another behind it.' };
      ends[end] = read.value;
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return { end, problem: `“${text}” can't be read as a number.` };
    }
  }
  return ends.to > ends.from ? ends : { end: 'to', problem: 'The end has to be above the start.' };
}

function sentenceOf(
  points: ReturnType<typeof plotPoints>,
  output: string,
  input: string,
  text: (value: number) => string,
): string {
  const drawn = points.filter(({ y }) => y !== null);
  const [first, last] = [drawn[0]?.y, drawn.at(-1)?.y];
  if (first === undefined || last === undefined || first === null || last === null) {
    return `${output} has no result in this range of ${input.toLowerCase()}.`;
  }
  return `${output} goes from ${text(first)} to ${text(last)} over this range of ${input.charAt(0).toLowerCase()}${input.slice(1)}.`;
}
