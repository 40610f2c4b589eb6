import type { CheckRow } from '../../../core/contract/checks.ts';
import { Link } from '../../app/route.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { limitText, roomText, valueText } from './check-words.ts';
import { VerdictMark, worstFirst } from './verdict.tsx';

/** Every check with its verdict, its figure against the limit and the room between; what fails comes first. */
export function CheckTable({ checks }: { readonly checks: readonly CheckRow[] }) {
  const { language } = useLocale();
  const columns: readonly Column<CheckRow>[] = [
    {
      id: 'title',
      title: 'Check',
      rowHeader: true,
      cell: (row) => (
        <span className="checks-title">
          <Link to="/checks" params={{ check: row.id }}>
            {row.title}
          </Link>
          {row.verdict !== 'holds' && <span className="checks-says">{row.says}</span>}
          {row.waived !== '' && <span className="checks-says">Waived: {row.waived}</span>}
        </span>
      ),
    },
    { id: 'verdict', title: 'Verdict', cell: ({ verdict }) => <VerdictMark verdict={verdict} /> },
    {
      id: 'figure',
      title: 'Figure',
      figures: true,
      cell: (row) => valueText(row, language),
    },
    { id: 'limit', title: 'Limit', figures: true, cell: (row) => limitText(row, language) },
    { id: 'room', title: 'Room', figures: true, cell: (row) => roomText(row, language) },
  ];
  return (
    <SimpleTable
      caption="Checks, what fails first"
      captionHidden
      columns={columns}
      rows={worstFirst(checks)}
      rowKey={({ id }) => String(id)}
    />
  );
}
