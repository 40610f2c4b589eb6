import { Button } from '@mantine/core';
import { useState } from 'react';
import { expansionCoefficients } from '../../../core/calculators/g/expansion-table.ts';
import type { RecordRow, RecordValues } from '../../../core/contract/records.ts';
import { dimensions } from '../../../core/units/dimensions.ts';
import { unitsOf } from '../../../core/units/measure.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { Window } from '../../parts/window.tsx';
import { FitField } from './fit-field.tsx';
import { FormEnd } from './form-end.tsx';
import { linesOf } from './lines-text.ts';
import { NumberField } from './number-field.tsx';

type Sheet = RecordValues['measuringSheet'];

const noLimits = { least: null, most: null, source: '' };
const blank = (unit: string): Sheet => ({
  title: '',
  quantity: 'other',
  part: null,
  job: null,
  system: null,
  places: [],
  readings: ['reading'],
  unit,
  instrument: '',
  resolution: null,
  uncertainty: null,
  expansionPpm: null,
  limits: noLimits,
  less: null,
  clearance: noLimits,
  fit: null,
  beforeGate: true,
  note: '',
});

const quantities = ['journal', 'bore', 'ring gap', 'clearance', 'end float', 'lash', 'volume', 'other'] as const;
const measured = ['length', 'volume', 'angle', 'mass', 'torque', 'force', 'pressureDifference'] as const;
const unitOptions = measured.flatMap((dimension) =>
  unitsOf(dimension)
    .filter((unit) => unit !== '-')
    .map((unit) => ({ value: unit, label: `${unit}, ${dimensions[dimension].name.replace(/^an? /, '')}` })),
);
const distinctUnits = unitOptions.filter(
  ({ value }, index, all) => all.findIndex((one) => one.value === value) === index,
);

const materials = expansionCoefficients.map(({ material, coefficients }) => {
  const ppm = Number(((coefficients.reduce((sum, one) => sum + one, 0) / coefficients.length) * 1e6).toPrecision(3));
  return { value: String(ppm), label: `${material}, ${ppm}` };
});

/** Names that sheets of an engine usually need. */
const usualPlaces: readonly (readonly [label: string, places: readonly string[]])[] = [
  ['4 cylinders', [1, 2, 3, 4].map((number) => `Cylinder ${number}`)],
  ['6 cylinders', [1, 2, 3, 4, 5, 6].map((number) => `Cylinder ${number}`)],
  ['8 cylinders', [1, 2, 3, 4, 5, 6, 7, 8].map((number) => `Cylinder ${number}`)],
  ['5 mains', [1, 2, 3, 4, 5].map((number) => `Main ${number}`)],
  ['7 mains', [1, 2, 3, 4, 5, 6, 7].map((number) => `Main ${number}`)],
];
const boreReadings = ['top thrust', 'top across', 'middle thrust', 'middle across', 'bottom thrust', 'bottom across'];

interface SheetFormProps {
  /** Null for a new sheet. */
  readonly id: number | null;
  readonly onClose: () => void;
}

/** A new measuring sheet, or a change of one. */
export function SheetForm({ id, onClose }: SheetFormProps) {
  const reading = useReading();
  const { units } = useLocale();
  const build = reading?.build ?? 0;
  const read = useRead(
    ['records', build, 'measuringSheet'],
    reading === null ? null : () => api.records.list({ kind: 'measuringSheet', build }),
  );
  const jobs = useRead(
    ['records', build, 'job'],
    reading === null ? null : () => api.records.list({ kind: 'job', build }),
  );
  const row = read.state === 'ready' ? read.value.find((one) => one.id === id) : undefined;
  if (read.state === 'ready' && jobs.state === 'ready' && (id === null || row !== undefined)) {
    return (
      <Fields
        {...(row === undefined ? {} : { row })}
        values={row === undefined ? blank(units === 'inch' ? 'in' : 'mm') : (row.values as unknown as Sheet)}
        build={build}
        others={read.value.filter((one) => one.id !== id)}
        jobs={jobs.value}
        onClose={onClose}
      />
    );
  }
  const refused = read.state === 'refused' ? read : jobs.state === 'refused' ? jobs : null;
  return (
    <Window opened title="Measuring sheet" onClose={onClose}>
      {refused === null ? <p>Reading it.</p> : <RefusalNote refusal={refused.refusal} onRetry={refused.retry} />}
    </Window>
  );
}

interface FieldsProps {
  readonly row?: RecordRow;
  readonly values: Sheet;
  readonly build: number;
  readonly others: readonly RecordRow[];
  readonly jobs: readonly RecordRow[];
  readonly onClose: () => void;
}

