import { Button } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { IncomeForm } from './income-form.tsx';
import type { Reading } from './reading.ts';
import { TakeOff } from './take-off.tsx';

/** What comes in, every month or once. */
export function Incomes({ reading }: { readonly reading: Reading }) {
  const { build } = reading;
  const [typing, setTyping] = useState<RecordRow | 'new' | null>(null);
  const canAct = useCanAct();
  const read = useRead(['records', build, null, 'income'], () => api.records.list({ kind: 'income', build }));
  const columns: readonly Column<RecordRow>[] = [
    { id: 'name', title: 'Income', rowHeader: true, cell: ({ values }) => String(values['name']) },
    {
      id: 'amount',
      title: 'Amount',
      figures: true,
      cell: ({ values }) => <Money amountMinor={Number(values['amountMinor'])} />,
    },
    { id: 'when', title: 'When', cell: ({ values }) => <When values={values} /> },
    { id: 'note', title: 'Note', cell: ({ values }) => String(values['note']) },
    ...(canAct
      ? [
          {
            id: 'acts',
            title: 'Change',
            cell: (row: RecordRow) => (
              <span className="row-acts not-printed">
                <Button size="compact" variant="subtle" onClick={() => setTyping(row)}>
                  Change <span className="only-heard">{String(row.values['name'])}</span>
                </Button>
                <TakeOff kind="income" row={row} name={String(row.values['name'])} />
              </span>
            ),
          },
        ]
      : []),
  ];
  return (
    <section className="buying-section" aria-labelledby="buying-incomes">
      <h2 id="buying-incomes">What comes in</h2>
      <ReadView read={read} label="Reading the incomes">
        {(rows) =>
          rows.length === 0 ? (
            <Empty {...(canAct ? { action: { label: 'Write down an income', onClick: () => setTyping('new') } } : {})}>
              Here stands what is set aside for the build every month, and what comes in once.
            </Empty>
          ) : (
            <>
              <SimpleTable
                caption="What comes in"
                captionHidden
                columns={columns}
                rows={rows}
                rowKey={({ id }) => String(id)}
              />
              {canAct && (
                <div className="not-printed">
                  <Button onClick={() => setTyping('new')}>Write down an income</Button>
                </div>
              )}
            </>
          )
        }
      </ReadView>
      {typing !== null && (
        <IncomeForm build={build} row={typing === 'new' ? null : typing} onClose={() => setTyping(null)} />
      )}
    </section>
  );
}

function When({ values }: { readonly values: RecordRow['values'] }) {
  const from = String(values['from']);
  const until = values['until'];
  if (values['every'] === 'once') {
    return (
      <>
        once, on <DateText date={from} />
      </>
    );
  }
  return (
    <>
      every month from <DateText date={from} />
      {typeof until === 'string' && (
        <>
          {' '}
          until <DateText date={until} />
        </>
      )}
    </>
  );
}
