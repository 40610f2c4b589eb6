import { Button } from '@mantine/core';
import { IconDeviceFloppy } from '@tabler/icons-react';
import { useState } from 'react';
import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { CaseForm } from './case-form.tsx';
import { caseOf, inputsToSave } from './saved-case.ts';
import type { Typed } from './typed.ts';
import { WhatChanged } from './what-changed.tsx';

export interface SavedCasesProps {
  readonly calculator: Calculator;
  /** What is typed, with the units that it is shown in. */
  readonly typed: Typed;
  readonly unitOf: (input: string) => string;
  /** There is a result, so that there is something worth keeping. */
  readonly answered: boolean;
  /** The case that is compared with, by its number in the address. */
  readonly chosen: string | undefined;
  readonly onCompare: (id: number | undefined) => void;
  readonly onOpen: (row: RecordRow) => void;
}

/** The cases of this calculator that were saved with the build, and what changed since one of them. */
export function SavedCases({ calculator, typed, unitOf, answered, chosen, onCompare, onOpen }: SavedCasesProps) {
  const { isOpen, buildId: build, today } = useWorkspace();
  const canAct = useCanAct();
  const [form, setForm] = useState<RecordRow | 'new' | null>(null);
  const read = useRead(
    ['records', build, null, 'savedCase'],
    build === null ? null : () => api.records.list({ kind: 'savedCase', build }),
  );
  const retire = useAct((key, id: number) => api.records.retire({ key, on: today, kind: 'savedCase', id, reason: '' }));
  if (!isOpen || build === null) return null;
  const rows = read.state === 'ready' ? read.value.filter((row) => caseOf(row).calculator === calculator.id) : [];
  const compared = rows.find(({ id }) => String(id) === chosen);
  const why = !canAct
    ? 'A past day is shown, so nothing can be saved.'
    : answered
      ? ''
      : 'A case can be saved once there is a result.';
  return (
    <section className="calculators-cases not-printed" aria-labelledby="calculators-cases">
      <h3 id="calculators-cases">Saved cases</h3>
      {rows.length === 0 && read.state !== 'refused' && (
        <p className="calculators-soft">None yet. A saved case keeps what was typed, to be compared with later.</p>
      )}
      {read.state === 'refused' && <RefusalNote refusal={read.refusal} />}
      {rows.length > 0 && (
        <ul className="calculators-case-list">
          {rows.map((row) => (
            <CaseLine
              key={row.id}
              row={row}
              chosen={row === compared}
              canAct={canAct && !retire.busy}
              onOpen={() => onOpen(row)}
              onCompare={() => onCompare(row === compared ? undefined : row.id)}
              onRename={() => setForm(row)}
              onRetire={async () => {
                if ((await retire.run(row.id)) !== null && row === compared) onCompare(undefined);
              }}
            />
          ))}
        </ul>
      )}
      {retire.refusal !== null && <RefusalNote refusal={retire.refusal} />}
      <div className="calculators-buttons">
        <Button
          leftSection={<IconDeviceFloppy aria-hidden size="1.1em" />}
          disabled={why !== ''}
          onClick={() => setForm('new')}
        >
          Save to the build
        </Button>
        {why !== '' && <span className="calculators-soft">{why}</span>}
      </div>
      {compared !== undefined && <WhatChanged calculator={calculator} row={compared} typed={typed} />}
      {form !== null && (
        <CaseForm
          build={build}
          of={
            form === 'new'
              ? {
                  calculator: calculator.id,
                  inputs: inputsToSave(calculator, typed, unitOf),
                  units: { ...typed.outputUnits },
                }
              : form
          }
          onClose={() => setForm(null)}
          onSaved={(id) => {
            setForm(null);
            if (id !== undefined) onCompare(id);
          }}
        />
      )}
    </section>
  );
}

interface CaseLineProps {
  readonly row: RecordRow;
  readonly chosen: boolean;
  readonly canAct: boolean;
  readonly onOpen: () => void;
  readonly onCompare: () => void;
  readonly onRename: () => void;
  readonly onRetire: () => void;
}

function CaseLine({ row, chosen, canAct, onOpen, onCompare, onRename, onRetire }: CaseLineProps) {
  const { title, note } = caseOf(row);
  const compareWords = chosen ? 'Stop comparing' : 'Compare';
  return (
    <li>
      <span className="calculators-case-words">
        <strong>{title}</strong>
        {note !== '' && <span className="calculators-soft"> {note}</span>}
      </span>
      <span className="calculators-buttons">
        <Button size="compact" variant="subtle" aria-label={`${compareWords} with ${title}`} onClick={onCompare}>
          {compareWords}
        </Button>
        <Button size="compact" variant="subtle" aria-label={`Open ${title}`} onClick={onOpen}>
          Open
        </Button>
        <Button size="compact" variant="subtle" aria-label={`Rename ${title}`} disabled={!canAct} onClick={onRename}>
          Rename
        </Button>
        <Button size="compact" variant="subtle" aria-label={`Retire ${title}`} disabled={!canAct} onClick={onRetire}>
          Retire
        </Button>
      </span>
    </li>
  );
}
