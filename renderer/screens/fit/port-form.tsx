import { Button } from '@mantine/core';
import { useState } from 'react';
import type { PortRow } from '../../../core/contract/fits.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { portOf } from './fit-address.ts';
import { mediumChoices, roleChoices } from './fit-words.ts';
import { usePartChoices } from './part-lines.ts';
import { PortField } from './port-field.tsx';
import { PortPicker } from './port-picker.tsx';

export interface PortFormProps {
  readonly build: number;
  /** The port that is changed; a new one when left out. */
  readonly kept?: PortRow;
  /** The part line of a new port. */
  readonly part?: number | null;
  readonly onClose: () => void;
}

type Input = Omit<Parameters<typeof api.records.save>[0], 'key'>;

const start = ({ kept, part = null }: PortFormProps) => ({
  part: kept === undefined ? part : kept.part,
  place: kept?.place ?? '',
  name: kept?.name ?? '',
  role: kept?.role ?? ('fluid' as const),
  medium: kept?.medium ?? '',
  designation: kept?.designation ?? '',
  note: kept?.note ?? '',
});

/** Makes a port of a part line or of the engine, or changes one; how it is read stands below while it is typed. */
export function PortForm(props: PortFormProps) {
  const { build, kept, onClose } = props;
  const { today } = useWorkspace();
  const parts = usePartChoices();
  const [draft, setDraft] = useState(() => start(props));
  const [picking, setPicking] = useState(false);
  const set = (change: Partial<typeof draft>) => setDraft((now) => ({ ...now, ...change }));
  const act = useAct((key, input: Input) => api.records.save({ key, ...input }));
  const reading = portOf(draft.designation, draft.role);
  const save = async () => {
    const values = { ...draft, name: draft.name.trim(), place: draft.part === null ? draft.place.trim() : '' };
    const done = await act.run({
      on: today,
      kind: 'port',
      build,
      values,
      ...(kept === undefined ? {} : { id: kept.id, revision: kept.revision }),
    });
    if (done === null) return;
    onClose();
    const [made] = done.made;
    if (kept === undefined && made !== undefined) navigate('/fit', { port: made });
  };
  return (
    <FormWindow
      opened
      as="drawer"
      title={kept === undefined ? 'Add a port' : `Change: ${kept.name}`}
      submitLabel={kept === undefined ? 'Keep the port' : 'Store the changes'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={save}
    >
      <Choice
        name="part"
        label="Whose port it is"
        none="The engine’s own"
        value={draft.part === null ? null : String(draft.part)}
        options={parts}
        onChange={(part) => set({ part: part === null ? null : Number(part) })}
      />
      {draft.part === null && (
        <TextField
          name="place"
          label="Place on the engine"
          description="Block, head, sump, timing cover…"
          value={draft.place}
          onChange={(place) => set({ place })}
          longest={80}
          required
        />
      )}
      <TextField
        name="name"
        label="Name of the port"
        placeholder="oil drain"
        value={draft.name}
        onChange={(name) => set({ name })}
        longest={80}
        required
      />
      <Choice
        name="role"
        label="What the joint is for"
        required
        value={draft.role}
        options={roleChoices}
        onChange={(role) => role !== null && set({ role })}
      />
      <Choice
        name="medium"
        label="What flows through it"
        value={draft.medium === '' ? null : draft.medium}
        options={mediumChoices(draft.medium)}
        none="Not said"
        onChange={(medium) => set({ medium: medium ?? '' })}
      />
      <PortField
        name="designation"
        label="Thread or end"
        placeholder="M14x1.5 male"
        value={draft.designation}
        reading={reading}
        onChange={(designation) => set({ designation })}
        asks="Is it outside or inside?"
        required
      />
      <div>
        <Button variant="subtle" aria-expanded={picking} onClick={() => setPicking(!picking)}>
          {picking ? 'Close the picker' : 'I don’t know how to write it…'}
        </Button>
      </div>
      {picking && <PortPicker onPick={(designation) => set({ designation })} />}
      <TextField name="note" label="Note" long longest={2000} value={draft.note} onChange={(note) => set({ note })} />
    </FormWindow>
  );
}
