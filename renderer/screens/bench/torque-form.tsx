import { Button } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow, RecordValues } from '../../../core/contract/records.ts';
import { circleSpots, rowSpots, spiralSequence, starSequence } from '../../../core/torque/sequence.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Caution } from '../../parts/notes.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { Window } from '../../parts/window.tsx';
import { FormEnd } from './form-end.tsx';
import { readNumbers } from './lines-text.ts';
import { NumberField } from './number-field.tsx';
import { StagesField } from './stages-field.tsx';
import { Suggest } from './suggest.tsx';
import { TorqueDrawing } from './torque-drawing.tsx';

type Group = RecordValues['boltGroup'];

const blank: Group = {
  name: '',
  part: null,
  job: null,
  system: null,
  count: 4,
  method: 'torque',
  torqueMilliNm: null,
  angleDeg: null,
  source: '',
  sequence: '',
  thread: '',
  boltClass: '',
  stages: [],
  pattern: 'star',
  rows: 2,
  order: [],
  sourceKind: 'unknown',
  lubricant: '',
  beforeGate: true,
  note: '',
};

interface GroupFormProps {
  /** Null for a new group. */
  readonly id: number | null;
  readonly build: number;
  readonly onClose: () => void;
}

/** A new bolt group, or a change of one: its bolts, figure, stages and the way round. */
export function GroupForm({ id, build, onClose }: GroupFormProps) {
  const read = useRead(
    ['records', build, 'boltGroup'],
    id === null ? null : () => api.records.list({ kind: 'boltGroup', build }),
  );
  if (id === null) return <Fields values={blank} build={build} onClose={onClose} />;
  const row = read.state === 'ready' ? read.value.find((one) => one.id === id) : undefined;
  if (row !== undefined) {
    return <Fields row={row} values={row.values as unknown as Group} build={build} onClose={onClose} />;
  }
  return (
    <Window opened title="Torque sheet" onClose={onClose}>
      {read.state === 'refused' ? <RefusalNote refusal={read.refusal} onRetry={read.retry} /> : <p>Reading it.</p>}
    </Window>
  );
}

interface FieldsProps {
  readonly row?: RecordRow;
  readonly values: Group;
  readonly build: number;
  readonly onClose: () => void;
}

/** The stages as they are walked: a figure written down without stages stands as one, so that it is seen and can be changed. */
function stagesOf({ stages, method, torqueMilliNm, angleDeg }: Group): Group['stages'] {
  if (stages.length > 0) return stages;
  return [
    ...(torqueMilliNm === null ? [] : [{ torqueMilliNm, angleDeg: null }]),
    ...(angleDeg === null || angleDeg === 0 || method !== 'torque and angle'
      ? []
      : [{ torqueMilliNm: null, angleDeg }]),
  ];
}

/** The way round as it will be walked: what the drawing shows before it is saved. */
function preview(values: Group, count: number) {
  const rows = Number.isNaN(values.rows) ? 1 : values.rows;
  const own = values.order.filter((bolt, index, all) => bolt <= count && bolt > 0 && all.indexOf(bolt) === index);
  const sequence =
    values.pattern === 'star' ? starSequence(count) : values.pattern === 'spiral' ? spiralSequence(count, rows) : own;
  const spots = values.pattern === 'star' ? circleSpots(count) : rowSpots(count, rows);
  return {
    pattern: values.pattern,
    sequence,
    stages: 1,
    next: values.pattern === 'custom' && sequence.length < count ? { bolt: 0, stage: 1, text: '' } : null,
    bolts: spots.map((spot, index) => ({
      ...spot,
      bolt: index + 1,
      stages: values.pattern === 'custom' && sequence.includes(index + 1) ? 1 : 0,
      rechecked: false,
    })),
  };
}

