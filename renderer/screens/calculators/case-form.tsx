import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { caseOf, type SavedCase } from './saved-case.ts';

export interface CaseFormProps {
  readonly build: number;
  /** The case that is renamed, or what a new one keeps. */
  readonly of: RecordRow | Omit<SavedCase, 'title' | 'note'>;
  readonly onClose: () => void;
  /** The number of the case that was saved. */
  readonly onSaved: (id: number | undefined) => void;
}

/** Keeps what is typed with the build under a title, or gives a kept case another title and note. */
export function CaseForm({ build, of, onClose, onSaved }: CaseFormProps) {
  const { today } = useWorkspace();
  const row = 'revision' in of ? of : null;
  const [title, setTitle] = useState(row === null ? '' : caseOf(row).title);
  const [note, setNote] = useState(row === null ? '' : caseOf(row).note);
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, day: string) =>
    api.records.save({
      key,
      on: day,
      kind: 'savedCase',
      build,
      ...('revision' in of
        ? { id: of.id, revision: of.revision, values: { title: title.trim(), note } }
        : { values: { ...of, title: title.trim(), note } }),
    }),
  );
  const submit = async () => {
    if (on === null) return;
    const result = await act.run(on);
    if (result !== null) onSaved(result.made[0]);
  };
  return (
    <FormWindow
      opened
      title={row === null ? 'Save this case to the build' : 'Rename the saved case'}
      submitLabel={row === null ? 'Save the case' : 'Keep it so'}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <TextField
        name="title"
        label="Title"
        description="What sets it apart, such as “stock cam, 98 octane”."
        value={title}
        onChange={setTitle}
        longest={120}
        required
        autoFocus
      />
      <TextField name="note" label="Note" value={note} onChange={setNote} long />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
