import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { Choice, TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import type { RefusalWords } from '../../../parts/refusal-note.tsx';
import { type Fact, fieldsOf, type KindOfPart, kindNamed, withFact } from './fact-fields.ts';

export interface FactsFormProps {
  readonly kind: string;
  readonly facts: readonly Fact[];
  readonly kinds: readonly KindOfPart[];
  readonly busy: boolean;
  readonly refusal: RefusalWords | null;
  readonly onClose: () => void;
  readonly onStore: (kind: string, facts: readonly Fact[]) => unknown;
}

const emptyFact: Fact = { key: '', value: '', unit: '' };

/** Kind and facts of a part: fields with units for what its kind may say, free words for anything else. */
export function FactsForm(props: FactsFormProps) {
  const [kind, setKind] = useState(props.kind);
  const [facts, setFacts] = useState<readonly Fact[]>(props.facts);
  const [added, setAdded] = useState<readonly Fact[]>([]);
  const { typed, free } = fieldsOf(kindNamed(props.kinds, kind), facts);
  const trimmed = [...facts, ...added]
    .map(({ key, value, unit }) => ({ key: key.trim(), value: value.trim(), unit: unit.trim() }))
    .filter(({ value }) => value !== '');
  return (
    <FormWindow
      opened
      title="Kind and facts"
      submitLabel="Store the facts"
      onSubmit={() => props.onStore(kind, trimmed)}
      onCancel={props.onClose}
      busy={props.busy}
      refusal={props.refusal}
    >
      <Choice
        name="kind"
        label="Kind of part"
        none="Not said"
        value={kind === '' ? null : kind}
        options={props.kinds.map(({ kind: value, label }) => ({ value, label }))}
        onChange={(chosen) => setKind(chosen ?? '')}
      />
      {typed.map(({ key, label, hint, value, units, chosen }) => (
        <div key={key} className="part-fact">
          <TextField
            name={key}
            label={label}
            longest={400}
            value={value}
            onChange={(next) => setFacts(withFact(facts, { key, value: next, unit: chosen }))}
            {...(hint === '' ? {} : { description: hint })}
          />
          {units.length > 1 ? (
            <NativeSelect
              aria-label={`${label}: unit`}
              value={chosen}
              data={[...(units.includes(chosen) ? [] : [chosen]), ...units]}
              onChange={(event) => setFacts(withFact(facts, { key, value, unit: event.currentTarget.value }))}
            />
          ) : (
            chosen !== '' && <span>{chosen}</span>
          )}
        </div>
      ))}
      {free.map(({ key, value, unit }) => (
        <div key={key} className="part-fact">
          <TextField
            name={key}
            label={key}
            description="Leave it empty to take it off."
            longest={400}
            value={value}
            onChange={(next) => setFacts(withFact(facts, { key, value: next, unit }))}
          />
          <TextField
            name={`${key} unit`}
            label="Unit"
            longest={40}
            value={unit}
            onChange={(next) => setFacts(withFact(facts, { key, value, unit: next }))}
          />
        </div>
      ))}
      {added.map((fact, at) => {
        const put = (change: Partial<Fact>) => setAdded(added.with(at, { ...fact, ...change }));
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a new fact has no name yet, and the rows keep their order
          <div key={at} className="part-fact">
            <TextField
              name={`what ${at + 1}`}
              label="What"
              placeholder="Thread"
              longest={80}
              required={fact.value.trim() !== ''}
              value={fact.key}
              onChange={(key) => put({ key })}
            />
            <TextField
              name={fact.key === '' ? `value ${at + 1}` : fact.key}
              label="Value"
              placeholder="M12x1.75"
              longest={400}
              value={fact.value}
              onChange={(value) => put({ value })}
            />
            <TextField
              name={`unit ${at + 1}`}
              label="Unit"
              longest={40}
              value={fact.unit}
              onChange={(unit) => put({ unit })}
            />
          </div>
        );
      })}
      <div className="parts-bulk">
        <Button onClick={() => setAdded([...added, emptyFact])}>Add a fact in your own words</Button>
      </div>
    </FormWindow>
  );
}
