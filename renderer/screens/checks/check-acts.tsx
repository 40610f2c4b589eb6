import { useState } from 'react';
import type { CheckRow } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { blockerKindOf } from './check-words.ts';

export interface CheckActProps {
  readonly check: CheckRow;
  readonly build: number;
  readonly onClose: () => void;
}

/** Lets a check stand at the hoist check although it fails or lacks a figure, with a reason and a name. */
export function WaiveCheck({ check, build, onClose }: CheckActProps) {
  const { today } = useWorkspace();
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  const [reason, setReason] = useState('');
  const [typedBy, setTypedBy] = useState<string | null>(null);
  const [until, setUntil] = useState<string | null>(null);
  const by = typedBy ?? (settings.state === 'ready' ? settings.value.author : '');
  const kind = blockerKindOf(check) ?? 'check failing';
  const subject = { kind: 'check', id: check.id } as const;
  const act = useAct((key, on: string) => api.gate.waive({ key, on, build, kind, subject, reason, by, until }));
  return (
    <FormWindow
      opened
      title={`Waive: ${check.title}`}
      submitLabel="Waive it"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(today)) !== null && onClose()}
    >
      <p>
        {check.says} A waiver lets it stand: it stays listed with your reason, and no longer holds the day. It does not
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
      <TextField name="by" label="Who answers for it" value={by} onChange={setTypedBy} required longest={80} />
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

/** Makes a waived check block again. */
export function EndCheckWaiver({ check, build, onClose }: CheckActProps) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const kind = blockerKindOf(check) ?? 'check failing';
  const subject = { kind: 'check', id: check.id } as const;
  const act = useAct((key, on: string) => api.gate.endWaiver({ key, on, build, kind, subject, reason }));
  return (
    <FormWindow
      opened
      title={`End the waiver: ${check.title}`}
      submitLabel="End the waiver"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(today)) !== null && onClose()}
    >
      <p>From then on it stands in the hoist check again until it holds.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
    </FormWindow>
  );
}

/** Takes a check off the list; its entries stay in the journal. */
export function RetireCheck({ check, onClose, onDone }: Omit<CheckActProps, 'build'> & { onDone: () => void }) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const act = useAct((key, on: string) => api.records.retire({ key, on, kind: 'check', id: check.id, reason }));
  return (
    <FormWindow
      opened
      title={`Retire: ${check.title}`}
      submitLabel="Retire the check"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(today)) !== null && onDone()}
    >
      <p>It is no longer worked out and no longer stands in the hoist check. The journal keeps it.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
    </FormWindow>
  );
}
