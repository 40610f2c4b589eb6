import { useState } from 'react';
import type { Blocker } from '../../../core/contract/gate.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import type { Waived } from './doing.ts';

export interface ActFormProps {
  readonly build: number;
  readonly onClose: () => void;
}

/** Lets a thing stand although it blocks: with a reason, a name, and if wanted a last day. */
export function WaiveForm({ build, blocker, onClose }: ActFormProps & { readonly blocker: Blocker }) {
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
export function EndWaiverForm({ build, waived, onClose }: ActFormProps & { readonly waived: Waived }) {
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

/** The day itself: the check as it stood is kept with it. */
export function PassForm({ build, gateName, caution, onClose }: ActFormProps & { gateName: string; caution: string }) {
  const [note, setNote] = useState('');
  const day = useActDay();
  const who = useWho({ label: 'Who says so', required: true });
  const act = useAct((key, on: string) => api.gate.pass({ key, on, build, by: who.by, note }));
  return (
    <FormWindow
      opened
      title={`Record ${gateName}`}
      submitLabel="The engine is in"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>{caution}</p>
      {who.field}
      {day.field}
      <TextField name="note" label="Note" value={note} onChange={setNote} long longest={2000} />
    </FormWindow>
  );
}
