import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import type { PlanPhase } from './reading.ts';

export interface PhaseFormProps {
  /** The phase to change; null for a new one. */
  readonly phase: PlanPhase | null;
  readonly build: number;
  readonly onClose: () => void;
}

/** A phase written down or changed: its name, what must be true before it counts as passed, its planned days. */
export function PhaseForm({ phase, build, onClose }: PhaseFormProps) {
  const { today } = useWorkspace();
  const records = useRead(['records', build, null, 'phase'], () => api.records.list({ kind: 'phase', build }));
  const rows = records.state === 'ready' ? records.value : null;
  const [name, setName] = useState(phase?.name ?? '');
  const [gate, setGate] = useState(phase?.gate ?? '');
  const [plannedStart, setStart] = useState(phase?.plannedStart ?? null);
  const [plannedEnd, setEnd] = useState(phase?.plannedEnd ?? null);
  const [on, setOn] = useState<string | null>(today);
  // The revision that the window was opened on: what was changed meanwhile elsewhere is refused, not overwritten.
  const [revision, setRevision] = useState<number | null>(null);
  const known = rows?.find(({ id }) => id === phase?.id);
  if (revision === null && known !== undefined) setRevision(known.revision);
  const act = useAct((key, day: string) => {
    const values = { name, gate, plannedStart, plannedEnd };
    const last = Math.max(0, ...(rows ?? []).map((row) => Number(row.values['sort'] ?? 0) + 10));
    return api.records.save({
      key,
      on: day,
      kind: 'phase',
      build,
      ...(phase?.id == null
        ? { values: { ...values, sort: last } }
        : { id: phase.id, revision: revision ?? 0, values }),
    });
  });
  const submit = async () => {
    if (on !== null && rows !== null && (await act.run(on)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={phase === null ? 'Add a phase' : `Edit: ${phase.name}`}
      submitLabel={phase === null ? 'Add the phase' : 'Keep the changes'}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy || rows === null}
      refusal={act.refusal}
    >
      <TextField name="name" label="Name" value={name} onChange={setName} longest={80} required autoFocus />
      <TextField
        name="gate"
        label="Passed when"
        description="What must be true before the phase counts as passed."
        value={gate}
        onChange={setGate}
        longest={400}
        long
      />
      <div className="form-row">
        <DateField name="plannedStart" label="Planned start" value={plannedStart} onChange={setStart} today={today} />
        <DateField name="plannedEnd" label="Planned end" value={plannedEnd} onChange={setEnd} today={today} />
      </div>
      <DateField name="on" label="Day of this entry" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
