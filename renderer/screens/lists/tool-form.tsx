import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useActDay } from './act-day.tsx';

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** A tool came to hand, or went away: where it is and when it is due. */
export function ToolForm({ tool, onClose }: { readonly tool: RecordRow; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const atHand = tool.standing['atHand'] !== true;
  const [whereabouts, setWhereabouts] = useState(text(tool.values['whereabouts']));
  const [dueOn, setDueOn] = useState<string | null>(text(tool.values['dueOn']) || null);
  const day = useActDay();
  const act = useAct((key, on: string) =>
    api.records.toolStanding({ key, on, tool: tool.id, atHand, whereabouts: whereabouts.trim(), dueOn }),
  );
  const name = text(tool.values['name']);
  return (
    <FormWindow
      opened
      title={atHand ? `${name} is at hand` : `${name} goes away`}
      submitLabel={atHand ? 'Record as at hand' : 'Record as away'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <TextField
        name="whereabouts"
        label={atHand ? 'Where it is kept' : 'Where it is'}
        value={whereabouts}
        onChange={setWhereabouts}
        longest={200}
        autoFocus
      />
      <DateField
        name="dueOn"
        label={atHand ? 'Due to be given back' : 'Due back here'}
        value={dueOn}
        onChange={setDueOn}
        today={today}
      />
      {day.field}
    </FormWindow>
  );
}
