import { useState } from 'react';
import type { Blocker } from '../../../core/contract/gate.ts';
import { addDays } from '../../../core/dates/calendar-date.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { counted, dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { blockerKey, kindHeadings, placeOf } from './blocker-words.ts';

/** What left the list and what came to it since an earlier day. */
export function Comparing({ reading }: { readonly reading: { readonly build: number; readonly asOf?: string } }) {
  const { today } = useWorkspace();
  const locale = useLocale();
  const until = reading.asOf ?? today;
  const [from, setFrom] = useState<string | null>(addDays(until, -7));
  const to = reading.asOf === undefined ? {} : { to: reading.asOf };
  const compared = useRead(
    ['gate', reading.build, reading.asOf ?? null, 'compare', from],
    from === null ? null : () => api.gate.compare({ build: reading.build, from, ...to }),
  );
  return (
    <>
      <div className="gate-compare-day not-printed">
        <DateField name="from" label="Compare with" value={from} onChange={setFrom} today={today} max={until} />
      </div>
      {compared.state === 'loading' && from !== null && <Loading label="Comparing the two days" />}
      {compared.state === 'refused' && <RefusalNote refusal={compared.refusal} onRetry={compared.retry} />}
      {compared.state === 'ready' && from !== null && (
        <div aria-live="polite">
          <p>
            Since {dateText(from, locale)}: {counted(compared.value.gone.length, 'thing', 'things')} left the list,{' '}
            {compared.value.came.length} came, {compared.value.still} still{' '}
            {compared.value.still === 1 ? 'stands' : 'stand'}.
          </p>
          <div className="gate-compared">
            <Names heading="Left the list" none="Nothing left it." rows={compared.value.gone} />
            <Names heading="Came to it" none="Nothing came to it." rows={compared.value.came} />
          </div>
        </div>
      )}
    </>
  );
}

function Names({ heading, none, rows }: { heading: string; none: string; rows: readonly Blocker[] }) {
  return (
    <section>
      <h3>{heading}</h3>
      {rows.length === 0 ? (
        <p>{none}</p>
      ) : (
        <ul className="gate-names">
          {rows.map((row) => (
            <li key={blockerKey(row)}>
              <Link {...placeOf(row.subject)}>{row.title}</Link>{' '}
              <span className="gate-soft">{kindHeadings[row.kind].toLowerCase()}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
