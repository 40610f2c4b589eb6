import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, MoneyField, TextField } from '../../parts/fields.tsx';
import { Money } from '../../parts/figures.tsx';
import { FormWindow } from '../../parts/form.tsx';
import type { BudgetKind } from './budget-kinds.ts';

/** Rows of a kind of record as the options of a choice. */
export const options = (rows: readonly RecordRow[]) =>
  rows.map(({ id, values }) => ({ value: String(id), label: String(values['name']) }));

const newLine = 'new';

const words: Readonly<
  Record<BudgetKind, { readonly title: string; readonly submit: string; readonly amount: string }>
> = {
  change: {
    title: 'Change the budget',
    submit: 'Enter the budget change',
    amount: 'Adds to the line; an amount below 0 takes away from it.',
  },
  contingency: {
    title: 'Change the contingency',
    submit: 'Enter the contingency change',
    amount: 'Adds to what is set aside; an amount below 0 takes away from it.',
  },
  'contingency drawn': {
    title: 'Draw from the contingency',
    submit: 'Draw from the contingency',
    amount: 'Goes from the contingency into the line.',
  },
};

export interface BudgetFormProps {
  readonly build: number;
  readonly kind: BudgetKind;
  readonly line: number | null;
  /** What is left to draw. */
  readonly leftMinor: number;
  readonly lines: readonly RecordRow[];
  readonly systems: readonly RecordRow[];
  readonly phases: readonly RecordRow[];
  readonly onClose: () => void;
}

/** One entry of the budget: a change of a line or of the contingency, or a draw. A reason is always asked. */
export function BudgetForm({ build, kind, line, leftMinor, lines, systems, phases, onClose }: BudgetFormProps) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [chosen, setChosen] = useState<string | null>(
    line !== null ? String(line) : lines.length === 0 ? newLine : null,
  );
  const [name, setName] = useState('');
  const [system, setSystem] = useState<string | null>(null);
  const [phase, setPhase] = useState<string | null>(null);
  const [amountMinor, setAmount] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  const [by, setBy] = useState('');
  const act = useAct((key, input: Omit<Parameters<typeof api.money.changeBudget>[0], 'key'>) =>
    api.money.changeBudget({ ...input, key }),
  );
  const isNew = chosen === newLine && kind !== 'contingency';
  const submit = async () => {
    if (on === null || amountMinor === null) return;
    const done = await act.run({
      on,
      build,
      kind,
      line: kind === 'contingency' || isNew || chosen === null ? null : Number(chosen),
      ...(isNew
        ? {
            newLine: {
              name,
              system: system === null ? null : Number(system),
              phase: phase === null ? null : Number(phase),
            },
          }
        : {}),
      amountMinor,
      reason,
      by,
    });
    if (done !== null) onClose();
  };
  const said = words[kind];
  return (
    <FormWindow
      opened
      title={said.title}
      submitLabel={said.submit}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      {kind === 'contingency drawn' && (
        <p>
          <Money amountMinor={leftMinor} /> is left in the contingency.
        </p>
      )}
      {kind !== 'contingency' && (
        <Choice
          name="line"
          label="Budget line"
          value={chosen}
          onChange={setChosen}
          options={[...options(lines), { value: newLine, label: 'A new line' }]}
          required
          autoFocus={line === null}
        />
      )}
      {isNew && (
        <>
          <TextField name="name" label="Name of the new line" value={name} onChange={setName} longest={120} required />
          <div className="form-row">
            <Choice name="system" label="System" value={system} onChange={setSystem} options={options(systems)} />
            <Choice name="phase" label="Phase" value={phase} onChange={setPhase} options={options(phases)} />
          </div>
        </>
      )}
      <MoneyField
        name="amountMinor"
        label="Amount"
        description={said.amount}
        value={amountMinor}
        onChange={setAmount}
        negative={kind !== 'contingency drawn'}
        required
        autoFocus={line !== null || kind === 'contingency'}
      />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} required />
      <div className="form-row">
        <TextField name="by" label="Agreed with" value={by} onChange={setBy} longest={80} />
        <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      </div>
    </FormWindow>
  );
}
