import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { options } from './budget-form.tsx';

export interface BudgetLineFormProps {
  readonly row: RecordRow;
  readonly systems: readonly RecordRow[];
  readonly phases: readonly RecordRow[];
  readonly onClose: () => void;
}

const asText = (id: unknown): string | null => (typeof id === 'number' ? String(id) : null);
const asId = (text: string | null): number | null => (text === null ? null : Number(text));

/** Renames a budget line or moves it to another system or phase; its amounts stay. */
export function BudgetLineForm({ row, systems, phases, onClose }: BudgetLineFormProps) {
  const { today } = useWorkspace();
  const [name, setName] = useState(String(row.values['name']));
  const [system, setSystem] = useState(asText(row.values['system']));
  const [phase, setPhase] = useState(asText(row.values['phase']));
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, day: string) =>
    api.records.save({
      key,
      on: day,
      kind: 'budgetLine',
      id: row.id,
      revision: row.revision,
      values: { name, system: asId(system), phase: asId(phase) },
    }),
  );
  const submit = async () => {
    if (on !== null && (await act.run(on)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Rename or move a budget line"
      submitLabel="Keep the line so"
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <TextField name="name" label="Name" value={name} onChange={setName} longest={120} required autoFocus />
      <div className="form-row">
        <Choice name="system" label="System" value={system} onChange={setSystem} options={options(systems)} />
        <Choice name="phase" label="Phase" value={phase} onChange={setPhase} options={options(phases)} />
      </div>
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
