import { Button } from '@mantine/core';
import type { FieldProps } from './field-frame.tsx';
import { hoursText, readMinutes } from './minutes.ts';
import { ReadField } from './read-field.tsx';
import './minutes-field.css';

export interface MinutesFieldProps extends FieldProps {
  /** Whole minutes; null while nothing can be read. */
  readonly value: number | null;
  readonly onChange: (minutes: number | null) => void;
  /** Whether 0 is accepted. */
  readonly zero?: boolean;
  /** Buttons that add to the time, for hands in gloves. */
  readonly steps?: readonly number[];
}

/** A length of work, typed or put together from large buttons. */
export function MinutesField({ value, onChange, zero = true, steps = [], ...field }: MinutesFieldProps) {
  return (
    <div className="minutes-field">
      <ReadField
        {...field}
        value={value}
        onChange={onChange}
        read={(text) => readMinutes(text, field.name, zero)}
        write={hoursText}
        numeric
      />
      {steps.length > 0 && (
        // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset
        <div className="minutes-steps" role="group" aria-label={`Add to ${field.label.toLowerCase()}`}>
          {steps.map((step) => (
            <Button key={step} onClick={() => onChange((value ?? 0) + step)}>
              + {hoursText(step)}
            </Button>
          ))}
        </div>
      )}
    </div>
  );
}
