import { Button } from '@mantine/core';
import { exportTables } from '../../../core/contract/exchange.ts';
import { api } from '../../app/client.ts';
import { saveFile } from '../../app/save-file.ts';
import { useTask } from '../../app/task.ts';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

type TableName = (typeof exportTables)[number];
type Format = 'csv' | 'xlsx';

const titleOf = (table: TableName): string => table.charAt(0).toUpperCase() + table.slice(1);

/** Every table for other programs, and the workbook whole. */
export function ExportSection() {
  const reading = useReading();
  const { asOf } = useWorkspace();
  const locale = useLocale();
  const table = useTask(async ({ name, format }: { readonly name: TableName; readonly format: Format }) => {
    if (reading === null) return;
    const file = await api.exchange.exportTable({ ...reading, table: name, format });
    saveFile(file, file.name);
  });
  const whole = useTask(async () => {
    const file = await api.exchange.exportWorkbook();
    saveFile(file, file.name);
  });
  const button = (name: TableName, format: Format, words: string) => (
    <Button size="compact" disabled={table.busy} onClick={() => void table.run({ name, format })}>
      {words} <span className="only-heard">of {name}</span>
    </Button>
  );
  const columns: readonly Column<TableName>[] = [
    { id: 'table', title: 'Table', rowHeader: true, cell: titleOf },
    { id: 'csv', title: 'As text', cell: (name) => button(name, 'csv', 'CSV') },
    { id: 'xlsx', title: 'As a sheet', cell: (name) => button(name, 'xlsx', 'XLSX') },
  ];
  return (
    <div className="settings-stack">
      {reading === null ? (
        <p>Tables belong to a build; this workbook has none yet.</p>
      ) : (
        <>
          <p>
            Tables of the build chosen above
            {asOf === null ? ', as they stand now' : `, as they stood at the end of ${dateText(asOf, locale)}`}. The
            figures are those on the screens.
          </p>
          {table.refusal !== null && <RefusalNote refusal={table.refusal} />}
          <SimpleTable caption="Tables" captionHidden columns={columns} rows={exportTables} rowKey={(name) => name} />
        </>
      )}
      <h2>The whole workbook</h2>
      <p>All entries and records of all builds as one JSON document: enough to make the workbook again.</p>
      {whole.refusal !== null && <RefusalNote refusal={whole.refusal} />}
      <div className="settings-buttons">
        <Button loading={whole.busy} onClick={() => void whole.run()}>
          Export the whole workbook
        </Button>
      </div>
    </div>
  );
}
