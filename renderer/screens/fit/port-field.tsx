import { Button, TextInput } from '@mantine/core';
import { useId } from 'react';
import { formatPort } from '../../../core/fit/format.ts';
import { measuresOf } from '../../../core/fit/measuring.ts';
import type { ParsedPort, UnreadPort } from '../../../core/fit/parse.ts';
import { type Gender, isGendered } from '../../../core/fit/port.ts';
import { useFieldError } from '../../parts/field-frame.tsx';
import { sizeText } from './port-text.ts';

const genders: readonly { readonly value: Gender; readonly label: string }[] = [
  { value: 'male', label: 'Male, outside' },
  { value: 'female', label: 'Female, inside' },
];

export interface PortFieldProps {
  readonly name: string;
  readonly label: string;
  readonly placeholder: string;
  readonly value: string;
  readonly reading: ParsedPort | UnreadPort | undefined;
  readonly onChange: (text: string) => void;
  /** How the side is asked for; by the label where nothing else is said. */
  readonly asks?: string;
  /** Nothing can be kept without it. */
  readonly required?: boolean;
}

/** What the form is told, so that nothing unreadable is sent. */
function problemOf({ label, reading, required = false }: PortFieldProps): string | null {
  if (reading === undefined) return required ? `${label} is still empty.` : null;
  return reading.ok ? null : `${label} can’t be read: ${reading.message}.`;
}

/** One port, typed as people write it: how it was read, or how to write it, stands below while typing. */
export function PortField(props: PortFieldProps) {
  const { name, label, placeholder, value, reading, onChange, required = false } = props;
  const asks = props.asks ?? `Which side is the ${label.toLowerCase()}?`;
  const told = useId();
  const problem = useFieldError({ name, label }, problemOf(props), false);
  return (
    <div className="fit-port">
      <TextInput
        label={label}
        name={name}
        value={value}
        placeholder={placeholder}
        autoComplete="off"
        spellCheck={false}
        aria-describedby={told}
        required={required}
        error={reading?.ok === false || (problem ?? false)}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      <div id={told} aria-live="polite" className="fit-told">
        {reading === undefined && <p>As it is written on the part, the drawing or the shop’s page.</p>}
        {reading?.ok === true && <Read reading={reading} />}
        {reading?.ok === false && (
          <p className="fit-unread">
            <strong>Can’t be read:</strong> {reading.message}. Write it like one of these:
          </p>
        )}
      </div>
      {reading?.ok === false && (
        <div className="fit-buttons">
          {reading.write.map((way) => (
            <Button key={way} variant="default" onClick={() => onChange(way)}>
              {way}
            </Button>
          ))}
        </div>
      )}
      {reading?.ok === true && isGendered(reading.port) && (
        <fieldset className="fit-gender">
          <legend>{asks}</legend>
          {genders.map(({ value: gender, label: words }) => (
            <Button
              key={gender}
              variant={reading.port.gender === gender ? 'filled' : 'default'}
              aria-pressed={reading.port.gender === gender}
              onClick={() => onChange(formatPort({ ...reading.port, gender }))}
            >
              {words}
            </Button>
          ))}
        </fieldset>
      )}
    </div>
  );
}

function Read({ reading: { canonical, port, warnings, notes } }: { readonly reading: ParsedPort }) {
  return (
    <>
      <p>
        Read as <strong>{canonical}</strong>
        {sizeText(port) !== '' && <span className="fit-soft"> ({sizeText(port)})</span>}
      </p>
      {[...warnings, ...notes].map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className="fit-soft">To be sure: {measuresOf(port).howToMeasure}</p>
    </>
  );
}
