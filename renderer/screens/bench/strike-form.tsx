import { useState } from 'react';
import type { SheetView } from '../../../core/contract/bench.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

interface StrikeFormProps {
  readonly sheet: SheetView;
  readonly place: string;
  readonly name: string;
  readonly onClose: () => void;
}

/** Takes one reading off the sheet; it stays in the journal with the reason. */
export function StrikeForm({ sheet, place, name, onClose }: StrikeFormProps) {
  const [reason, setReason] = useState('');
  const day = useActDay();
  const act = useAct((key, on: string) => api.bench.strike({ key, on, sheet: sheet.id, place, name, reason }));
  return (
    <FormWindow
      opened
      title={`Strike the reading of ${place}, ${name}`}
      submitLabel="Strike it"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>The place counts as not measured again. The reading stays in the journal, with the reason.</p>
      <TextField name="reason" label="Why" value={reason} onChange={setReason} longest={400} required />
      {day.field}
    </FormWindow>
  );
}
