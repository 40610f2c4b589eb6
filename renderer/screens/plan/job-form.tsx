import { useState } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import type { RecordRow, RecordValues } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { type Read, useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Several, Tick } from './choices.tsx';
import { LagFields, TimeFields } from './job-form-time.tsx';
import { sortAfter } from './plan-order.ts';
import type { PlanPhase } from './reading.ts';

export interface JobFormProps {
  /** The job to change; null for a new one. */
  readonly job: PlanJob | null;
  readonly phase: number | null;
  readonly phases: readonly PlanPhase[];
  readonly build: number;
  readonly onClose: () => void;
}

type JobValues = Omit<RecordValues['job'], 'sort'>;

function startingValues(job: PlanJob | null, phase: number | null): JobValues {
  return {
    title: job?.title ?? '',
    phase: job === null ? phase : job.phase,
    system: job?.system ?? null,
    minutesGuess: job?.minutesGuess ?? null,
    minutesLow: job?.minutesLow ?? null,
    minutesHigh: job?.minutesHigh ?? null,
    lags: job?.lags ?? [],
    notBefore: job?.notBefore ?? null,
    oneSitting: job?.oneSitting ?? false,
    hands: job?.hands ?? true,
    person: job?.person ?? null,
    place: job?.place ?? '',
    consumables: job?.consumables ?? '',
    tools: job?.tools.map(({ id }) => id) ?? [],
    earlier: job?.earlier.map(({ id }) => id) ?? [],
    beforeGate: job?.beforeGate ?? true,
    needsSignOff: job?.needsSignOff ?? false,
    note: job?.note ?? '',
  };
}

const named = (read: Read<readonly RecordRow[]>) =>
  read.state === 'ready' ? read.value.map(({ id, values }) => ({ id, label: String(values['name']) })) : [];
const asOptions = (rows: readonly { readonly id: number; readonly label: string }[]) =>
  rows.map(({ id, label }) => ({ value: String(id), label }));
const asText = (id: number | null) => (id === null ? null : String(id));
const asId = (text: string | null) => (text === null ? null : Number(text));

/** A job written down or changed. A job moved to another phase stands at that phase's end. */
export function JobForm({ job, phase, phases, build, onClose }: JobFormProps) {
  const { today } = useWorkspace();
  const [values, setValues] = useState<JobValues>(() => startingValues(job, phase));
  const [on, setOn] = useState<string | null>(today);
  const set = (change: Partial<JobValues>) => setValues((now) => ({ ...now, ...change }));
  const systems = named(useRead(['records', build, null, 'system'], () => api.records.list({ kind: 'system', build })));
  const tools = named(useRead(['records', build, null, 'tool'], () => api.records.list({ kind: 'tool', build })));
  const people = named(useRead(['records', build, null, 'person'], () => api.records.list({ kind: 'person' })));
  const others = phases
    .flatMap(({ jobs }) => jobs)
    .filter(({ id }) => id !== job?.id)
    .map(({ id, title }) => ({ id, label: title }));
  const act = useAct((key, day: string) => {
    const moved = job === null || job.phase !== values.phase;
    return api.records.save({
      key,
      on: day,
      kind: 'job',
      build,
      ...(job === null ? {} : { id: job.id, revision: job.revision }),
      values: { ...values, ...(moved ? { sort: sortAfter(phases, values.phase) } : {}) },
    });
  });
  const submit = async () => {
    if (on !== null && (await act.run(on)) !== null) onClose();
  };
  const phaseOptions = phases.flatMap(({ id, name }) => (id === null ? [] : [{ value: String(id), label: name }]));
  return (
    <FormWindow
      opened
      as="drawer"
      title={job === null ? 'Add a job' : `Edit: ${job.title}`}
      submitLabel={job === null ? 'Add the job' : 'Keep the changes'}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <TextField
        name="title"
        label="Job"
        value={values.title}
        onChange={(title) => set({ title })}
        longest={200}
        required
        autoFocus
      />
      <div className="form-row">
        <Choice
          name="phase"
          label="Phase"
          value={asText(values.phase)}
          onChange={(id) => set({ phase: asId(id) })}
          options={phaseOptions}
        />
        <Choice
          name="system"
          label="System"
          value={asText(values.system)}
          onChange={(id) => set({ system: asId(id) })}
          options={asOptions(systems)}
        />
      </div>
      <TimeFields values={values} set={set} />
      <Several
        name="earlier"
        label="Jobs that come before it"
        value={values.earlier}
        onChange={(earlier) =>
          set({ earlier, lags: values.lags.filter(({ job: before }) => earlier.includes(before)) })
        }
        options={others}
      />
      <LagFields
        earlier={others.filter(({ id }) => values.earlier.includes(id))}
        lags={values.lags}
        onChange={(lags) => set({ lags })}
      />
      <div className="form-row">
        <DateField
          name="notBefore"
          label="Not before"
          value={values.notBefore}
          onChange={(notBefore) => set({ notBefore })}
          today={today}
        />
        <Choice
          name="person"
          label="Who does it"
          none="Anyone"
          {...(people.length === 0 ? { description: 'People are written down in Lists.' } : {})}
          value={asText(values.person)}
          onChange={(id) => set({ person: asId(id) })}
          options={asOptions(people)}
        />
      </div>
      <Several
        name="tools"
        label="Tools it needs"
        {...(tools.length === 0 ? { description: 'Tools are written down in Lists.' } : {})}
        value={values.tools}
        onChange={(ids) => set({ tools: ids })}
        options={tools}
      />
      <div className="form-row">
        <TextField
          name="place"
          label="Where it is done"
          value={values.place}
          onChange={(place) => set({ place })}
          longest={80}
        />
        <TextField
          name="consumables"
          label="What it uses up"
          placeholder="Sealant, rags, oil"
          value={values.consumables}
          onChange={(consumables) => set({ consumables })}
          longest={400}
        />
      </div>
      <Tick
        name="beforeGate"
        label="Stands before the hoist check"
        value={values.beforeGate}
        onChange={(beforeGate) => set({ beforeGate })}
      />
      <Tick
        name="needsSignOff"
        label="Is signed off by name"
        value={values.needsSignOff}
        onChange={(needsSignOff) => set({ needsSignOff })}
      />
      <TextField
        name="note"
        label="Note"
        value={values.note}
        onChange={(note) => set({ note })}
        longest={20_000}
        long
      />
      <DateField name="on" label="Day of this entry" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
