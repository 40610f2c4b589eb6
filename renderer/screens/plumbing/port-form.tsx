import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { usePartNames } from './part-names.ts';
import { PortReading } from './port-reading.tsx';

interface PortFormProps {
  readonly build: number;
  /** What was typed for the line already. */
  readonly designation: string;
  readonly medium: string;
  readonly onClose: () => void;
  readonly onKept: (port: number) => void;
}

/** Keeps a port of a part, or of the engine itself, so that lines can be joined to it. */
export function PortForm({ build, onClose, onKept, ...typed }: PortFormProps) {
  const [name, setName] = useState('');
  const [part, setPart] = useState<number | null>(null);
  const [place, setPlace] = useState('');
  const [designation, setDesignation] = useState(typed.designation);
  const parts = usePartNames();
  const day = useActDay();
  const act = useAct((key, on: string) =>
    api.records.save({
      key,
      on,
      kind: 'port',
      build,
      values: {
        name: name.trim(),
        part,
        place: part === null ? place.trim() : '',
        role: 'fluid',
        medium: typed.medium.trim().slice(0, 80),
        designation: designation.trim(),
      },
    }),
  );
  const submit = async () => {
    const done = await act.run(day.on);
    if (done === null) return;
    const [made] = done.made;
    if (made !== undefined) onKept(made);
    onClose();
  };
  return (
    <FormWindow
      opened
      title="Keep a port"
      submitLabel="Keep the port"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={submit}
    >
      <Choice
        name="part"
        label="Part that it belongs to"
        none="No part line: the engine itself"
        value={part === null ? null : String(part)}
        options={parts.map(({ id, description }) => ({ value: String(id), label: description }))}
        onChange={(chosen) => setPart(chosen === null ? null : Number(chosen))}
      />
      {part === null && (
        <TextField
          name="place"
          label="Where on the engine"
          description="Block, head, sump …"
          value={place}
          onChange={setPlace}
          longest={80}
        />
      )}
      <TextField
        name="name"
        label="Name of the port"
        description="Such as oil drain or feed."
        required
        value={name}
        onChange={setName}
        longest={80}
      />
      <TextField
        name="designation"
        label="How it is made"
        description="As it is written: JIC -10 male, M14x1.5 female, barb 16 mm."
        required
        value={designation}
        onChange={setDesignation}
        longest={120}
      />
      <PortReading text={designation} />
      {day.field}
    </FormWindow>
  );
}
