import { ActionIcon, Button } from '@mantine/core';
import { IconX } from '@tabler/icons-react';
import { useState } from 'react';
import { MoneyField, TextField } from '../../parts/fields.tsx';
import type { DecisionOption } from './value-text.ts';

const most = 20;

interface KeyedOption extends DecisionOption {
  readonly key: number;
}

/** The options of a decision, each with what it would cost if that is known. */
export function OptionsField({
  value,
  onChange,
}: {
  readonly value: readonly DecisionOption[];
  readonly onChange: (options: readonly DecisionOption[]) => void;
}) {
  const [kept, setKept] = useState<readonly KeyedOption[]>(() => value.map((option, key) => ({ ...option, key })));
  const set = (next: readonly KeyedOption[]) => {
    setKept(next);
    onChange(next.map(({ text, costMinor }) => ({ text, costMinor })));
  };
  const put = (key: number, part: Partial<DecisionOption>) =>
    set(kept.map((option) => (option.key === key ? { ...option, ...part } : option)));
  return (
    <fieldset className="record-options">
      <legend>Options</legend>
      {kept.map(({ key, text, costMinor }, index) => (
        <div key={key} className="record-option">
          <TextField
            name={`options.${index}.text`}
            label={`Option ${index + 1}`}
            value={text}
            onChange={(typed) => put(key, { text: typed })}
            longest={200}
            required
          />
          <MoneyField
            name={`options.${index}.costMinor`}
            label={`Cost of option ${index + 1}`}
            value={costMinor}
            onChange={(cost) => put(key, { costMinor: cost })}
          />
          <ActionIcon
            aria-label={`Leave out option ${index + 1}`}
            onClick={() => set(kept.filter((one) => one.key !== key))}
          >
            <IconX aria-hidden size="1.1em" />
          </ActionIcon>
        </div>
      ))}
      <div>
        <Button
          disabled={kept.length >= most}
          onClick={() =>
            set([...kept, { key: Math.max(-1, ...kept.map(({ key }) => key)) + 1, text: '', costMinor: null }])
          }
        >
          Add an option
        </Button>
      </div>
    </fieldset>
  );
}
