import { Button, FileInput } from '@mantine/core';
import { useState } from 'react';
import { api } from '../../app/client.ts';
import { navigate } from '../../app/route.tsx';
import { useTask } from '../../app/task.ts';
import { TextField } from '../../parts/fields.tsx';
import { Form } from '../../parts/form.tsx';
import { counted } from '../../parts/formats.ts';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { useWorkbookChange } from './use-workbook-change.ts';

/** Makes a new workbook out of an exported one; the open workbook stays as it is. */
export function FromExportSection() {
  const [file, setFile] = useState<File | null>(null);
  const [name, setName] = useState('');
  const [missing, setMissing] = useState(false);
  const [made, setMade] = useState<{ readonly path: string; readonly entries: number } | null>(null);
  const making = useTask((given: { file: File; name: string }) => api.exchange.importWorkbook(given));
  const opening = useWorkbookChange();
  const make = async () => {
    setMissing(file === null);
    if (file === null) return;
    setMade((await making.run({ file, name: name.trim() })) ?? null);
  };
  const open = async (path: string) => {
    if ((await opening.run(() => api.workbook.open({ path }))) !== undefined) navigate('/');
  };
  return (
    <div className="settings-stack">
      <h2>A workbook from an export</h2>
      <Form submitLabel="Make the workbook" busy={making.busy} refusal={making.refusal} onSubmit={() => void make()}>
        <FileInput
          label="Exported workbook"
          description="The file that “Export the whole workbook” made."
          placeholder="Choose the file"
          accept=".json,application/json"
          value={file}
          onChange={setFile}
          error={missing && file === null ? 'Choose the exported file first.' : false}
          clearable
          clearButtonProps={{ 'aria-label': 'Choose none' }}
        />
        <TextField name="name" label="Name of the new workbook" value={name} onChange={setName} longest={80} required />
      </Form>
      {made !== null && (
        <div className="settings-buttons" role="status">
          <span>
            Made with {counted(made.entries, 'entry', 'entries')}: <span className="settings-path">{made.path}</span>
          </span>
          <Button loading={opening.busy} onClick={() => void open(made.path)}>
            Open it
          </Button>
        </div>
      )}
      {opening.refusal !== null && <RefusalNote refusal={opening.refusal} />}
    </div>
  );
}
