import { Button } from '@mantine/core';
import { IconAlertTriangle, IconCircleCheck } from '@tabler/icons-react';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useTask } from '../../app/task.ts';
import { Confirm } from '../../parts/form.tsx';
import { instantText, numberText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { useWorkbookChange } from './use-workbook-change.ts';
import { Verification } from './verification.tsx';

type Backup = Awaited<ReturnType<typeof api.workbook.backups>>[number];

/** Backups, the way back to one, and the check that every figure still follows from its entries. */
export function SafetySection({ readOnly }: { readonly readOnly: boolean }) {
  const queries = useQueryClient();
  const locale = useLocale();
  const backups = useRead(['workbook.backups'], () => api.workbook.backups());
  const making = useTask(async () => {
    const made = await api.workbook.backUp();
    await queries.invalidateQueries({ queryKey: ['workbook.backups'] });
    return made;
  });
  const [made, setMade] = useState<string | null>(null);
  const [restoring, setRestoring] = useState<Backup | null>(null);
  const restore = useWorkbookChange();
  const backUp = async () => {
    const done = await making.run();
    if (done !== undefined) setMade(`Backed up as ${done.file}, ${numberText(done.bytes / 1_000_000, locale, 1)} MB.`);
  };
  const putBack = async (file: string) => {
    if ((await restore.run(() => api.workbook.restore({ file }))) === undefined) return;
    setRestoring(null);
    navigate('/');
  };
  const columns: readonly Column<Backup>[] = [
    {
      id: 'made',
      title: 'Made',
      rowHeader: true,
      cell: ({ madeAt }) => instantText(madeAt, locale),
      sortBy: ({ madeAt }) => madeAt,
    },
    { id: 'state', title: 'State', cell: ({ verified }) => <Verified verified={verified} /> },
    {
      id: 'size',
      title: 'Size',
      figures: true,
      cell: ({ bytes }) => `${numberText(bytes / 1_000_000, locale, 1)} MB`,
      sortBy: ({ bytes }) => bytes,
    },
    { id: 'file', title: 'File', cell: ({ file }) => <span className="settings-path">{file}</span> },
    {
      id: 'restore',
      title: 'Go back',
      cell: (backup) => (
        <Button size="compact" disabled={readOnly || !backup.verified} onClick={() => setRestoring(backup)}>
          Restore… <span className="only-heard">the backup of {instantText(backup.madeAt, locale)}</span>
        </Button>
      ),
    },
  ];
  return (
    <div className="settings-stack">
      <div className="settings-buttons">
        <Button variant="filled" loading={making.busy} onClick={() => void backUp()}>
          Back up now
        </Button>
        {made !== null && <span role="status">{made}</span>}
      </div>
      {making.refusal !== null && <RefusalNote refusal={making.refusal} />}
      {backups.state === 'loading' && <Loading label="Looking for backups" />}
      {backups.state === 'refused' && <RefusalNote refusal={backups.refusal} onRetry={backups.retry} />}
      {backups.state === 'ready' &&
        (backups.value.length === 0 ? (
          <p>No backup has been made yet. Backups are kept in the folder “Backups” beside the workbook.</p>
        ) : (
          <SimpleTable caption="Backups" columns={columns} rows={backups.value} rowKey={({ file }) => file} />
        ))}
      <Verification />
      {restoring !== null && (
        <Confirm
          opened
          title="Restore a backup"
          doIt="Restore this backup"
          busy={restore.busy}
          refusal={restore.refusal}
          onConfirm={() => void putBack(restoring.file)}
          onCancel={() => setRestoring(null)}
        >
          <p>
            The workbook becomes what it was on {instantText(restoring.madeAt, locale)}. Entries made since then are not
            in it. The present file is kept beside it under another name.
          </p>
        </Confirm>
      )}
    </div>
  );
}

function Verified({ verified }: { readonly verified: boolean }) {
  return verified ? (
    <span className="settings-state">
      <IconCircleCheck aria-hidden size="1.2em" className="settings-good" /> whole
    </span>
  ) : (
    <span className="settings-state">
      <IconAlertTriangle aria-hidden size="1.2em" className="settings-bad" /> changed or damaged since it was made
    </span>
  );
}
