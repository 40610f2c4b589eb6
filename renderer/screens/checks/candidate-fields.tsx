import { Button, NativeSelect } from '@mantine/core';
import { Refusal } from '../../../core/refusal.ts';
import { MoneyField, TextField } from '../../parts/fields.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import type { CandidateDraft, FactLine } from './candidate.ts';

export interface CandidateFieldsProps {
  readonly draft: CandidateDraft;
  readonly lines: readonly FactLine[];
  readonly onChange: (draft: CandidateDraft) => void;
  readonly onRemove?: () => void;
}

function readDays(text: string): number {
  const days = Number(text.trim());
  if (Number.isInteger(days) && days >= 0 && days <= 2000) return days;
  throw new Refusal('bad-input', `“${text.trim()}” is no count of days. Nothing was changed.`, {
    accepted: 'whole days from 0 to 2000',
  });
}

/** What one candidate is called, what is different about it, what it costs and when it would be here. */
export function CandidateFields({ draft, lines, onChange, onRemove }: CandidateFieldsProps) {
  const { number, facts } = draft;
  const put = (key: string, fact: { value: string; unit: string }) =>
    onChange({ ...draft, facts: { ...facts, [key]: fact } });
  return (
    <fieldset className="checks-source">
      <legend>Candidate {number}</legend>
      <TextField
        name={`label.${number}`}
        label="What it is"
        required
        longest={80}
        value={draft.label}
        onChange={(label) => onChange({ ...draft, label })}
      />
      {lines.map(({ key, label, units, unit, now }) => {
        const typed = facts[key] ?? { value: '', unit };
        return (
          <div key={key} className="checks-beside">
            <TextField
              name={key}
              label={label}
              description={now === '' ? 'Not known now' : `Now ${now}`}
              longest={400}
              value={typed.value}
              onChange={(value) => put(key, { ...typed, value })}
            />
            {units.length > 1 ? (
              <NativeSelect
                aria-label={`${label}: unit, candidate ${number}`}
                value={typed.unit}
                data={[...(units.includes(typed.unit) ? [] : [typed.unit]), ...units]}
                onChange={(event) => put(key, { ...typed, unit: event.currentTarget.value })}
              />
            ) : (
              unit !== '' && <span className="checks-unit">{unit}</span>
            )}
          </div>
        );
      })}
      <MoneyField
        name={`price.${number}`}
        label="Price of the whole line"
        description="Empty: as the line stands"
        value={draft.priceMinor}
        onChange={(priceMinor) => onChange({ ...draft, priceMinor })}
      />
      <ReadField
        name={`days.${number}`}
        label="Days until it is here"
        description="Empty: as the line stands"
        value={draft.arrivesInDays}
        onChange={(arrivesInDays) => onChange({ ...draft, arrivesInDays })}
        read={readDays}
        write={String}
        numeric
      />
      {onRemove !== undefined && (
        <Button variant="subtle" onClick={onRemove}>
          Leave out <span className="only-heard">candidate {number}</span>
        </Button>
      )}
    </fieldset>
  );
}
