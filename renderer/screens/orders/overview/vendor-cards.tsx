import { useState } from 'react';
import type { VendorCard } from '../../../../core/contract/orders.ts';
import { linesToCompare } from '../../../../core/purchasing/vendor-card.ts';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Money } from '../../../parts/figures.tsx';
import { counted, numberText, quantityText } from '../../../parts/formats.ts';
import { type LocaleSettings, useLocale } from '../../../parts/locale.tsx';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import type { Reading } from '../reading.ts';
import { VendorWindow } from './vendor-window.tsx';

/** Each vendor's record, always with its counts. */
export function VendorCards({ reading }: { readonly reading: Reading }) {
  const { build, asOf } = reading;
  const locale = useLocale();
  const cards = useRead(['orders', build, asOf, 'vendorCards'], () => api.orders.vendorCards(reading));
  const [shown, setShown] = useState<VendorCard | null>(null);
  if (cards.state === 'loading') return <Loading label="Reading the vendors' records" />;
  if (cards.state === 'refused') return <RefusalNote refusal={cards.refusal} onRetry={cards.retry} />;
  if (cards.value.length === 0) return <p>A vendor is listed here from the first order on.</p>;
  return (
    <>
      <SimpleTable
        caption="Vendors"
        captionHidden
        columns={columnsOf(locale)}
        rows={cards.value}
        rowKey={({ vendor }) => `${vendor}`}
        onRowOpen={setShown}
      />
      <p className="quiet">
        On time: lines that came, or whose promise passed, by the day first promised. Shares are given from{' '}
        {linesToCompare} judged lines on; fewer say little about a vendor. Wrong units: sent wrong or faulty, of those
        that came. Usual days: the middle one from order to arrival.
      </p>
      {shown !== null && <VendorWindow card={shown} reading={reading} onClose={() => setShown(null)} />}
    </>
  );
}

const percent = (share: number, locale: LocaleSettings): string => `${numberText(share * 100, locale)} %`;

/** "7 of 9, 78 %"; without the share while there are too few lines to judge by. */
export function onTimeText(card: VendorCard, locale: LocaleSettings): string {
  const { judgedLines, onTimeLines, onTimeShare } = card;
  if (judgedLines === 0) return 'none judged yet';
  const counts = `${onTimeLines} of ${judgedLines}`;
  return onTimeShare === null || judgedLines < linesToCompare ? counts : `${counts}, ${percent(onTimeShare, locale)}`;
}

/** "1 of 48, 2 %" of the units that came were wrong or faulty; damage on the road doesn't count. */
export function wrongText(card: VendorCard, locale: LocaleSettings): string {
  const { receivedMilli, wrongMilli, wrongShare, judgedLines } = card;
  if (receivedMilli === 0) return 'nothing came yet';
  const counts = `${quantityText(wrongMilli, locale)} of ${quantityText(receivedMilli, locale)}`;
  return wrongShare === null || wrongMilli === 0 || judgedLines < linesToCompare
    ? counts
    : `${counts}, ${percent(wrongShare, locale)}`;
}

/** "12, over 3 lines": the middle of the days that its lines took. */
export function leadText(card: VendorCard, locale: LocaleSettings): string {
  const { medianLeadDays, arrivedLines } = card;
  if (medianLeadDays === null) return 'nothing came yet';
  return `${numberText(medianLeadDays, locale)}, over ${counted(arrivedLines, 'line', 'lines')}`;
}

function columnsOf(locale: LocaleSettings): readonly Column<VendorCard>[] {
  return [
    { id: 'name', title: 'Vendor', rowHeader: true, cell: ({ name }) => name, sortBy: ({ name }) => name },
    { id: 'orders', title: 'Orders', figures: true, cell: ({ orders }) => orders, sortBy: ({ orders }) => orders },
    {
      id: 'open',
      title: 'Lines to come',
      figures: true,
      cell: ({ openLines }) => openLines,
      sortBy: ({ openLines }) => openLines,
    },
    {
      id: 'time',
      title: 'On time',
      figures: true,
      cell: (card) => onTimeText(card, locale),
      sortBy: ({ onTimeShare }) => onTimeShare ?? -1,
    },
    {
      id: 'wrong',
      title: 'Wrong units',
      figures: true,
      cell: (card) => wrongText(card, locale),
      sortBy: ({ wrongMilli }) => wrongMilli,
    },
    {
      id: 'lead',
      title: 'Usual days to arrive',
      figures: true,
      cell: (card) => leadText(card, locale),
      sortBy: ({ medianLeadDays }) => medianLeadDays ?? -1,
    },
    {
      id: 'paid',
      title: 'Paid',
      figures: true,
      cell: ({ paidMinor }) => <Money amountMinor={paidMinor} />,
      sortBy: ({ paidMinor }) => paidMinor,
    },
    {
      id: 'owed',
      title: 'Still to pay',
      figures: true,
      cell: ({ stillToPayMinor }) => <Money amountMinor={stillToPayMinor} />,
      sortBy: ({ stillToPayMinor }) => stillToPayMinor,
    },
  ];
}
