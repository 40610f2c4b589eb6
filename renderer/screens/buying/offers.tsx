import { Button } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateText, Quantity, UnitPrice } from '../../parts/figures.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { State } from '../../parts/state.tsx';
import { OfferForm } from './offer-form.tsx';
import type { Reading } from './reading.ts';
import { TakeOff } from './take-off.tsx';
import { type Named, usePartNames, useVendorNames } from './use-names.ts';

const none: Named = new Map();

/** Prices that vendors give for parts of the build, from a quantity on and perhaps for a time. */
export function Offers({ reading }: { readonly reading: Reading }) {
  const { build } = reading;
  const { today } = useWorkspace();
  const canAct = useCanAct();
  const [typing, setTyping] = useState<RecordRow | 'new' | null>(null);
  const read = useRead(['records', build, null, 'offer'], () => api.records.list({ kind: 'offer', build }));
  const parts = usePartNames(build);
  const vendors = useVendorNames(build);
  const partNames = parts.state === 'ready' ? parts.value : none;
  const vendorNames = vendors.state === 'ready' ? vendors.value : none;
  const partOf = (row: RecordRow): string => partNames.get(Number(row.values['part'])) ?? '';
  const columns: readonly Column<RecordRow>[] = [
    {
      id: 'part',
      title: 'Part',
      rowHeader: true,
      cell: (row) => (
        <Link to="/parts" params={{ part: Number(row.values['part']) }}>
          {partOf(row)}
        </Link>
      ),
      sortBy: partOf,
    },
    {
      id: 'vendor',
      title: 'Vendor',
      cell: ({ values }) => vendorNames.get(Number(values['vendor'])) ?? '',
      sortBy: ({ values }) => vendorNames.get(Number(values['vendor'])) ?? '',
    },
    {
      id: 'from',
      title: 'From',
      figures: true,
      cell: ({ values }) => <Quantity quantityMilli={Number(values['fromMilli'])} />,
    },
    {
      id: 'each',
      title: 'Price each',
      figures: true,
      cell: ({ values }) => <UnitPrice priceE4={Number(values['eachE4'])} currency={String(values['currency'])} />,
    },
    {
      id: 'until',
      title: 'Until',
      cell: ({ values }) => {
        const until = values['until'];
        if (typeof until !== 'string') return 'no end';
        return until < (reading.asOf ?? today) ? (
          <>
            <DateText date={until} /> <State state="cancelled" words="over" />
          </>
        ) : (
          <DateText date={until} />
        );
      },
      sortBy: ({ values }) => String(values['until'] ?? '9999'),
    },
    { id: 'note', title: 'Note', cell: ({ values }) => String(values['note']) },
    ...(canAct
      ? [
          {
            id: 'acts',
            title: 'Change',
            cell: (row: RecordRow) => (
              <span className="row-acts not-printed">
                <Button size="compact" variant="subtle" onClick={() => setTyping(row)}>
                  Change <span className="only-heard">the offer for {partOf(row)}</span>
                </Button>
                <TakeOff kind="offer" row={row} name={`the offer for ${partOf(row)}`} />
              </span>
            ),
          },
        ]
      : []),
  ];
  const add = { label: 'Write down an offer', onClick: () => setTyping('new') };
  return (
    <section className="buying-section" aria-labelledby="buying-offers">
      <h2 id="buying-offers">Offers</h2>
      <p className="quiet">
        The plan takes the best offer that holds, else the best quote, else the estimate on the part line. What vendors
        charge for shipping stands on <Link to="/lists">their cards in the lists</Link>.
      </p>
      <ReadView read={read} label="Reading the offers">
        {(rows) =>
          rows.length === 0 ? (
            <Empty {...(canAct ? { action: add } : {})}>
              A price that a vendor gives from a quantity on, or until a day, belongs here.
            </Empty>
          ) : (
            <>
              <SimpleTable
                caption="Offers"
                captionHidden
                columns={columns}
                rows={rows}
                rowKey={({ id }) => String(id)}
              />
              {canAct && (
                <div className="not-printed">
                  <Button onClick={add.onClick}>{add.label}</Button>
                </div>
              )}
            </>
          )
        }
      </ReadView>
      {typing !== null && (
        <OfferForm
          build={build}
          row={typing === 'new' ? null : typing}
          parts={partNames}
          vendors={vendorNames}
          onClose={() => setTyping(null)}
        />
      )}
    </section>
  );
}
