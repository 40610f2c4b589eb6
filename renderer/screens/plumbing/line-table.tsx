import type { LineRow } from '../../../core/contract/plumbing.ts';
import { Link } from '../../app/route.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { cutText } from './lengths-text.ts';
import { MadeMark, VerdictMark, worstFirst } from './verdict.tsx';

/** One end of a line in words: whose, and which port. */
export const endText = ({ whose, text }: LineRow['from']): string =>
  [whose, text].filter((one) => one !== '').join(', ') || 'not said';

/** Every line of the build, what fails first. */
export function LineTable({ lines }: { readonly lines: readonly LineRow[] }) {
  const locale = useLocale();
  const columns: readonly Column<LineRow>[] = [
    {
      id: 'name',
      title: 'Line',
      rowHeader: true,
      sortBy: ({ name }) => name,
      cell: (row) => (
        <span className="plumbing-name">
          <Link to="/plumbing" params={{ line: row.id }}>
            {row.name}
          </Link>
          {row.quantity > 1 && <span className="plumbing-soft"> {row.quantity} alike</span>}
          {(row.verdict === 'fail' || row.verdict === 'unknown') && <span className="plumbing-says">{row.says}</span>}
        </span>
      ),
    },
    { id: 'verdict', title: 'Checks', cell: ({ verdict }) => <VerdictMark verdict={verdict} /> },
    {
      id: 'cut',
      title: 'Cut',
      figures: true,
      sortBy: ({ cutMm }) => cutMm ?? -1,
      cell: (row) => cutText(row, locale),
    },
    { id: 'fluid', title: 'Fluid', sortBy: ({ fluid }) => fluid, cell: ({ fluid }) => fluid || 'not said' },
    {
      id: 'way',
      title: 'From → to',
      cell: ({ from, to }) => (
        <span className="plumbing-way">
          {endText(from)} <span aria-hidden>→</span>
          <span className="only-heard"> to </span> {endText(to)}
        </span>
      ),
    },
    { id: 'hose', title: 'Hose', sortBy: ({ hose }) => hose, cell: ({ hose }) => hose },
    { id: 'made', title: 'Made', cell: (row) => <MadeMark row={row} /> },
  ];
  return (
    <SimpleTable
      caption="Lines, what fails first"
      captionHidden
      columns={columns}
      rows={worstFirst(lines)}
      rowKey={({ id }) => String(id)}
    />
  );
}
