import { Button } from '@mantine/core';
import { IconClipboard, IconFileImport } from '@tabler/icons-react';
import { type DragEvent, useEffect, useEffectEvent, useId, useState } from 'react';
import { Progress } from '../../parts/furniture.tsx';
import { RefusalNote, type RefusalWords } from '../../parts/refusal-note.tsx';

export interface ChooseFileProps {
  readonly busy: boolean;
  readonly refusal: RefusalWords | null;
  readonly onFile: (file: File) => void;
}

const endings = '.csv,.tsv,.txt,.xlsx';

/** A list out of the clipboard, as a file like any other. */
function fileOf(data: DataTransfer): File | null {
  const [file] = data.files;
  if (file !== undefined) return file;
  const text = data.getData('text/plain');
  return text.trim() === '' ? null : new File([text], 'pasted list.txt', { type: 'text/plain' });
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input:not([type=file]), textarea, [contenteditable]');

/** A file by its dialog, dropped here, or rows copied out of a spreadsheet. */
export function ChooseFile({ busy, refusal, onFile }: ChooseFileProps) {
  const id = useId();
  const [over, setOver] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const take = (file: File | null | undefined, missing: string) => {
    setProblem(file === null || file === undefined ? missing : null);
    if (file !== null && file !== undefined && !busy) onFile(file);
  };
  const pasted = useEffectEvent((event: ClipboardEvent) => {
    if (event.clipboardData === null || isTyping(event.target) || event.defaultPrevented) return;
    event.preventDefault();
    take(fileOf(event.clipboardData), 'There is no list in the clipboard. Copy its rows first.');
  });
  useEffect(() => {
    const listener = (event: ClipboardEvent) => pasted(event);
    document.addEventListener('paste', listener);
    return () => document.removeEventListener('paste', listener);
  }, []);
  const paste = async () => {
    try {
      const text = await navigator.clipboard.readText();
      const file = text.trim() === '' ? null : new File([text], 'pasted list.txt', { type: 'text/plain' });
      take(file, 'There is no list in the clipboard. Copy its rows first.');
    } catch {
      setProblem('The clipboard can’t be read by a button here. Press Ctrl+V on this page instead.');
    }
  };
  const dropped = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    take(fileOf(event.dataTransfer), 'What was dropped is no file.');
  };
  return (
    <>
      <p>A parts list or an order list, as CSV, TSV or XLSX. Nothing is written until the last step.</p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is the mouse's way; the file field inside is the keyboard's */}
      <div
        className="import-drop"
        data-over={over || undefined}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={dropped}
      >
        <IconFileImport aria-hidden size="1.6em" />
        <label htmlFor={id}>Choose a file, or drop it here</label>
        <input
          id={id}
          type="file"
          accept={endings}
          disabled={busy}
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            event.currentTarget.value = '';
            if (file !== undefined) take(file, '');
          }}
        />
      </div>
      <div className="import-line">
        <Button leftSection={<IconClipboard aria-hidden size="1.1em" />} onClick={() => void paste()} disabled={busy}>
          Paste rows from the clipboard
        </Button>
        <span className="import-soft">or press Ctrl+V on this page</span>
      </div>
      {busy && <Progress label="Reading the file" done={0} of={null} />}
      {problem !== null && <p role="alert">{problem}</p>}
      {refusal !== null && <RefusalNote refusal={refusal} />}
    </>
  );
}
