import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useReading, useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import type { Names } from '../names.ts';
import { type ActTarget, targetWords } from './act-target.ts';
import { LineList } from './act-window.tsx';

type Input = Omit<Parameters<typeof api.orders.receiveParts>[0], 'key'>;
const send = (key: string, input: Input) => api.orders.receiveParts({ key, ...input });

/** Receives all that is still on the way for the lines, whatever orders it is on. */
export function ReceiveWindow(props: {
  readonly target: ActTarget;
  readonly names: Names;
  readonly onClose: () => void;
}) {
  const { target, names, onClose } = props;
  const { today } = useWorkspace();
  const reading = useReading();
  const [bin, setBin] = useState<string | null>(null);
  const [on, setOn] = useState<string | null>(today);
  const act = useAct(send);
  const submit = async () => {
    if (reading === null) return;
    const input: Input = {
      build: reading.build,
      on: on ?? today,
      parts: target.rows.map(({ id }) => id),
      bin: bin === null ? null : Number(bin),
    };
    if ((await act.run(input)) !== null) onClose();
  };
  const words = `Receive all outstanding: ${targetWords(target)}`;
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
      <p>
        Everything still on order or on the way is taken as arrived and good. Check a box with wrong or missing units
        against its order instead.
      </p>
      <Choice name="bin" label="Bin" value={bin} onChange={setBin} options={names.bin.options} none="No bin yet" />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      <LineList target={target} />
    </FormWindow>
  );
}
