import { useEffect, useState } from 'react';
import type { z } from 'zod';
import type { landedLine, OrderDraft } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { type Read, useRead } from '../../../app/data.tsx';
import { Money } from '../../../parts/figures.tsx';
import { dateText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';

export type LandedLine = z.infer<typeof landedLine>;

type Landing = Awaited<ReturnType<typeof api.orders.land>>;
const waitMs = 250;

/** What the order would cost as it is typed, asked once the typing rests. */
export function useLanding(order: OrderDraft | null, on: string): Read<Landing> {
  const text = order === null ? null : JSON.stringify({ ...order, number: '', note: '', promisedOn: null, on });
  const [asked, setAsked] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setAsked(text), waitMs);
    return () => clearTimeout(timer);
  }, [text]);
  const landing = useRead(
    ['orders', 'land', asked],
    asked === null ? null : () => api.orders.land(JSON.parse(asked) as OrderDraft & { on: string }),
  );
  return landing.state === 'ready' && text !== asked ? { ...landing, stale: true } : landing;
}

export interface PreviewProps {
  readonly landing: Read<Landing>;
  readonly currency: string;
  /** Whether every line can be read. */
  readonly whole: boolean;
  /** Sentences that the form says elsewhere, so that no notice repeats them. */
  readonly said: readonly string[];
}

/** The total that the bill should show, before the order is placed. */
export function Preview({ landing, currency, whole, said }: PreviewProps) {
  const locale = useLocale();
  if (!whole) return <p className="quiet">The total stands here once the vendor and every line are whole.</p>;
  if (landing.state === 'loading') return <p className="quiet">Working out the total.</p>;
  if (landing.state === 'refused') return <RefusalNote refusal={landing.refusal} />;
  const { totalMinor, totalBaseMinor, rate, rateOn, notices } = landing.value;
  return (
    <div className="order-total" role="status">
      <p>
        <strong>
          Total <Money amountMinor={totalMinor} currency={currency} />
        </strong>
        {rate !== null && (
          <span>
            {' = '}
            <Money amountMinor={totalBaseMinor} /> at {rate}
            {rateOn !== null && ` of ${dateText(rateOn, locale)}`}
          </span>
        )}
      </p>
      {notices
        .filter((notice) => !said.some((sentence) => notice.includes(sentence)))
        .map((notice) => (
          <p key={notice} className="quiet">
            {notice}
          </p>
        ))}
    </div>
  );
}
