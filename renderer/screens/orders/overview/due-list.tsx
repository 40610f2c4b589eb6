import { Button } from '@mantine/core';
import { IconCalendarDown } from '@tabler/icons-react';
import { useState } from 'react';
import type { DueRow } from '../../../../core/contract/orders.ts';
import { type AgeBand, ageBands } from '../../../../core/purchasing/back-orders.ts';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { saveFile } from '../../../app/save-file.ts';
import { useTask } from '../../../app/task.ts';
import { DateText, Quantity } from '../../../parts/figures.tsx';
import { counted } from '../../../parts/formats.ts';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import { State } from '../../../parts/state.tsx';
import { NoticeWindow } from '../acts/notice-window.tsx';
import type { Reading } from '../reading.ts';

/** Everything that is to come, the oldest promise first; back-orders with their age and when the vendor was asked. */
export function DueList({ reading }: { readonly reading: Reading }) {
  const { build, asOf } = reading;
  const due = useRead(['orders', build, asOf, 'due'], () => api.orders.due(reading));
  const [asked, setAsked] = useState<DueRow | null>(null);
  if (due.state === 'loading') return <Loading label="Reading what is due" />;
  if (due.state === 'refused') return <RefusalNote refusal={due.refusal} onRetry={due.retry} />;
  const rows = due.value;
  if (rows.length === 0) return <p>Nothing is to come: no order has units outstanding.</p>;
  return (
    <>
      <p>{bandsSentence(rows)}</p>
      <CalendarFile reading={reading} />
      <SimpleTable
        caption="Due, the oldest promise first"
        captionHidden
        columns={dueColumns(asOf === undefined ? setAsked : null)}
        rows={rows}
        rowKey={({ line }) => `${line}`}
      />
      {asked !== null && (
        <NoticeWindow
          notice="chase"
          order={asked.order}
          name={asked.orderNumber === '' ? `Order at ${asked.vendorName}` : `Order ${asked.orderNumber}`}
          lines={[]}
          onClose={() => setAsked(null)}
        />
      )}
    </>
  );
}

/** Promised and forecast days for the calendar of the phone or the wall. */
function CalendarFile({ reading }: { readonly reading: Reading }) {
  const file = useTask(async () => {
    const made = await api.exchange.calendarFile(reading);
    saveFile(made, made.name);
  });
  return (
    <div className="chase-acts not-printed">
      <Button
        leftSection={<IconCalendarDown aria-hidden size="1.1em" />}
        loading={file.busy}
        onClick={() => void file.run()}
      >
        Days as a calendar file (ICS)
      </Button>
      <span className="soft">Promises, likely arrivals, tools due and the gate’s likely days.</span>
      {file.refusal !== null && <RefusalNote refusal={file.refusal} />}
    </div>
  );
}

/** "3 lines are on back-order: 1 for 0–14 days, 2 for 31–60 days." */
export function bandsSentence(rows: readonly Pick<DueRow, 'band'>[]): string {
  const counts = new Map<AgeBand, number>();
  for (const { band } of rows) if (band !== null) counts.set(band, (counts.get(band) ?? 0) + 1);
  const total = [...counts.values()].reduce((sum, count) => sum + count, 0);
  if (total === 0) return `${counted(rows.length, 'line is', 'lines are')} to come, none on back-order.`;
  const bands = ageBands.flatMap((band) => {
    const count = counts.get(band);
    return count === undefined ? [] : [`${count} for ${band.replace('-', '–')} days`];
  });
  return `${counted(total, 'line is', 'lines are')} on back-order: ${bands.join(', ')}.`;
}

function dueColumns(ask: ((row: DueRow) => void) | null): readonly Column<DueRow>[] {
  const columns: Column<DueRow>[] = [
    {
      id: 'part',
      title: 'Part',
      rowHeader: true,
      cell: ({ part, description }) => (
        <Link to="/parts" params={{ part }}>
          {description}
        </Link>
      ),
      sortBy: ({ description }) => description,
    },
    {
      id: 'order',
      title: 'Order',
      cell: ({ order, orderNumber, vendorName }) => (
        <Link to="/orders" params={{ order }}>
          {orderNumber === '' ? vendorName : `${vendorName}, ${orderNumber}`}
        </Link>
      ),
      sortBy: ({ vendorName, orderNumber }) => `${vendorName} ${orderNumber}`,
    },
    {
      id: 'open',
      title: 'To come',
      figures: true,
      cell: ({ outstandingMilli, unit }) => <Quantity quantityMilli={outstandingMilli} unit={unit} />,
      sortBy: ({ outstandingMilli }) => outstandingMilli,
    },
    {
      id: 'promised',
      title: 'Promised',
      cell: (row) => <Promised row={row} />,
      sortBy: ({ promisedOn }) => promisedOn ?? '9999',
    },
    {
      id: 'age',
      title: 'Back-order',
      cell: ({ ageDays, band }) =>
        band !== null && ageDays !== null ? (
          <State state="back-ordered" words={`${counted(ageDays, 'day', 'days')} (${band.replace('-', '–')})`} />
        ) : (
          ''
        ),
      sortBy: ({ ageDays }) => ageDays ?? -1,
    },
    {
      id: 'chased',
      title: 'Asked on',
      cell: ({ chasedOn }) =>
        chasedOn === null ? <span className="quiet">not yet</span> : <DateText date={chasedOn} />,
      sortBy: ({ chasedOn }) => chasedOn ?? '',
    },
  ];
  if (ask !== null) {
    columns.push({
      id: 'act',
      title: 'Chase',
      cell: (row) => (
        <Button size="compact" aria-label={`Chased: ${row.description}`} onClick={() => ask(row)}>
          Chased
        </Button>
      ),
    });
  }
  return columns;
}

function Promised({ row: { promisedOn, pastPromiseDays, promiseChanges } }: { readonly row: DueRow }) {
  const moved = promiseChanges > 0 ? `, moved ${promiseChanges === 1 ? 'once' : `${promiseChanges} times`}` : '';
  if (promisedOn === null) return <span className="quiet">no date{moved}</span>;
  const late = pastPromiseDays !== null && pastPromiseDays > 0;
  return (
    <span>
      <DateText date={promisedOn} />
      {late && <strong className="late"> {counted(pastPromiseDays, 'day', 'days')} past</strong>}
      <span className="quiet">{moved}</span>
    </span>
  );
}
