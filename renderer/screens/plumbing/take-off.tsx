import type { LineDetail } from '../../../core/contract/plumbing.ts';
import { Quantity } from '../../parts/figures.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { VerdictMark, worstFirst } from './verdict.tsx';

/** The lengths, each with how it was worked out. */
export function LengthList({ lengths }: { readonly lengths: LineDetail['lengths'] }) {
  return (
    <dl className="plumbing-pairs">
      {lengths.map(({ label, value, how }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <span className="figure">{value}</span>
            <span className="plumbing-says">{how}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** The checks that apply, the worst first, each with its source; those that don't are named below. */
export function CheckList({ checks }: { readonly checks: LineDetail['checks'] }) {
  const asked = worstFirst(checks.filter(({ applies }) => applies));
  const idle = checks.filter(({ applies }) => !applies);
  return (
    <>
      <ul className="plumbing-checks">
        {asked.map(({ id, title, verdict, text, source }) => (
          <li key={id}>
            <VerdictMark verdict={verdict} /> <strong>{title}</strong>
            <span>{text}</span>
            <span className="plumbing-says">{source}</span>
          </li>
        ))}
      </ul>
      {idle.length > 0 && (
        <details className="plumbing-more">
          <summary>
            {idle.length} {idle.length === 1 ? 'check doesn’t' : 'checks don’t'} apply
          </summary>
          <ul className="plumbing-plain">
            {idle.map(({ id, title, text }) => (
              <li key={id}>
                {title}: {text}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** What the line is made of, all copies together. */
export function BillTable({ bill }: { readonly bill: LineDetail['bill'] }) {
  return (
    <SimpleTable
      caption="Bill of the line"
      captionHidden
      rows={bill}
      rowKey={({ key }) => key}
      columns={[
        { id: 'text', title: 'Thing', rowHeader: true, cell: ({ text }) => text },
        {
          id: 'quantity',
          title: 'Quantity',
          figures: true,
          cell: (row) => <Quantity quantityMilli={row.quantityMilli} unit={unitOf(row.unit)} />,
        },
      ]}
    />
  );
}

/** The unit as quantities of parts have it. */
export const unitOf = (unit: 'piece' | 'm'): string => (unit === 'm' ? 'm' : 'each');
