import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { RecordRow } from '../../../core/contract/records.ts';
import type { Dimension } from '../../../core/units/dimensions.ts';
import { formatMeasure } from '../../../core/units/measure.ts';
import { useLocale } from '../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { type Comparison, caseOf, compare } from './saved-case.ts';
import type { Typed } from './typed.ts';

export interface WhatChangedProps {
  readonly calculator: Calculator;
  readonly row: RecordRow;
  readonly typed: Typed;
}

/** Inputs and results of now beside those of a saved case, with the difference. */
export function WhatChanged({ calculator, row, typed }: WhatChangedProps) {
  const { language } = useLocale();
  const { title } = caseOf(row);
  const rows = compare(calculator, caseOf(row), typed);
  const count = (side: Comparison['side']) => rows.filter((one) => one.side === side && one.differs).length;
  const [inputs, results] = [count('input'), count('output')];
  const percent = new Intl.NumberFormat(language, {
    style: 'percent',
    maximumSignificantDigits: 3,
    signDisplay: 'exceptZero',
  });

  const dimensionOf = ({ name, side }: Comparison): Dimension => {
    const one = side === 'input' ? calculator.inputs[name] : calculator.outputs[name];
    return one !== undefined && 'unit' in one ? one.dimension : 'number';
  };
  const figure = (one: Comparison, value: Comparison['now']) => {
    if (typeof value === 'number') return formatMeasure({ value, unit: one.unit }, dimensionOf(one), 5, language);
    if (value === undefined || value === '') return 'none';
    return value === true || value === 'true' ? 'yes' : value === false || value === 'false' ? 'no' : value;
  };
  const difference = (one: Comparison) => {
    if (!one.differs) return 'same';
    if (one.change === undefined) return 'differs';
    return `${one.change > 0 ? '+' : ''}${figure(one, one.change)}`;
  };
  const columns: readonly Column<Comparison>[] = [
    { id: 'what', title: 'What', rowHeader: true, cell: ({ label }) => label },
    { id: 'before', title: 'Saved', figures: true, cell: (one) => figure(one, one.before) },
    { id: 'now', title: 'Now', figures: true, cell: (one) => figure(one, one.now) },
    { id: 'change', title: 'Difference', figures: true, cell: difference },
    {
      id: 'share',
      title: 'In per cent',
      figures: true,
      cell: ({ differs, share }) => (differs && share !== undefined ? percent.format(share) : ''),
    },
  ];
  return (
    <div className="calculators-changed">
      <h4>What changed since “{title}”</h4>
      <p role="status">
        {inputs + results === 0
          ? 'Nothing: inputs and results are as they were saved.'
          : `${counted(inputs, 'input')} and ${counted(results, 'result')} differ.`}
      </p>
      <SimpleTable
        caption={`What changed since “${title}”`}
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={({ side, name }) => `${side} ${name}`}
      />
    </div>
  );
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;
