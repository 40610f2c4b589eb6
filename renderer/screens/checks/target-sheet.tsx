import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { TargetRow } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { TextField } from '../../parts/fields.tsx';
import { counted } from '../../parts/formats.ts';
import { useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote, type RefusalWords } from '../../parts/refusal-note.tsx';

interface Line {
  readonly value: string;
  readonly unit: string;
  readonly source: string;
}

/** What the build aims at, typed in place and kept in one act. */
export function TargetSheet({ build, targets }: { readonly build: number; readonly targets: readonly TargetRow[] }) {
  const { today } = useWorkspace();
  const canAct = useCanAct();
  const [typed, setTyped] = useState<Readonly<Record<string, Line>>>({});
  const [own, setOwn] = useState('');
  const act = useAct((key, lines: (Line & { name: string })[]) =>
    api.checks.setTargets({ key, on: today, build, targets: lines }),
  );
  const known = new Set(targets.map(({ name }) => name));
  const added = Object.keys(typed).filter((name) => !known.has(name));
  const rows = [...targets, ...added.map(ownRow)];
  const changed = Object.entries(typed).map(([name, line]) => ({ name, ...line }));
  const save = async () => {
    if ((await act.run(changed)) !== null) setTyped({});
  };
  const refusedAt = (name: string) => (act.refusal?.field === name ? act.refusal : null);
  return (
    <div className="checks-block">
      <p>What the build aims at. Checks read these lines; a line left empty isn't held against anything.</p>
      <table className="checks-targets">
        <caption className="only-heard">Target sheet</caption>
        <thead>
          <tr>
            <th scope="col">Target</th>
            <th scope="col">Value</th>
            <th scope="col">Unit</th>
            <th scope="col">Where it comes from</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <TargetLine
              key={row.name}
              row={row}
              line={typed[row.name] ?? { value: row.value, unit: row.unit, source: row.source }}
              refusal={refusedAt(row.name)}
              disabled={!canAct}
              onChange={(line) => setTyped({ ...typed, [row.name]: line })}
            />
          ))}
        </tbody>
      </table>
      {canAct && (
        <div className="checks-beside">
          <TextField name="own" label="A target of your own" value={own} onChange={setOwn} longest={60} />
          <Button
            disabled={own.trim() === '' || known.has(own.trim())}
            onClick={() => {
              setTyped({ ...typed, [own.trim()]: { value: '', unit: '', source: '' } });
              setOwn('');
            }}
          >
            Add the line
          </Button>
        </div>
      )}
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      {changed.length > 0 && (
        <div className="checks-buttons">
          <Button variant="filled" loading={act.busy} disabled={!canAct} onClick={() => void save()}>
            Save {counted(changed.length, 'line', 'lines')}
          </Button>
          <Button
            variant="subtle"
            onClick={() => {
              act.forget();
              setTyped({});
            }}
          >
            Leave as it was
          </Button>
        </div>
      )}
    </div>
  );
}

const ownRow = (name: string): TargetRow => ({
  id: null,
  revision: null,
  name,
  label: name,
  hint: '',
  value: '',
  unit: '',
  units: [],
  source: '',
  note: '',
  uses: 0,
});

interface TargetLineProps {
  readonly row: TargetRow;
  readonly line: Line;
  readonly refusal: RefusalWords | null;
  readonly disabled: boolean;
  readonly onChange: (line: Line) => void;
}

function TargetLine({ row, line, refusal, disabled, onChange }: TargetLineProps) {
  const { label, hint, units, uses } = row;
  const own = units.length === 0 && row.id === null && hint === '' && uses === 0;
  return (
    <tr>
      <th scope="row">
        {label}
        {hint !== '' && <span className="checks-says">{hint}</span>}
        {uses > 0 && <span className="checks-says">Read by {counted(uses, 'check', 'checks')}</span>}
      </th>
      <td>
        <TextInput
          aria-label={`${label}: value`}
          value={line.value}
          disabled={disabled}
          autoComplete="off"
          error={refusal === null ? false : `${refusal.message} Accepted: ${refusal.accepted ?? 'another value'}.`}
          onChange={(event) => onChange({ ...line, value: event.currentTarget.value })}
        />
      </td>
      <td>
        {units.length > 1 ? (
          <NativeSelect
            aria-label={`${label}: unit`}
            value={line.unit}
            disabled={disabled}
            data={[...(units.includes(line.unit) ? [] : [line.unit]), ...units]}
            onChange={(event) => onChange({ ...line, unit: event.currentTarget.value })}
          />
        ) : own || (units.length === 0 && row.unit !== '') ? (
          <TextInput
            aria-label={`${label}: unit`}
            value={line.unit}
            disabled={disabled}
            onChange={(event) => onChange({ ...line, unit: event.currentTarget.value })}
          />
        ) : (
          line.unit
        )}
      </td>
      <td>
        <TextInput
          aria-label={`${label}: where it comes from`}
          value={line.source}
          disabled={disabled}
          autoComplete="off"
          onChange={(event) => onChange({ ...line, source: event.currentTarget.value })}
        />
      </td>
    </tr>
  );
}
