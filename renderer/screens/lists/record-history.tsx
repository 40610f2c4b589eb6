import type { JournalFilter, JournalRow } from '../../../core/contract/journal.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import type { ListKind } from './kinds.ts';

/** The entries that count for a kind; kinds without counts have no history here. */
const kindsOfEntry: Partial<Record<ListKind, NonNullable<JournalFilter['kinds']>>> = {
  tool: ['tool-at-hand', 'tool-away'],
  decision: ['decision-made', 'decision-reopened'],
  boltGroup: ['bolts-snugged', 'bolts-final', 'bolts-loosened'],
};

const columns: readonly Column<JournalRow>[] = [
  { id: 'on', title: 'Day', cell: ({ on }) => <DateText date={on} /> },
  {
    id: 'text',
    title: 'Entry',
    rowHeader: true,
    cell: ({ seq, text }) => (
      <Link to="/journal" params={{ entry: seq }}>
        {text}
      </Link>
    ),
  },
  { id: 'author', title: 'Entered by', cell: ({ author }) => author },
];

/** What was recorded about a tool, a decision or a group of bolts, newest first. */
export function RecordHistory({
  kind,
  build,
  name,
}: {
  readonly kind: ListKind;
  readonly build: number;
  readonly name: string;
}) {
  const kinds = kindsOfEntry[kind];
  const entries = useRead(
    ['journal', build, undefined, 'of-record', kind, name],
    kinds === undefined
      ? null
      : () => api.journal.list({ build, kinds, text: name.slice(0, 200), standingOnly: true, limit: 50 }),
  );
  if (entries.state !== 'ready' || entries.value.rows.length === 0) return null;
  return (
    <SimpleTable
      caption="What was recorded"
      columns={columns}
      rows={entries.value.rows}
      rowKey={({ seq }) => String(seq)}
    />
  );
}