function Fields({ row, values: first, build, others, jobs, onClose }: FieldsProps) {
  const { today } = useWorkspace();
  const [values, setValues] = useState(first);
  const [places, setPlaces] = useState(first.places.join('\n'));
  const [names, setNames] = useState(first.readings.join('\n'));
  const set = (more: Partial<Sheet>) => setValues((now) => ({ ...now, ...more }));
  const told: Sheet = { ...values, places: linesOf(places), readings: linesOf(names) };
  const twice = [...told.places, ...told.readings].find(
    (_, index) =>
      (index < told.places.length && told.places.indexOf(told.places[index] ?? '') !== index) ||
      (index >= told.places.length &&
        told.readings.indexOf(told.readings[index - told.places.length] ?? '') !== index - told.places.length),
  );
  const save = useAct((key) =>
    api.records.save({
      key,
      on: today,
      kind: 'measuringSheet',
      build,
      values: told,
      ...(row === undefined ? {} : { id: row.id, revision: row.revision }),
    }),
  );
  const submit = async () => {
    if (twice !== undefined) return;
    const done = await save.run(undefined);
    if (done === null) return;
    onClose();
    const made = done.made[0];
    if (row === undefined && made !== undefined) navigate('/bench', { sheet: made });
  };
  const { unit } = values;
  return (
    <FormWindow
      opened
      as="drawer"
      title={row === undefined ? 'New measuring sheet' : `Measuring sheet: ${first.title}`}
      submitLabel={row === undefined ? 'Make the sheet' : 'Save the sheet'}
      busy={save.busy}
      refusal={save.refusal}
      onCancel={onClose}
      onSubmit={submit}
    >
      <TextField
        name="title"
        label="What is measured"
        value={values.title}
        onChange={(title) => set({ title })}
        longest={120}
        required
      />
      <div className="bench-fields">
        <Choice
          name="quantity"
          label="Kind"
          value={values.quantity}
          onChange={(quantity) => set({ quantity: quantity ?? 'other' })}
          options={quantities.map((value) => ({ value, label: value }))}
          required
        />
        <Choice
          name="unit"
          label="Unit"
          value={unit}
          onChange={(chosen) => set({ unit: chosen ?? 'mm' })}
          options={distinctUnits}
          required
        />
      </div>
      <TextField
        name="places"
        label="Places, one a line"
        value={places}
        onChange={setPlaces}
        long
        required
        {...(twice === undefined ? {} : { description: `“${twice}” stands twice; each name once.` })}
      />
      <div className="bench-buttons">
        {usualPlaces.map(([label, list]) => (
          <Button key={label} size="compact" onClick={() => setPlaces(list.join('\n'))}>
            {label}
          </Button>
        ))}
      </div>
      <TextField
        name="readings"
        label="Readings at each place, one a line"
        description="Readings of one section begin alike, such as “top thrust” and “top across”: so taper and out-of-round are told apart."
        value={names}
        onChange={setNames}
        long
        required
      />
      <div className="bench-buttons">
        <Button size="compact" onClick={() => setNames(boreReadings.join('\n'))}>
          Top, middle, bottom, both ways
        </Button>
        <Button size="compact" onClick={() => setNames('reading')}>
          One reading
        </Button>
      </div>
      <div className="bench-fields">
        <NumberField
          name="limits.least"
          label="Least"
          value={values.limits.least}
          onChange={(least) => set({ limits: { ...values.limits, least } })}
          suffix={unit}
          negative
        />
        <NumberField
          name="limits.most"
          label="Most"
          value={values.limits.most}
          onChange={(most) => set({ limits: { ...values.limits, most } })}
          suffix={unit}
          negative
        />
        <TextField
          name="limits.source"
          label="Limits from"
          value={values.limits.source}
          onChange={(source) => set({ limits: { ...values.limits, source } })}
          longest={200}
        />
      </div>
      <div className="bench-fields">
        <TextField
          name="instrument"
          label="Instrument"
          value={values.instrument}
          onChange={(instrument) => set({ instrument })}
          longest={120}
        />
        <NumberField
          name="resolution"
          label="Its smallest step"
          value={values.resolution}
          onChange={(resolution) => set({ resolution })}
          suffix={unit}
        />
        <NumberField
          name="uncertainty"
          label="Its uncertainty (±, k = 2)"
          value={values.uncertainty}
          onChange={(uncertainty) => set({ uncertainty })}
          suffix={unit}
        />
      </div>
      <div className="bench-fields">
        <Choice
          name="material"
          label="Brought to 20 °C for"
          value={
            materials.some(({ value }) => value === String(values.expansionPpm)) ? String(values.expansionPpm) : null
          }
          onChange={(ppm) => set({ expansionPpm: ppm === null ? null : Number(ppm) })}
          options={materials}
          none="no correction, or typed beside"
        />
        <NumberField
          name="expansionPpm"
          label="Growth, millionths a kelvin"
          value={values.expansionPpm}
          onChange={(expansionPpm) => set({ expansionPpm })}
        />
      </div>
      <Choice
        name="less"
        label="Clearance over"
        description="The sheet of what goes inside: its mean is taken off, place by place."
        value={values.less === null ? null : String(values.less)}
        onChange={(chosen) => set({ less: chosen === null ? null : Number(chosen) })}
        options={others.map(({ id, values: other }) => ({ value: String(id), label: String(other['title']) }))}
        none="No clearance"
      />
      {values.less !== null && (
        <div className="bench-fields">
          <NumberField
            name="clearance.least"
            label="Least clearance"
            value={values.clearance.least}
            onChange={(least) => set({ clearance: { ...values.clearance, least } })}
            suffix={unit}
            negative
          />
          <NumberField
            name="clearance.most"
            label="Most clearance"
            value={values.clearance.most}
            onChange={(most) => set({ clearance: { ...values.clearance, most } })}
            suffix={unit}
            negative
          />
          <TextField
            name="clearance.source"
            label="Limits from"
            value={values.clearance.source}
            onChange={(source) => set({ clearance: { ...values.clearance, source } })}
            longest={200}
          />
        </div>
      )}
      <FitField fit={values.fit} places={told.places} unit={unit} onChange={(fit) => set({ fit })} />
      <Choice
        name="job"
        label="Job"
        value={values.job === null ? null : String(values.job)}
        onChange={(chosen) => set({ job: chosen === null ? null : Number(chosen) })}
        options={jobs.map(({ id, values: job }) => ({ value: String(id), label: String(job['title']) }))}
      />
      <FormEnd
        values={values}
        onChange={set}
        {...(row === undefined ? {} : { kept: { kind: 'measuringSheet', id: row.id } })}
        onGone={onClose}
      />
    </FormWindow>
  );
}
