import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { counted } from '../../parts/formats.ts';
import { useActDay } from './act-day.tsx';
import { kindSpecs, type ListKind } from './kinds.ts';
import { nameOf } from './names.ts';

/** Takes a record out of the choices, with the reason; or brings it back. Nothing that stands on it is lost. */
export function RetireForm(props: {
  readonly kind: ListKind;
  readonly record: RecordRow;
  readonly onClose: () => void;
}) {
  const { kind, record, onClose } = props;
  const back = record.retiredOn !== null;
  const [reason, setReason] = useState('');
  const day = useActDay();
  const act = useAct((key, on: string) =>
    api.records.retire({ key, on, kind, id: record.id, reason, ...(back ? { back: true } : {}) }),
  );
  const { one } = kindSpecs[kind];
  return (
    <FormWindow
      opened
      title={`${back ? 'Bring back' : 'Retire'} ${nameOf(record, kind)}`}
      submitLabel={back ? `Bring the ${one} back` : `Retire the ${one}`}
      busy={act.busy}
      refusal={act.refusal}
      blocks={!back}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>
        {back
          ? 'It can be chosen again.'
          : `It can no longer be chosen. ${record.uses === 0 ? 'Nothing stands on it.' : `${counted(record.uses, 'row keeps', 'rows keep')} it as it is.`} It can be brought back.`}
      </p>
      <TextField
        name="reason"
        label="Reason"
        value={reason}
        onChange={setReason}
        longest={400}
        required={!back}
        autoFocus
      />
      {day.field}
    </FormWindow>
  );
}
