import { Button } from '@mantine/core';
import { useState } from 'react';
import { Choice } from '../../parts/fields.tsx';
import { DraftText, useDraft } from './draft-fields.tsx';
import { PortForm } from './port-form.tsx';
import { PortReading } from './port-reading.tsx';
import { usePorts } from './ports.ts';

/** Where the line begins or ends: a port kept with the build, or one typed. */
export function PortFields({ side, build }: { readonly side: 'from' | 'to'; readonly build: number }) {
  const { draft, change, problem } = useDraft();
  const [keeping, setKeeping] = useState(false);
  const ports = usePorts(build);
  const chosen = draft[side];
  const error = problem(side);
  const start = side === 'from';
  return (
    <fieldset className="plumbing-set">
      <legend>{start ? 'From' : 'To'}</legend>
      <div className="plumbing-fields">
        <Choice
          name={side}
          label={start ? 'Port it starts at' : 'Port it goes to'}
          none="None of these: typed, or not said yet"
          value={chosen === null ? null : String(chosen)}
          options={ports.map(({ id, words }) => ({ value: String(id), label: words }))}
          onChange={(port) => change({ [side]: port === null ? null : Number(port) })}
          {...(error === null ? {} : { error })}
        />
        {chosen === null && (
          <>
            <DraftText name={`${side}_port`} label="Port, as typed" hint="Such as JIC -10 male or barb 16 mm." />
            <PortReading text={draft.texts[`${side}_port`] ?? ''} />
          </>
        )}
      </div>
      <Button className="plumbing-start" variant="subtle" onClick={() => setKeeping(true)}>
        Keep a new port…
      </Button>
      {keeping && (
        <PortForm
          build={build}
          designation={draft.texts[`${side}_port`] ?? ''}
          medium={draft.texts['fluid'] ?? ''}
          onClose={() => setKeeping(false)}
          onKept={(port) => change({ [side]: port })}
        />
      )}
    </fieldset>
  );
}
