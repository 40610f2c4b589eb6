import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import type { Names } from '../names.ts';
import { type ActTarget, targetWords } from './act-target.ts';
import { LineList } from './act-window.tsx';

export const changeable = ['system', 'phase', 'vendor', 'job', 'priority', 'neededBy'] as const;
export type Changeable = (typeof changeable)[number];

export const changeWords: Readonly<Record<Changeable, string>> = {
  system: 'Change system',
  phase: 'Change phase',
  vendor: 'Change vendor',
  job: 'Change job',
  priority: 'Change priority',
  neededBy: 'Change needed-by day',
};

type Input = Omit<Parameters<typeof api.parts.editMany>[0], 'key'>;
const send = (key: string, input: Input) => api.parts.editMany({ key, ...input });
const priorities = ['1', '2', '3', '4', '5'].map((value) => ({
  value,
  label: value === '1' ? '1, first of all' : value === '5' ? '5, can wait' : value,
}));

/** The same change to many lines. */
export function ChangeWindow(props: {
  readonly what: Changeable;
  readonly target: ActTarget;
  readonly names: Names;
  readonly onClose: () => void;
}) {
  const { what, target, names, onClose } = props;
  const { today } = useWorkspace();
  const [chosen, setChosen] = useState<string | null>(null);
  const [on, setOn] = useState<string | null>(today);
  const act = useAct(send);
  const value = what === 'neededBy' || chosen === null ? chosen : Number(chosen);
  const submit = async () => {
    const input: Input = { on: on ?? today, parts: target.rows.map(({ id }) => id), values: { [what]: value } };
    if ((await act.run(input)) !== null) onClose();
  };
  const words = `${changeWords[what]}: ${targetWords(target)}`;
  return (
    <FormWindow
      opened
      title={words}
      submitLabel={words}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      {what === 'neededBy' ? (
        <DateField name={what} label="Needed by" value={chosen} onChange={setChosen} today={today} autoFocus />
      ) : (
        <Choice
          name={what}
          label={what === 'priority' ? 'Priority' : `New ${what}`}
          value={chosen}
          onChange={setChosen}
          options={what === 'priority' ? priorities : names[what].options}
          required={what === 'priority'}
          autoFocus
        />
      )}
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      <LineList target={target} />
    </FormWindow>
  );
}
