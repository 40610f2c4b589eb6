import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import { Link } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

type Row = ForecastAnswer['coming'][number];

/** Every delivery that the forecast counts on, the latest first, with what its day stands on. */
export function Coming({ coming }: { readonly coming: readonly Row[] }) {
  if (coming.length === 0) return null;
  const columns: readonly Column<Row>[] = [
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
    { id: 'vendor', title: 'From', cell: ({ vendorName }) => vendorName, sortBy: ({ vendorName }) => vendorName },
    {
      id: 'p50',
      title: 'As likely as not by',
      figures: true,
      cell: ({ p50On }) => <DateText date={p50On} />,
      sortBy: ({ p50On }) => p50On,
    },
    {
      id: 'p80',
      title: 'Four of five by',
      figures: true,
      cell: ({ p80On }) => <DateText date={p80On} />,
      sortBy: ({ p80On }) => p80On,
    },
    { id: 'count', title: 'Seen', figures: true, cell: ({ count }) => count, sortBy: ({ count }) => count },
    { id: 'says', title: 'Stands on', sentences: true, cell: ({ says }) => says },
  ];
  return (
    <section className="forecast-section">
      <h2>What is coming</h2>
      <SimpleTable
        caption="Seen: past lines or promises that the days stand on"
        columns={columns}
        rows={coming}
        rowKey={({ part, line }) => `${part} ${line}`}
        sortedBy={{ column: 'p50', descending: true }}
      />
    </section>
  );
}
