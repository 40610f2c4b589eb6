import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { Form } from '../../parts/form.tsx';
import { Answer, Page } from '../../parts/page.tsx';

/** A workbook without a build has one thing to do: make it. */
export function MakeBuild() {
  const { today, chooseBuild } = useWorkspace();
  const [name, setName] = useState('');
  const [car, setCar] = useState('');
  const [engine, setEngine] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const [targetOn, setTargetOn] = useState<string | null>(null);
  const { busy, refusal, run } = useAct((key, input: { on: string }) =>
    api.builds.create({
      key,
      on: input.on,
      values: { name: name.trim(), car: car.trim(), engine: engine.trim(), startedOn: input.on, targetOn },
    }),
  );
  const make = async () => {
    const made = (await run({ on: on ?? today }))?.made[0];
    if (made !== undefined) chooseBuild(made);
  };
  return (
    <Page title="Start" answer={<Answer>This workbook has no build yet: give it the first one.</Answer>}>
      <div className="start-form">
        <Form submitLabel="Make the build" onSubmit={() => void make()} busy={busy} refusal={refusal}>
          <TextField
            name="values.name"
            label="Name of the build"
            value={name}
            onChange={setName}
            longest={120}
            required
            autoFocus
          />
          <TextField name="values.car" label="Car" value={car} onChange={setCar} longest={200} />
          <TextField name="values.engine" label="Engine" value={engine} onChange={setEngine} longest={200} />
          <div className="form-row">
            <DateField name="on" label="Started on" value={on} onChange={setOn} today={today} required />
            <DateField
              name="values.targetOn"
              label="Engine in, hoped for"
              value={targetOn}
              onChange={setTargetOn}
              today={today}
            />
          </div>
        </Form>
      </div>
    </Page>
  );
}
