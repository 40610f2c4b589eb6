import type { ConnectionRow } from '../../../core/contract/fits.ts';
import { Link } from '../../app/route.tsx';
import { FitMark, lookOf } from '../../parts/fit-mark.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { sentence, sideText } from './port-text.ts';

const columns: readonly Column<ConnectionRow>[] = [
  {
    id: 'title',
    title: 'Connection',
    rowHeader: true,
    sortBy: ({ title }) => title,
    cell: ({ id, title, one, other }) => (
      <span className="fit-title">
        <Link to="/fit" params={{ connection: id }}>
          {title}
        </Link>
        <span className="fit-under">
          {sideText(one)} · {sideText(other)}
        </span>
      </span>
    ),
  },
  { id: 'verdict', title: 'Verdict', cell: (row) => <FitMark look={lookOf(row)} /> },
  {
    id: 'why',
    title: 'Why',
    cell: ({ fit, adapter }) => (
      <span className="fit-title">
        {sentence(fit.reason)}
        {adapter !== null && (
          <span className="fit-under">
            Joined by {adapter.pieces.join(' + ')}
            {adapter.missing && ', which is missing'}
          </span>
        )}
      </span>
    ),
  },
];

/** Every connection with its verdict and the reason, as the workbook orders them: the worst first. */
export function ConnectionTable({ rows }: { readonly rows: readonly ConnectionRow[] }) {
  return (
    <SimpleTable
      caption="Connections, the worst first"
      captionHidden
      columns={columns}
      rows={rows}
      rowKey={({ id }) => String(id)}
    />
  );
}
