import { useState } from 'react';
import type { CheckRow } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { EndWaiverForm, WaiveForm } from '../../parts/waiver-forms.tsx';
import { blockerKindOf } from './check-words.ts';

export interface CheckActProps {
  readonly check: CheckRow;
  readonly build: number;
  readonly onClose: () => void;
}

/** The check as the hoist check names it. */
const standing = (check: CheckRow) =>
  ({
    kind: blockerKindOf(check) ?? 'check failing',
    subject: { kind: 'check', id: check.id },
    title: check.title,
    why: check.says,
  }) as const;

/** Lets a check stand at the hoist check although it fails or lacks a figure, with a reason and a name. */
export const WaiveCheck = ({ check, ...form }: CheckActProps) => <WaiveForm {...form} blocker={standing(check)} />;

/** Makes a waived check block again. */
export const EndCheckWaiver = ({ check, ...form }: CheckActProps) => (
  <EndWaiverForm {...form} waived={standing(check)} />
);

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
