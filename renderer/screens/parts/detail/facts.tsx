import { ActionIcon, Button } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { PartDetail, PartValues } from '../../../../core/contract/parts.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import type { PartSectionProps } from './part-in-full.tsx';

type Fact = PartDetail['facts'][number];
type Input = Omit<Parameters<typeof api.parts.edit>[0], 'key'>;
const send = (key: string, input: Input) => api.parts.edit({ key, ...input });

/** What is known about the part: thread, flow, length, each with its unit. */
export function Facts({ detail, closed }: PartSectionProps) {
  const { row, facts } = detail;
  const { today } = useWorkspace();
  const [editing, setEditing] = useState<number | 'new' | null>(null);
  const act = useAct(send);
  const store = (next: PartValues['facts']) =>
    act.run({ part: row.id, revision: row.revision, on: today, values: { facts: next } });
  return (
    <section aria-label="Facts">
      <h3>Facts</h3>
      {facts.length === 0 && <p>Nothing is noted yet: a thread, a flow, a length that other parts must fit.</p>}
      <dl className="part-figures">
        {facts.map(({ key, value, unit }, at) => (
          <div key={`${key} ${value}`}>
            <dt>{key}</dt>
            <dd>
              <span className="figure">{unit === '' ? value : `${value} ${unit}`}</span>
              {closed === null && (
                <>
                  <ActionIcon aria-label={`Change ${key}`} onClick={() => setEditing(at)}>
                    <IconPencil aria-hidden size="1.1em" />
                  </ActionIcon>
                  <ActionIcon aria-label={`Remove ${key}`} onClick={() => void store(facts.toSpliced(at, 1))}>
                    <IconTrash aria-hidden size="1.1em" />
                  </ActionIcon>
                </>
              )}
            </dd>
          </div>
        ))}
      </dl>
      {act.refusal !== null && editing === null && <RefusalNote refusal={act.refusal} />}
      {closed === null && !row.dropped && <Button onClick={() => setEditing('new')}>Add a fact…</Button>}
      {editing !== null && (
        <FactWindow
          fact={editing === 'new' ? null : (facts[editing] ?? null)}
          busy={act.busy}
          refusal={act.refusal}
          onClose={() => {
            act.forget();
            setEditing(null);
          }}
          onStore={async (fact) => {
            const next = editing === 'new' ? [...facts, fact] : facts.with(editing, fact);
            if ((await store(next)) !== null) setEditing(null);
          }}
        />
      )}
    </section>
  );
}

function FactWindow(props: {
  readonly fact: Fact | null;
  readonly busy: boolean;
  readonly refusal: ReturnType<typeof useAct>['refusal'];
  readonly onClose: () => void;
  readonly onStore: (fact: Fact) => unknown;
}) {
  const [key, setKey] = useState(props.fact?.key ?? '');
  const [value, setValue] = useState(props.fact?.value ?? '');
  const [unit, setUnit] = useState(props.fact?.unit ?? '');
  return (
    <FormWindow
      opened
      title={props.fact === null ? 'Add a fact' : `Change ${props.fact.key}`}
      submitLabel={props.fact === null ? 'Add the fact' : 'Change the fact'}
      onSubmit={() => props.onStore({ key: key.trim(), value: value.trim(), unit: unit.trim() })}
      onCancel={props.onClose}
      busy={props.busy}
      refusal={props.refusal}
    >
      <TextField
        name="key"
        label="What"
        placeholder="Thread"
        value={key}
        onChange={setKey}
        longest={80}
        required
        autoFocus
      />
      <TextField
        name="value"
        label="Value"
        placeholder="M12x1.75"
        value={value}
        onChange={setValue}
        longest={400}
        required
      />
      <TextField name="unit" label="Unit" value={unit} onChange={setUnit} longest={40} />
    </FormWindow>
  );
}
