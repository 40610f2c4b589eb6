import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { PartValues } from '../../../../core/contract/parts.ts';
import { units } from '../../../../core/units/quantity.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice, QuantityField, TextField, UnitPriceField } from '../../../parts/fields.tsx';
import { Form } from '../../../parts/form.tsx';
import type { PartSectionProps } from './part-in-full.tsx';
import { changedValues, typedValues } from './typed-values.ts';

type Input = Omit<Parameters<typeof api.parts.edit>[0], 'key'>;
const send = (key: string, input: Input) => api.parts.edit({ key, ...input });
const priorities = ['1', '2', '3', '4', '5'].map((value) => ({ value, label: value }));
const records = ['system', 'phase', 'job', 'vendor'] as const;
const recordTitles = { system: 'System', phase: 'Phase', job: 'Job', vendor: 'Vendor' } as const;

/** Everything that is typed about a line, in one form; only what was changed is sent. */
export function EditForm(props: Omit<PartSectionProps, 'closed'> & { readonly onClose: () => void }) {
  const { detail, names, onClose } = props;
  const { today } = useWorkspace();
  // What the form opened with: a later change elsewhere is a conflict, not something to overwrite unseen.
  const [opened] = useState(detail.row);
  const [values, setValues] = useState(() => typedValues(detail.row));
  const [needMilli, setNeedMilli] = useState<number | null>(detail.row.needMilli);
  const [on, setOn] = useState<string | null>(today);
  const act = useAct(send);
  const set = (change: Partial<typeof values>) => setValues({ ...values, ...change });
  const submit = async () => {
    const changed: Partial<PartValues> = changedValues(opened, { ...values, needMilli: needMilli ?? opened.needMilli });
    if (Object.keys(changed).length === 0) {
      onClose();
      return;
    }
    const input: Input = { part: opened.id, revision: opened.revision, on: on ?? today, values: changed };
    if ((await act.run(input)) !== null) onClose();
  };
  const text = (
    name: 'partNumber' | 'maker' | 'link' | 'attention' | 'note',
    label: string,
    longest: number,
    long = false,
  ) => (
    <TextField
      name={name}
      label={label}
      value={values[name]}
      onChange={(next) => set({ [name]: next })}
      longest={longest}
      long={long}
    />
  );
  const flag = (name: 'optional' | 'needsVerification' | 'stretchOnce', label: string) => (
    <Checkbox label={label} checked={values[name]} onChange={(event) => set({ [name]: event.currentTarget.checked })} />
  );
  return (
    <Form submitLabel="Store the changes" onSubmit={submit} onCancel={onClose} busy={act.busy} refusal={act.refusal}>
      <TextField
        name="description"
        label="Description"
        value={values.description}
        onChange={(description) => set({ description })}
        longest={300}
        required
        autoFocus
      />
      {text('partNumber', 'Part number', 80)}
      {text('maker', 'Maker', 80)}
      <QuantityField
        name="needMilli"
        label="Needed"
        value={needMilli}
        onChange={setNeedMilli}
        unit={values.unit}
        zero
        required
      />
      <Choice
        name="unit"
        label="Unit"
        value={values.unit}
        onChange={(unit) => set({ unit: unit ?? 'each' })}
        options={units.map((unit) => ({ value: unit as string, label: unit }))}
        required
      />
      <UnitPriceField
        name="estimateEachE4"
        label="Price each, guessed"
        value={values.estimateEachE4}
        onChange={(estimateEachE4) => set({ estimateEachE4 })}
      />
      {records.map((kind) => (
        <Choice
          key={kind}
          name={kind}
          label={recordTitles[kind]}
          value={values[kind] === null ? null : String(values[kind])}
          onChange={(id) => set({ [kind]: id === null ? null : Number(id) })}
          options={names[kind].options}
        />
      ))}
      <Choice
        name="priority"
        label="Priority"
        description="1 is first of all, 5 can wait."
        value={String(values.priority)}
        onChange={(priority) => set({ priority: Number(priority ?? 3) })}
        options={priorities}
        required
      />
      <DateField
        name="neededBy"
        label="Needed by"
        value={values.neededBy}
        onChange={(neededBy) => set({ neededBy })}
        today={today}
      />
      {flag('optional', 'The build can do without it')}
      {flag('needsVerification', 'Needs a final check once fitted')}
      {flag('stretchOnce', 'Stretches once; never used again')}
      {text('link', 'Link', 600)}
      {text('attention', 'Wants an eye', 2000, true)}
      {text('note', 'Note', 20_000, true)}
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </Form>
  );
}
