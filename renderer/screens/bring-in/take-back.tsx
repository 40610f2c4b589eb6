import { Button } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import { actKey, api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useTask } from '../../app/task.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

/** Undo while the import is the latest act; later it is reversed by entries that say why. */
export function TakeBack({ act, label }: { readonly act: number; readonly label: string }) {
  const { asOf } = useWorkspace();
  const queries = useQueryClient();
  const [asking, setAsking] = useState(false);
  const turns = useRead(['journal', 'undoState'], () => api.journal.undoState());
  const undo = useTask(async () => {
    const done = await api.journal.undo({ key: actKey(), act });
    notifications.show({ message: `Taken back: ${label}` });
    await queries.invalidateQueries();
    return done;
  });
  if (asOf !== null) return null;
  const latest = turns.state === 'ready' && turns.value.undo?.act === act;
  return (
    <>
      <Button loading={undo.busy} onClick={() => (latest ? void undo.run() : setAsking(true))}>
        {latest ? 'Undo' : 'Take it back'} <span className="only-heard">{label}</span>
      </Button>
      {undo.refusal !== null && <RefusalNote refusal={undo.refusal} />}
      {asking && <ReverseWindow act={act} onClose={() => setAsking(false)} />}
    </>
  );
}

function ReverseWindow({ act, onClose }: { readonly act: number; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [reason, setReason] = useState('');
  const send = useCallback(
    (key: string, input: { readonly on: string; readonly reason: string }) =>
      api.journal.reverse({ key, ...input, wholeAct: act }),
    [act],
  );
  const reverse = useAct(send);
  const submit = async () => {
    if ((await reverse.run({ on: on ?? today, reason })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Take the whole import back"
      submitLabel="Take it back"
      blocks
      busy={reverse.busy}
      refusal={reverse.refusal}
      onSubmit={() => void submit()}
      onCancel={onClose}
    >
      <p>
        Other acts came after this import, so it is taken back by equal and opposite entries. It is refused where later
        acts stand on it.
      </p>
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} required autoFocus />
    </FormWindow>
  );
}
