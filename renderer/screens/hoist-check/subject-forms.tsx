import { useState } from 'react';
import type { Blocker } from '../../../core/contract/gate.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { HoursField } from './number-fields.tsx';
import type { ActFormProps } from './pass-form.tsx';

type SubjectFormProps = ActFormProps & { readonly blocker: Blocker };

/** A job done, signed, with the hours that it took. */
export function JobForm({ blocker, onClose }: SubjectFormProps) {
  const [minutes, setMinutes] = useState<number | null>(null);
  const [note, setNote] = useState('');
  const day = useActDay();
  const who = useWho({ label: 'Who did it' });
  const act = useAct((key, on: string) =>
    api.plan.finishJob({ key, on, jobs: [blocker.subject.id], by: who.by, minutesSpent: minutes, note }),
  );
  return (
    <FormWindow
      opened
      title={`Job done: ${blocker.title}`}
      submitLabel="Record as done"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      {who.field}
      <HoursField
        name="minutesSpent"
        label="Hours spent"
        value={minutes}
        onChange={setMinutes}
        description="Beyond those recorded already; may stay empty."
        autoFocus
      />
      {day.field}
      <TextField name="note" label="Note" value={note} onChange={setNote} long longest={2000} />
    </FormWindow>
  );
}

/** A tool that is here now. */
export function ToolForm({ blocker, onClose }: SubjectFormProps) {
  const day = useActDay();
  const act = useAct((key, on: string) =>
    api.records.toolStanding({ key, on, tool: blocker.subject.id, atHand: true, whereabouts: '', dueOn: null }),
  );
  return (
    <FormWindow
      opened
      title={`At hand: ${blocker.title}`}
      submitLabel="It is at hand"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>{blocker.why}</p>
      {day.field}
    </FormWindow>
  );
}

const other = 'something else';

/** What was decided, by whom and why. */
export function DecisionForm({ build, blocker, onClose }: SubjectFormProps) {
  const list = useRead(['records', build, 'decision'], () => api.records.list({ kind: 'decision', build }));
  const record = list.state === 'ready' ? list.value.find(({ id }) => id === blocker.subject.id) : undefined;
  const given = record?.values['options'];
  const options = Array.isArray(given) ? given.map((option: { text: string }) => option.text) : [];
  const [chosen, setChosen] = useState<string | null>(null);
  const [words, setWords] = useState('');
  const [reason, setReason] = useState('');
  const day = useActDay();
  const who = useWho({ label: 'Who decided' });
  const typing = options.length === 0 || chosen === other;
  const act = useAct((key, on: string) =>
    api.records.decide({
      key,
      on,
      decision: blocker.subject.id,
      choice: typing ? words : chosen,
      by: who.by,
      reason,
    }),
  );
  return (
    <FormWindow
      opened
      title={`Decide: ${blocker.title}`}
      submitLabel="Record the decision"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      {options.length > 0 && (
        <Choice
          name="option"
          label="What was decided"
          value={chosen}
          onChange={setChosen}
          options={[...options, other].map((option) => ({ value: option, label: option }))}
          required
        />
      )}
      {typing && (
        <TextField
          name="choice"
          label="The decision in words"
          value={words}
          onChange={setWords}
          required
          longest={400}
        />
      )}
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} />
      {who.field}
      {day.field}
    </FormWindow>
  );
}
