import { Button, Checkbox } from '@mantine/core';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { TextField } from '../../parts/fields.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

interface FormEndProps {
  readonly values: { readonly beforeGate: boolean; readonly note: string };
  readonly onChange: (more: { beforeGate?: boolean; note?: string }) => void;
  /** The sheet as it is kept; nothing for a new one. */
  readonly kept?: { readonly kind: 'measuringSheet' | 'boltGroup'; readonly id: number };
  readonly onGone: () => void;
}

/** What every sheet's form ends with: whether it stands before the hoist check, its note, and taking it off the bench. */
export function FormEnd({ values, onChange, kept, onGone }: FormEndProps) {
  return (
    <>
      <Checkbox
        label="Stands before the hoist check"
        checked={values.beforeGate}
        onChange={({ currentTarget }) => onChange({ beforeGate: currentTarget.checked })}
      />
      <TextField
        name="note"
        label="Note"
        value={values.note}
        onChange={(note) => onChange({ note })}
        long
        longest={20_000}
      />
      {kept !== undefined && <TakeOff kept={kept} onGone={onGone} />}
    </>
  );
}

function TakeOff({ kept, onGone }: { kept: NonNullable<FormEndProps['kept']>; onGone: () => void }) {
  const { today } = useWorkspace();
  const retire = useAct((key) => api.records.retire({ key, on: today, ...kept, reason: 'Taken off the bench' }));
  return (
    <>
      <Button
        variant="subtle"
        color="blocks"
        loading={retire.busy}
        onClick={async () => {
          if ((await retire.run(undefined)) === null) return;
          onGone();
          navigate('/bench');
        }}
      >
        Take this sheet off the bench
      </Button>
      {retire.refusal !== null && <RefusalNote refusal={retire.refusal} />}
    </>
  );
}
