import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { moneyText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { useActDay, useWho } from './act-day.tsx';
import { optionsOf } from './value-text.ts';

const other = 'other';

/** A decision is made, by whom and why; or it is opened again. */
export function DecisionForm({ decision, onClose }: { readonly decision: RecordRow; readonly onClose: () => void }) {
  const locale = useLocale();
  const reopens = decision.standing['made'] === true;
  const options = optionsOf(decision.values['options']);
  const [chosen, setChosen] = useState<string | null>(options.length === 0 ? other : null);
  const [own, setOwn] = useState('');
  const [reason, setReason] = useState('');
  const day = useActDay();
  const who = useWho(reopens ? 'Who opens it again' : 'Who decided');
  const choice = chosen === other || chosen === null ? own.trim() : (options[Number(chosen)]?.text ?? '');
  const act = useAct((key, on: string) =>
    api.records.decide({ key, on, decision: decision.id, choice: reopens ? null : choice, by: who.by, reason }),
  );
  return (
    <FormWindow
      opened
      title={String(decision.values['title'] ?? '')}
      submitLabel={reopens ? 'Open it again' : 'Record the decision'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      {!reopens && options.length > 0 && (
        <Choice
          name="chosen"
          label="Decided for"
          value={chosen}
          onChange={setChosen}
          options={[
            ...options.map(({ text, costMinor }, index) => ({
              value: String(index),
              label: costMinor === null ? text : `${text} (${moneyText(costMinor, locale)})`,
            })),
            { value: other, label: 'Something else' },
          ]}
          required
          autoFocus
        />
      )}
      {!reopens && chosen === other && (
        <TextField name="choice" label="What was decided" value={own} onChange={setOwn} longest={400} required />
      )}
      <TextField
        name="reason"
        label={reopens ? 'Why it is open again' : 'Why'}
        value={reason}
        onChange={setReason}
        longest={400}
        required={reopens}
      />
      {who.field}
      {day.field}
    </FormWindow>
  );
}
