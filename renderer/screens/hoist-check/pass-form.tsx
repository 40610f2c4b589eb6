import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

export interface ActFormProps {
  readonly build: number;
  readonly onClose: () => void;
}

/** The day itself: the check as it stood is kept with it. */
export function PassForm({ build, gateName, caution, onClose }: ActFormProps & { gateName: string; caution: string }) {
  const [note, setNote] = useState('');
  const day = useActDay();
  const who = useWho({ label: 'Who says so', required: true });
  const act = useAct((key, on: string) => api.gate.pass({ key, on, build, by: who.by, note }));
  return (
    <FormWindow
      opened
      title={`Record ${gateName}`}
      submitLabel="The engine is in"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>{caution}</p>
      {who.field}
      {day.field}
      <TextField name="note" label="Note" value={note} onChange={setNote} long longest={2000} />
    </FormWindow>
  );
}