function Fields({ row, values: first, build, onClose }: FieldsProps) {
  const { today } = useWorkspace();
  const [values, setValues] = useState({ ...first, stages: stagesOf(first) });
  const set = (more: Partial<Group>) => setValues((now) => ({ ...now, ...more }));
  const save = useAct((key) => {
    // The final figure is the last torque of the stages and the angle after it: one home for both.
    const torques = values.stages.flatMap(({ torqueMilliNm }) => torqueMilliNm ?? []);
    const angles = values.stages.flatMap(({ angleDeg }) => angleDeg ?? []);
    const told: Group = {
      ...values,
      method: values.method === 'stretch' ? 'stretch' : angles.length > 0 ? 'torque and angle' : 'torque',
      torqueMilliNm: torques.at(-1) ?? null,
      angleDeg: angles.at(-1) ?? null,
    };
    return api.records.save({
      key,
      on: today,
      kind: 'boltGroup',
      build,
      values: told,
      ...(row === undefined ? {} : { id: row.id, revision: row.revision }),
    });
  });
  const submit = async () => {
    const done = await save.run(undefined);
    if (done === null) return;
    onClose();
    const made = done.made[0];
    if (row === undefined && made !== undefined) navigate('/bench', { torque: made });
  };
  const count = Number.isInteger(values.count) && values.count > 0 ? Math.min(values.count, 60) : 1;
  return (
    <FormWindow
      opened
      as="drawer"
      title={row === undefined ? 'New torque sheet' : `Torque sheet: ${first.name}`}
      submitLabel={row === undefined ? 'Make the sheet' : 'Save the sheet'}
      busy={save.busy}
      refusal={save.refusal}
      onCancel={onClose}
      onSubmit={submit}
    >
      <TextField
        name="name"
        label="Which bolts"
        value={values.name}
        onChange={(name) => set({ name })}
        longest={120}
        required
      />
      <div className="bench-fields">
        <NumberField
          name="count"
          label="How many"
          value={values.count}
          onChange={(value) => set({ count: value ?? Number.NaN })}
          wholeTo={1000}
          required
        />
        <TextField
          name="thread"
          label="Thread"
          description="Such as M10x1.5 or 3/8-24 UNF."
          value={values.thread}
          onChange={(thread) => set({ thread })}
          longest={60}
        />
        <TextField
          name="boltClass"
          label="Class"
          description="Such as 10.9 or grade 8."
          value={values.boltClass}
          onChange={(boltClass) => set({ boltClass })}
          longest={40}
        />
        <TextField
          name="lubricant"
          label="Lubricant"
          description="A torque holds only for the lubricant it was given for."
          value={values.lubricant}
          onChange={(lubricant) => set({ lubricant })}
          longest={120}
        />
      </div>
      <StagesField stages={values.stages} onChange={(stages) => set({ stages })} />
      <Choice
        name="sourceKind"
        label="The figure comes from"
        value={values.sourceKind}
        onChange={(kind) => set({ sourceKind: kind ?? 'unknown' })}
        options={[
          { value: 'maker', label: 'the maker’s manual or sheet' },
          { value: 'suggested', label: 'the nut-factor estimate' },
          { value: 'unknown', label: 'not said' },
        ]}
        required
      />
      <TextField
        name="source"
        label="Which manual, which page"
        value={values.source}
        onChange={(source) => set({ source })}
        longest={200}
      />
      <Suggest
        asked={values}
        onTake={(torqueMilliNm, source) =>
          set({ stages: [{ torqueMilliNm, angleDeg: null }], torqueMilliNm, source, sourceKind: 'suggested' })
        }
      />
      <Caution>
        The maker’s manual governs torque, steps and sequence; where it differs from this, it goes first.
      </Caution>
      <Choice
        name="pattern"
        label="The way round"
        value={values.pattern}
        onChange={(pattern) => set({ pattern: pattern ?? 'star' })}
        options={[
          { value: 'star', label: 'Star, on a circle' },
          { value: 'spiral', label: 'From the middle outwards, in rows' },
          { value: 'custom', label: 'As the manual says' },
        ]}
        required
      />
      {values.pattern !== 'star' && (
        <NumberField
          name="rows"
          label="Rows of bolts"
          value={values.rows}
          onChange={(value) => set({ rows: value ?? Number.NaN })}
          wholeTo={20}
          required
        />
      )}
      {values.pattern === 'custom' && (
        <>
          <ReadField
            name="order"
            label="Order of the bolts"
            description="Type the numbers, or tap the bolts below one after the other."
            value={values.order.join(', ')}
            onChange={(text) => set({ order: text === null ? [] : readNumbers(text, 'order') })}
            read={(text) => readNumbers(text, 'order').join(', ')}
            write={(text) => text}
          />
          <Button onClick={() => set({ order: [] })}>Begin the order again</Button>
        </>
      )}
      <TorqueDrawing
        drawn={preview(values, count)}
        {...(values.pattern === 'custom' ? { onBolt: (bolt: number) => set({ order: [...values.order, bolt] }) } : {})}
      />
      <FormEnd
        values={values}
        onChange={set}
        {...(row === undefined ? {} : { kept: { kind: 'boltGroup', id: row.id } })}
        onGone={onClose}
      />
    </FormWindow>
  );
}
