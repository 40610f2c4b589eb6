import { Button } from '@mantine/core';
import { useState } from 'react';
import { Choice, TextField } from '../../parts/fields.tsx';
import { endKinds } from './picker-kinds.ts';
import { type Measured, ThreadFinder } from './thread-finder.tsx';

export interface PortPickerProps {
  /** A designation that the form's field takes over. */
  readonly onPick: (designation: string) => void;
}

const nothing: Measured = { diameter: '', pitch: '', where: 'outside' };

/** For those who don't know how an end is written: what it is, then which size; it writes the designation. */
export function PortPicker({ onPick }: PortPickerProps) {
  const [kindId, setKindId] = useState<string | null>(null);
  const [size, setSize] = useState<string | null>(null);
  const [measured, setMeasured] = useState<Measured | null>(null);
  const kind = endKinds.find(({ id }) => id === kindId);
  const pick = (value: string | null) => {
    setSize(value);
    if (value !== null) onPick(value);
  };
  return (
    <section className="fit-picker" aria-label="Find how it is written">
      <Choice
        name="picker.kind"
        label="What is it?"
        none="Not chosen"
        value={kindId}
        options={endKinds.map(({ id, label }) => ({ value: id, label }))}
        onChange={(id) => {
          setKindId(id);
          setSize(null);
        }}
      />
      {kind !== undefined && kind.sizes.length > 0 && (
        <Choice
          name="picker.size"
          label="Which size?"
          none="Not chosen"
          value={size}
          options={kind.sizes}
          onChange={pick}
        />
      )}
      {kindId === 'vband' && size !== null && (
        <ShapeFields
          key={size}
          fields={[{ label: 'Your name for its flange profile', start: '' }]}
          write={([profile = '']) => (profile === '' ? size : `${size} profile ${profile}`)}
          onPick={onPick}
        />
      )}
      {kindId === 'pattern' && (
        <ShapeFields
          key={kindId}
          fields={[
            { label: 'How many holes', start: '4' },
            { label: 'Screw', start: 'M8' },
            { label: 'Hole circle, or both sides, in mm (75 or 66x50)', start: '' },
          ]}
          write={([count = '', screw = '', spacing = '']) =>
            spacing === '' ? null : `pattern ${count}x${screw} ${/x/i.test(spacing) ? spacing : `pcd ${spacing}`}`
          }
          onPick={onPick}
        />
      )}
      {kindId === 'connector' && (
        <ShapeFields
          key={kindId}
          fields={[
            { label: 'How many cavities', start: '' },
            { label: 'Key mark, if it has one', start: '' },
            { label: 'Family, as you call it', start: '' },
          ]}
          write={([cavities = '', key = '', family = '']) =>
            cavities === ''
              ? null
              : `elec ${cavities}${key === '' ? '' : ` key ${key}`}${family === '' ? '' : ` family ${family}`}`
          }
          onPick={onPick}
        />
      )}
      {kindId === 'thread' &&
        (measured === null ? (
          <Button variant="default" onClick={() => setMeasured(nothing)}>
            Measure diameter and pitch instead…
          </Button>
        ) : (
          <ThreadFinder
            measured={measured}
            onMeasured={(change) => setMeasured({ ...measured, ...change })}
            takeWords={(name) => `It is ${name}`}
            onUse={onPick}
          />
        ))}
    </section>
  );
}

interface ShapeFieldsProps {
  readonly fields: readonly { readonly label: string; readonly start: string }[];
  /** The designation; null while something is missing. */
  readonly write: (values: readonly string[]) => string | null;
  readonly onPick: (designation: string) => void;
}

/** Ends without a list of sizes: a few figures that are put together as people write them. */
function ShapeFields({ fields, write, onPick }: ShapeFieldsProps) {
  const [values, setValues] = useState<readonly string[]>(() => fields.map(({ start }) => start));
  const put = (at: number, value: string) => {
    const next = values.map((one, index) => (index === at ? value : one));
    setValues(next);
    const written = write(next.map((one) => one.trim()));
    if (written !== null) onPick(written);
  };
  return (
    <div className="fit-ports">
      {fields.map(({ label }, at) => (
        <TextField
          key={label}
          name={`picker.${at}`}
          label={label}
          value={values[at] ?? ''}
          onChange={(value) => put(at, value)}
          longest={40}
        />
      ))}
    </div>
  );
}
