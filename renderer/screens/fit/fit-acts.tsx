import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useWho } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

/** What is accepted, or no longer: a connection or a declared fit. */
export interface AcceptedSubject {
  readonly subject: { readonly kind: 'connection' | 'declared-fit'; readonly id: number };
  readonly title: string;
  readonly says: string;
}

/** Accepts a fit that is wrong, with a reason that stays visible; another port on either side ends it. */
export function AcceptForm({ subject, title, says, onClose }: AcceptedSubject & { readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const who = useWho({ label: 'Who answers for it' });
  const act = useAct((key, on: string) => api.fits.accept({ key, on, subject, reason: reason.trim(), by: who.by }));
  return (
    <FormWindow
      opened
      title={`Accept: ${title}`}
      submitLabel="Accept it all the same"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(today)) !== null && onClose()}
    >
      <p>
        {says} Accepting it writes your reason beside it. It holds for what stands there now, and lapses when that
        changes. It does not make the joint any safer.
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
    </FormWindow>
  );
}

export interface RetireFormProps {
  readonly kind: 'port' | 'connection' | 'declaredFit';
  readonly id: number;
  readonly title: string;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** Takes a port or a fit off the lists; its entries stay in the journal. */
export function RetireForm({ kind, id, title, onClose, onDone }: RetireFormProps) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const act = useAct((key, on: string) => api.records.retire({ key, on, kind, id, reason }));
  return (
    <FormWindow
      opened
      title={`Retire: ${title}`}
      submitLabel="Retire it"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(today)) !== null && onDone()}
    >
      <p>It is no longer judged and no longer stands in the hoist check. The journal keeps it.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
    </FormWindow>
  );
}
