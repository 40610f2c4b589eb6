import type { CheckSource } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Choice } from '../../parts/fields.tsx';
import { withPresent } from './draft.ts';
import { usePartLines } from './part-lines.ts';

type Fact = Extract<CheckSource, { from: 'fact' }>;

export interface FactSourceProps {
  readonly name: string;
  readonly label: string;
  readonly source: Fact;
  readonly onChange: (source: Fact) => void;
}

/** A fact of whichever part of a kind stands nearest to fitted, or of one part line. */
export function FactSource({ name, label, source, onChange }: FactSourceProps) {
  const read = useRead(['checks', 'vocabulary'], () => api.checks.vocabulary());
  const lines = usePartLines();
  const kinds = read.state === 'ready' ? read.value : [];
  const terms = kinds.find(({ kind }) => kind === source.partKind)?.facts ?? [];
  return (
    <>
      <Choice
        name={`${name}.partKind`}
        label={`${label}: kind of part`}
        required={source.part === null}
        value={source.partKind === '' ? null : source.partKind}
        options={withPresent(
          source.partKind,
          kinds.map(({ kind, label: words }) => ({ value: kind, label: words })),
        )}
        onChange={(partKind) => onChange({ ...source, partKind: partKind ?? '', fact: '', part: null })}
      />
      <Choice
        name={`${name}.fact`}
        label={`${label}: fact`}
        required
        value={source.fact === '' ? null : source.fact}
        options={withPresent(
          source.fact,
          terms.map(({ key, label: words }) => ({ value: key, label: words })),
        )}
        onChange={(fact) => onChange({ ...source, fact: fact ?? '' })}
      />
      <Choice
        name={`${name}.part`}
        label={`${label}: part line`}
        none="Whichever is fitted, else in hand, on order, needed"
        value={source.part === null ? null : String(source.part)}
        options={lines
          .filter(({ kind, id }) => kind === source.partKind || id === source.part)
          .map(({ id, description }) => ({ value: String(id), label: description }))}
        onChange={(part) => onChange({ ...source, part: part === null ? null : Number(part) })}
      />
    </>
  );
}
