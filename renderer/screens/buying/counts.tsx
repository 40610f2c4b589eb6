import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CashView } from '../../../core/contract/buying.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { MoneyField, TextField } from '../../parts/fields.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import type { Reading } from './reading.ts';

/** The count that the curve starts from, and the way to count again. */
export function Counts({ cash, reading }: { readonly cash: CashView; readonly reading: Reading }) {
  const [counting, setCounting] = useState(false);
  const canAct = useCanAct();
  return (
    <section className="buying-section" aria-labelledby="buying-count">
      <h2 id="buying-count">Cash in hand</h2>
      {cash.count === null ? (
        <Empty {...(canAct ? { action: { label: 'Count the cash', onClick: () => setCounting(true) } } : {})}>
          Here stands what is in hand and what must always be left of it, as somebody counted it.
        </Empty>
      ) : (
        <p>
          <Money amountMinor={cash.count.cashMinor} /> were counted on <DateText date={cash.count.on} />;{' '}
          <Money amountMinor={cash.count.floorMinor} /> must always be left.{' '}
          {cash.nowMinor !== null && (
            <>
              With what has come in since, and once all that is due by now is paid,{' '}
              <Money amountMinor={cash.nowMinor} /> are left.
            </>
          )}
        </p>
      )}
      {canAct && cash.count !== null && (
        <div className="not-printed">
          <Button onClick={() => setCounting(true)}>Count again</Button>
        </div>
      )}
      {counting && (
        <CountForm
          build={reading.build}
          floorMinor={cash.count?.floorMinor ?? null}
          onClose={() => setCounting(false)}
        />
      )}
    </section>
  );
}

interface CountFormProps {
  readonly build: number;
  readonly floorMinor: number | null;
  readonly onClose: () => void;
}

function CountForm({ build, floorMinor, onClose }: CountFormProps) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [cashMinor, setCash] = useState<number | null>(null);
  const [floor, setFloor] = useState<number | null>(floorMinor ?? 0);
  const [note, setNote] = useState('');
  const act = useAct((key, day: string) =>
    api.records.save({
      key,
      on: day,
      kind: 'cashCount',
      build,
      values: { on: day, cashMinor, floorMinor: floor, note },
    }),
  );
  const submit = async () => {
    if (on !== null && cashMinor !== null && floor !== null && (await act.run(on)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Count the cash"
      submitLabel="Keep the count"
      onSubmit={() => void submit()}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <MoneyField
        name="cashMinor"
        label="In hand"
        description="For this build, at the end of the day."
        value={cashMinor}
        onChange={setCash}
        negative
        required
        autoFocus
      />
      <MoneyField
        name="floorMinor"
        label="Must always be left"
        description="No plan goes below it. An amount below 0 is what may be overdrawn."
        value={floor}
        onChange={setFloor}
        negative
        required
      />
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={400} />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} max={today} required />
    </FormWindow>
  );
}
