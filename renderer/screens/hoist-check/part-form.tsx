import { useState } from 'react';
import type { Blocker } from '../../../core/contract/gate.ts';
import type { PartAct, PartDetail } from '../../../core/contract/parts.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { Choice, QuantityField, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Caution, Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { TorqueField } from '../../parts/torque-field.tsx';
import { Window } from '../../parts/window.tsx';
import { clearingPartActs } from './doing.ts';
import { type ClearingAct, clearingItems } from './part-items.ts';
import type { ActFormProps } from './pass-form.tsx';

type PartFormProps = ActFormProps & { readonly blocker: Blocker };

const actLabels: Partial<Record<PartAct, { readonly label: string; readonly submit: string }>> = {
  fit: { label: 'Fitted for good', submit: 'Record as fitted' },
  verify: { label: 'Checked for good: final torque, measurement or look', submit: 'Record the check' },
  snug: { label: 'Brought to snug', submit: 'Record as snug' },
  'take off': { label: 'Taken off the engine', submit: 'Record as taken off' },
  'give back': { label: 'Given back to its owner', submit: 'Record as given back' },
};

/** Clears what blocks about a part: fits it, checks it, takes it off or gives it back. */
export function PartForm({ build, blocker, onClose }: PartFormProps) {
  const part = blocker.subject.id;
  const detail = useRead(['parts', build, null, part, 'detail'], () => api.parts.detail({ build, part }));
  if (detail.state === 'ready') {
    const choices = clearingItems(detail.value, blocker.kind, clearingPartActs[blocker.kind] ?? []);
    if (choices[0] !== undefined) {
      return <Fields build={build} blocker={blocker} detail={detail.value} choices={choices} onClose={onClose} />;
    }
  }
  return (
    <Window opened title={blocker.title} onClose={onClose}>
      {detail.state === 'loading' && <Loading label="Reading the part" />}
      {detail.state === 'refused' && <RefusalNote refusal={detail.refusal} onRetry={detail.retry} />}
      {detail.state === 'ready' && (
        <p>Nothing of this part can be moved from here just now. Open the part to see why.</p>
      )}
    </Window>
  );
}

interface FieldsProps extends PartFormProps {
  readonly detail: PartDetail;
  readonly choices: readonly ClearingAct[];
}

function Fields({ build, blocker, detail, choices, onClose }: FieldsProps) {
  const [chosen, setChosen] = useState<PartAct | null>(choices[0]?.act ?? null);
  const choice = choices.find(({ act }) => act === chosen) ?? choices[0];
  const [quantity, setQuantity] = useState<number | null>(choice?.mostMilli ?? null);
  const [torque, setTorque] = useState<number | null>(null);
  const [note, setNote] = useState('');
  const day = useActDay();
  const who = useWho({ label: 'Who did it' });
  const part = blocker.subject.id;
  const act = useAct((key, on: string) =>
    api.parts.act({
      key,
      on,
      build,
      act: choice?.act ?? 'fit',
      items: choice?.lots?.map((lot) => ({ part, ...lot })) ?? [{ part, quantityMilli: quantity ?? 0 }],
      by: who.by,
      note,
      ...(choice?.act === 'verify' ? { torqueMilliNm: torque } : {}),
    }),
  );
  const choose = (next: PartAct | null) => {
    setChosen(next);
    setQuantity(choices.find((one) => one.act === next)?.mostMilli ?? null);
  };
  const { unit } = detail.row;
  return (
    <FormWindow
      opened
      title={blocker.title}
      submitLabel={actLabels[choice?.act ?? 'fit']?.submit ?? 'Record it'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>{blocker.why}</p>
      {choices.length > 1 && (
        <Choice
          name="act"
          label="What was done"
          value={choice?.act ?? null}
          onChange={choose}
          options={choices.map((one) => ({ value: one.act, label: actLabels[one.act]?.label ?? one.act }))}
          required
        />
      )}
      {choice?.lots === undefined && (
        <QuantityField
          name="quantityMilli"
          label="How much"
          value={quantity}
          onChange={setQuantity}
          unit={unit}
          required
        />
      )}
      {choice?.act === 'verify' && (
        <>
          <TorqueField name="torqueMilliNm" label="Torque used, if it was one" value={torque} onChange={setTorque} />
          <Caution>The part maker's manual gives the torque, the limits and the way to check; it governs.</Caution>
        </>
      )}
      {who.field}
      {day.field}
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={2000} />
    </FormWindow>
  );
}
