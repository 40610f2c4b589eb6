import type { DeclaredRow } from '../../../core/contract/fits.ts';
import { Link } from '../../app/route.tsx';
import { declaredLookOf, FitMark } from '../../parts/fit-mark.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

const columns: readonly Column<DeclaredRow>[] = [
  {
    id: 'title',
    title: 'Fit',
    rowHeader: true,
    sortBy: ({ title }) => title,
    cell: ({ id, title, says }) => (
      <span className="fit-title">
        <Link to="/fit" params={{ declared: id }}>
          {title}
        </Link>
        <span className="fit-under">{says}</span>
      </span>
    ),
  },
  { id: 'outcome', title: 'Outcome', cell: (row) => <FitMark look={declaredLookOf(row)} /> },
  { id: 'left', title: 'One side', figures: true, cell: ({ left }) => left },
  { id: 'right', title: 'Other side', figures: true, cell: ({ right }) => right },
  { id: 'margin', title: 'Margin', figures: true, cell: ({ margin }) => margin },
];

/** Every declared fit with its two sides and what is left between them. */
export function DeclaredTable({ rows }: { readonly rows: readonly DeclaredRow[] }) {
  return (
    <SimpleTable
      caption="Declared fits, the worst first"
      captionHidden
      columns={columns}
      rows={rows}
      rowKey={({ id }) => String(id)}
    />
  );
}
