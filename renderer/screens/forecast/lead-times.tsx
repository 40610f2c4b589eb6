import { useState } from 'react';
import type { VendorLead } from '../../../core/contract/forecast.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { useStacked } from '../../parts/stacked.ts';
import { LeadStrip } from './lead-strip.tsx';
import { OneVendor } from './one-vendor.tsx';

const keyOf = ({ vendor, lineClass }: VendorLead): string => `${vendor} ${lineClass}`;

/** How long each vendor has taken, line by line, and what the forecast makes of it. */
export function LeadTimes() {
  const { asOf } = useWorkspace();
  const [opened, setOpened] = useState<string | null>(null);
  const stacked = useStacked();
  const leads = useRead(['forecast', asOf, 'lead-times'], () => api.forecast.leadTimes(asOf === null ? {} : { asOf }));
  if (leads.state === 'loading') return <Loading label="Reading the vendors' records" />;
  if (leads.state === 'refused') return <RefusalNote refusal={leads.refusal} onRetry={leads.retry} />;
  if (leads.value.length === 0) {
    return (
      <p>
        Nothing has been ordered yet. Each order line shows here how long its vendor took; the first ones come with{' '}
        <Link to="/orders">Orders</Link>.
      </p>
    );
  }
  const longest = Math.max(
    ...leads.value.flatMap(({ lines, p80Days }) => [p80Days, ...lines.map(({ days }) => days)]),
    7,
  );
  const open = leads.value.find((lead) => keyOf(lead) === opened);
  return (
    <div className="forecast-days">
      <p className="forecast-soft">
        One mark a line, on the days from its order (or from the notice of a back-order) to its acceptance. Open lines
        stand at the days they have waited.
      </p>
      <ul className="lead-key" aria-label="What the marks mean">
        <li>
          <span className="lead-dot" data-state="arrived" aria-hidden /> arrived
        </li>
        <li>
          <span className="lead-dot" data-state="open" aria-hidden /> still open
        </li>
        <li>
          <span className="lead-dot" data-state="dropped" aria-hidden /> cancelled, or went on back-order
        </li>
        <li>
          <span className="lead-tick" data-of="p50" aria-hidden /> P50 and{' '}
          <span className="lead-tick" data-of="p80" aria-hidden /> P80 of an order placed now
        </li>
      </ul>
      <table className="lead-table" data-stacked={stacked || undefined}>
        <caption className="only-heard">Days that each vendor took</caption>
        <thead>
          <tr>
            <th scope="col">Vendor</th>
            <th scope="col" className="lead-scale">
              <LeadScale longest={longest} />
            </th>
            <th scope="col" data-figures>
              Arrived
            </th>
            <th scope="col" data-figures>
              Open
            </th>
            <th scope="col" data-figures>
              Median
            </th>
            <th scope="col" data-figures>
              P50
            </th>
            <th scope="col" data-figures>
              P80
            </th>
          </tr>
        </thead>
        <tbody>
          {leads.value.map((lead) => (
            <tr key={keyOf(lead)}>
              <th scope="row">
                <button
                  type="button"
                  className="row-button"
                  aria-expanded={keyOf(lead) === opened}
                  onClick={() => setOpened(keyOf(lead) === opened ? null : keyOf(lead))}
                >
                  {lead.vendorName}
                  {lead.lineClass === 'back-order' && ', back-orders'}
                </button>
              </th>
              <td className="lead-cell">
                <LeadStrip lead={lead} longest={longest} />
              </td>
              <td data-figures data-label="Arrived">
                {lead.arrivals}
              </td>
              <td data-figures data-label="Open">
                {lead.open}
              </td>
              <td data-figures data-label="Median">
                {lead.medianDays ?? 'none'}
              </td>
              <td data-figures data-label="P50">
                {Math.round(lead.p50Days)}
              </td>
              <td data-figures data-label="P80">
                {Math.round(lead.p80Days)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {open !== undefined && <OneVendor key={keyOf(open)} lead={open} />}
    </div>
  );
}

/** The days along the top of the strips. */
function LeadScale({ longest }: { readonly longest: number }) {
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find((each) => longest / each <= 5) ?? 2000;
  const marks = Array.from({ length: Math.floor(longest / step) + 1 }, (_, index) => index * step);
  return (
    <span className="lead-strip lead-marks">
      <span className="only-heard">Days</span>
      {marks.map((days) => (
        <span key={days} aria-hidden style={{ left: `${(days / longest) * 100}%` }}>
          {days} d
        </span>
      ))}
    </span>
  );
}
