import { Button, TextInput } from '@mantine/core';
import { type KeyboardEvent, useDeferredValue, useId, useState } from 'react';
import type { PartValues } from '../../../../core/contract/parts.ts';
import { api, refusalOf } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { useReading, useWorkspace } from '../../../app/workspace.tsx';
import { RefusalNote, type RefusalWords } from '../../../parts/refusal-note.tsx';

export interface QuickAddProps {
  /** Why nothing can be added now; null while it can. */
  readonly closed: string | null;
  /** More than one line was pasted into the field. */
  readonly onPasteLines: (text: string) => void;
}

type Input = { readonly build: number; readonly on: string; readonly parts: PartValues[] };
const send = (key: string, input: Input) => api.parts.add({ key, ...input });

/** Adds a line from one typed text; what it is understood as is shown before Enter adds it. */
export function QuickAdd({ closed, onPasteLines }: QuickAddProps) {
  const { today } = useWorkspace();
  const reading = useReading();
  const build = reading?.build ?? null;
  const hintId = useId();
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<RefusalWords | null>(null);
  const asked = useDeferredValue(text.trim());
  const read = useRead(
    ['parts.readQuickAdd', build, asked],
    build === null || asked === '' ? null : () => api.parts.readQuickAdd({ build, text: asked }),
  );
  const act = useAct(send);
  const add = async () => {
    const typed = text.trim();
    if (build === null || closed !== null || act.busy || typed === '') return;
    setProblem(null);
    try {
      // What is added is read from the whole text, not from what was on show when Enter came.
      const { values } = await api.parts.readQuickAdd({ build, text: typed });
      if (values.description === '') {
        setProblem({
          message: 'There is no description yet. Nothing was changed.',
          accepted: '8 head studs, 4.50 each',
        });
        return;
      }
      if ((await act.run({ build, on: today, parts: [values] })) !== null) setText('');
    } catch (error) {
      setProblem(refusalOf(error));
    }
  };
  const pressed = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
    event.preventDefault();
    void add();
  };
  const refusal = problem ?? act.refusal;
  const understood = asked !== '' && read.state === 'ready' ? read.value : null;
  return (
    <div className="parts-quick not-printed">
      <div className="parts-quick-line">
        <TextInput
          id="parts-quick-add"
          aria-label="Add a line"
          aria-describedby={hintId}
          placeholder="Add a line: 8 head studs M12, 4.50 each, vendor, system"
          value={text}
          disabled={closed !== null}
          autoComplete="off"
          onChange={(event) => {
            setText(event.currentTarget.value);
            setProblem(null);
            act.forget();
          }}
          onKeyDown={pressed}
          onPaste={(event) => {
            const pasted = event.clipboardData.getData('text/plain');
            if (!/[\n\t]/.test(pasted.trim())) return;
            event.preventDefault();
            onPasteLines(pasted);
          }}
        />
        <Button onClick={() => void add()} loading={act.busy} aria-disabled={closed !== null || text.trim() === ''}>
          Add line
        </Button>
      </div>
      <div id={hintId} className="parts-understood" aria-live="polite">
        {asked === '' && <span>Enter adds the line. Rows copied from a spreadsheet can be pasted here.</span>}
        {understood !== null && (
          <>
            <span className="only-heard">Understood as: </span>
            {understood.understood
              .filter((piece) => piece.text !== '')
              .map((piece) => (
                <span key={`${piece.as} ${piece.text}`} className="parts-piece">
                  <b>{piece.text}</b> {piece.as}
                </span>
              ))}
            {understood.findings.map((finding) => (
              <span key={finding} className="parts-finding">
                {finding}
              </span>
            ))}
          </>
        )}
      </div>
      {refusal !== null && <RefusalNote refusal={refusal} />}
    </div>
  );
}
