import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import { calculators, findCalculator } from '../../../core/calculators/index.ts';
import type { ChecksView } from '../../../core/contract/checks.ts';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { type Draft, draftFor, draftOf, emptyDraft } from './draft.ts';
import { LimitFields } from './limit-fields.tsx';
import { SourceField } from './source-field.tsx';
import { TriedOut } from './tried-out.tsx';

export interface CheckFormProps {
  readonly view: ChecksView;
  readonly build: number;
  /** The check that is changed; a new one when left out. */
  readonly kept?: RecordRow;
  readonly onClose: () => void;
}

type Input = Omit<Parameters<typeof api.records.save>[0], 'key'>;

/** Makes a check from any calculator, or changes one; the verdict stands below before anything is kept. */
export function CheckForm({ view, build, kept, onClose }: CheckFormProps) {
  const { today } = useWorkspace();
  const [draft, setDraft] = useState<Draft>(() => (kept === undefined ? emptyDraft : draftOf(kept)));
  const act = useAct((key, input: Input) => api.records.save({ key, ...input }));
  const calculator = findCalculator(draft.calculator);
  const set = (change: Partial<Draft>) => setDraft({ ...draft, ...change });
  const save = async () => {
    const { title, calculator: id, inputs, output, limit, beforeGate, note } = draft;
    const values = { title, calculator: id, inputs, output, limit, beforeGate, note };
    const done = await act.run(
      kept === undefined
        ? { on: today, kind: 'check', build, values: { ...values, system: null, shipped: '' } }
        : { on: today, kind: 'check', build, id: kept.id, revision: kept.revision, values },
    );
    if (done === null) return;
    onClose();
    const [made] = done.made;
    if (made !== undefined) navigate('/checks', { check: made });
  };
  const bind = (name: string, source: Draft['inputs'][string] | undefined) => {
    const { [name]: _former, ...others } = draft.inputs;
    set({ inputs: source === undefined ? others : { ...others, [name]: source } });
  };
  return (
    <FormWindow
      opened
      as="drawer"
      title={kept === undefined ? 'Make a check' : `Change: ${String(kept.values['title'])}`}
      submitLabel={kept === undefined ? 'Keep the check' : 'Store the changes'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={save}
    >
      <Choice
        name="calculator"
        label="Calculator"
        required
        disabled={kept !== undefined}
        value={draft.calculator === '' ? null : draft.calculator}
        options={calculators.map(({ id, title }) => ({ value: id, label: `${id} ${title}` }))}
        onChange={(id) => {
          const chosen = findCalculator(id ?? '');
          if (chosen !== undefined) setDraft(draftFor(draft, chosen));
        }}
      />
      {calculator !== undefined && (
        <>
          <TextField
            name="title"
            label="Name of the check"
            required
            longest={120}
            value={draft.title}
            onChange={(title) => set({ title })}
          />
          <p className="checks-says">{calculator.about}</p>
          {Object.entries(calculator.inputs).map(([name, input]) => (
            <SourceField
              key={`${calculator.id} ${name}`}
              name={name}
              input={input}
              source={draft.inputs[name]}
              targets={view.targets}
              onChange={(source) => bind(name, source)}
            />
          ))}
          <LimitFields calculator={calculator} draft={draft} onChange={set} />
          <Checkbox
            label="Stands in the hoist check until it holds"
            checked={draft.beforeGate}
            onChange={(event) => set({ beforeGate: event.currentTarget.checked })}
          />
          <TextField
            name="note"
            label="Note"
            long
            longest={2000}
            value={draft.note}
            onChange={(note) => set({ note })}
          />
          <TriedOut draft={draft} />
        </>
      )}
    </FormWindow>
  );
}
