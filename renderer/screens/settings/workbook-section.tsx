import { Button, Checkbox } from '@mantine/core';
import { IconAlertTriangle } from '@tabler/icons-react';
import { useState } from 'react';
import type { WorkbookStatus } from '../../../core/contract/workbook.ts';
import { api } from '../../app/client.ts';
import { desktopBridge } from '../../app/desktop-bridge.ts';
import { navigate } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';
import { numberText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { useWorkbookChange } from './use-workbook-change.ts';

/** Which file this is, and the way to another. */
export function WorkbookSection({ status }: { readonly status: WorkbookStatus }) {
  const { open } = status;
  const bridge = desktopBridge();
  const change = useWorkbookChange();
  const [readOnly, setReadOnly] = useState(false);
  const others = status.found.filter(({ path }) => path !== open?.path);
  const openFile = async (path: string) => {
    if ((await change.run(() => api.workbook.open({ path, readOnly }))) !== undefined) navigate('/');
  };
  const choose = async () => {
    const path = await bridge?.chooseWorkbookToOpen();
    if (typeof path === 'string') await openFile(path);
  };
  const close = async () => {
    if ((await change.run(() => api.workbook.close())) !== undefined) navigate('/');
  };
  return (
    <div className="settings-stack">
      {open !== null && (
        <dl className="settings-facts">
          <div>
            <dt>Workbook</dt>
            <dd>{open.name}</dd>
          </div>
          <div>
            <dt>File</dt>
            <dd className="settings-path">{open.path}</dd>
          </div>
          <div>
            <dt>Version of its form</dt>
            <dd>{open.schemaVersion}</dd>
          </div>
        </dl>
      )}
      {open?.readOnly === true && (
        <Notice>This workbook is open for reading only: nothing in it can be changed until it is opened again.</Notice>
      )}
      {open?.notices.map((notice) => (
        <Notice key={notice}>{notice}</Notice>
      ))}
      {change.refusal !== null && <RefusalNote refusal={change.refusal} />}
      <div className="settings-buttons">
        {open !== null && (
          <Button loading={change.busy} onClick={() => void close()}>
            Close this workbook
          </Button>
        )}
        {bridge !== null && open !== null && (
          <Button onClick={() => void bridge.showInFolder()}>Show the file in its folder</Button>
        )}
        {bridge !== null && <Button onClick={() => void choose()}>Open another file…</Button>}
      </div>
      {others.length > 0 && (
        <>
          <Checkbox
            size="md"
            label="Open the next one for reading only"
            checked={readOnly}
            onChange={(event) => setReadOnly(event.currentTarget.checked)}
          />
          <FoundTable rows={others} onOpen={(path) => void openFile(path)} />
        </>
      )}
      <p className="settings-soft">New workbooks are kept in {status.folder}</p>
    </div>
  );
}

function Notice({ children }: { readonly children: string }) {
  return (
    <p className="note note-warn">
      <IconAlertTriangle aria-hidden className="note-icon" />
      <span>{children}</span>
    </p>
  );
}

type Found = WorkbookStatus['found'][number];

function FoundTable({ rows, onOpen }: { readonly rows: readonly Found[]; readonly onOpen: (path: string) => void }) {
  const locale = useLocale();
  const columns: readonly Column<Found>[] = [
    { id: 'name', title: 'Name', rowHeader: true, cell: ({ name }) => `Open ${name}`, sortBy: ({ name }) => name },
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
      caption="Other workbooks in the folder"
      columns={columns}
      rows={rows}
      rowKey={({ path }) => path}
      onRowOpen={({ path }) => onOpen(path)}
    />
  );
}
