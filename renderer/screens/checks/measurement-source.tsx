import type { CheckSource } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Choice } from '../../parts/fields.tsx';

type Measurement = Extract<CheckSource, { from: 'measurement' }>;
const figures = ['mean', 'least', 'most', 'clearance mean', 'clearance least', 'clearance most'] as const;

export interface MeasurementSourceProps {
  readonly name: string;
  readonly label: string;
  readonly source: Measurement;
  readonly onChange: (source: Measurement) => void;
}

/** A figure of one of the build's measuring sheets. */
export function MeasurementSource({ name, label, source, onChange }: MeasurementSourceProps) {
  const build = useReading()?.build ?? null;
  const read = useRead(
    ['records', build, null, 'measuringSheet'],
    build === null ? null : () => api.records.list({ kind: 'measuringSheet', build }),
  );
  const sheets = read.state === 'ready' ? read.value : [];
  return (
    <>
      <Choice
        name={`${name}.sheet`}
        label={`${label}: measuring sheet`}
        required
        value={source.sheet === 0 ? null : String(source.sheet)}
        options={sheets.map(({ id, values }) => ({ value: String(id), label: String(values['title']) }))}
        onChange={(sheet) => onChange({ ...source, sheet: Number(sheet ?? 0) })}
        {...(read.state === 'ready' && sheets.length === 0
          ? { description: 'There is no measuring sheet yet; make one at the bench first.' }
          : {})}
      />
      <Choice
        name={`${name}.figure`}
        label={`${label}: figure`}
        required
        value={source.figure}
        options={figures.map((value) => ({ value, label: value }))}
        onChange={(figure) => onChange({ ...source, figure: figure ?? 'mean' })}
      />
    </>
  );
}
