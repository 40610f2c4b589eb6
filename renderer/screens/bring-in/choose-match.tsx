import { useMemo, useState } from 'react';
import type { ImportMatch } from '../../../core/contract/exchange.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Choice } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

export interface ChooseMatchProps {
  readonly build: number;
  readonly match: ImportMatch;
  /** What the order line says. */
  readonly line: string;
  readonly onCancel: () => void;
  /** 0: a part line of its own. */
  readonly onChoose: (part: number) => void;
}

interface PartName {
  readonly id: number;
  readonly label: string;
}

/** All part lines of a build by what they are called. */
async function partNames(build: number): Promise<readonly PartName[]> {
  const { columns, rows } = await api.parts.rows({ build, from: 0, count: 20_000 });
  const at = (name: string) => columns.indexOf(name);
  const [id, description, partNumber] = [at('id'), at('description'), at('partNumber')];
  return rows.map((row) => {
    const number = String(row[partNumber] ?? '');
    return { id: Number(row[id]), label: `${String(row[description] ?? '')}${number === '' ? '' : `, ${number}`}` };
  });
}

/** One order line's part line, chosen by hand: those most alike come first. */
export function ChooseMatch({ build, match, line, onCancel, onChoose }: ChooseMatchProps) {
  const parts = useRead(['parts', build, undefined, 'names'], () => partNames(build));
  const [chosen, setChosen] = useState<string | null>(match.part === null ? '0' : String(match.part));
  const options = useMemo(() => {
    const alike = match.alternatives.map(({ part, description, score }) => ({
      value: String(part),
      label: `${description} (alike: ${Math.round(score * 100)} of 100)`,
    }));
    const first = new Set(alike.map(({ value }) => value));
    const others = parts.state === 'ready' ? parts.value : [];
    return [
      { value: '0', label: 'A part line of its own' },
      ...alike,
      ...others.filter(({ id }) => !first.has(String(id))).map(({ id, label }) => ({ value: String(id), label })),
    ];
  }, [match, parts]);
  return (
    <FormWindow
      opened
      title={`Row ${match.row}: which part is it?`}
      submitLabel="Take this part line"
      onSubmit={() => onChoose(Number(chosen ?? 0))}
      onCancel={onCancel}
    >
      <p>{line}</p>
      {parts.state === 'loading' && <Loading label="Reading the part lines" />}
      {parts.state === 'refused' && <RefusalNote refusal={parts.refusal} onRetry={parts.retry} />}
      {parts.state === 'ready' && (
        <Choice
          name="part"
          label="Part line"
          value={chosen}
          onChange={setChosen}
          options={options}
          required
          autoFocus
        />
      )}
    </FormWindow>
  );
}
