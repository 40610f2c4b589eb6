import type { WorkbookStatus } from '../../../core/contract/workbook.ts';
import { DateText } from '../../parts/figures.tsx';
import { numberText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

type Found = WorkbookStatus['found'][number];

export interface FoundWorkbooksProps {
  /** The newest first. */
  readonly found: readonly Found[];
  /** Path of the one that is being opened. */
  readonly busy: string | null;
  readonly onOpen: (path: string) => void;
}

/** The workbooks in the folder. */
export function FoundWorkbooks({ found, busy, onOpen }: FoundWorkbooksProps) {
  const locale = useLocale();
  const columns: readonly Column<Found>[] = [
    {
      id: 'name',
      title: 'Name',
      rowHeader: true,
      cell: ({ name, path }) => (path === busy ? `${name}: opening` : name),
      sortBy: ({ name }) => name,
    },
    {
      id: 'changed',
      title: 'Last changed',
      cell: ({ changedAt }) => <DateText date={changedAt.slice(0, 10)} />,
      sortBy: ({ changedAt }) => changedAt,
    },
    {
      id: 'size',
      title: 'Size',
      figures: true,
      cell: ({ bytes }) => `${numberText(bytes / 1_000_000, locale, 1)} MB`,
      sortBy: ({ bytes }) => bytes,
    },
  ];
  return (
    <SimpleTable
      caption="Workbooks in the folder"
      columns={columns}
      rows={found}
      rowKey={({ path }) => path}
      onRowOpen={({ path }) => onOpen(path)}
    />
  );
}
