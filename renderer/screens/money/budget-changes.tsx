import { Button } from '@mantine/core';
import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { State } from '../../parts/state.tsx';
import type { BudgetChange } from './budget-kinds.ts';
import { kindWords } from './money-words.tsx';

/** Every entry that made the budget what it is, newest first, each with the way to take it back. */
export function BudgetChanges({ changes }: { readonly changes: readonly BudgetChange[] }) {
  const [reversing, setReversing] = useState<BudgetChange | null>(null);
  const canAct = useCanAct();
  const columns: readonly Column<BudgetChange>[] = [
    { id: 'on', title: 'Day', cell: ({ on }) => <DateText date={on} />, sortBy: ({ on, seq }) => `${on} ${seq}` },
    {
      id: 'line',
      title: 'Line',
      rowHeader: true,
      cell: ({ lineName }) => lineName,
      sortBy: ({ lineName }) => lineName,
    },
    { id: 'kind', title: 'What', cell: ({ kind }) => kindWords[kind], sortBy: ({ kind }) => kindWords[kind] },
    {
      id: 'amount',
      title: 'Amount',
      figures: true,
      cell: ({ amountMinor }) => <Money amountMinor={amountMinor} />,
      sortBy: ({ amountMinor }) => amountMinor,
    },
    {
      id: 'reason',
      title: 'Reason',
      cell: ({ seq, reason, by }) => (
        <>
          <Link to="/journal" params={{ entry: seq }}>
            {reason}
          </Link>
          {by !== '' && <span className="row-note">agreed with {by}</span>}
        </>
      ),
    },
    {
      id: 'back',
      title: 'Standing',
      cell: (change) => {
        if (change.reversed) return <State state="cancelled" words="taken back" />;
        if (!canAct) return 'counts';
        return (
          <Button size="compact" variant="subtle" className="not-printed" onClick={() => setReversing(change)}>
            Take back <span className="only-heard">{change.reason}</span>
          </Button>
        );
      },
    },
  ];
  if (changes.length === 0) return null;
  return (
    <>
      <SimpleTable
        caption="Entries behind the budget"
        columns={columns}
        rows={changes}
        rowKey={({ seq }) => String(seq)}
        sortedBy={{ column: 'on', descending: true }}
      />
      {reversing !== null && <TakeBack change={reversing} onClose={() => setReversing(null)} />}
    </>
  );
}

function TakeBack({ change, onClose }: { readonly change: BudgetChange; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [reason, setReason] = useState('');
  const act = useAct((key, input: { readonly on: string; readonly reason: string }) =>
    api.journal.reverse({ key, entry: change.seq, ...input }),
  );
  const submit = async () => {
    if (on !== null && (await act.run({ on, reason })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Take back an entry of the budget"
      submitLabel={`Take back this ${change.kind === 'change' ? 'budget' : 'contingency'} entry`}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
      blocks
    >
      <p>
        {change.lineName}, <Money amountMinor={change.amountMinor} />: {change.reason}. The entry stays in the journal,
        and an equal and opposite one is added.
      </p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
