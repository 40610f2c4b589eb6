import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';
import { Loading } from '../../parts/notes.tsx';
import { Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { Report } from './report.tsx';

export const useImports = (build: number) =>
  useRead(['exchange', build, undefined, 'imports'], () => api.exchange.imports({ build }));

type Import = Awaited<ReturnType<typeof api.exchange.imports>>[number];

const columns: readonly Column<Import>[] = [
  { id: 'file', title: 'File', rowHeader: true, cell: ({ fileName }) => fileName, sortBy: ({ fileName }) => fileName },
  { id: 'on', title: 'Day', cell: ({ on }) => <DateText date={on} />, sortBy: ({ on }) => on },
  { id: 'rows', title: 'Rows', figures: true, cell: ({ rows }) => rows },
  { id: 'written', title: 'Lines written', figures: true, cell: ({ written }) => written },
  { id: 'stands', title: 'Stands', cell: ({ undone }) => (undone ? 'taken back' : 'yes') },
];

/** The lists brought in before, each with its report. */
export function EarlierImports({ build }: { readonly build: number }) {
  const imports = useImports(build);
  if (imports.state === 'loading') return <Loading label="Reading the earlier imports" />;
  if (imports.state === 'refused') return <RefusalNote refusal={imports.refusal} onRetry={imports.retry} />;
  if (imports.value.length === 0) return null;
  return (
    <SimpleTable
      caption="Brought in before"
      columns={columns}
      rows={imports.value}
      rowKey={({ act }) => String(act)}
      onRowOpen={({ act }) => navigate('/bring-in', { act })}
    />
  );
}

/** The report of one earlier import. */
export function EarlierReport({ build, act }: { readonly build: number; readonly act: number }) {
  const report = useRead(['exchange', build, undefined, 'report', act], () => api.exchange.report({ act }));
  const imports = useImports(build);
  const one = imports.state === 'ready' ? imports.value.find((each) => each.act === act) : undefined;
  return (
    <Page title={one === undefined ? 'Report of an import' : `Report of ${one.fileName}`}>
      <p>
        <Link to="/bring-in">Back to bringing in</Link>
      </p>
      {report.state === 'loading' && <Loading label="Reading the report" />}
      {report.state === 'refused' && <RefusalNote refusal={report.refusal} onRetry={report.retry} />}
      {report.state === 'ready' && <Report report={report.value} undone={one?.undone === true} />}
    </Page>
  );
}
