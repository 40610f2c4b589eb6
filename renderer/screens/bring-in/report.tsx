import { Button } from '@mantine/core';
import { useMemo, useState } from 'react';
import type { ImportReport } from '../../../core/contract/exchange.ts';
import { rowFates } from '../../../core/exchange/import-types.ts';
import { navigate } from '../../app/route.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { Sheet } from '../../parts/sheet/sheet.tsx';
import type { RowId, SheetColumn } from '../../parts/sheet/sheet-types.ts';
import { plainView } from '../../parts/sheet/sheet-view.ts';
import { TakeBack } from './take-back.tsx';
import { fateWords } from './words.ts';

type ReportRow = ImportReport['rows'][number];

const fateText = ({ fate }: ReportRow): string => {
  const known = rowFates.find((one) => one === fate);
  return known === undefined ? fate : fateWords[known];
};

const columns: readonly SheetColumn<ReportRow>[] = [
  {
    key: 'row',
    title: 'Row',
    kind: 'number',
    align: 'start',
    width: 90,
    value: ({ row }) => row,
    text: ({ row }) => String(row),
  },
  { key: 'fate', title: 'What it was', kind: 'choice', width: 160, value: fateText, text: fateText, groupable: true },
  {
    key: 'text',
    title: 'What became of it',
    kind: 'text',
    width: 880,
    value: ({ text }) => text,
    text: ({ text }) => text,
    card: 'primary',
  },
];

export interface ReportProps {
  readonly report: ImportReport;
  readonly undone: boolean;
  /** Another file; left out where an earlier import is looked at. */
  readonly onAnother?: () => void;
}

/** What an import did, row by row, with the way to take it back. */
export function Report({ report, undone, onAnother }: ReportProps) {
  const [view, setView] = useState(plainView);
  const [selection, setSelection] = useState<ReadonlySet<RowId>>(new Set<RowId>());
  const rows = useMemo(() => [...report.rows], [report]);
  return (
    <>
      <p className="import-sentence">{report.summary}</p>
      {undone && <p>This import was taken back: nothing of it stands in the workbook.</p>}
      {report.notices.map((notice) => (
        <p key={notice}>{notice}</p>
      ))}
      <Toolbar label="After the import">
        {!undone && (
          <Button variant="filled" onClick={() => navigate('/parts')}>
            See the parts
          </Button>
        )}
        {!undone && <TakeBack act={report.act} label={report.label} />}
        {onAnother !== undefined && <Button onClick={onAnother}>Bring in another list</Button>}
      </Toolbar>
      <h2>Every row of the file</h2>
      <div className="import-sheet">
        <Sheet
          label="Report of every row"
          noun={['row', 'rows']}
          columns={columns}
          rows={rows}
          rowId={({ row }) => row}
          view={view}
          onViewChange={setView}
          selection={selection}
          onSelectionChange={setSelection}
          onOpenRow={({ part }) => {
            if (part !== null) navigate('/parts', { part });
          }}
        />
      </div>
    </>
  );
}
