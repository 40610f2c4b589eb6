import { Radio } from '@mantine/core';
import { useState } from 'react';
import type { JournalRow } from '../../../core/contract/journal.ts';
import type { RefusalDetail } from '../../../core/refusal.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

type Scope = 'entry' | 'act';

/** Entries that stand on what was to be taken back: they have to go first. */
export function laterEntries(detail: RefusalDetail | undefined): readonly number[] {
  const named = [detail?.['laterEntries'], detail?.['entry'], detail?.['reversedBy']].flat();
  return named.filter((seq): seq is number => typeof seq === 'number');
}

/** Takes an entry, or the whole act that it belongs to, back by an opposite entry. Nothing is erased. */
export function TakeBack({ row, onClose }: { readonly row: JournalRow; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [scope, setScope] = useState<Scope>('entry');
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, day: string) =>
    api.journal.reverse({ key, on: day, reason, ...(scope === 'entry' ? { entry: row.seq } : { wholeAct: row.act }) }),
  );
  const later = laterEntries(act.refusal?.detail);
  return (
    <FormWindow
      opened
      title={`Take back entry ${row.seq}`}
      submitLabel={scope === 'entry' ? 'Take the entry back' : 'Take the whole act back'}
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(on ?? today)) !== null && onClose()}
    >
      <p>
        <strong>{row.text}</strong>
      </p>
      <p>An opposite entry is written; both stay in the journal, so what was known then can still be read.</p>
      <Radio.Group
        label="What to take back"
        value={scope}
        onChange={(chosen) => setScope(chosen === 'act' ? 'act' : 'entry')}
      >
        <div className="journal-scope">
          <Radio size="md" value="entry" label={`This entry, number ${row.seq}`} />
          <Radio size="md" value="act" label={`All entries of its act: ${row.actLabel}`} />
        </div>
      </Radio.Group>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} required longest={400} autoFocus />
      <DateField name="on" label="Day of the correction" value={on} onChange={setOn} today={today} required />
      {later.length > 0 && (
        <p>
          Look at these entries first:{' '}
          {later.map((seq, index) => (
            <span key={seq}>
              {index > 0 && ', '}
              <Link to="/journal" params={{ entry: seq }} onClick={onClose}>
                entry {seq}
              </Link>
            </span>
          ))}
        </p>
      )}
    </FormWindow>
  );
}
