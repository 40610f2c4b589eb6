import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Form } from '../../parts/form.tsx';
import { Caution } from '../../parts/notes.tsx';
import { ConflictNote, differing } from './conflict.tsx';
import { kindSpecs, type ListKind, ofOneBuild, startValues } from './kinds.ts';
import { useNames } from './names.ts';
import { RecordField } from './record-field.tsx';

export interface RecordFormProps {
  readonly kind: ListKind;
  readonly build: number;
  /** The record as it stands now; null for a new one. */
  readonly record: RecordRow | null;
  readonly onDone: (made: number | null) => void;
  readonly onCancel: () => void;
}

/** The full form of one record. Only what was changed is sent, so that two people can work on different fields. */
export function RecordForm({ kind, build, record, onDone, onCancel }: RecordFormProps) {
  const { today } = useWorkspace();
  const queries = useQueryClient();
  const spec = kindSpecs[kind];
  const names = useNames(kind, build);
  const [opened, setOpened] = useState(record);
  const [values, setValues] = useState<Record<string, unknown>>(() => ({
    ...startValues(kind, today),
    ...(record?.values ?? {}),
  }));
  const [on, setOn] = useState<string | null>(today);
  const changed = Object.fromEntries(
    Object.entries(values).filter(
      ([name, value]) => opened === null || JSON.stringify(value) !== JSON.stringify(opened.values[name]),
    ),
  );
  const send = useCallback(
    (key: string, input: { readonly on: string; readonly values: Record<string, unknown> }) =>
      api.records.save({
        key,
        kind,
        ...input,
        ...(ofOneBuild(kind) ? { build } : {}),
        ...(opened === null ? {} : { id: opened.id, revision: opened.revision }),
      }),
    [kind, build, opened],
  );
  const act = useAct(send);
  const submit = async () => {
    // A new record takes the workbook's own beginnings wherever nothing was typed.
    const typed =
      opened === null ? Object.fromEntries(Object.entries(changed).filter(([, value]) => value !== null)) : changed;
    const result = await act.run({ on: on ?? today, values: typed });
    if (result !== null) onDone(opened === null ? (result.made[0] ?? null) : null);
    // A refusal may be about a change made elsewhere: read it, so that both values can be shown.
    else await queries.invalidateQueries({ queryKey: ['records'] });
  };
  const conflict = record !== null && opened !== null && differing(spec.fields, opened, record).length > 0;
  const takeNow = (keepTyped: boolean) => {
    setOpened(record);
    if (!keepTyped) setValues({ ...startValues(kind, today), ...(record?.values ?? {}) });
    // What wasn't touched here is shown as it stands now.
    else setValues({ ...startValues(kind, today), ...(record?.values ?? {}), ...changed });
    act.forget();
  };
  return (
    <Form
      submitLabel={record === null ? `Add the ${spec.one}` : 'Save the changes'}
      busy={act.busy}
      refusal={conflict && act.refusal?.field === 'revision' ? null : act.refusal}
      onSubmit={() => void submit()}
      onCancel={onCancel}
    >
      {conflict && record !== null && opened !== null && (
        <ConflictNote
          fields={spec.fields}
          opened={opened}
          now={record}
          typed={values}
          names={names}
          onKeepTyped={() => takeNow(true)}
          onTakeTheirs={() => takeNow(false)}
        />
      )}
      {spec.fields.map((field, index) => (
        <RecordField
          key={`${field.name} ${opened?.revision ?? 0}`}
          field={field}
          value={values[field.name]}
          onChange={(value) => setValues((before) => ({ ...before, [field.name]: value }))}
          names={names}
          autoFocus={index === 0 && record === null}
        />
      ))}
      {kind === 'boltGroup' && (
        <Caution>
          The maker’s manual gives the torque, the steps and the sequence; where it differs from this, it governs.
        </Caution>
      )}
      <DateField name="day" label="Day of the entry" value={on} onChange={setOn} today={today} required />
    </Form>
  );
}
