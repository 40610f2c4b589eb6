import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { PortRow } from '../../../core/contract/fits.ts';
import type { ConnectionSide, RecordRow, RecordValues } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { readPressure } from './fit-address.ts';
import { mediumChoices, roleChoices } from './fit-words.ts';
import { emptySide, SideField } from './side-field.tsx';
import { Tried } from './tried.tsx';

type Draft = Omit<RecordValues['connection'], 'accepted' | 'adapter'>;
type Input = Omit<Parameters<typeof api.records.save>[0], 'key'>;

export interface ConnectionFormProps {
  readonly build: number;
  readonly ports: readonly PortRow[];
  /** The connection that is changed; a new one when left out. */
  readonly kept?: RecordRow;
  /** The port that a new connection starts from. */
  readonly from?: PortRow;
  readonly onClose: () => void;
}

function start({ kept, from }: ConnectionFormProps): Draft {
  if (kept !== undefined) {
    const { accepted: _reason, adapter: _pieces, ...draft } = kept.values as unknown as RecordValues['connection'];
    return draft;
  }
  return {
    title: '',
    one: from === undefined ? emptySide : { port: from.id, typed: '' },
    other: emptySide,
    role: from?.role ?? 'fluid',
    medium: from?.medium ?? '',
    pressureBar: null,
    beforeGate: true,
    note: '',
  };
}

/** Called after its two sides, where nobody gave it a name. */
function nameOf({ one, other }: Draft, ports: readonly PortRow[]): string {
  const called = ({ port, typed }: ConnectionSide) => {
    const kept = ports.find(({ id }) => id === port);
    return kept === undefined ? typed.trim() : `${kept.owner} ${kept.name}`;
  };
  return `${called(one)} to ${called(other)}`.slice(0, 120);
}

/** Joins two ports, or changes a joint; the verdict stands below before anything is kept. */
export function ConnectionForm(props: ConnectionFormProps) {
  const { build, ports, kept, onClose } = props;
  const { today } = useWorkspace();
  const [draft, setDraft] = useState<Draft>(() => start(props));
  const set = (change: Partial<Draft>) => setDraft((now) => ({ ...now, ...change }));
  const act = useAct((key, input: Input) => api.records.save({ key, ...input }));
  const save = async () => {
    const title = draft.title.trim() === '' ? nameOf(draft, ports) : draft.title.trim();
    const done = await act.run({
      on: today,
      kind: 'connection',
      build,
      values: { ...draft, title },
      ...(kept === undefined ? {} : { id: kept.id, revision: kept.revision }),
    });
    if (done === null) return;
    onClose();
    const [made] = done.made;
    if (kept === undefined && made !== undefined) navigate('/fit', { connection: made });
  };
  const { one, other, role, medium, pressureBar } = draft;
  return (
    <FormWindow
      opened
      as="drawer"
      title={kept === undefined ? 'Connect two ports' : `Change: ${String(kept.values['title'])}`}
      submitLabel={kept === undefined ? 'Keep the connection' : 'Store the changes'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={save}
    >
      <Choice
        name="role"
        label="What the joint is for"
        required
        value={role}
        options={roleChoices}
        onChange={(chosen) => chosen !== null && set({ role: chosen })}
      />
      <SideField
        name="one"
        label="One side"
        value={one}
        role={role}
        ports={ports.filter(({ id }) => id !== other.port)}
        onChange={(side) => set({ one: side })}
      />
      <SideField
        name="other"
        label="Other side"
        value={other}
        role={role}
        ports={ports.filter(({ id }) => id !== one.port)}
        onChange={(side) => set({ other: side })}
      />
      <Choice
        name="medium"
        label="What flows through it"
        value={medium === '' ? null : medium}
        options={mediumChoices(medium)}
        none="Not said"
        onChange={(chosen) => set({ medium: chosen ?? '' })}
      />
      <ReadField
        name="pressureBar"
        label="Gauge pressure"
        description="In bar, or with its unit: 4 or 60 psi."
        value={pressureBar}
        onChange={(bar) => set({ pressureBar: bar })}
        read={readPressure}
        write={(bar) => String(Number(bar.toFixed(4)))}
        suffix="bar"
        numeric
      />
      <Tried build={build} one={one} other={other} role={role} medium={medium} pressureBar={pressureBar} />
      <TextField
        name="title"
        label="Name of the connection"
        description="Left empty, it is called after its two sides."
        value={draft.title}
        onChange={(title) => set({ title })}
        longest={120}
      />
      <Checkbox
        label="Stands in the hoist check until it fits"
        checked={draft.beforeGate}
        onChange={(event) => set({ beforeGate: event.currentTarget.checked })}
      />
      <TextField name="note" label="Note" long longest={2000} value={draft.note} onChange={(note) => set({ note })} />
    </FormWindow>
  );
}
