import { useState } from 'react';
import type { Blocker } from '../../core/contract/gate.ts';
import { api } from '../app/client.ts';
import { useAct } from '../app/data.tsx';
import { useWorkspace } from '../app/workspace.tsx';
import { useActDay, useWho } from './act-day.tsx';
import { DateField } from './date-field.tsx';
import { TextField } from './fields.tsx';
import { FormWindow } from './form.tsx';

/** What stands in the hoist check, or would. */
export type Waivable = Pick<Blocker, 'kind' | 'subject' | 'title'>;

interface WaiverProps {
  readonly build: number;
  readonly onClose: () => void;
}

/** Lets a thing stand although it blocks: with a reason, a name, and if wanted a last day. */
export function WaiveForm({
  build,
  blocker,
  onClose,
}: WaiverProps & { readonly blocker: Waivable & { readonly why: string } }) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const [until, setUntil] = useState<string | null>(null);
  const who = useWho({ name: 'name', label: 'Who answers for it', required: true });
  const { kind, subject } = blocker;
  const act = useAct((key, on: string) => api.gate.waive({ key, on, build, kind, subject, reason, by: who.by, until }));
  return (
    <FormWindow
      opened
      title={`Waive: ${blocker.title}`}
      submitLabel="Waive it"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(today)) !== null && onClose()}
    >
      <p>
        {blocker.why} A waiver lets it stand: it stays listed with your reason, and no longer holds the day. It does not
        make the engine any safer.
      </p>
      <TextField
        name="reason"
        label="Reason"
        value={reason}
        onChange={setReason}
        long
        required
        longest={400}
        autoFocus
      />
      {who.field}
      <DateField
        name="until"
        label="Until"
        description="The last day it may stand; empty means until it is ended."
        value={until}
        onChange={setUntil}
        today={today}
        min={today}
      />
    </FormWindow>
  );
}

/** Makes a waived thing block again. */
export function EndWaiverForm({ build, waived, onClose }: WaiverProps & { readonly waived: Waivable }) {
  const [reason, setReason] = useState('');
  const day = useActDay();
  const { kind, subject } = waived;
  const act = useAct((key, on: string) => api.gate.endWaiver({ key, on, build, kind, subject, reason }));
  return (
    <FormWindow
      opened
      title={`End the waiver: ${waived.title}`}
      submitLabel="End the waiver"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>From then on it blocks again until it is cleared.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
      {day.field}
    </FormWindow>
  );
}
