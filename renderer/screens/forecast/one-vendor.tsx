import type { VendorLead } from '../../../core/contract/forecast.ts';
import { Link } from '../../app/route.tsx';
import { Curve } from '../../parts/curve.tsx';
import { DateText } from '../../parts/figures.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

type Line = VendorLead['lines'][number];

const stateWords = { arrived: 'arrived', open: 'still open', dropped: 'cancelled, or went on back-order' } as const;

/** The share that still waits, held from day to day: each arrival is a step. */
function stepsOf({ curve }: VendorLead) {
  let share = 100;
  const points = curve.flatMap(({ days, stillWaiting, atRisk }) => {
    const before = { x: days, y: share, level: 'none' as const, remark: '' };
    share = Math.round(stillWaiting * 1000) / 10;
    return [before, { x: days, y: share, level: 'none' as const, remark: `of ${atRisk} that had waited so long` }];
  });
  return [{ x: 0, y: 100, level: 'none' as const, remark: '' }, ...points];
}

/** One vendor: what its days stand on, the share still waiting after so many days, and its lines. */
export function OneVendor({ lead }: { readonly lead: VendorLead }) {
  const columns: readonly Column<Line>[] = [
    {
      id: 'part',
      title: 'Part',
      rowHeader: true,
      cell: ({ order, description }) => (
        <Link to="/orders" params={{ order }}>
          {description}
        </Link>
      ),
      sortBy: ({ description }) => description,
    },
    {
      id: 'from',
      title: 'From',
      figures: true,
      cell: ({ from }) => <DateText date={from} />,
      sortBy: ({ from }) => from,
    },
    { id: 'days', title: 'Days', figures: true, cell: ({ days }) => days, sortBy: ({ days }) => days },
    { id: 'state', title: 'State', cell: ({ state }) => stateWords[state], sortBy: ({ state }) => state },
  ];
  return (
    <section className="forecast-section">
      <h2>{lead.vendorName}</h2>
      <p>
        {lead.says} An order placed now: as likely as not within {Math.round(lead.p50Days)} days, four times of five
        within {Math.round(lead.p80Days)}.
      </p>
      {lead.curve.length > 0 && (
        <Curve
          title={`Share of ${lead.vendorName}'s lines still waiting after so many days`}
          xName="days"
          yName="% still waiting"
          points={stepsOf(lead)}
          stretches={[]}
          present={null}
          xText={(days) => `${days} days`}
          yText={(share) => `${share} %`}
        />
      )}
      <SimpleTable
        caption={`Its latest lines, ${lead.lines.length}`}
        columns={columns}
        rows={lead.lines}
        rowKey={({ line }) => String(line)}
      />
    </section>
  );
}
